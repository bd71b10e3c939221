package rule

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/quantity"
)

// boat is one stay on one fitting, all of it known but what a test takes away.
type boat struct {
	stay    stay
	fitting fitting
	landing landing
}

func newBoat() *boat {
	b := &boat{}
	b.stay.ID, b.stay.Name, b.stay.At = "cap-port", "the port cap shroud", at(10, 5)
	b.stay.Role.Give("cap shroud", at(11, 11))
	b.stay.BreakLoad.Give(35500, at(12, 11))
	b.stay.WorkingLoad.Give(14000, at(12, 11))
	b.stay.Toggle.Give(true, at(13, 13))
	b.fitting.ID, b.fitting.Name, b.fitting.At = "plate-port", "the port chainplate", at(20, 5)
	b.fitting.State.Give("new", at(21, 12))
	b.fitting.Sort.Give("chainplate", at(22, 11))
	b.fitting.Metal.Name.Give("316L", at(23, 12))
	b.fitting.Metal.Yield.Give(205, at(23, 12))
	b.fitting.Metal.PREN.Give(22.6, at(23, 12))
	b.fitting.Thickness.Give(8, at(24, 16))
	b.fitting.Width.Give(45, at(25, 12))
	b.fitting.Hidden.Give(false, at(26, 12))
	b.fitting.Titanium.Give(false, at(23, 12))
	b.fitting.Age.Give(5, at(27, 14))
	b.landing.ID, b.landing.Name, b.landing.At = "cap-port@plate-port", "the port cap shroud on its chainplate", at(20, 5)
	b.landing.Hole.Give(16.1, at(30, 17))
	b.landing.End.Give(25, at(31, 14))
	b.landing.PinDiameter.Give(15.9, at(14, 16))
	b.landing.PinMeasured.Give(15.8, at(14, 16))
	b.landing.Angle.Give(1, at(15, 12))
	b.landing.PlateUltimate.Give(80000, at(24, 16))
	return b
}

// subjects seals the boat's facts.
func (b *boat) subjects(t testing.TB, c *fact.Catalogue) []*fact.Subject {
	t.Helper()
	if b.landing.Stay == nil {
		b.landing.Stay, b.landing.Fitting = &b.stay, &b.fitting
	}
	for _, d := range []fact.Described{&b.stay, &b.fitting, &b.landing} {
		if err := c.Seal(d); err != nil {
			t.Fatal(err)
		}
	}
	return []*fact.Subject{b.stay.Base(), b.fitting.Base(), b.landing.Base()}
}

func judge(t testing.TB, b *boat, o JudgeOptions) Judged {
	t.Helper()
	c := catalogue(t)
	return trial(t, c).Judge(b.subjects(t, c), o)
}

// of finds the finding of one rule.
func (j Judged) of(t testing.TB, rule string) finding.Finding {
	t.Helper()
	for _, f := range j.Findings {
		if f.Rule == rule {
			return f
		}
	}
	t.Fatalf("no finding of %s among %d", rule, len(j.Findings))
	return finding.Finding{}
}

func TestSoundBoatHasNoFindings(t *testing.T) {
	j := judge(t, newBoat(), JudgeOptions{})
	if len(j.Findings) > 0 || len(j.Missing) > 0 {
		t.Errorf("%+v", j.Findings)
	}
	if c := j.Counts; c.Holds != 12 || c.DoesNotApply != 1 || c.Fails != 0 || c.CannotTell != 0 {
		t.Errorf("%+v", c)
	}
}

