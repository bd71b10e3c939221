package render

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"chainwale/engine/finding"
	"chainwale/engine/quantity"
)

// width is where lines of prose are broken.
const width = 96

// Text writes the report for a person to act on: by fitting, the worst first;
// then one list of what to measure; then counts, what was not seen, and cautions.
func Text(w io.Writer, r finding.Report, s quantity.System) error {
	t := &text{out: w, system: s, said: map[string]bool{}}
	if !r.Judged() {
		t.problems(r.Problems)
		t.line("%s; nothing was judged.", count(len(r.Problems), "problem", "problems"))
		return t.err
	}
	t.line("%s, judged as of %s from %s", r.Boat, r.On, r.Plan.File)
	if len(r.Cautions) > 0 {
		t.prose("", r.Cautions[0])
	}
	t.line("")
	if len(r.Problems) > 0 {
		t.line("These packs, or what they change, did not judge; what that would have found is not known:")
		t.problems(r.Problems)
		t.line("")
	}
	t.against(r)
	t.findings(r)
	t.measures(r.Measure)
	t.counts(r)
	t.standards(r.Standards)
	t.changed(r.Packs)
	t.list("Not seen and not checked", r.NotSeen)
	t.cautions(r.Cautions)
	return t.err
}

// text writes lines and keeps the first error.
type text struct {
	out    io.Writer
	system quantity.System
	err    error
	// said are the rules whose reason has been given: once a report is enough.
	said map[string]bool
}

func (t *text) line(format string, args ...any) {
	if t.err == nil {
		_, t.err = fmt.Fprintf(t.out, format+"\n", args...)
	}
}

// prose writes a paragraph, broken at width, each line after the indent.
func (t *text) prose(indent, paragraph string) {
	for _, l := range wrap(paragraph, width-len(indent)) {
		t.line("%s%s", indent, l)
	}
}

func (t *text) list(title string, items []string) {
	if len(items) == 0 {
		return
	}
	t.line("%s", title)
	for _, item := range items {
		for i, l := range wrap(item, width-4) {
			mark := "  - "
			if i > 0 {
				mark = "    "
			}
			t.line("%s%s", mark, l)
		}
	}
	t.line("")
}

// cautions closes a report with the line that opened it.
func (t *text) cautions(cautions []string) {
	if len(cautions) == 0 {
		return
	}
	t.list("Cautions", cautions[1:])
	t.prose("", cautions[0])
}

// problems lists what is wrong with the files that the user wrote.
func (t *text) problems(problems []finding.Problem) {
	for _, p := range problems {
		t.line("%s: %s", where(p.At), p.Message)
		if p.Expected != "" {
			t.prose("    ", p.Expected)
		}
	}
}

// findings writes the parts of the boat, those with the worst findings first.
func (t *text) findings(r finding.Report) {
	parts := byPart(r.Findings)
	if len(parts) == 0 {
		t.prose("", "No rule found anything. That is not the same as safe: read below what was not seen and not checked.")
		t.line("")
	}
	for _, p := range parts {
		t.line("%s", p.heading())
		var open []*finding.Finding
		for _, f := range p.findings {
			if f.Outcome == finding.CannotTell && settled(f, r.Measure) {
				open = append(open, f)
				continue
			}
			t.finding(f)
		}
		t.open(open)
		t.line("")
	}
}

// settled tells whether a reading of the list would settle what a rule can't tell.
func settled(f *finding.Finding, list []finding.Measure) bool {
	return len(f.Unknown) > 0 && slices.ContainsFunc(list, func(m finding.Measure) bool { return slices.Contains(m.Settles, f.Rule) })
}

// open writes in a few lines what can't be told of a part until somebody measures,
// by grade, the worst first: the list below says what.
func (t *text) open(findings []*finding.Finding) {
	if len(findings) == 0 {
		return
	}
	t.line("  CANNOT TELL, until the readings below are taken:")
	byGrade := map[finding.Grade][]string{}
	var grades []finding.Grade
	for _, f := range findings {
		if byGrade[f.Grade] == nil {
			grades = append(grades, f.Grade)
		}
		if !slices.Contains(byGrade[f.Grade], f.Rule) {
			byGrade[f.Grade] = append(byGrade[f.Grade], f.Rule)
		}
	}
	slices.SortStableFunc(grades, func(a, b finding.Grade) int { return cmp.Compare(b.Weight(), a.Weight()) })
	for _, g := range grades {
		t.hanging("      "+string(g)+": ", strings.Join(byGrade[g], ", "))
	}
}

