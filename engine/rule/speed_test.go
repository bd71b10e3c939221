package rule

import (
	"math/rand/v2"
	"testing"
	"time"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
)

// The rules of the trial pack as a programmer would write them by hand, on plain
// structs: the yardstick for what our closures cost.

type plainStay struct {
	breakLoad, working float64
	role               string
	toggle             bool
}

type plainFitting struct {
	state, kind, access                string
	yield, pren, thickness, width, age float64
	hidden, titanium, look             bool
}

type plainLanding struct {
	stay                            *plainStay
	fitting                         *plainFitting
	hole, end, pin, angle, ultimate float64
}

// byHand gives 0 where a rule holds, 1 where it fails, 2 where it does not apply.
var byHand = map[string]func(*plainLanding) int{
	"wire-in-plane": func(l *plainLanding) int {
		a := max(l.angle, -l.angle)
		return failsIf(!(a <= 20) || !l.stay.toggle && !(a <= 10))
	},
	"plate-outlasts-wire": func(l *plainLanding) int {
		if l.fitting.kind != "chainplate" {
			return 2
		}
		w := l.stay.breakLoad
		return failsIf(!(l.ultimate >= w) || l.fitting.state != "kept" && !(l.ultimate >= 1.5*w) || l.fitting.state == "kept" && !(l.ultimate >= 1.25*w))
	},
	"end-of-pin-hole": func(l *plainLanding) int {
		r := l.end / l.hole
		return failsIf(!(r >= 1) || !(r >= 1.2) || (l.fitting.state == "remade" || l.fitting.state == "new") && !(r >= 1.5))
	},
	"side-of-pin-hole": func(l *plainLanding) int { return failsIf(!(l.fitting.width-l.hole >= max(12, 1.25*l.hole))) },
	"pin-fits": func(l *plainLanding) int {
		gap, most := l.hole-l.pin, 0.5
		if l.fitting.state == "kept" {
			most = 0.75
		}
		return failsIf(!(gap > 0) || !(gap <= 1) || !(gap < most))
	},
	"plate-stays-below-yield": func(l *plainLanding) int {
		return failsIf(!(l.stay.breakLoad/3/(l.fitting.thickness*(l.fitting.width-l.hole)) < 0.6*l.fitting.yield))
	},
	"metal-for-a-hidden-place": func(l *plainLanding) int {
		f := l.fitting
		if !f.hidden {
			return 2
		}
		return failsIf(!(f.titanium || f.pren >= 22) || !(f.titanium || f.pren >= 40 || (f.access == "open" || f.access == "panel") && f.look))
	},
	"age-of-part": func(l *plainLanding) int {
		if l.fitting.hidden {
			return failsIf(!(l.fitting.age <= 10))
		}
		return failsIf(!(l.fitting.age <= 25))
	},
	"wire-can-swing":     func(l *plainLanding) int { return failsIf(!(l.stay.toggle || l.stay.role != "forestay")) },
	"plate-not-slender":  func(l *plainLanding) int { return failsIf(!(l.fitting.width <= 12*l.fitting.thickness)) },
	"plate-thick-enough": func(l *plainLanding) int { return failsIf(!(l.fitting.thickness >= 0.1875*25.4)) },
	"wire-has-reserve":   func(l *plainLanding) int { return failsIf(!(l.stay.breakLoad-l.stay.working > 1.5*l.stay.working)) },
	"section-bears-bending": func(l *plainLanding) int {
		t := l.fitting.thickness
		return failsIf(!(l.fitting.yield*l.fitting.width*t*t/6 >= 25000))
	},
}

func failsIf(b bool) int {
	if b {
		return 1
	}
	return 0
}

// trials are the same boats in both shapes.
type trials struct {
	rules []*Rule
	hand  []func(*plainLanding) int
	plain []*plainLanding
	rows  map[string][][]float64
	// of are the rows that each rule judges.
	of    [][][]float64
	sides int
}

func newTrials(t testing.TB, boats int) *trials {
	c := catalogue(t)
	p := trial(t, c)
	x := &trials{rules: p.Rules, rows: map[string][][]float64{}, sides: p.sides}
	for _, r := range p.Rules {
		if byHand[r.ID] == nil {
			t.Fatalf("%s is not written by hand", r.ID)
		}
		x.hand = append(x.hand, byHand[r.ID])
	}
	random := rand.New(rand.NewPCG(1, 2))
	for range boats {
		l, subjects := randomBoat(t, c, random)
		x.plain = append(x.plain, l)
		for _, s := range subjects {
			x.rows[s.Kind.Name] = append(x.rows[s.Kind.Name], s.Row())
		}
	}
	for _, r := range p.Rules {
		x.of = append(x.of, x.rows[r.Kind.Name])
	}
	return x
}

