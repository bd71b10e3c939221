package rig

import (
	"math"
	"strings"
	"testing"
)

// TestKnownBeams holds the mast's bending to the beams that every handbook prints.
func TestKnownBeams(t *testing.T) {
	one := must(MastBending{Supports: []float64{0, 4000}, Top: 4000, Load: 2}.Reckon())(t)
	near(t, "w L2/8", one.Largest, 2*4000*4000/8, 1e-12)
	near(t, "at the middle", one.At, 2000, 1e-12)
	two := must(MastBending{Supports: []float64{0, 4000, 8000}, Top: 8000, Load: 2}.Reckon())(t)
	near(t, "-w L2/8 over the middle", two.AtSupports[1], -2*4000*4000/8, 1e-12)
	near(t, "3/8 w L", two.Reactions[0], 3*2*4000/8.0, 1e-12)
	three := must(MastBending{Supports: []float64{0, 4000, 8000, 12000}, Top: 12000, Load: 2}.Reckon())(t)
	near(t, "-w L2/10", three.AtSupports[1], -2*4000*4000/10, 1e-12)
	near(t, "-w L2/10", three.AtSupports[2], -2*4000*4000/10, 1e-12)
	checkWorking(t, three.Working(), three.Largest)
}

func TestWireFacts(t *testing.T) {
	for _, c := range []struct {
		wire Wire
		how  string
		kN   float64
	}{
		{Wire{"1x19", "316", 8, 0}, "table", 45.5}, {Wire{"1x19", "316", 9, 0}, "formula", 0.69 * 81}, {Wire{"1x19", "316", 8, 47000}, "certificate", 47},
	} {
		r := must(c.wire.Reckon())(t)
		if r.How != c.how {
			t.Errorf("%+v is known by %s", c.wire, r.How)
		}
		near(t, "break load", r.BreakLoad/1000, c.kN, 1e-9)
		checkWorking(t, r.Working(), r.BreakLoad)
	}
	// EA of 1x19 is 84.4 d^2 kN, 75 to 125 break loads.
	for d, kN := range map[float64]float64{3: 760, 4: 1351, 5: 2111, 6: 3039, 7: 4137, 8: 5404, 10: 8443, 12: 12158} {
		r := must(Wire{"1x19", "316", d, 0}.Reckon())(t)
		near(t, "EA", r.EA/1000, kN, 0.0005)
		if n := r.EA / r.BreakLoad; n < 75 || n > 125 {
			t.Errorf("%g mm: EA is %g break loads", d, n)
		}
	}
	turn := must(Turn{Pitch: 25.4 / 20, Length: 13000, EA: 3039500}.Reckon())(t)
	near(t, "take-up of 1/2-20", turn.TakeUp, 2.54, 1e-9)
	near(t, "rise", turn.Rise, 3039500*2.54/13000, 1e-9)
	checkWorking(t, turn.Working(), turn.Rise)
}

func TestTensionByStretch(t *testing.T) {
	r := must(TensionByStretch{Wire: Wire{"1x19", "316", 6, 0}, GaugeLength: 2000, Stretch: 3}.Reckon())(t)
	near(t, "by the folding rule", r.ByRule, 0.15, 1e-9)
	near(t, "by stiffness", r.Share, 0.15, 0.06)
	checkWorking(t, r.Working(), r.Tension)
	if r := must(TensionByStretch{Wire: Wire{"7x19", "316", 6, 0}, GaugeLength: 2000, Stretch: 3}.Reckon())(t); !math.IsNaN(r.ByRule) {
		t.Error("the folding rule is of 1x19")
	}
}

func TestLashing(t *testing.T) {
	line := Lashing{LineBreak: 13600, Parts: 6, End: "turns", Fibre: "HMPE", Pin: 12, Line: 4}
	r := must(line.Reckon())(t)
	near(t, "three turns of 4 mm", r.BreakLoad, 28560, 1e-9)
	checkWorking(t, r.Working(), r.BreakLoad)
	line.Pin, line.End = 0, "bowline"
	near(t, "with a bowline", must(line.Reckon())(t).BreakLoad, 6*0.5*13600*0.35, 1e-9)
	bowline := must(FibreStay{Kind: "HMPE", Diameter: 8, Parts: 1, End: "bowline", AgeKnown: true}.Reckon())(t)
	near(t, "8 mm with a bowline, a fifth", bowline.BreakLoad/5, 3808, 1e-9)
	splice := must(FibreStay{Kind: "HMPE", Diameter: 8, Parts: 1, End: "splice", AgeKnown: true, WireEA: 5404000}.Reckon())(t)
	near(t, "8 mm spliced, a fifth", splice.BreakLoad/5, 9792, 1e-9)
	near(t, "softer", splice.Softer, 5404000/(25*54400.0), 1e-9)
	checkWorking(t, splice.Working(), splice.BreakLoad)
	old := must(FibreStay{Kind: "HMPE", Diameter: 8, Parts: 1, End: "splice"}.Reckon())(t)
	near(t, "of unknown age", old.BreakLoad, splice.BreakLoad/2, 1e-12)
	checkWorking(t, old.Working(), old.BreakLoad)
}