// hanging writes a paragraph behind a mark, its further lines under the first.
func (t *text) hanging(mark, paragraph string) {
	for _, l := range wrap(paragraph, width-len(mark)) {
		t.line("%s%s", mark, l)
		mark = strings.Repeat(" ", len(mark))
	}
}

// finding writes one finding: the grade and the sentence, then what was had and
// needed, where it stands, why it matters and who decides.
func (t *text) finding(f *finding.Finding) {
	head := strings.ToUpper(label(f))
	if f.HoldsUp != "" && f.Grade == finding.Stop {
		head += ", holds up " + f.HoldsUp
	}
	if f.Outcome == finding.CannotTell {
		head += ", cannot tell"
	}
	t.prose("  ", head+acceptedMark(f)+": "+f.Message)
	t.accepted(f)
	if f.Outcome == finding.Fails && f.Have != nil {
		t.line("      %s", t.haveNeed(f))
	}
	if f.Outcome == finding.Fails && !t.said[f.Rule] {
		t.prose("      ", f.Because)
		t.said[f.Rule] = true
	}
	decides := "decides: " + strings.Join(f.Decides, ", then ")
	t.line("      %s  [%s]  %s", where(f.At), f.Rule, decides)
}

// label is the grade, or the outcome of a finding that has none.
func label(f *finding.Finding) string {
	if f.Grade.Known() {
		return string(f.Grade)
	}
	return string(f.Outcome)
}

// haveNeed says what there is and what the limit asks for.
func (t *text) haveNeed(f *finding.Finding) string {
	have := "have " + t.amount(*f.Have)
	if f.Need == nil {
		return have
	}
	return have + ", limit " + t.amount(*f.Need)
}

// amount prints an amount in the reader's units.
func (t *text) amount(a finding.Amount) string {
	d, ok := quantity.DimensionOf(a.Unit)
	if !ok {
		return fmt.Sprintf("%g %s", a.Value, a.Unit)
	}
	return quantity.Format(a.Value, d, t.system)
}

// measures writes the one list of readings that would settle what can't be told.
func (t *text) measures(list []finding.Measure) {
	if len(list) == 0 {
		return
	}
	t.line("Go and measure")
	last := ""
	for _, m := range list {
		if m.Subject != last {
			t.line("  %s", m.Subject)
			last = m.Subject
		}
		how := m.Fact
		if m.Tool != "" {
			how += ": " + m.Tool
		}
		if m.Where != "" {
			how += ", " + m.Where
		}
		t.prose("    ", how)
		t.prose("        ", fmt.Sprintf("write it at %s (%s); it settles %s", where(m.At), m.At.Pointer, strings.Join(m.Settles, ", ")))
	}
	t.line("")
}

// counts writes the totals and what they mean for the exit status.
func (t *text) counts(r finding.Report) {
	c := r.Counts
	t.line("%d stop, %d mend, %d watch; of all judgements %d hold, %d fail, %d cannot tell, %d do not apply, %d accepted.",
		c.Stop, c.Mend, c.Watch, c.Holds, c.Fails, c.CannotTell, c.DoesNotApply, c.Accepted)
	t.line("An unknown counts as a finding of its grade. Findings from %s up refuse the plan.", r.RefuseAt)
	for _, p := range r.Packs {
		t.line("Judged by %s, edition %s.", p.ID, p.Edition)
	}
	t.line("")
}

// where is file:line:column.
func where(p finding.Place) string {
	return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Column)
}

// count is a number with its noun.
func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// wrap breaks a paragraph at blanks into lines of at most columns characters
// (a longer word has a line of its own).
func wrap(paragraph string, columns int) []string {
	var lines []string
	var line strings.Builder
	length := 0
	for word := range strings.FieldsSeq(paragraph) {
		n := utf8.RuneCountInString(word)
		if length > 0 && length+1+n > columns {
			lines = append(lines, line.String())
			line.Reset()
			length = 0
		}
		if length > 0 {
			line.WriteByte(' ')
			length++
		} else {
			line.Grow(columns)
		}
		line.WriteString(word)
		length += n
	}
	if length > 0 {
		lines = append(lines, line.String())
	}
	return lines
}
