package render

import (
	"encoding/csv"
	"fmt"
	"io"
	"maps"
	"slices"
	"strconv"
	"strings"

	"chainwale/engine/finding"
	"chainwale/engine/quantity"
)

// SideBySideText writes what the standards say of each landing, one under the other.
func SideBySideText(w io.Writer, c finding.SideBySide, s quantity.System) error {
	t := &text{out: w, system: s}
	t.line("%s, by %s, as of %s from %s", c.Boat, count(len(c.Standards), "standard", "standards"), c.On, c.Plan)
	t.prose("", "Each line is the clause that gives way first. Ultimate strengths hold no safety factor; design values hold all of theirs, so the two are not to be compared with each other. What stands as not covered is unknown, and no proof of anything.")
	for _, d := range c.Standards {
		if d.Fault != "" {
			t.prose("", d.ID+" does not answer rightly: "+d.Fault)
		}
	}
	for _, l := range c.Landings {
		t.line("")
		t.line("%s, on %s%s", l.Stay, l.Fitting, t.breaks(l.BreakLoad))
		for _, said := range l.Said {
			t.standardSaid(said, basisOf(c, said.Standard))
		}
		for _, basis := range slices.Sorted(maps.Keys(l.Spread)) {
			t.line("  spread of the %s strengths: %.2f from the smallest to the largest", basis, l.Spread[basis])
		}
	}
	return t.err
}

func (t *text) breaks(load float64) string {
	if load <= 0 {
		return "; at what load the wire breaks is not known"
	}
	return "; the wire breaks at " + quantity.Format(load, quantity.Force, t.system)
}

func basisOf(c finding.SideBySide, id string) string {
	for _, s := range c.Standards {
		if s.ID == id {
			return s.Basis
		}
	}
	return ""
}

// said writes one standard's line, and below it what it does not cover.
func (t *text) standardSaid(s finding.Said, basis string) {
	verdict := "can't tell"
	if s.Told {
		verdict = fmt.Sprintf("%.2f times the wire (%s), by %s, %s", s.Times, quantity.Format(s.Bears, quantity.Force, t.system), s.Clause, strings.ReplaceAll(s.Fact, "_", " "))
	}
	t.line("  %-16s %-9s %s", s.Standard, basis, verdict)
	for _, why := range s.NotCovered {
		t.prose("      ", why)
	}
	if len(s.Lacks) > 0 {
		t.prose("      ", "not known: "+strings.Join(s.Lacks, "; "))
	}
}

// SideBySideJSON writes the same for a program, loads in N.
func SideBySideJSON(w io.Writer, c finding.SideBySide) error { return indented(w, c) }

// SideBySideCSV writes a line a landing and standard, for a spreadsheet.
func SideBySideCSV(w io.Writer, c finding.SideBySide) error {
	out := csv.NewWriter(w)
	_ = out.Write([]string{"fitting", "stay", "wire breaks at (N)", "standard", "basis", "times the wire", "bears (N)", "clause", "fact", "not covered", "not known"})
	for _, l := range c.Landings {
		for _, s := range l.Said {
			row := []string{l.Fitting, l.Stay, number(l.BreakLoad, l.BreakLoad > 0), s.Standard, basisOf(c, s.Standard), number(s.Times, s.Told), number(s.Bears, s.Told), s.Clause, s.Fact, strings.Join(s.NotCovered, "; "), strings.Join(s.Lacks, "; ")}
			_ = out.Write(row)
		}
	}
	out.Flush() // keeps the first error, also of the lines before
	return out.Error()
}

// number is empty where there is none: an empty cell can't be taken for a zero.
func number(v float64, known bool) string {
	if !known {
		return ""
	}
	return strconv.FormatFloat(v, 'g', 6, 64)
}