func TestFailureIsExplained(t *testing.T) {
	b := newBoat()
	b.landing.PlateUltimate.Give(40000, at(24, 16))
	j := judge(t, b, JudgeOptions{})
	got, err := json.MarshalIndent(j.of(t, "plate-outlasts-wire"), "", " ")
	if err != nil {
		t.Fatal(err)
	}
	const want = `{
 "rule": "plate-outlasts-wire",
 "pack": "trial",
 "outcome": "fails",
 "grade": "mend",
 "holds_up": "",
 "subject": "landing:cap-port@plate-port",
 "at": {"file": "plan.yaml", "line": 24, "column": 16, "pointer": ""},
 "related": [
  {"file": "plan.yaml", "line": 22, "column": 11, "pointer": ""},
  {"file": "plan.yaml", "line": 12, "column": 11, "pointer": ""},
  {"file": "plan.yaml", "line": 21, "column": 12, "pointer": ""}
 ],
 "have": {"value": 40000, "unit": "N"},
 "need": {"value": 53250, "unit": "N"},
 "ratio": 0.7511737089201878,
 "unknown": [],
 "shown": [
  {"expression": "plate_ultimate", "amount": {"value": 40000, "unit": "N"}},
  {"expression": "1.5 * stay.break_load", "amount": {"value": 53250, "unit": "N"}},
  {"expression": "fitting.kind", "word": "chainplate"},
  {"expression": "fitting.state", "word": "new"},
  {"expression": "stay.break_load", "amount": {"value": 35500, "unit": "N"}}
 ],
 "message": "The port chainplate breaks at 40 kN, 0.75 times what it needs; the wire it holds breaks at 35.5 kN",
 "because": "The plate is hidden and the wire is seen, so the wire must be the one to go.",
 "decides": ["rigger", "naval architect"],
 "known": [{"source": "the engine's tests", "edition": "2026", "clause": "1", "as": "judgement"}],
 "accepted": null,
 "fingerprint": "x"
}`
	var a, w any
	if err := json.Unmarshal([]byte(want), &w); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(got, &a); err != nil {
		t.Fatal(err)
	}
	// printf 'plate-outlasts-wire\0landing:cap-port@plate-port' | sha256sum
	w.(map[string]any)["fingerprint"] = "97d118a729da4bc2"
	wanted, _ := json.MarshalIndent(w, "", " ")
	found, _ := json.MarshalIndent(a, "", " ")
	if string(wanted) != string(found) {
		t.Errorf("got\n%s\nwant\n%s", found, wanted)
	}
}

func TestStopSaysWhatItHoldsUp(t *testing.T) {
	b := newBoat()
	b.landing.PlateUltimate.Give(30000, at(24, 16))
	f := judge(t, b, JudgeOptions{}).of(t, "plate-outlasts-wire")
	if f.Grade != finding.Stop || f.HoldsUp != "cutting" || f.Need.Value != 35500 {
		t.Errorf("%+v", f)
	}
}

func TestUnknownIsNamedWithItsPlace(t *testing.T) {
	b := newBoat()
	b.fitting.Thickness = fact.Number{}
	b.fitting.Thickness.WouldStand(finding.Place{File: "plan.yaml", Line: 20, Column: 5, Pointer: "/fittings/0/thickness"})
	b.landing.PlateUltimate = fact.Number{}
	b.landing.PlateUltimate.Derive([]*fact.Value{&b.fitting.Thickness.Value, &b.landing.Hole.Value},
		func() (float64, error) { return 1, nil }, nil)
	j := judge(t, b, JudgeOptions{})
	if j.Counts.CannotTell != 5 || j.Counts.Holds != 7 {
		t.Errorf("%+v", j.Counts)
	}
	f := j.of(t, "plate-outlasts-wire")
	if f.Outcome != finding.CannotTell || f.Grade != finding.Mend || f.HoldsUp != "" || f.At.Pointer != "/fittings/0/thickness" {
		t.Errorf("%+v", f)
	}
	if strings.Join(f.Unknown, ", ") != "fitting.thickness" {
		t.Errorf("unknown: %q", f.Unknown)
	}
	const want = `not known: thickness of the plate (the port chainplate); it would settle "The plate is stronger than the wire it holds"`
	if f.Message != want {
		t.Errorf("says %s", f.Message)
	}
	if f.Have != nil || f.Ratio != nil || f.Need == nil {
		t.Errorf("have %v, need %v, ratio %v", f.Have, f.Need, f.Ratio)
	}
	if own := j.of(t, "plate-thick-enough"); own.Message != `not known: thickness of the plate; it would settle "The plate is thick enough to bear"` {
		t.Errorf("says %s", own.Message)
	}
	list := Measures(j.Missing)
	if len(list) != 1 {
		t.Fatalf("%+v", list)
	}
	m := list[0]
	settles := "plate-not-slender, plate-outlasts-wire, plate-stays-below-yield, plate-thick-enough, section-bears-bending"
	if m.Subject != "fitting:plate-port" || m.Fact != "thickness" || m.Tool != "calipers" || m.Where != "beside the pin hole" ||
		m.At.Pointer != "/fittings/0/thickness" || strings.Join(m.Settles, ", ") != settles {
		t.Errorf("%+v", m)
	}
}

func TestRefusalIsAReasonAndNoReading(t *testing.T) {
	b := newBoat()
	b.stay.BreakLoad = fact.Number{}
	b.stay.BreakLoad.Refuse("the wire table has no 7.3 mm")
	j := judge(t, b, JudgeOptions{})
	f := j.of(t, "plate-outlasts-wire")
	if f.Outcome != finding.CannotTell || strings.Join(f.Unknown, ", ") != "stay.break_load" {
		t.Errorf("%+v", f)
	}
	if want := `not known: load at which the wire breaks (the port cap shroud), because the wire table has no 7.3 mm; it would settle`; !strings.HasPrefix(f.Message, want) {
		t.Errorf("says %s", f.Message)
	}
	if len(j.Missing) != 0 {
		t.Errorf("%+v", Measures(j.Missing))
	}
}

