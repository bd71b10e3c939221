package standard

import (
	"errors"
	"math"
	"strings"
	"testing"

	"chainwale/engine/working"
)

// sound is a declaration that can be used.
func sound() Description {
	return Description{
		Contract: Contract, ID: "test-rule", Prefix: "test", Title: "A rule of thumb", Edition: "1", Publisher: "nobody", Basis: Ultimate,
		Tables: []Table{{
			Kind:  "landing",
			Reads: []Read{{Name: "hole", Type: Number, Unit: "mm"}, {Name: "fitting.metal.name", Type: Word}, {Name: "one_system", Type: YesNo}},
			Derives: []Derive{
				{Name: "net", Unit: "N", Clause: "1", Meaning: "what it bears", From: []string{"hole", "fitting.metal.name"}, Bears: true},
				{Name: "share", Clause: "2", Meaning: "its share", From: []string{"one_system"}},
			},
		}},
		Clauses: []Clause{{Clause: "1", Covered: true, Why: "all"}, {Clause: "2", Covered: true, Why: "half"}, {Clause: "3", Why: "nothing"}},
		Pack:    []File{{Path: "pack.yaml"}, {Path: "rules/net.yaml"}},
	}
}

// refuses wants a fault that says something, and the side to change.
func refuses(t *testing.T, what string, err error, side Side, says string) {
	t.Helper()
	var f *Fault
	if !errors.As(err, &f) || f.Side != side || !strings.Contains(f.Message, says) {
		t.Errorf("%s: want a fault that says %q and %q, got %v", what, says, side, err)
	}
}

// TestCheckDescription spoils a sound declaration in one way at a time.
func TestCheckDescription(t *testing.T) {
	if err := CheckDescription(sound()); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		says  string
		spoil func(*Description)
	}{
		{"its id", func(d *Description) { d.ID = "Test Rule" }},
		{"its id", func(d *Description) { d.ID = "" }},
		{"its prefix", func(d *Description) { d.Prefix = "1993" }},
		{"its prefix", func(d *Description) { d.Prefix = "a.b" }},
		{"the rules' own language", func(d *Description) { d.Prefix = "not" }},
		{"its title is blank", func(d *Description) { d.Title = " " }},
		{"its edition is blank", func(d *Description) { d.Edition = "" }},
		{"its publisher is blank", func(d *Description) { d.Publisher = "" }},
		{"not in UTF-8", func(d *Description) { d.Title = "\xff" }},
		{"can't be printed", func(d *Description) { d.Title = "all\nholds" }},
		{"can't be printed", func(d *Description) { d.Title = "\u202eall" }},
		{"more than 2000", func(d *Description) { d.Title = strings.Repeat("ä", 2001) }},
		{"its basis", func(d *Description) { d.Basis = "allowable" }},
		{"no table", func(d *Description) { d.Tables = nil }},
		{"two tables", func(d *Description) { d.Tables = append(d.Tables, d.Tables[0]) }},
		{"its kind", func(d *Description) { d.Tables[0].Kind = "the landing" }},
		{"derives nothing", func(d *Description) { d.Tables[0].Derives = nil }},
		{"its read", func(d *Description) { d.Tables[0].Reads[0].Name = "stay..load" }},
		{"reads hole of a landing twice", func(d *Description) { d.Tables[0].Reads[1] = d.Tables[0].Reads[0]; d.Tables[0].Derives[0].From = nil }},
		{"as \"length\"", func(d *Description) { d.Tables[0].Reads[0].Type = "length" }},
		{"no canonical unit", func(d *Description) { d.Tables[0].Reads[0].Unit = "in" }},
		{"has no unit", func(d *Description) { d.Tables[0].Reads[1].Unit = "mm" }},
		{"its fact", func(d *Description) { d.Tables[0].Derives[0].Name = "plate.net" }},
		{"no canonical unit", func(d *Description) { d.Tables[0].Derives[0].Unit = "kN" }},
		{"its meaning of net is blank", func(d *Description) { d.Tables[0].Derives[0].Meaning = "" }},
		{"by clause \"9\"", func(d *Description) { d.Tables[0].Derives[0].Clause = "9" }},
		{"by clause \"3\"", func(d *Description) { d.Tables[0].Derives[0].Clause = "3" }},
		{"derives net of a landing twice", func(d *Description) { d.Tables[0].Derives[1].Name = "net" }},
		{"does not read", func(d *Description) { d.Tables[0].Derives[0].From = []string{"end"} }},
		{"comes from hole twice", func(d *Description) { d.Tables[0].Derives[0].From = []string{"hole", "hole"} }},
		{"a load of the wire", func(d *Description) { d.Tables[0].Derives[1].Bears = true }},
		{"clause 1 twice", func(d *Description) { d.Clauses[2].Clause = "1" }},
		{"its clause is blank", func(d *Description) { d.Clauses[2].Clause = "" }},
		{"its reason at clause 3 is blank", func(d *Description) { d.Clauses[2].Why = "" }},
		{"no path within a pack", func(d *Description) { d.Pack[1].Path = "../net.yaml" }},
		{"no path within a pack", func(d *Description) { d.Pack[1].Path = "/net.yaml" }},
		{"no path within a pack", func(d *Description) { d.Pack[1].Path = `rules\net.yaml` }},
		{"pack.yaml twice", func(d *Description) { d.Pack[1].Path = "pack.yaml" }},
		{"both as a file and as a folder", func(d *Description) { d.Pack[1].Path = "pack.yaml/net.yaml" }},
		{"no pack.yaml", func(d *Description) { d.Pack = d.Pack[1:] }},
	} {
		d := sound()
		c.spoil(&d)
		refuses(t, c.says, CheckDescription(d), ChangeStandard, c.says)
	}
}