// halyard is a stand-in with all its elements known.
func halyard(strength float64) StandInStrength {
	return StandInStrength{Path: OverSheave, BothPartsDown: true, Elements: []ElementStrength{
		{LineElement, 54400}, {KnotElement, strength}, {SheaveElement, 4 * strength}, {CleatElement, 1.5 * strength}, {DeckElement, 2 * strength}}}
}

func TestStandInIsTheLeast(t *testing.T) {
	r := must(halyard(20000).Reckon())(t)
	if r.Strength != 20000 || r.Governs != KnotElement || !r.Known {
		t.Errorf("%+v", r)
	}
	checkWorking(t, r.Working(), r.Strength)
	s := halyard(20000)
	s.Elements[2].Strength = 30000
	if r := must(s.Reckon())(t); r.Strength != 15000 || r.Governs != SheaveElement {
		t.Errorf("both parts lead down: %+v", r)
	}
	s.BothPartsDown = false
	if r := must(s.Reckon())(t); r.Strength != 20000 {
		t.Errorf("one part leads down: %+v", r)
	}
	for i := range s.Elements {
		unknown := halyard(20000)
		what := unknown.Elements[i].Element
		unknown.Elements[i].Strength = 0
		if r := must(unknown.Reckon())(t); r.Known || r.Strength != 0 || !strings.Contains(r.Says, string(what)) || !strings.Contains(r.Says, "counts as nothing") {
			t.Errorf("unknown %s: %+v", what, r)
		}
		left := halyard(20000)
		left.Elements = append(left.Elements[:i:i], left.Elements[i+1:]...)
		if r := must(left.Reckon())(t); r.Known || !strings.Contains(r.Says, string(what)) {
			t.Errorf("without %s: %+v", what, r)
		}
	}
}

func TestFittedWire(t *testing.T) {
	estimated := must(EstimatedMoment{Waterline: 9000}.Reckon())(t)
	r := must(FittedWire{BreakLoad: 45500, Required: 40000, Moment: estimated}.Reckon())(t)
	if !strings.Contains(r.Says, "estimated") || !strings.Contains(r.Says, "not firm enough") || !(r.Least < 1 && r.Most > 1.8) {
		t.Errorf("%+v", r)
	}
	checkWorking(t, r.Working(), r.Ratio)
	inclined := must(InclinedMoment{Mass: 6000, Weight: 100, Distance: 1600, Heel: 2}.Reckon())(t)
	if r := must(FittedWire{BreakLoad: 45500, Required: 40000, Moment: inclined}.Reckon())(t); strings.Contains(r.Says, "not firm") {
		t.Errorf("%+v", r)
	}
}

func TestBowspritStays(t *testing.T) {
	b := must(BowspritStay{Role: Bobstay, ForestayPull: 4000, ForestayBreak: 30000, ForestayAngle: 60, Angle: 30}.Reckon())(t)
	near(t, "bobstay", b.BreakLoad, 30000*math.Sqrt(3), 1e-9)
	checkWorking(t, b.Working(), b.Pull)
	w := must(BowspritStay{Role: WhiskerStay, ForestayPull: 4000, ForestayBreak: 30000, ForestayAngle: 90, Angle: 30}.Reckon())(t)
	near(t, "whisker", w.Pull, 0.2*4000*2, 1e-9)
	checkWorking(t, w.Working(), w.BreakLoad)
}

func TestShroudsByWeight(t *testing.T) {
	r := must(ShroudsByWeight{Mass: 6000, Shrouds: 3}.Reckon())(t)
	near(t, "each of three", r.BreakLoad, 2000*9.80665, 1e-12)
	checkWorking(t, r.Working(), r.BreakLoad)
	if _, err := (ShroudsByWeight{Mass: 6000}).Reckon(); err == nil {
		t.Error("no shrouds gave no error")
	}
}

