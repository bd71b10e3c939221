package render

import (
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"chainwale/engine/finding"
	"chainwale/engine/quantity"
)

// SideBySideText writes what the standards say of each landing, one under the other.
func SideBySideText(w io.Writer, c finding.SideBySide, s quantity.System) error {
	t := &text{out: w, system: s}
	const advises = "chainwale advises. These are our readings of standards whose texts were seen in part, after them and never per them; a qualified rigger, naval architect and local code decide."
	t.line("%s, by %s, as of %s from %s", c.Boat, count(len(c.Standards), "standard", "standards"), c.On, c.Plan)
	t.prose("", advises)
	t.prose("", "Said of each standard are the clause that governs of what it holds against the wire's break load, and that of what it holds against the wire's load at work, and how much it asks for. What stands as not covered is unknown, and no proof of anything.")
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
		if l.Spread > 0 {
			t.line("  the breaking strengths spread by %.2f, the largest over the smallest", l.Spread)
		}
	}
	t.line("")
	t.prose("", advises)
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

// standardSaid writes what one standard says, and below it what it does not cover.
func (t *text) standardSaid(s finding.Said, basis string) {
	t.line("  %s (%s)", s.Standard, basis)
	t.governs("times the wire", s.Breaks)
	t.governs("times the load at work", s.AtWork)
	if s.Breaks == nil && s.AtWork == nil {
		t.line("      can't tell")
	}
	for _, title := range s.FailsBeside {
		t.prose("      ", "NOT SO: "+title)
	}
	for _, why := range s.NotCovered {
		t.prose("      ", why)
	}
	if len(s.Lacks) > 0 {
		t.prose("      ", "not known: "+strings.Join(s.Lacks, "; "))
	}
}

func (t *text) governs(times string, g *finding.Governs) {
	if g == nil {
		return
	}
	short := ""
	if g.Times < g.Asked {
		short = "TOO LITTLE: "
	}
	t.prose("      ", fmt.Sprintf("%s%.2f %s (%s) where %.2f is asked, by %s: %s", short, g.Times, times, quantity.Format(g.Load, quantity.Force, t.system), g.Asked, g.Clause, strings.ReplaceAll(g.Fact, "_", " ")))
}

// SideBySideJSON writes the same for a program, loads in N.
func SideBySideJSON(w io.Writer, c finding.SideBySide) error { return indented(w, c) }

// SideBySideCSV writes a line a landing and standard, for a spreadsheet.
func SideBySideCSV(w io.Writer, c finding.SideBySide) error {
	out := csv.NewWriter(w)
	_ = out.Write([]string{"fitting", "stay", "wire breaks at (N)", "standard", "basis", "held against", "load (N)", "times", "asked", "clause", "fact", "not so", "not covered", "not known"})
	for _, l := range c.Landings {
		for _, s := range l.Said {
			head := []string{l.Fitting, l.Stay, number(l.BreakLoad, l.BreakLoad > 0), s.Standard, basisOf(c, s.Standard)}
			tail := []string{strings.Join(s.FailsBeside, "; "), strings.Join(s.NotCovered, "; "), strings.Join(s.Lacks, "; ")}
			_ = out.Write(slices.Concat(head, cells("break load", s.Breaks), tail))
			_ = out.Write(slices.Concat(head, cells("load at work", s.AtWork), tail))
		}
	}
	out.Flush() // keeps the first error, also of the lines before
	return out.Error()
}

// cells are what governs; empty where nothing told.
func cells(against string, g *finding.Governs) []string {
	if g == nil {
		return []string{against, "", "", "", "", ""}
	}
	return []string{against, number(g.Load, true), number(g.Times, true), number(g.Asked, true), g.Clause, g.Fact}
}

// number is empty where there is none: an empty cell can't be taken for a zero.
func number(v float64, known bool) string {
	if !known {
		return ""
	}
	return strconv.FormatFloat(v, 'g', 6, 64)
}