func randomBoat(t testing.TB, c *fact.Catalogue, r *rand.Rand) (*plainLanding, []*fact.Subject) {
	around := func(v float64) float64 { return v * (0.6 + r.Float64()) }
	pick := func(words ...string) string { return words[r.IntN(len(words))] }
	s := &plainStay{around(30000), around(11000), pick("forestay", "cap shroud", "backstay"), r.IntN(2) == 0}
	f := &plainFitting{pick("kept", "remade", "new"), pick("chainplate", "chainplate", "tang"), pick("open", "panel", "tools", "cut"),
		around(205), around(25), around(6), around(40), around(12), r.IntN(2) == 0, r.IntN(4) == 0, r.IntN(2) == 0}
	l := &plainLanding{s, f, around(14), around(22), around(13.5), around(10) - 12, around(50000)}
	b := newBoat()
	b.stay.BreakLoad.Give(s.breakLoad, at(1, 1))
	b.stay.WorkingLoad.Give(s.working, at(1, 1))
	b.stay.Role.Give(s.role, at(1, 1))
	b.stay.Toggle.Give(s.toggle, at(1, 1))
	b.fitting.State.Give(f.state, at(1, 1))
	b.fitting.Sort.Give(f.kind, at(1, 1))
	b.fitting.Access.Give(f.access, at(1, 1))
	b.fitting.Metal.Yield.Give(f.yield, at(1, 1))
	b.fitting.Metal.PREN.Give(f.pren, at(1, 1))
	b.fitting.Thickness.Give(f.thickness, at(1, 1))
	b.fitting.Width.Give(f.width, at(1, 1))
	b.fitting.Age.Give(f.age, at(1, 1))
	b.fitting.Hidden.Give(f.hidden, at(1, 1))
	b.fitting.Titanium.Give(f.titanium, at(1, 1))
	b.fitting.Look.Give(f.look, at(1, 1))
	b.landing.Hole.Give(l.hole, at(1, 1))
	b.landing.End.Give(l.end, at(1, 1))
	b.landing.PinMeasured.Give(l.pin, at(1, 1))
	b.landing.Angle.Give(l.angle, at(1, 1))
	b.landing.PlateUltimate.Give(l.ultimate, at(1, 1))
	return l, b.subjects(t, c)
}

func (x *trials) byHand(counts *[3]int) {
	for _, l := range x.plain {
		for _, f := range x.hand {
			counts[f(l)]++
		}
	}
}

func (x *trials) byRules(f *frame, counts *[3]int) {
	for i := range x.plain {
		for j, r := range x.rules {
			f.facts = x.of[j][i]
			switch r.evaluate(f).outcome {
			case holds:
				counts[0]++
			case fails:
				counts[1]++
			case doesNotApply:
				counts[2]++
			}
		}
	}
}

// TestRulesAgreeWithHandWritten: the yardstick measures the same thing.
func TestRulesAgreeWithHandWritten(t *testing.T) {
	x := newTrials(t, 300)
	f := &frame{sides: make([]side, x.sides)}
	tally := [3]int{}
	for i, l := range x.plain {
		for j, r := range x.rules {
			f.facts = x.of[j][i]
			want := [3]finding.Outcome{finding.Holds, finding.Fails, finding.DoesNotApply}[x.hand[j](l)]
			if got := outcomes[r.evaluate(f).outcome]; got != want {
				t.Errorf("boat %d: %s %s, by hand %s", i, r.ID, got, want)
			}
			tally[x.hand[j](l)]++
		}
	}
	if tally[0] < 500 || tally[1] < 500 || tally[2] < 100 {
		t.Errorf("%v: too few of some outcome", tally)
	}
}

func TestJudgingAllocatesNothing(t *testing.T) {
	x := newTrials(t, 20)
	f := &frame{sides: make([]side, x.sides)}
	var counts [3]int
	if n := testing.AllocsPerRun(50, func() { x.byRules(f, &counts) }); n != 0 {
		t.Errorf("%v allocations for %d judgements", n, len(x.plain)*len(x.rules))
	}
	c := catalogue(t)
	p := trial(t, c)
	few := newBoat().subjects(t, c)
	var many []*fact.Subject
	for range 100 {
		many = append(many, few...)
	}
	one := testing.AllocsPerRun(50, func() { p.Judge(few, JudgeOptions{}) })
	hundred := testing.AllocsPerRun(50, func() { p.Judge(many, JudgeOptions{}) })
	if one != hundred {
		t.Errorf("a sound boat takes %v allocations and a hundred of them %v", one, hundred)
	}
}

// BenchmarkRules judges 1,000 boats by our closures and by hand, and reports the
// ratio of the two: by all 13 rules, and by those that make one comparison.
func BenchmarkRules(b *testing.B) {
	b.Run("all", func(b *testing.B) { newTrials(b, 1000).race(b) })
	b.Run("one comparison", func(b *testing.B) {
		x := newTrials(b, 1000)
		one := &trials{plain: x.plain, sides: x.sides}
		for i, r := range x.rules {
			if len(r.Bands) == 1 && r.Bands[0].Verb.compares() && r.AppliesIf == "" {
				one.rules, one.hand, one.of = append(one.rules, r), append(one.hand, x.hand[i]), append(one.of, x.of[i])
			}
		}
		one.race(b)
	})
}

func (x *trials) race(b *testing.B) {
	f := &frame{sides: make([]side, x.sides)}
	judgements := float64(len(x.plain) * len(x.rules))
	var ours, hand time.Duration
	var counts [3]int
	b.ReportAllocs()
	for b.Loop() {
		start := time.Now()
		x.byRules(f, &counts)
		middle := time.Now()
		x.byHand(&counts)
		ours += middle.Sub(start)
		hand += time.Since(middle)
	}
	n := judgements * float64(b.N)
	b.ReportMetric(float64(ours.Nanoseconds())/n, "ns/rule")
	b.ReportMetric(float64(hand.Nanoseconds())/n, "ns/hand")
	b.ReportMetric(float64(ours)/float64(hand), "x-hand")
}

// BenchmarkLoad loads the trial pack as the packs of the program are loaded.
func BenchmarkLoad(b *testing.B) {
	c := catalogue(b)
	files := packOf(goodRule)
	for b.Loop() {
		if p, _ := Load(files, "p", "my", c, LoadOptions{SkipSchema: true}); p == nil {
			b.Fatal("not loaded")
		}
	}
}
