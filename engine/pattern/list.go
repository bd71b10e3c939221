package pattern

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"
)

// ListName is the file that lists what is made.
const ListName = "groups.txt"

// List is what is made of which flat: how many to cut, for which boats and sides, in
// which hand, what is held, and what shares a set-up of the press.
func List(parts []Part) []byte {
	var b bytes.Buffer
	say := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	boats := boatsOf(parts)
	say("What is cut and folded, of %s", counted(len(boats), "plan"))
	say("%s", Advises)
	say("Measured from old parts or not: make one of each, try it at the boat, then make the rest. Cut edges are sharp.\n")
	for _, boat := range boats {
		say("  %s", boat)
	}
	free, held := 0, 0
	for _, p := range parts {
		free += len(p.Free())
		held += len(p.Copies) - len(p.Free())
	}
	say("\n%s, to be cut %s", counted(len(parts), "pattern"), counted(free, "time"))
	if held > 0 {
		say("%s held and NOT TO BE CUT until the plan is mended", counted(held, "part"))
	}
	setups := Setups(parts)
	for _, p := range parts {
		sayPart(say, p, setups)
	}
	saySetups(say, setups)
	say("\n%s", Advises)
	return b.Bytes()
}

func counted(n int, what string) string {
	if n == 1 {
		return fmt.Sprintf("%d %s", n, what)
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// boatsOf are the boats with their plans.
func boatsOf(parts []Part) (list []string) {
	for _, p := range parts {
		for _, c := range p.Copies {
			of := c.Boat + ": " + c.Plan
			if strings.HasSuffix(c.Boat, "("+c.Plan+")") {
				of = c.Boat
			}
			if !slices.Contains(list, of) {
				list = append(list, of)
			}
		}
	}
	return list
}

// sayPart lists one pattern.
func sayPart(say func(string, ...any), p Part, setups []Setup) {
	say("\n%s: %s", p.Name, cutWords(p))
	low, high := p.Flat.Outline.Bounds()
	say("  %s %s, %s x %s, %s, %s", mm(p.Flat.Thickness), metalWords(p), mm(high.X-low.X), mm(high.Y-low.Y), counted(len(p.Holes), "hole"), counted(len(p.Folds), "fold"))
	var numbers []string
	for i, s := range setups {
		if slices.ContainsFunc(s.Folds, func(f SetupFold) bool { return f.Part == p.Name }) {
			numbers = append(numbers, fmt.Sprint(i+1))
		}
	}
	if len(numbers) > 0 {
		say("  press set-up %s", strings.Join(numbers, ", "))
	}
	rows := [][]string{{"hand", "boat", "fitting", "side", "to be cut"}}
	for _, c := range p.Copies {
		cut := "yes"
		if p.Landing.untold() || p.Landing.misses() {
			cut = "not before its holes are settled"
		}
		if len(c.Held) > 0 {
			cut = "NO, HELD"
		}
		rows = append(rows, []string{string(c.Hand), c.Boat, c.Fitting, c.Side, cut})
	}
	sayTable(say, rows)
	for _, c := range p.Copies {
		for _, why := range c.Held {
			say("  NOT TO BE CUT: %s: %s", c.name(), why)
		}
	}
	for _, s := range slices.Concat(p.Warnings, p.Differ) {
		say("  %s", s)
	}
}

// cutWords are how many to cut, by hand.
func cutWords(p Part) string {
	free := p.Free()
	of := map[Hand]int{}
	for _, c := range free {
		of[c.Hand]++
	}
	var hands []string
	for _, h := range []Hand{AsDrawn, OtherHand, EitherHand} {
		if of[h] > 0 {
			hands = append(hands, fmt.Sprintf("%d %s", of[h], strings.Replace(string(h), "the", "of the", 1)))
		}
	}
	switch {
	case of[EitherHand] == len(free) && len(free) > 0:
		return fmt.Sprintf("cut %d, without a hand", len(free))
	case len(free) == 0:
		return "NOT TO BE CUT, all held"
	case of[OtherHand] > 0:
		return fmt.Sprintf("cut %d: %s (the mirror image: the same blank, every fold the other way)", len(free), strings.Join(hands, ", "))
	}
	return fmt.Sprintf("cut %d: %s", len(free), strings.Join(hands, ", "))
}

// saySetups lists what shares a set-up of the press.
func saySetups(say func(string, ...any), setups []Setup) {
	if len(setups) == 0 {
		say("\nNothing is folded.")
		return
	}
	say("\nPress set-ups: folds of one set-up are made without a change of die or punch; mirror images turn the other face up.")
	for i, s := range setups {
		say("  %d  %s", i+1, s.words())
		for _, f := range s.Folds {
			times := fmt.Sprintf("%d x", f.Times)
			if f.Times == 0 {
				times = "held"
			}
			say("       %s P%d, %.4g deg, %s", f.Part, f.Step, f.Angle, times)
		}
		if math.IsNaN(s.Die) {
			say("       which die is not known, so whether it shares one is not either")
		}
	}
}
