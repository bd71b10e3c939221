package fleet

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"strings"
	"testing"
	"unsafe"

	"chainwale/engine/finding"
)

func found(rule string, o finding.Outcome, g finding.Grade, taken bool) finding.Finding {
	f := finding.Finding{Rule: rule, Outcome: o, Grade: g}
	if taken {
		f.Accepted = &finding.Acceptance{Who: "the owner"}
	}
	return f
}

func report(plan, boat string, findings ...finding.Finding) finding.Report {
	r := finding.Report{Plan: finding.PlanRead{File: plan}, Boat: boat, Findings: findings}
	for _, f := range findings {
		var t Tally
		if f.Outcome == finding.Fails || f.Outcome == finding.CannotTell {
			t.add(&f)
		}
		c := &r.Counts
		c.Fails, c.CannotTell, c.Accepted, c.Stop, c.Mend, c.Watch = c.Fails+t.Fails, c.CannotTell+t.CannotTell, c.Accepted+t.Accepted, c.Stop+t.Stop, c.Mend+t.Mend, c.Watch+t.Watch
	}
	return r
}

// TestSummary adds up a small fleet and holds every sum against one made by hand.
func TestSummary(t *testing.T) {
	a := NewAdder(2)
	a.Add(report("a.yaml", "Ada", found("plate", finding.Fails, finding.Stop, false), found("plate", finding.Fails, finding.Mend, false), found("pin", finding.CannotTell, finding.Watch, false)), "Sandling 33", 1)
	a.Add(report("b.yaml", "Bea", found("plate", finding.Fails, finding.Stop, true), found("pin", finding.Holds, "", false)), "Sandling 33", 0)
	a.Add(report("c.yaml", "Cid", found("pin", finding.Fails, finding.Mend, false)), "", 1)
	broken := report("d.yaml", "")
	broken.Problems = make([]finding.Problem, 9)
	broken.Problems[0] = finding.Problem{At: finding.Place{File: "d.yaml", Line: 2, Column: 3}, Message: "nam is no key here"}
	if l := a.Add(broken, "", 2); len(l.Problems) != 9 {
		t.Errorf("the boat's own line has %d problems", len(l.Problems))
	}
	s := a.Summary()
	if s.Status != 2 || s.Boats != 4 || s.Statuses != [4]int{1, 2, 1, 0} || s.Total != (Tally{Boats: 4, Fails: 4, CannotTell: 1, Accepted: 1, Stop: 1, Mend: 2, Watch: 1}) {
		t.Errorf("%+v", s)
	}
	classes := []Named{
		{"Sandling 33", [4]int{1, 1}, Tally{Boats: 2, Fails: 3, CannotTell: 1, Accepted: 1, Stop: 1, Mend: 1, Watch: 1}},
		{NoClass, [4]int{0, 1, 1}, Tally{Boats: 2, Fails: 1, Mend: 1}},
	}
	rules := []Named{
		{"plate", [4]int{}, Tally{Boats: 2, Fails: 3, Accepted: 1, Stop: 1, Mend: 1}},
		{"pin", [4]int{}, Tally{Boats: 2, Fails: 1, CannotTell: 1, Mend: 1, Watch: 1}},
	}
	if !reflect.DeepEqual(s.Classes, classes) || !reflect.DeepEqual(s.Rules, rules) {
		t.Errorf("%+v\n%+v", s.Classes, s.Rules)
	}
	if len(s.Worst) != 2 || s.Worst[0].Plan != "d.yaml" || s.Worst[1].Plan != "a.yaml" || len(s.Worst[0].Problems) != mostProblems {
		t.Errorf("%+v", s.Worst)
	}
	var out bytes.Buffer
	if err := s.WriteText(&out); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"4 boats: 1 with nothing that refuses them, 2 refused, 1 not judged, 0 with a fault",
		"Sandling 33: 2 boats; 1 stop, 1 mend, 1 watch, 1 accepted, 1 cannot tell\n",
		"  d.yaml: not judged, d.yaml:2:3: nam is no key here\n",
		"  a.yaml: Ada (Sandling 33), 1 stop, 1 mend, 1 watch, 0 accepted, 1 cannot tell\n",
	} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("%q is not in\n%s", want, out.String())
		}
	}
}

// TestSummaryIsBounded holds that what is kept does not grow with the fleet: names
// beyond a number are summed together, and no report is kept.
func TestSummaryIsBounded(t *testing.T) {
	a := NewAdder(10)
	const boats = 3 * mostNames
	for i := range boats {
		a.Add(report(fmt.Sprintf("%05d.yaml", i), "x", found(fmt.Sprintf("rule-%d", i%(mostNames+500)), finding.Fails, finding.Mend, false)), fmt.Sprintf("class %d", i), 1)
	}
	s := a.Summary()
	if len(s.Classes) != mostNames+1 || s.OtherClasses != mostNames || len(s.Rules) != mostNames+1 || s.OtherRules != 500 || len(s.Worst) != 10 {
		t.Errorf("%d classes and %d others, %d rules and %d others, %d boats", len(s.Classes), s.OtherClasses, len(s.Rules), s.OtherRules, len(s.Worst))
	}
	sum := 0
	for _, c := range s.Classes {
		sum += c.Boats
	}
	if last := s.Classes[mostNames]; sum != boats || last.Name != OtherName || last.Boats != boats-mostNames {
		t.Errorf("%d boats in all classes, %+v", sum, last)
	}
}

// TestEmptyFleet holds that no boat is no wonder, and that lists are never absent.
func TestEmptyFleet(t *testing.T) {
	src, err := json.Marshal(NewAdder(5).Summary())
	if err != nil || bytes.Contains(src, []byte("null")) {
		t.Errorf("%v: %s", err, src)
	}
	line, err := json.Marshal(NewAdder(0).Add(finding.Report{}, "", 0))
	if err != nil || bytes.Contains(line, []byte("null")) {
		t.Errorf("%v: %s", err, line)
	}
}

// TestNamesStandAlone holds that a name that is kept is no piece of the plan's text it
// was read from: ten thousand boats would keep all of their plans by their classes.
func TestNamesStandAlone(t *testing.T) {
	text := "class: Sandling 33" + strings.Repeat(" ", 20_000)
	class := text[7:18]
	a := NewAdder(2)
	a.Add(report("a.yaml", "Ada"), class, 0)
	for name, tally := range a.classes.of {
		if name != class || unsafe.StringData(name) == unsafe.StringData(class) || unsafe.StringData(tally.Name) == unsafe.StringData(class) {
			t.Errorf("%q is kept as a piece of %d bytes", name, len(text))
		}
	}
}
