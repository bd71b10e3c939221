package fleet

import (
	"fmt"
	"io"
)

// Text is the boat in one line; a plan that could not be judged says where the first
// of its problems is.
func (l Line) Text() string {
	c := l.Counts
	if len(l.Problems) == 0 {
		return fmt.Sprintf("%s: %s, %d stop, %d mend, %d watch, %d accepted, %d cannot tell", l.Plan, l.name(), c.Stop, c.Mend, c.Watch, c.Accepted, c.CannotTell)
	}
	p := l.Problems[0]
	text := fmt.Sprintf("%s:%d:%d: %s", p.At.File, p.At.Line, p.At.Column, p.Message)
	if l.Status == 2 {
		return fmt.Sprintf("%s: not judged, %s", l.Plan, text)
	}
	return fmt.Sprintf("%s: %s, %d stop, %d mend, %d watch, and not all packs judged, %s", l.Plan, l.name(), c.Stop, c.Mend, c.Watch, text)
}

func (l Line) name() string {
	switch {
	case l.Boat == "":
		return "a boat without a name"
	case l.Class == "":
		return l.Boat
	}
	return l.Boat + " (" + l.Class + ")"
}

// WriteText writes what a fleet adds up to: by class, by rule, and the worst boats.
func (s Summary) WriteText(w io.Writer) error {
	p := &printer{out: w}
	p.line("%s: %d with nothing that refuses them, %d refused, %d not judged, %d with a fault of a pack or the program.",
		manyBoats(s.Boats), s.Statuses[0], s.Statuses[1], s.Statuses[2], s.Statuses[3])
	p.line("%d stop, %d mend, %d watch, %d accepted; %d cannot tell.", s.Total.Stop, s.Total.Mend, s.Total.Watch, s.Total.Accepted, s.Total.CannotTell)
	p.named("By class", s.Classes, s.OtherClasses)
	p.named("By rule", s.Rules, s.OtherRules)
	if len(s.Worst) > 0 {
		p.line("\nThe worst boats")
	}
	for _, l := range s.Worst {
		p.line("  %s", l.Text())
	}
	p.line("\n%s", advises)
	return p.err
}

// advises closes the sums: a fleet without findings is no fleet of sound boats.
const advises = "chainwale advises; no finding is not the same as safe, and each boat's own report lists what was not seen. A qualified\nrigger, surveyor, naval architect and local code decide."

type printer struct {
	out io.Writer
	err error
}

func (p *printer) line(format string, args ...any) {
	if p.err == nil {
		_, p.err = fmt.Fprintf(p.out, format+"\n", args...)
	}
}

func (p *printer) named(title string, list []Named, others int) {
	if len(list) == 0 {
		return
	}
	p.line("\n%s", title)
	for _, n := range list {
		name := n.Name
		if others > 0 && name == OtherName {
			name = fmt.Sprintf("%s (%d or more)", OtherName, others)
		}
		p.line("  %s: %s; %d stop, %d mend, %d watch, %d accepted, %d cannot tell", name, manyBoats(n.Boats), n.Stop, n.Mend, n.Watch, n.Accepted, n.CannotTell)
	}
}

// boats is a number of boats in words.
func manyBoats(n int) string {
	if n == 1 {
		return "1 boat"
	}
	return fmt.Sprintf("%d boats", n)
}
