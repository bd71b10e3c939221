package accept

import (
	"reflect"
	"strings"
	"testing"
	"time"

	"chainwale/engine/finding"
)

func date(text string) time.Time {
	t, err := time.Parse(time.DateOnly, text)
	if err != nil {
		panic(err)
	}
	return t
}

const boat = "boat.yaml"

// known is what there is to accept in these tests: a plate on each side, and one aft.
func known() Known {
	return Known{
		Rules: []string{"plate-outlasts-wire", "pin-fits"},
		Subjects: []Subject{
			{"landing:cap-shroud-port", "cap-plate-port"}, {"landing:cap-shroud-starboard", "cap-plate-starboard"},
			{"bolt_hole:cap-shroud-port/1", "cap-plate-port"}, {"bolt_hole:cap-shroud-port/2", "cap-plate-port"},
			{"stay:cap-shroud-port", "cap-shroud-port"}, {"fitting:cap-plate-port", "cap-plate-port"}, {"fitting:cap-plate-starboard", "cap-plate-starboard"},
			{"landing:backstay", "backstay-plate"}, {"fitting:backstay-plate", "backstay-plate"},
			{"record:winter/cap-plate-port", "cap-plate-port"},
		},
		Sided: map[string][]string{
			"cap-shroud": {"cap-shroud-port", "cap-shroud-starboard"}, "cap-plate": {"cap-plate-port", "cap-plate-starboard"},
			"backstay": {"backstay"}, "backstay-plate": {"backstay-plate"},
		},
	}
}

func found(rule, subject, part string, o finding.Outcome, g finding.Grade) finding.Finding {
	return finding.Finding{Rule: rule, Subject: subject, Part: part, Pack: "strength", Outcome: o, Grade: g, Message: "It is so.", Fingerprint: fingerprint(rule, subject)}
}

// report counts what it holds as a check does.
func report(findings ...finding.Finding) finding.Report {
	r := finding.Report{Plan: finding.PlanRead{File: boat}, Boat: "Quillfish", RefuseAt: finding.Mend, Packs: []finding.PackUsed{{ID: "strength"}}, Findings: findings}
	for _, f := range findings {
		switch f.Outcome {
		case finding.Fails:
			r.Counts.Fails++
		case finding.CannotTell:
			r.Counts.CannotTell++
		default:
			continue
		}
		switch f.Grade {
		case finding.Stop:
			r.Counts.Stop++
		case finding.Mend:
			r.Counts.Mend++
		case finding.Watch:
			r.Counts.Watch++
		}
	}
	return r
}

// taken is an acceptance at a line of the boat's plan.
func taken(line int, rule, subject string, g finding.Grade, until string) Accepted {
	at := func(column int) finding.Place { return finding.Place{File: boat, Line: line, Column: column} }
	return Accepted{Rule: rule, Subject: subject, Grade: g, Who: "the owner", Why: "new ones are ordered", Until: date(until), At: at(3), RuleAt: at(11), SubjectAt: at(22), UntilAt: at(33)}
}

const plate = "plate-outlasts-wire"

func portPlate(o finding.Outcome, g finding.Grade) finding.Finding {
	return found(plate, "landing:cap-shroud-port", "cap-plate-port", o, g)
}