func TestAbsentNeighbour(t *testing.T) {
	b := newBoat()
	b.landing.Fitting = &b.fitting // and no stay
	b.landing.Stay = nil
	c := catalogue(t)
	for _, d := range []fact.Described{&b.fitting, &b.landing} {
		if err := c.Seal(d); err != nil {
			t.Fatal(err)
		}
	}
	j := trial(t, c).Judge([]*fact.Subject{b.landing.Base()}, JudgeOptions{})
	f := j.of(t, "plate-outlasts-wire")
	if f.Outcome != finding.CannotTell || strings.Join(f.Unknown, ", ") != "stay" || f.At != at(20, 5) {
		t.Errorf("%+v", f)
	}
	if f.Message != `there is no stay; so it can't be told whether "The plate is stronger than the wire it holds"` {
		t.Errorf("says %s", f.Message)
	}
}

// TestRootsElsewhere: a value behind an unknown fact may be one that this kind's
// rules don't read at all, or one that nobody can measure.
func TestRootsElsewhere(t *testing.T) {
	b := newBoat()
	b.stay.Diameter = fact.Number{}
	b.stay.Diameter.WouldStand(at(12, 11))
	b.fitting.Age = fact.Number{}
	b.fitting.Age.Derive([]*fact.Value{&b.stay.Diameter.Value, &b.fitting.Look.Value}, func() (float64, error) { return 1, nil }, nil)
	var loose fact.Number
	loose.Refuse("nobody knows")
	b.landing.Angle = fact.Number{}
	b.landing.Angle.Derive([]*fact.Value{&loose.Value}, func() (float64, error) { return 1, nil }, nil)
	j := judge(t, b, JudgeOptions{})
	age := j.of(t, "age-of-part")
	if got := strings.Join(age.Unknown, ", "); got != "stay:cap-port diameter, look_planned" {
		t.Errorf("unknown: %s", got)
	}
	if age.Message != `not known: diameter of the wire (the port cap shroud) and a next look is planned; they would settle "The part is younger than its life"` || age.At != at(12, 11) {
		t.Errorf("%v says %s", age.At, age.Message)
	}
	angle := j.of(t, "wire-in-plane")
	if strings.Join(angle.Unknown, ", ") != "angle" || angle.Message != `not known: lean of the wire, because nobody knows; it would settle "The wire pulls in the plate's plane"` {
		t.Errorf("%q says %s", angle.Unknown, angle.Message)
	}
	list := Measures(j.Missing)
	if len(list) != 2 || list[0].Subject != "fitting:plate-port" || list[0].Fact != "look_planned" || list[1].Subject != "stay:cap-port" || list[1].Tool != "calipers" {
		t.Errorf("%+v", list)
	}
}

func TestSentencesOnWhatIsNotThere(t *testing.T) {
	const rule = `id: r
title: T
on: landing
have: hole
bands:
  - at_least: 1 mm
    else: mend
  - true_that: end > hole
    else: watch
says: "{landing}: {stay}, {stay.role}, {fitting.hidden}, {pin_diameter}, {have}"
because: b
known: [{ source: s, as: memory }]
decides: [rigger]
examples: [{ outcome: holds }, { outcome: fails }, { outcome: cannot tell }]
`
	c := catalogue(t)
	p, problems := Load(packOf(rule), "p", "my", c, LoadOptions{})
	if p == nil {
		t.Fatal(lines(problems))
	}
	b := newBoat()
	b.landing.Fitting = &b.fitting
	b.landing.PinDiameter = fact.Number{}
	b.landing.End.Give(2, at(31, 14))
	for _, d := range []fact.Described{&b.fitting, &b.landing} {
		if err := c.Seal(d); err != nil {
			t.Fatal(err)
		}
	}
	f := p.Judge([]*fact.Subject{b.landing.Base()}, JudgeOptions{}).of(t, "r")
	const want = "The port cap shroud on its chainplate: (no stay), unknown, no, unknown, 16.1 mm"
	if f.Message != want || f.Outcome != finding.Fails || f.Need != nil || f.At != at(30, 17) {
		t.Errorf("%+v", f)
	}
}

