package sheet

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"
)

// oldPart is a chainplate as measured: a steel rule for lengths, a bevel for angles.
func oldPart() Measured {
	return Measured{
		Thickness: Read(0.05, 8.02, 7.98, 8.0), Width: Read(0.1, 40),
		Legs:  []Reading{Read(0.5, 120.2, 119.8), Read(0.5, 90), Read(0.5, 60)},
		Folds: []MeasuredFold{{Angle: Read(1, 15, 15.5, 14.5), Radius: Read(1, 16)}, {Angle: Read(1, -25), Radius: Read(1, 16)}},
		Holes: []MeasuredHole{
			{Name: "pin", Leg: 1, Along: Read(0.3, 20), Across: Read(0.3, 0)},
			{Name: "top bolt", Leg: 2, Along: Read(0.5, 45), Across: Read(0.3, 5)},
			{Name: "low bolt", Leg: 3, FromFar: true, Along: Read(0.5, 20), Across: Read(0.3, -5)},
		},
	}
}

func TestDevelopMeasured(t *testing.T) {
	d, err := oldPart().Develop()
	if err != nil {
		t.Fatal(err)
	}
	v := vectors(t).Fold
	near(t, "length", d.Length.Value, v.Flat, 1e-9)
	for i, f := range d.Folds {
		near(t, foldName(i), f.Value, v.Bends[i].C, 1e-9)
	}
	near(t, "pin", d.Holes[0].At.X, 20, 1e-12)
	near(t, "low bolt", d.Holes[2].At.X, v.Flat-20, 1e-9)
	b, _ := Bend{Thickness: 8, Radius: 16, Angle: 15}.Reckon()
	near(t, "top bolt", d.Holes[1].At.X, 120-b.Deduction+45, 1e-9)
	near(t, "top bolt across", d.Holes[1].At.Y, 5, 0)
	for _, h := range d.Holes {
		sum := 0.0
		for _, s := range h.Flat.Shares {
			sum += s.Part
		}
		near(t, "sum of shares", sum, 1, 1e-12)
	}
	near(t, "pin", d.Holes[0].Flat.Uncertainty, math.Hypot(0.3, 0.3)/math.Sqrt(3), 1e-9)
}

// TestWhatDominates: on the flat lengths decide, and the angle where a hole stands far
// behind a fold; a square fold is the neutral line's.
func TestWhatDominates(t *testing.T) {
	d, _ := oldPart().Develop()
	low := d.Holes[2]
	if what := low.Folded.Dominant(); what != "angle of fold 1" {
		t.Errorf("in space the low bolt hangs on %s: %+v", what, low.Folded.Shares[:3])
	}
	if what := low.Flat.Dominant(); !strings.HasPrefix(what, "leg") && !strings.HasPrefix(what, "low bolt") {
		t.Errorf("in the flat the low bolt hangs on %s", what)
	}
	if low.Folded.Uncertainty < low.Flat.Uncertainty {
		t.Errorf("in space %g, in the flat %g", low.Folded.Uncertainty, low.Flat.Uncertainty)
	}
	square := Measured{Thickness: Read(0.05, 10), Width: Read(0.1, 50), Legs: []Reading{Read(0.1, 100), Read(0.1, 100)},
		Folds: []MeasuredFold{{Angle: Read(0.3, 90), Radius: Read(0.5, 20)}}, Holes: []MeasuredHole{{Leg: 2, Along: Read(0.1, 80), Across: Read(0.1, 0)}}}
	d, err := square.Develop()
	if err != nil {
		t.Fatal(err)
	}
	if what := d.Holes[0].Flat.Dominant(); what != "neutral line" {
		t.Errorf("behind a square fold the hole hangs on %s", what)
	}
	if what := d.Length.Dominant(); what != "neutral line" || d.Length.Limit() != 2*d.Length.Uncertainty {
		t.Errorf("the length hangs on %s", what)
	}
	square.Folds[0].K = 0.42
	if d, _ = square.Develop(); d.Length.Dominant() == "neutral line" {
		t.Error("a test strip settles the neutral line")
	}
}

// TestPropagationAgainstChance: the uncertainties are those that come out when all
// inputs are drawn at random about their means.
func TestPropagationAgainstChance(t *testing.T) {
	m := oldPart()
	m.Folds[1].Skew = Read(1, 12)
	m.Chords = []MeasuredChord{{"pin", "low bolt", Read(0.5, 223.6)}}
	m.Chords[0].Length = Read(50, chordOf(t, m))
	d, err := m.Develop()
	if err != nil {
		t.Fatal(err)
	}
	inputs := m.inputs()
	x := nominal(inputs)
	const n = 6000
	draws := rand.New(rand.NewPCG(3, 14))
	var sum, squares []float64
	for range n {
		made, bent := make([]float64, len(x)), make([]float64, len(x))
		for i, s := range inputs {
			made[i] = x[i] + s.uncertainty*draws.NormFloat64()
			bent[i] = made[i]
		}
		// The new part is cut by the neutral line that is believed in.
		believed := append([]float64{}, made...)
		believed[len(x)-1] = x[len(x)-1]
		p := m.mixed(m.places(made, made), m.places(believed, bent))
		if sum == nil {
			sum, squares = make([]float64, len(p)), make([]float64, len(p))
		}
		for i, v := range p {
			sum[i] += v
			squares[i] += v * v
		}
	}
	deviation := func(places ...int) float64 {
		total := 0.0
		for _, k := range places {
			total += squares[k]/n - math.Pow(sum[k]/n, 2)
		}
		return math.Sqrt(total)
	}
	near(t, "length", d.Length.Uncertainty, deviation(0), 0.04*deviation(0))
	for i, f := range d.Folds {
		near(t, foldName(i), f.Uncertainty, deviation(1+i), 0.04*deviation(1+i))
	}
	for i, h := range d.Holes {
		k := 3 + 5*i
		near(t, h.Name+" in the flat", h.Flat.Uncertainty, deviation(k, k+1), 0.04*deviation(k, k+1))
		near(t, h.Name+" in space", h.Folded.Uncertainty, deviation(k+2, k+3, k+4), 0.04*deviation(k+2, k+3, k+4))
	}
	own := m.Chords[0].Length.Uncertainty()
	near(t, "chord", math.Sqrt(d.Chords[0].Uncertainty*d.Chords[0].Uncertainty-own*own), deviation(18), 0.04*deviation(18))
}