// TestCheckContract says which side is the older.
func TestCheckContract(t *testing.T) {
	d := sound()
	d.Contract = Contract + 1
	refuses(t, "newer", CheckDescription(d), NewerProgram, "the standard speaks contract 2, this program 1")
	d.Contract = Contract - 1
	refuses(t, "older", CheckDescription(d), BuildAnew, "the standard speaks contract 0, this program 1")
}

// asked is a question about nine rows: all is known of row 0, the hole is unknown in
// row 1 and the metal in row 2.
func asked() (Table, Question) {
	hole, metal, system := NewNumbers("hole", 9), NewWords("fitting.metal.name", 9), NewNumbers("one_system", 9)
	for row := range 9 {
		system.Give(row, 1)
		if row != 1 {
			hole.Give(row, 12)
		}
		if row != 2 {
			metal.GiveWord(row, "1.4404")
		}
	}
	return sound().Tables[0], Question{Kind: "landing", Rows: 9, Columns: []Column{hole, metal, system}}
}

// answered is a sound answer to it: row 3 is not covered.
func answered() Answer {
	net, share := NewNumbers("net", 9), NewNumbers("share", 9)
	for row := range 9 {
		share.Give(row, 0.5)
		if row == 0 || row > 3 {
			net.Give(row, 1000)
		}
	}
	return Answer{Columns: []Column{net, share}, NotCovered: []NotCovered{{Row: 3, Clause: "1", Why: "it is a slot"}}}
}