func TestSharedSideForce(t *testing.T) {
	r := must(SharedSideForce{RightingMoment: 30.891e6, Sails: []SailArea{{30e6, 7000}, {40e6, 6000}}}.Reckon())(t)
	near(t, "F", r.Force, 4805, 0.0005)
	near(t, "main head", r.Sails[0].Head, 883, 0.001)
	near(t, "jib head", r.Sails[1].Head, 1177, 0.001)
	checkWorking(t, r.Working(), r.Force)
}

func TestMastWindage(t *testing.T) {
	mast := Aloft{"mast", 170, 0, 13000, 1}
	alone := must(MastWindage{[]Aloft{mast}}.Reckon())(t)
	wind := must(Windage{Diameter: 170, Length: 13000, Wind: 12}.Reckon())(t)
	near(t, "the mast alone", alone.At(12), wind.Moment, 1e-12)
	wire := Aloft{"a shroud", 6, 0, 13000, 0.5}
	with := must(MastWindage{[]Aloft{mast, wire}}.Reckon())(t)
	one := must(Windage{Diameter: 6, Length: 13000, Wind: 12}.Reckon())(t)
	near(t, "half a wire's drag at its top", with.At(12)-alone.At(12), one.Force/2*13000, 1e-9)
	checkWorking(t, with.Working(), with.PerSquare)
}