// chordOf is the straight distance that the other readings give.
func chordOf(t *testing.T, m Measured) float64 {
	t.Helper()
	m.Chords[0].Length = Read(1e6, 200)
	d, err := m.Develop()
	if err != nil {
		t.Fatal(err)
	}
	return d.Chords[0].Folded
}

// TestChordsCheckTheRest: a straight distance that agrees is taken, one that doesn't
// names its holes; it does not hang on the neutral line.
func TestChordsCheckTheRest(t *testing.T) {
	m := oldPart()
	m.Chords = []MeasuredChord{{From: "pin", To: "low bolt"}}
	true3 := chordOf(t, m)
	m.Chords[0].Length = Read(0.5, true3+1)
	d, err := m.Develop()
	if err != nil || len(d.Chords) != 1 || math.Abs(d.Chords[0].Read-d.Chords[0].Folded-1) > 1e-9 {
		t.Fatalf("%+v %v", d.Chords, err)
	}
	m.Chords[0].Length = Read(0.5, true3+6)
	if _, err := m.Develop(); err == nil || !strings.Contains(err.Error(), "from pin to low bolt") {
		t.Errorf("a distance that is 6 mm off: %v", err)
	}
}

func TestDevelopMeasuredRefuses(t *testing.T) {
	for says, change := range map[string]func(*Measured){
		"leg 1: the readings are 1.4 mm apart":    func(m *Measured) { m.Legs[0] = Read(0.5, 120, 121.4) },
		"angle of fold 2: the readings are 5 deg": func(m *Measured) { m.Folds[1].Angle = Read(1, -25, -20) },
		"thickness: there are no readings":        func(m *Measured) { m.Thickness.Values = nil },
		"reading 2 of 2":                          func(m *Measured) { m.Legs[1].Values = []float64{90, math.NaN()} },
		"leg 2: say how far":                      func(m *Measured) { m.Legs[1].Within = 0 },
		"width: say how far":                      func(m *Measured) { m.Width.Within = math.NaN() },
		"leg 2 is 5 mm outside":                   func(m *Measured) { m.Legs[1] = Read(0.5, 5) },
		"top bolt comes to lie in fold 1":         func(m *Measured) { m.Holes[1].Along = Read(0.5, 2) },
		"low bolt comes to lie off leg 3":         func(m *Measured) { m.Holes[2].Along = Read(0.5, -3) },
		"pin comes to lie off leg 1":              func(m *Measured) { m.Holes[0].Across = Read(0.5, 30) },
		"low bolt is said to lie on leg 4":        func(m *Measured) { m.Holes[2].Leg = 4 },
		"two holes are called pin":                func(m *Measured) { m.Holes[2].Name = "pin" },
		`no hole is called "keel"`:                func(m *Measured) { m.Chords = []MeasuredChord{{"pin", "keel", Read(1, 100)}} },
		"with 5 folds":                            func(m *Measured) { m.Folds = make([]MeasuredFold, 5) },
		"2 folds part a strip into 3 legs":        func(m *Measured) { m.Legs = m.Legs[:2] },
		"fold 1 turns by 190":                     func(m *Measured) { m.Folds[0].Angle = Read(1, 190) },
		"fold 2 has an inside radius of -4":       func(m *Measured) { m.Folds[1].Radius = Read(1, -4) },
		"skew of fold 1":                          func(m *Measured) { m.Folds[0].Skew = Read(0, 4) },
		"the distance from pin to top bolt":       func(m *Measured) { m.Chords = []MeasuredChord{{"pin", "top bolt", Read(0.1, 100, 120)}} },
	} {
		m := oldPart()
		change(&m)
		if d, err := m.Develop(); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v %+v", says, err, d.Length)
		}
	}
}

func TestReading(t *testing.T) {
	near(t, "one reading", Read(0.5, 10).Uncertainty(), 0.5/math.Sqrt(3), 1e-12)
	near(t, "three readings", Read(0.5, 10, 10.3, 10.6).Uncertainty(), math.Hypot(0.3, 0.5/math.Sqrt(3)), 1e-12) // s/sqrt(n) widened by sqrt(3)
	near(t, "five readings", Read(0.5, 9.8, 9.9, 10, 10.1, 10.2).Uncertainty(), math.Sqrt(2*0.025/5+0.25/3), 1e-12)
	if !math.IsNaN(Read(0.5).Uncertainty()) || !math.IsNaN(Read(0.5).Mean()) {
		t.Error("no reading has a mean")
	}
}
