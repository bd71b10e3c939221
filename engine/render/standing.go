package render

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"chainwale/engine/finding"
	"chainwale/engine/quantity"
)

// StandingJSON writes the order of work for a program.
func StandingJSON(w io.Writer, s finding.Standing) error { return indented(w, s) }

// StandingText writes the order of work for whoever does it: the steps in a table, each
// step with what holds in it and its cautions, and what to write down first.
func StandingText(w io.Writer, s finding.Standing, system quantity.System) error {
	t := &standingText{text{out: w, system: system, said: map[string]bool{}}, s}
	t.line("%s, the mast while its stays are off, judged as of %s from %s", s.Boat, s.On, s.Plan)
	for _, c := range s.Cautions {
		t.prose("", c)
	}
	t.line("")
	t.list("Assumptions", s.Assumptions)
	t.worths()
	if s.Before != nil {
		t.line("Before anything is eased")
		t.held(s.Before, true)
		t.line("")
	}
	t.table(s.Steps)
	for i := range s.Steps {
		t.step(i, len(s.Steps), &s.Steps[i], s.Findings)
	}
	t.others()
	t.measures(s.Measure)
	if s.Suggested != nil {
		t.suggested(s.Suggested)
	}
	t.stateSheet()
	for _, c := range s.Cautions {
		t.prose("", c)
	}
	return t.err
}

type standingText struct {
	text
	sheet finding.Standing
}

// worths lists what each stand-in is worth.
func (t *standingText) worths() {
	if len(t.sheet.StandIns) == 0 {
		return
	}
	t.line("Stand-ins, each worth its weakest part")
	for _, in := range t.sheet.StandIns {
		worth := in.Says
		if in.Strength != nil {
			worth = quantity.Format(*in.Strength, quantity.Force, t.system) + ": " + in.Says
		}
		t.hanging("  "+in.Name+"  ", worth)
	}
	t.line("")
}

// table is a line a step.
func (t *standingText) table(steps []finding.StandingStep) {
	if len(steps) == 0 {
		return
	}
	rows := [][]string{{"step", "off", "held", "wanted", "one more gone", "falls first", "wanted used up at"}}
	for i := range steps {
		s := &steps[i]
		row := []string{fmt.Sprintf("%d %s", i+1, s.ID), "can't tell", "", "", "", "", ""}
		if h := worse(s); h != nil {
			row = []string{row[0], orDash(shortList(h.Off)), atLeast(h.Margin), times(h.Wanted), atLeast(h.AfterLoss), h.Weakest, knAtLeast(h.UsedUp)}
		}
		rows = append(rows, row)
	}
	t.columns(rows)
	t.line("")
}

// columns writes rows with their cells under each other.
func (t *standingText) columns(rows [][]string) {
	widths := make([]int, len(rows[0]))
	for _, row := range rows {
		for i, cell := range row {
			widths[i] = max(widths[i], len([]rune(cell)))
		}
	}
	for _, row := range rows {
		var line strings.Builder
		for i, cell := range row {
			fmt.Fprintf(&line, "%-*s  ", widths[i], cell)
		}
		t.line("%s", strings.TrimRight(line.String(), " "))
	}
}

// shortList is a list for a cell: the first, and how many more.
func shortList(list []string) string {
	if len(list) > 1 {
		return fmt.Sprintf("%s and %d more", list[0], len(list)-1)
	}
	return strings.Join(list, "")
}

func orDash(s string) string {
	if s == "" {
		return "-"
	}
	return s
}

// times says how many times something is held.
func times(n float64) string {
	if n == 1 {
		return "once"
	}
	return fmt.Sprintf("%.3g times", n)
}

// atLeast says how many times something is held, never more than it is.
func atLeast(n float64) string {
	digits := 1000.0
	for tens := n; tens >= 1 && digits > 1; tens /= 10 {
		digits /= 10
	}
	return times(math.Floor(n*digits*(1+1e-12)) / digits)
}

// knAtLeast is a gust that something bears, never more than it does.
func knAtLeast(v float64) string { return kn(math.Floor(v + 1e-6)) }

func kn(v float64) string {
	if v >= 200 {
		return "above 200 kn"
	}
	return fmt.Sprintf("%.0f kn", v)
}

// worse is the state of a step in which less is held.
// Where both hold alike it is the one with the work going on.
func worse(s *finding.StandingStep) *finding.Held {
	if s.During == nil || s.After == nil || s.During.Margin <= s.After.Margin*(1+1e-6) {
		return s.During
	}
	return s.After
}

// step writes one step between its two cautions.
func (t *standingText) step(i, of int, s *finding.StandingStep, findings []finding.Finding) {
	t.line("Step %d of %d: %s%s", i+1, of, s.ID, t.when(s))
	t.prose("  ", topCaution(t.sheet, s))
	if s.Does != "" {
		t.prose("  ", s.Does)
	}
	for _, of := range []struct {
		word  string
		names []string
	}{{"up", s.Fit}, {"off", s.Remove}, {"changed for new", s.Replace}} {
		if len(of.names) > 0 {
			t.hanging("  "+of.word+": ", strings.Join(of.names, ", "))
		}
	}
	if s.During == nil {
		t.prose("  ", t.cantTell())
	} else {
		t.held(s.During, true)
		if math.Abs(s.After.Margin-s.During.Margin) > 1e-6*s.During.Margin {
			t.prose("  ", fmt.Sprintf("afterwards held %s, and it falls %s first", atLeast(s.After.Margin), s.After.Weakest))
		}
	}
	if sh := s.Shared; sh != nil {
		t.prose("  ", fmt.Sprintf("shared by stiffness, %s bears %s where %s are counted on, and the masthead goes %s", sh.Hardest, quantity.Format(sh.Pull, quantity.Force, t.system), quantity.Format(sh.Pull/sh.Used, quantity.Force, t.system), quantity.Format(sh.Sways, quantity.Length, t.system)))
	}
	if len(s.Tighten) > 0 {
		t.prose("  ", "haul the lines tight again: "+firstFew(s.Tighten))
	}
	for _, w := range s.Watch {
		t.prose("  ", w)
	}
	t.stepFindings(findings, s.ID)
	t.prose("  ", t.sheet.StepCautions[1])
	t.line("")
}