// TestCovers holds what an acceptance takes on: its rule, subject and grade, through
// its last day, and nothing that can't be told.
func TestCovers(t *testing.T) {
	for name, test := range map[string]struct {
		found  finding.Finding
		taken  Accepted
		covers bool
		// rule is the one that finds fault with the acceptance itself, at a column.
		rule   string
		column int
	}{
		"its grade":              {portPlate(finding.Fails, finding.Mend), taken(1, plate, "landing:cap-shroud-port", finding.Mend, "2026-11-25"), true, "", 0},
		"a milder grade":         {portPlate(finding.Fails, finding.Watch), taken(1, plate, "landing:cap-shroud-port", finding.Mend, "2026-11-25"), true, "", 0},
		"a worse grade":          {portPlate(finding.Fails, finding.Stop), taken(1, plate, "landing:cap-shroud-port", finding.Mend, "2026-11-25"), false, FallsShort, 3},
		"what can't be told":     {portPlate(finding.CannotTell, finding.Watch), taken(1, plate, "landing:cap-shroud-port", finding.Stop, "2026-11-25"), false, FallsShort, 3},
		"the day after":          {portPlate(finding.Fails, finding.Mend), taken(1, plate, "landing:cap-shroud-port", finding.Mend, "2026-11-24"), false, Lapsed, 33},
		"another rule":           {portPlate(finding.Fails, finding.Mend), taken(1, "pin-fits", "landing:cap-shroud-port", finding.Mend, "2027-01-01"), false, MatchesNothing, 3},
		"an unknown rule":        {portPlate(finding.Fails, finding.Mend), taken(1, "plate-outlast-wire", "", finding.Mend, "2027-01-01"), false, MatchesNothing, 11},
		"another subject":        {portPlate(finding.Fails, finding.Mend), taken(1, plate, "landing:backstay", finding.Mend, "2027-01-01"), false, MatchesNothing, 3},
		"an unknown subject":     {portPlate(finding.Fails, finding.Mend), taken(1, plate, "landing:cap-shroud-prot", finding.Mend, "2027-01-01"), false, MatchesNothing, 22},
		"all subjects":           {portPlate(finding.Fails, finding.Mend), taken(1, plate, "", finding.Mend, "2027-01-01"), true, "", 0},
		"the fitting":            {portPlate(finding.Fails, finding.Mend), taken(1, plate, "cap-plate-port", finding.Mend, "2027-01-01"), true, "", 0},
		"the fittings of both":   {portPlate(finding.Fails, finding.Mend), taken(1, plate, "cap-plate", finding.Mend, "2027-01-01"), true, "", 0},
		"the stay":               {portPlate(finding.Fails, finding.Mend), taken(1, plate, "cap-shroud-port", finding.Mend, "2027-01-01"), true, "", 0},
		"the stays of both":      {portPlate(finding.Fails, finding.Mend), taken(1, plate, "landing:cap-shroud", finding.Mend, "2027-01-01"), true, "", 0},
		"the other side":         {portPlate(finding.Fails, finding.Mend), taken(1, plate, "cap-plate-starboard", finding.Mend, "2027-01-01"), false, MatchesNothing, 3},
		"another kind":           {portPlate(finding.Fails, finding.Mend), taken(1, plate, "stay:cap-shroud-port", finding.Mend, "2027-01-01"), false, MatchesNothing, 3},
		"the stay's bolt holes":  {found(plate, "bolt_hole:cap-shroud-port/2", "cap-plate-port", finding.Fails, finding.Mend), taken(1, plate, "cap-shroud-port", finding.Mend, "2027-01-01"), true, "", 0},
		"one bolt hole":          {found(plate, "bolt_hole:cap-shroud-port/2", "cap-plate-port", finding.Fails, finding.Mend), taken(1, plate, "bolt_hole:cap-shroud/2", finding.Mend, "2027-01-01"), true, "", 0},
		"another bolt hole":      {found(plate, "bolt_hole:cap-shroud-port/2", "cap-plate-port", finding.Fails, finding.Mend), taken(1, plate, "bolt_hole:cap-shroud-port/1", finding.Mend, "2027-01-01"), false, MatchesNothing, 3},
		"what holds":             {portPlate(finding.Holds, ""), taken(1, plate, "landing:cap-shroud-port", finding.Stop, "2027-01-01"), false, MatchesNothing, 3},
		"an end of a name alone": {portPlate(finding.Fails, finding.Mend), taken(1, plate, "port", finding.Mend, "2027-01-01"), false, MatchesNothing, 22},
	} {
		r := report(test.found)
		before := r.Refused()
		Apply(&r, []Accepted{test.taken}, date("2026-11-25"), known())
		f := r.Findings[at(r, test.found.Subject)]
		if (f.Accepted != nil) != test.covers {
			t.Errorf("%s: accepted %v", name, f.Accepted)
		}
		if r.Refused() != (before && !test.covers) {
			t.Errorf("%s: refused %v", name, r.Refused())
		}
		expectRule(t, name, r, test.rule, test.column)
		expectCounts(t, name, r)
	}
}

// at is the number of the finding of a subject.
func at(r finding.Report, subject string) int {
	for i, f := range r.Findings {
		if f.Subject == subject {
			return i
		}
	}
	return -1
}

// expectRule holds that exactly that one rule finds fault with the acceptances, as a
// watch, at that column; "" for none.
func expectRule(t *testing.T, name string, r finding.Report, rule string, column int) {
	t.Helper()
	for _, f := range r.Findings {
		if f.Pack != Pack {
			continue
		}
		if f.Rule != rule || f.Grade != finding.Watch || f.At.Column != column || f.At.File != boat {
			t.Errorf("%s: %s %s at %v, wanted %q at column %d: %s", name, f.Rule, f.Grade, f.At, rule, column, f.Message)
		}
		rule = ""
	}
	if rule != "" {
		t.Errorf("%s: %s does not find fault with it", name, rule)
	}
}