func TestDivisionByZeroCannotBeTold(t *testing.T) {
	b := newBoat()
	b.landing.Hole.Give(0, at(30, 17))
	f := judge(t, b, JudgeOptions{}).of(t, "end-of-pin-hole")
	if f.Outcome != finding.CannotTell || f.Grade != finding.Watch || len(f.Unknown) != 0 || f.Have != nil {
		t.Errorf("%+v", f)
	}
	if want := `what it compares gives no finite number`; !strings.HasPrefix(f.Message, want) {
		t.Errorf("says %s", f.Message)
	}
}

func TestAllAsksForTheRest(t *testing.T) {
	j := judge(t, newBoat(), JudgeOptions{All: true})
	if len(j.Findings) != 13 {
		t.Errorf("%d findings", len(j.Findings))
	}
	if f := j.of(t, "metal-for-a-hidden-place"); f.Outcome != finding.DoesNotApply || f.Grade != "" || f.Message != "hidden is not so" || f.At != at(23, 12) {
		t.Errorf("%+v", f)
	}
	f := j.of(t, "plate-outlasts-wire")
	if f.Outcome != finding.Holds || f.Grade != "" || f.HoldsUp != "" || f.Need.Value != 53250 || math.Abs(*f.Ratio-80000./53250) > 1e-12 {
		t.Errorf("%+v", f)
	}
	if f := j.of(t, "plate-thick-enough"); math.Abs(f.Need.Value-4.7625) > 1e-9 || f.Need.Unit != "mm" {
		t.Errorf("%+v", f.Need)
	}
}

func TestUnitsOfTheReader(t *testing.T) {
	b := newBoat()
	b.fitting.Thickness.Give(4, at(24, 16))
	metric := judge(t, b, JudgeOptions{}).of(t, "plate-thick-enough").Message
	us := judge(t, b, JudgeOptions{System: quantity.US}).of(t, "plate-thick-enough").Message
	if !strings.Contains(metric, "4 mm") || strings.Contains(us, "mm") || !strings.Contains(us, "in") {
		t.Errorf("%s\n%s", metric, us)
	}
}

// TestFactsOfAnotherCatalogue: the same names in another order would be read
// wrong, so nothing is told from them.
func TestFactsOfAnotherCatalogue(t *testing.T) {
	p := trial(t, catalogue(t))
	j := p.Judge(newBoat().subjects(t, catalogue(t)), JudgeOptions{})
	if j.Counts.CannotTell != 13 || j.Counts.Holds != 0 {
		t.Errorf("%+v", j.Counts)
	}
	if f := j.of(t, "pin-fits"); f.Outcome != finding.CannotTell || !strings.Contains(f.Message, "could not be evaluated") {
		t.Errorf("%+v", f)
	}
}

func TestARuleThatBreaksDownDoesNotHold(t *testing.T) {
	p := trial(t, catalogue(t))
	for _, r := range p.Rules {
		if v := r.Evaluate(nil); v.Outcome != finding.CannotTell || v.Grade != r.IfUnknown {
			t.Errorf("%s on no facts at all: %+v", r.ID, v)
		}
	}
}

func TestGoingDownTheList(t *testing.T) {
	const rule = `id: r
title: T
on: landing
have: hole
bands:
  - at_least: end
    applies_if: fitting.hidden
    else: stop
  - at_most: pin_diameter
    else: mend
  - true_that: stay.toggle
    else: mend
  - above: pin_measured
    applies_if: fitting.titanium
    else: watch
holds_up: sailing
says: s
because: b
known: [{ source: s, as: memory }]
decides: [rigger]
examples: [{ outcome: holds }, { outcome: fails }, { outcome: cannot tell }]
`
	p, problems := loadAll(t, packOf(rule))
	if p == nil {
		t.Fatal(lines(problems))
	}
	const u = 99 // stands for unknown
	tests := []struct {
		name                                   string
		hidden, end, pin, toggle, ti, measured float64
		outcome                                finding.Outcome
		grade                                  finding.Grade
		need                                   float64
	}{
		{"all met", 1, 3, 5, 1, 1, 2, finding.Holds, "", 2},
		{"ties hold below and fail above", 1, 4, 4, 1, 1, 4, finding.Fails, finding.Watch, 4},
		{"first fails", 1, 5, 3, 0, 1, 5, finding.Fails, finding.Stop, 5},
		{"first passed over, second fails", 0, 5, 3, 0, 1, 5, finding.Fails, finding.Mend, 3},
		{"a condition fails", 0, 5, 5, 0, 1, 5, finding.Fails, finding.Mend, u},
		{"last passed over", 0, 5, 5, 1, 0, 5, finding.Holds, "", 5},
		{"first unknown hides a later failure", 1, u, 3, 1, 1, 5, finding.CannotTell, finding.Mend, u},
		{"first may not apply and would fail", u, 5, 5, 1, 1, 3, finding.CannotTell, finding.Mend, u},
		{"first may not apply and is met", u, 3, 5, 1, 1, 3, finding.CannotTell, finding.Mend, u},
		{"worse has failed before the unknown", 1, 5, u, u, u, u, finding.Fails, finding.Stop, 5},
		{"condition unknown", 1, 3, 5, u, 1, 5, finding.CannotTell, finding.Mend, u},
	}
	for _, test := range tests {
		given := map[string]float64{"hole": 4}
		for name, v := range map[string]float64{"fitting.hidden": test.hidden, "end": test.end, "pin_diameter": test.pin,
			"stay.toggle": test.toggle, "fitting.titanium": test.ti, "pin_measured": test.measured} {
			if v != u {
				given[name] = v
			}
		}
		v := p.Rules[0].Evaluate(row(t, p.Rules[0].Kind, given))
		if v.Outcome != test.outcome || v.Grade != test.grade || v.Need != test.need && !(math.IsNaN(v.Need) && test.need == u) {
			t.Errorf("%s: %s %s, need %v", test.name, v.Outcome, v.Grade, v.Need)
		}
	}
	var only []band
	for _, b := range p.Rules[0].bands {
		if b.appliesIf != nil {
			only = append(only, b)
		}
	}
	p.Rules[0].bands = only
	v := p.Rules[0].Evaluate(row(t, p.Rules[0].Kind, map[string]float64{"hole": 4, "fitting.hidden": 0, "fitting.titanium": 0}))
	if v.Outcome != finding.DoesNotApply {
		t.Errorf("where no limit counts the rule %s", v.Outcome)
	}
}