// cantTell says why nothing can be told of a step.
func (t *standingText) cantTell() string {
	if why := t.sheet.CantTell; why != "" {
		return "What is held can't be told, so it is not begun: " + why
	}
	return "What is held can't be told, so it is not begun: see below what to measure."
}

// firstFew shortens a long list of days.
func firstFew(days []string) string {
	if len(days) <= 4 {
		return strings.Join(days, ", ")
	}
	return strings.Join(days[:3], ", ") + ", then every day until " + days[len(days)-1]
}

// topCaution is the caution at the top of a step.
func topCaution(sheet finding.Standing, s *finding.StandingStep) string {
	if s.Attended == "no" && len(sheet.StepCautions) > 2 {
		return sheet.StepCautions[2]
	}
	return sheet.StepCautions[0]
}

// when says on which day a step is done and who stands by.
func (t *standingText) when(s *finding.StandingStep) string {
	text := ""
	if s.On != "" {
		text += ", " + s.On
	}
	if s.Until != "" {
		text += " until " + s.Until
	}
	switch s.Attended {
	case "yes":
		return text + ", somebody stands by"
	case "no":
		return text + ", nobody stands by"
	}
	return text + ", whether somebody stands by is not said"
}

// held writes what a rig holds; in full where it is the worse of two.
func (t *standingText) held(h *finding.Held, full bool) {
	if len(h.Off) > 0 {
		t.hanging("  not holding: ", strings.Join(h.Off, ", "))
	}
	short := ""
	if h.Margin < h.Wanted || h.AfterLoss < h.WantedAfterLoss {
		short = "TOO LITTLE: "
	}
	t.prose("  ", fmt.Sprintf("%sheld %s in a gust of %s, %s wanted; with %s gone too %s, %s wanted", short, atLeast(h.Margin), kn(h.Gust), times(h.Wanted), orNothing(h.Lost), atLeast(h.AfterLoss), times(h.WantedAfterLoss)))
	if !full {
		return
	}
	t.prose("  ", falls(h))
	t.prose("  ", fmt.Sprintf("the wanted margin is used up in a gust of %s, all that is counted on in one of %s", knAtLeast(h.UsedUp), knAtLeast(h.Gone)))
	for _, in := range h.Uncounted {
		t.prose("  ", in.Name+" is up and counts as nothing: "+in.Because)
	}
	for _, c := range h.Concerns {
		t.prose("  ", "AGAINST PRACTICE: "+c)
	}
}

// falls says which way the mast falls first, and what gives there.
func falls(h *finding.Held) string {
	if h.Governs == "" {
		return fmt.Sprintf("it falls %s; no stay and no stand-in pulls against that", h.Weakest)
	}
	return fmt.Sprintf("it falls %s first, where %s gives: %s", h.Weakest, h.Governs, h.Because)
}

func orNothing(name string) string {
	if name == "" {
		return "nothing"
	}
	return name
}

// stepFindings writes what rules find of a step.
func (t *standingText) stepFindings(findings []finding.Finding, id string) {
	for i := range findings {
		if f := &findings[i]; f.Subject == "step:"+id {
			t.finding(f)
		}
	}
}

// others writes what rules find of stand-ins and of the mast.
func (t *standingText) others() {
	other := slices.ContainsFunc(t.sheet.Findings, func(f finding.Finding) bool { return !strings.HasPrefix(f.Subject, "step:") })
	if !other {
		return
	}
	t.line("Of the mast and the stand-ins")
	for i := range t.sheet.Findings {
		if f := &t.sheet.Findings[i]; !strings.HasPrefix(f.Subject, "step:") {
			t.finding(f)
		}
	}
	t.line("")
}

// suggested writes the order that was looked for.
func (t *standingText) suggested(o *finding.SuggestedOrder) {
	t.line("An order that was looked for")
	t.prose("  ", o.Says)
	if o.Found {
		t.prose("  ", fmt.Sprintf("the weakest step holds %s what it has to; %s were looked at", atLeast(o.Margin), count(o.Visited, "state", "states")))
		t.prose("  ", "it was looked for by what is held and by what riggers do not do, and then judged by the rules as if it stood in the plan; what can't be told of it is asked for once it does")
	}
	t.line("")
	t.table(o.Steps)
	for i := range o.Steps {
		t.step(i, len(o.Steps), &o.Steps[i], o.Findings)
	}
}

// stateSheet is what to write down, with room to do so.
func (t *standingText) stateSheet() {
	t.line("Write down before anything is eased, and keep it with the boat")
	of := ""
	for _, l := range t.sheet.StateSheet {
		if l.Of != of {
			t.line("  %s", l.Of)
			of = l.Of
		}
		has := l.Has
		if has == "" {
			has = "____________"
		}
		t.hanging("    [ ] ", fmt.Sprintf("%s (%s): %s", l.What, l.Tool, has))
	}
	t.line("")
}