// expectCounts holds that the counts are those of the findings, and that the grades
// leave out what is accepted.
func expectCounts(t *testing.T, name string, r finding.Report) {
	t.Helper()
	var c finding.Counts
	for _, f := range r.Findings {
		if !told(f) {
			continue
		}
		if f.Outcome == finding.Fails {
			c.Fails++
		} else {
			c.CannotTell++
		}
		switch {
		case f.Accepted != nil:
			c.Accepted++
		case f.Grade == finding.Stop:
			c.Stop++
		case f.Grade == finding.Mend:
			c.Mend++
		default:
			c.Watch++
		}
	}
	if r.Counts != c {
		t.Errorf("%s: counted %+v, there are %+v", name, r.Counts, c)
	}
}

// TestComesBack holds that a finding that got worse or can't be told any more says
// itself that somebody had accepted less.
func TestComesBack(t *testing.T) {
	for _, test := range []struct {
		found finding.Finding
		says  string
	}{
		{portPlate(finding.Fails, finding.Stop), "It is so. The owner accepted this as mend until 2027-01-01; that does not cover it as stop."},
		{portPlate(finding.CannotTell, finding.Mend), "It is so. The owner accepted this as mend until 2027-01-01; that does not cover what can't be told."},
	} {
		r := report(test.found)
		lapsed := taken(1, plate, "cap-plate-port", finding.Stop, "2026-01-01")
		lapsed.Who = "somebody before"
		Apply(&r, []Accepted{lapsed, taken(2, plate, "cap-plate-port", finding.Mend, "2027-01-01")}, date("2026-11-25"), known())
		if r.Findings[0].Message != test.says || !r.Refused() {
			t.Errorf("refused %v: %s", r.Refused(), r.Findings[0].Message)
		}
	}
}

// TestSentences holds what is said of acceptances that do nothing.
func TestSentences(t *testing.T) {
	mend, stop := portPlate(finding.Fails, finding.Mend), portPlate(finding.Fails, finding.Stop)
	const of = "The acceptance of plate-outlasts-wire of cap-plate-port as mend by the owner "
	template := taken(4, plate, "cap-plate-port", finding.Mend, "2027-01-01")
	template.At.File = "class.yaml"
	for _, test := range []struct {
		found finding.Finding
		taken []Accepted
		says  []string
	}{
		{mend, []Accepted{taken(1, plate, "cap-plate-port", finding.Mend, "2026-01-01")}, []string{of + "ended with 2026-01-01; what it covered counts again."}},
		{portPlate(finding.Holds, ""), []Accepted{taken(1, plate, "cap-plate-port", finding.Mend, "2026-01-01")}, []string{of + "ended with 2026-01-01; there is nothing left to accept, so it can go."}},
		{mend, []Accepted{taken(1, plate, "cap-plate-port", finding.Mend, "2026-01-01"), taken(2, plate, "cap-plate-port", finding.Mend, "2027-01-01")}, []string{of + "ended with 2026-01-01; the one in line 2 has taken its place, so it can go."}},
		{mend, []Accepted{taken(1, plate, "cap-plate", finding.Stop, "2027-01-01"), taken(2, plate, "cap-plate-port", finding.Mend, "2027-01-01")}, []string{of + "adds nothing: what it names is accepted already in line 1."}},
		{stop, []Accepted{taken(1, plate, "cap-plate-port", finding.Mend, "2027-01-01")}, []string{of + "does not cover landing:cap-shroud-port, which is stop."}},
		{portPlate(finding.CannotTell, finding.Mend), []Accepted{taken(1, plate, "cap-plate-port", finding.Mend, "2027-01-01")}, []string{of + "does not cover landing:cap-shroud-port, which can't be told."}},
		{stop, []Accepted{taken(1, plate, "cap-plate-port", finding.Mend, "2027-01-01"), taken(2, plate, "cap-plate", finding.Stop, "2027-01-01")}, []string{of + "adds nothing: what it names is accepted already in line 2."}},
		{mend, []Accepted{template}, []string{of + "stands in the template and counts for the boat of that file alone. Whoever takes it on for this boat writes it in boat.yaml."}},
		{mend, []Accepted{taken(1, "plate-outlast-wire", "", finding.Mend, "2027-01-01")}, []string{"The acceptance of plate-outlast-wire as mend by the owner does nothing: none of the packs that judged has a rule of that name. Did you mean plate-outlasts-wire?"}},
		{mend, []Accepted{taken(1, plate, "cap-plat", finding.Mend, "2027-01-01")}, []string{"The acceptance of plate-outlasts-wire of cap-plat as mend by the owner does nothing: no part of this plan and no subject of its report has that name. Did you mean cap-plate?"}},
		{mend, []Accepted{taken(1, plate, "landing:backstuy", finding.Mend, "2027-01-01")}, []string{"The acceptance of plate-outlasts-wire of landing:backstuy as mend by the owner does nothing: no part of this plan and no subject of its report has that name. Did you mean landing:backstay?"}},
	} {
		r := report(test.found)
		Apply(&r, test.taken, date("2026-11-25"), known())
		var says []string
		for _, f := range r.Findings {
			if f.Pack == Pack {
				says = append(says, f.Message)
			}
		}
		if !reflect.DeepEqual(says, test.says) {
			t.Errorf("said\n%q\nwanted\n%q", says, test.says)
		}
	}
}