// TestCheckAnswer spoils a sound answer in one way at a time.
func TestCheckAnswer(t *testing.T) {
	table, q := asked()
	if err := CheckAnswer(table, q, answered()); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		says  string
		spoil func(*Answer)
	}{
		{"1 columns", func(a *Answer) { a.Columns = a.Columns[:1] }},
		{"is called \"share\" and should be net", func(a *Answer) { a.Columns[0], a.Columns[1] = a.Columns[1], a.Columns[0] }},
		{"8 numbers for 9 rows", func(a *Answer) { a.Columns[0].Numbers = a.Columns[0].Numbers[:8] }},
		{"10 numbers for 9 rows", func(a *Answer) { a.Columns[0].Numbers = append(a.Columns[0].Numbers, 1) }},
		{"1 bytes to say", func(a *Answer) { a.Columns[0].Known = a.Columns[0].Known[:1] }},
		{"which don't exist", func(a *Answer) { a.Columns[0].Known[1] |= 2 }},
		{"holds words", func(a *Answer) { a.Columns[0].Words = []string{"strong"} }},
		{"holds words", func(a *Answer) { a.Columns[0].Index = make([]uint32, 9) }},
		{"as NaN", func(a *Answer) { a.Columns[0].Give(0, math.NaN()) }},
		{"as -Inf", func(a *Answer) { a.Columns[0].Give(8, math.Inf(-1)) }},
		{"although hole is unknown", func(a *Answer) { a.Columns[0].Give(1, 1) }},
		{"although fitting.metal.name is unknown", func(a *Answer) { a.Columns[0].Give(2, 1) }},
		{"does not say why clause 1", func(a *Answer) { a.NotCovered = nil }},
		{"does not say why clause 1", func(a *Answer) { a.NotCovered[0].Clause = "2" }},
		{"does not say why clause 1", func(a *Answer) { a.NotCovered[0].Row = 4 }},
		{"row 9 is not covered", func(a *Answer) { a.NotCovered[0].Row = 9 }},
		{"row -1 is not covered", func(a *Answer) { a.NotCovered[0].Row = -1 }},
		{"derives nothing of a landing by that clause", func(a *Answer) { a.NotCovered[0].Clause = "3" }},
		{"is blank", func(a *Answer) { a.NotCovered[0].Why = "" }},
		{"can't be printed", func(a *Answer) { a.NotCovered[0].Why = "\x1b[2J" }},
	} {
		a := answered()
		c.spoil(&a)
		refuses(t, c.says, CheckAnswer(table, q, a), ChangeStandard, c.says)
	}
	if err := CheckAnswer(table, Question{Kind: "landing"}, Answer{Columns: []Column{{Name: "net"}, {Name: "share"}}}); err != nil {
		t.Errorf("no rows: %v", err)
	}
	missing := q
	missing.Columns = q.Columns[1:]
	refuses(t, "a column that was not asked with", CheckAnswer(table, missing, answered()), ChangeStandard, "although hole is unknown")
}

// TestCheckSteps spoils a sound working in one way at a time.
func TestCheckSteps(t *testing.T) {
	steps := func() []working.Step {
		return []working.Step{{
			Symbol: "N", Formula: "A·f", Value: 1, Unit: "N", Inputs: []working.Input{{Symbol: "A", Value: 2, Unit: "mm2"}},
			Source: working.Source{Title: "statics", As: working.Computed},
		}}
	}
	if err := CheckSteps(steps()); err != nil {
		t.Fatal(err)
	}
	refuses(t, "none", CheckSteps(nil), ChangeStandard, "without a step")
	for _, c := range []struct {
		says  string
		spoil func(*working.Step)
	}{
		{"symbol is blank", func(s *working.Step) { s.Symbol = "" }},
		{"formula is blank", func(s *working.Step) { s.Formula = "" }},
		{"its N is NaN", func(s *working.Step) { s.Value = math.NaN() }},
		{"its A is +Inf", func(s *working.Step) { s.Inputs[0].Value = math.Inf(1) }},
		{"symbol is blank", func(s *working.Step) { s.Inputs[0].Symbol = "" }},
		{"unit holds characters", func(s *working.Step) { s.Unit = "N\n" }},
		{"meaning holds characters", func(s *working.Step) { s.Meaning = "\x07" }},
		{"source is blank", func(s *working.Step) { s.Source.Title = "" }},
		{"clause holds characters", func(s *working.Step) { s.Source.Clause = "1\x1b" }},
		{"no word for how far", func(s *working.Step) { s.Source.As = "surely" }},
	} {
		list := steps()
		c.spoil(&list[0])
		refuses(t, c.says, CheckSteps(list), ChangeStandard, c.says)
	}
}

// TestFaultsSpeak: a fault names the standard where it is known, and the side.
func TestFaultsSpeak(t *testing.T) {
	f := &Fault{Standard: "test-rule", Message: "its id is blank", Side: ChangeStandard}
	if got := f.Error(); got != "standard test-rule: its id is blank: change the standard" {
		t.Error(got)
	}
	if got := Why(f); got != "its id is blank: change the standard" {
		t.Error(got)
	}
	if got := Why(errors.New("no socket")); got != "no socket" {
		t.Error(got)
	}
	if got := (&Fault{Message: "it was ended"}).Error(); got != "it was ended" {
		t.Error(got)
	}
}