// TestRefusals: inputs outside what a formula holds for are refused in a plain
// sentence that names what is wrong, and never give a number.
func TestRefusals(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	refused := func(_ any, err error) error { return err }
	at := func(x, y, h float64) HeldStay {
		return HeldStay{"cap shroud to port", StayLine{Foot: Point{x, y, 0}, Height: h}, 1000}
	}
	for _, c := range []struct {
		says string
		err  error
	}{
		{"shroud plate stands on the centreline", refused(Shrouds{Levels: []ShroudLevel{{1000, 0, 1}}}.Reckon())},
		{"must be above 0 mm, not -1450", refused(Shrouds{HalfBeam: -1450, Levels: []ShroudLevel{{1000, 0, 1}}}.Reckon())},
		{"at least one level", refused(Shrouds{HalfBeam: 1450}.Reckon())},
		{"height of level 1 must be above 0", refused(Shrouds{HalfBeam: 1450, Levels: []ShroudLevel{{-5, 0, 1}}}.Reckon())},
		{"level 2 must stand above", refused(Shrouds{HalfBeam: 1450, Levels: []ShroudLevel{{6000, 900, 1}, {5000, 0, 1}}}.Reckon())},
		{"level 1 has no spreader", refused(Shrouds{HalfBeam: 1450, Levels: []ShroudLevel{{6000, 0, 1}, {9000, 0, 1}}}.Reckon())},
		{"highest level has no spreader", refused(Shrouds{HalfBeam: 1450, Levels: []ShroudLevel{{6000, 900, 1}}}.Reckon())},
		{"side force at level 1", refused(Shrouds{HalfBeam: 1450, Levels: []ShroudLevel{{6000, 0, nan}}}.Reckon())},
		{"too short", refused(Shrouds{HalfBeam: 3000, Levels: []ShroudLevel{{1000, 100, 1}, {9000, 0, 1000}}}.Reckon())},
		{"cap shroud to port is attached at 14000 mm, above the masthead at 13000 mm", refused(Capacity{Stays: []HeldStay{at(0, 1450, 14000)}, Masthead: 13000}.Reckon())},
		{"cap shroud to port: the foot stands in the line of the mast", refused(Capacity{Stays: []HeldStay{at(0, 0, 13000)}}.Reckon())},
		{"cap shroud to port: the height of the attachment must be above 0", refused(Capacity{Stays: []HeldStay{at(0, 1450, -13000)}}.Reckon())},
		{"nothing holds the mast", refused(Capacity{}.Reckon())},
		{"can't be NaN N", refused(Capacity{Stays: []HeldStay{{"x", StayLine{Foot: Point{0, 1, 0}, Height: 5}, nan}}}.Reckon())},
		{"above 0 kg", refused(StabilityMoment{Mass: inf, GM: 1000}.Reckon())},
		{"metacentric height", refused(StabilityMoment{Mass: 6000}.Reckon())},
		{"0.2 to 10 deg", refused(InclinedMoment{6000, 100, 1600, 20}.Reckon())},
		{"a tenth", refused(InclinedMoment{6000, 1000, 1600, 2}.Reckon())},
		{"0.5 to 30 s", refused(RolledMoment{Mass: 6000, Beam: 3400}.Reckon())},
		{"6 to 15 m", refused(EstimatedMoment{5000}.Reckon())},
		{"above 0 N mm", refused(GivenMoment{}.Reckon())},
		{"crew of -1", refused(CrewMoment{-1, 3400, 1100}.Reckon())},
		{"above the highest shroud", refused(LoadCases{RightingMoment: 1e6, Heights: []float64{5000}, Boom: 1000, Head: 6000, ReefCentre: 2000}.Reckon())},
		{"must stand below the head", refused(LoadCases{RightingMoment: 1e6, Heights: []float64{5000}, Boom: 4500, Head: 4000, ReefCentre: 2000}.Reckon())},
		{"no shroud", refused(RequiredShroud{Forestay, 1}.Reckon())},
		{"neither forestay", refused(RequiredStay{Role: CapShroud, RightingMoment: 1, Height: 1}.Reckon())},
		{"backstay's angle", refused(RequiredStay{Role: Backstay, RightingMoment: 1e6, Height: 9000, Fractional: true}.Reckon())},
		{"neither a bobstay", refused(BowspritStay{Role: Forestay, ForestayAngle: 9, Angle: 9}.Reckon())},
		{"righting moment behind", refused(FittedWire{BreakLoad: 1, Required: 1}.Reckon())},
		{"gives no share", refused(PermissibleLoad{"metal standing rigging", "handling", 1000}.Reckon())},
		{"neither sailing", refused(PermissibleLoad{"metal spar", "racing", 1000}.Reckon())},
		{"no member of a rig", refused(PermissibleLoad{"bamboo", "sailing", 1000}.Reckon())},
		{"needs a sail", refused(SharedSideForce{RightingMoment: 1}.Reckon())},
		{"another wire", refused(Wire{"1x19", "316", 8, 4500}.Reckon())},
		{"no wire construction", refused(Wire{"1x18", "316", 8, 0}.Reckon())},
		{"no longer elastic", refused(TensionByStretch{Wire{"1x19", "316", 8, 0}, 2000, 20}.Reckon())},
		{"gauge length", refused(TensionByStretch{Wire{"1x19", "316", 8, 0}, 0, 1}.Reckon())},
		{"1 to 40 parts", refused(Lashing{LineBreak: 1000, End: "splice", Line: 4}.Reckon())},
		{"thinner than itself", refused(Lashing{LineBreak: 1000, Parts: 2, End: "splice", Line: 4, Pin: 3}.Reckon())},
		{"no splice or knot", refused(Lashing{LineBreak: 1000, Parts: 2, End: "granny", Line: 4}.Reckon())},
		{"2 to 24 mm", refused(FibreStay{Kind: "HMPE", Diameter: 40, Parts: 1, End: "splice"}.Reckon())},
		{"no way that a stand-in leads", refused(StandInStrength{}.Reckon())},
		{"stands twice", refused(StandInStrength{Path: MadeFast, Elements: []ElementStrength{{LineElement, 1}, {LineElement, 1}}}.Reckon())},
		{"no element", refused(StandInStrength{Path: MadeFast, Elements: []ElementStrength{{"chewing gum", 1}}}.Reckon())},
		{"0 to 100 m/s", refused(Windage{170, 13000, -1, 0}.Reckon())},
		{"1 to 3 times", refused(Windage{170, 13000, 10, 0.5}.Reckon())},
		{"upside down", refused(MastWindage{[]Aloft{{"radar", 300, 9000, 8000, 1}}}.Reckon())},
		{"nothing stands in the wind", refused(MastWindage{}.Reckon())},
		{"unless wedges bear", refused(Partners{Modulus: 1, Yield: 1, Height: 1}.Reckon())},
		{"does not go into", refused(MastSection{100, 100, 60, 0}.Reckon())},
		{"fall under its own weight", refused(Cantilever{Section: MastSectionResult{AcrossI: 1e6, AcrossW: 1e4}, Modulus: 70000, Yield: 170, Height: 60000, MassPerLength: 5, PerSquare: 1}.Reckon())},
		{"no stays, no mast", refused(MastBending{Supports: []float64{0}, Top: 5000}.Reckon())},
		{"below the highest support", refused(MastBending{Supports: []float64{0, 9000}, Top: 5000}.Reckon())},
		{"do not hold the mast", refused(Sharing{Stays: []ElasticStay{{"a", StayLine{Foot: Point{0, 1450, 0}, Height: 13000}, 1e6, 0}}, Push: 1000, Toward: 90}.Reckon())},
	} {
		if c.err == nil || !strings.Contains(c.err.Error(), c.says) {
			t.Errorf("got %v, want an error that says %q", c.err, c.says)
		}
	}
}