// TestManyFallShort holds that one acceptance of many findings covers those that it
// can and names the others, the first of them.
func TestManyFallShort(t *testing.T) {
	findings := []finding.Finding{portPlate(finding.Fails, finding.Mend)}
	k := known()
	for _, id := range []string{"a", "b", "c", "d", "e"} {
		k.Subjects = append(k.Subjects, Subject{"landing:" + id, id})
		findings = append(findings, found(plate, "landing:"+id, id, finding.Fails, finding.Stop))
	}
	r := report(findings...)
	Apply(&r, []Accepted{taken(1, plate, "", finding.Mend, "2027-01-01")}, date("2026-11-25"), k)
	if r.Counts.Accepted != 1 || r.Counts.Stop != 5 {
		t.Errorf("%+v", r.Counts)
	}
	last := r.Findings[len(r.Findings)-1]
	if !strings.HasSuffix(last.Message, "does not cover landing:a, which is stop; landing:b, which is stop; landing:c, which is stop; 2 more.") {
		t.Error(last.Message)
	}
}

// TestFindingsOfAcceptances holds that what is found of acceptances is a finding like
// any other: sorted in, with a subject, reasons and a fingerprint of its own that no
// moved line changes.
func TestFindingsOfAcceptances(t *testing.T) {
	prints := func(line int) (list []string) {
		watch := found("pin-fits", "stay:cap-shroud-port", "cap-shroud-port", finding.Fails, finding.Watch)
		r := report(portPlate(finding.Fails, finding.Stop), watch)
		twice := []Accepted{taken(line, "pin-fits", "backstay", finding.Mend, "2027-01-01"), taken(line+1, "pin-fits", "backstay", finding.Mend, "2027-01-01"), taken(line+2, "pin-fits", "two\nlines", finding.Mend, "2027-01-01")}
		Apply(&r, twice, date("2026-11-25"), known())
		for i, f := range r.Findings {
			if f.Pack != Pack {
				continue
			}
			if f.Because == "" || f.Title == "" || f.Part == "" || len(f.Decides) == 0 || len(f.Known) == 0 || strings.ContainsAny(f.Subject, "\n") || f.Unknown == nil || f.Related == nil || f.Shown == nil {
				t.Errorf("%+v", f)
			}
			if i == 0 {
				t.Error("a watch stands before a stop")
			}
			list = append(list, f.Fingerprint)
		}
		if r.Findings[len(r.Findings)-1].Subject != watch.Subject {
			t.Error("findings are not sorted by subject")
		}
		return list
	}
	first, moved := prints(1), prints(40)
	if len(first) != 3 || first[0] == first[1] || first[1] == first[2] || !reflect.DeepEqual(first, moved) {
		t.Errorf("%v, then %v", first, moved)
	}
	for _, rule := range Rules() {
		if reasons[rule] == "" || titles[rule] == "" {
			t.Errorf("%s has no title or no reason", rule)
		}
	}
}

// TestNothingAccepted holds that a plan without acceptances gets its report as it was.
func TestNothingAccepted(t *testing.T) {
	r := report(portPlate(finding.Fails, finding.Mend))
	Apply(&r, nil, date("2026-11-25"), Known{})
	if !reflect.DeepEqual(r, report(portPlate(finding.Fails, finding.Mend))) {
		t.Errorf("%+v", r)
	}
}

// TestLastDayInAnyZone holds that the last day counts as a whole, whatever the hour
// and the zone of the day that is judged on.
func TestLastDayInAnyZone(t *testing.T) {
	for _, hours := range []int{-12, 0, 14} {
		on := time.Date(2026, 11, 25, 23, 59, 0, 0, time.FixedZone("there", hours*3600))
		r := report(portPlate(finding.Fails, finding.Mend))
		Apply(&r, []Accepted{taken(1, plate, "", finding.Mend, "2026-11-25")}, on, known())
		if r.Counts.Accepted != 1 {
			t.Errorf("%s: it has lapsed", on)
		}
	}
}