func TestJudgingInSeveralGoroutines(t *testing.T) {
	c := catalogue(t)
	p, subjects := trial(t, c), newBoat().subjects(t, c)
	done := make(chan Judged)
	for range 4 {
		go func() { done <- p.Judge(subjects, JudgeOptions{All: true}) }()
	}
	for range 4 {
		if j := <-done; j.Counts.Holds != 12 {
			t.Errorf("%+v", j.Counts)
		}
	}
}

func TestRatio(t *testing.T) {
	tests := []struct {
		verb       Verb
		have, need float64
		want       float64
		ok         bool
	}{
		{AtLeast, 3, 4, 0.75, true}, {Above, 3, 4, 0.75, true}, {AtMost, 3, 4, 4. / 3, true}, {Below, 5, 4, 0.8, true},
		{AtLeast, 3, 0, 0, false}, {AtLeast, 3, -4, 0, false}, {AtMost, 3, -4, 0, false}, {AtMost, 0, 4, 0, false}, {AtMost, -3, 4, 0, false},
		{AtLeast, math.NaN(), 4, 0, false}, {AtLeast, 3, math.NaN(), 0, false}, {AtLeast, -3, 4, -0.75, true},
	}
	for _, test := range tests {
		r := &Rule{
			have:  &measured{numeric: constant(test.have, bare)},
			bands: []band{newBand(test.verb, &measured{numeric: constant(test.need, bare)}, nil, nil, finding.Watch)},
		}
		got := r.Evaluate(nil).Ratio
		if (got != nil) != test.ok || test.ok && *got != test.want {
			t.Errorf("%s: %v of %v is %v", test.verb, test.have, test.need, got)
		}
	}
}

func TestPrintedRatioDoesNotContradict(t *testing.T) {
	for ratio, want := range map[float64]string{
		0.5: "0.50", 0.996: "0.996", 0.99951: "0.9995", 0.999999: "0.999999", 1: "1.00", 1.004: "1.004", 1.5: "1.50", 12.345: "12.35", -0.25: "-0.25",
		math.Nextafter(1, 0): "just under 1", math.Nextafter(1, 2): "just over 1",
	} {
		if got := printRatio(ratio); got != want {
			t.Errorf("%v prints %s, want %s", ratio, got, want)
		}
	}
}

func TestNearMissIsPrintedWithItsDigits(t *testing.T) {
	b := newBoat()
	b.fitting.Thickness.Give(25.4*3/16-1e-7, at(24, 16))
	f := judge(t, b, JudgeOptions{}).of(t, "plate-thick-enough")
	if f.Message != "The port chainplate is 4.7624999 mm thick, 4.7625 mm needed" {
		t.Errorf("says %s", f.Message)
	}
}

func TestFingerprintIsOfRuleAndSubject(t *testing.T) {
	// printf 'a\0b' | sha256sum
	if got := Fingerprint("a", "b"); got != "59b271ae1bbcb1d3" {
		t.Errorf("%s", got)
	}
}
