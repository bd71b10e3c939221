package rig

import (
	"fmt"

	"chainwale/engine/table"
	"chainwale/engine/working"
)

// Lashing is a line that holds in one part or in many turns.
//
// Returns its break load, N, and the factors that led to it.
//
// Equation:
//
//	one part:   F = Fline * end * bend
//	more parts: F = n * 0.5 * Fline * min(end, bend)
//
// Symbols: LineBreak Fline, the least break load of the line, N; Parts n, two a full
// turn; End, the splice or knot by name, of Fibre ("HMPE", "polyester", or not known,
// which counts as the weaker); Pin and Line, the diameters of the round it bends over
// and of the line, mm: Pin 0 where a thimble or a splice takes the bend.
//
// Holds over smooth rounds, the turns hauled tight one by one; 0.5 is for parts that
// share unevenly, friction and the tail.
//
// Source: factors as the tables line_ends and line_bends have them; 0.5 and the lesser
// of end and bend for all parts (judgement). Errors: a knot or fibre that no row
// knows, numbers that are missing, a round thinner than the line.
type Lashing struct {
	LineBreak float64
	Parts     int
	End       string
	Fibre     string
	Pin, Line float64
}

// LashingResult is the break load, N, and what was counted.
type LashingResult struct {
	BreakLoad float64
	Factors   []LashingFactor
	Least     string

	of Lashing
}

// LashingFactor is one thing that makes a lashing weaker, or its parts that make it stronger.
type LashingFactor struct {
	What   string
	Factor float64
	Source working.Source
}

// UnevenParts is what each of several parts counts for (judgement).
const UnevenParts = 0.5

const mostParts = 40

var unevenly = working.Source{Title: "this project's allowance for parts that share unevenly, friction and the tail", As: working.Judgement, For: "the factor 0.5"}

// Reckon gives the break load.
func (l Lashing) Reckon() (LashingResult, error) {
	var in inputs
	in.positive("the break load of the line", l.LineBreak, "N")
	in.must(l.Parts >= 1 && l.Parts <= mostParts, "a lashing has 1 to %d parts, not %d", mostParts, l.Parts)
	in.positive("the diameter of the line", l.Line, "mm")
	in.notNegative("the diameter of the round", l.Pin, "mm")
	if in.err != nil {
		return LashingResult{}, in.err
	}
	end, err := table.LineEndOf(l.End, l.Fibre)
	if err != nil {
		return LashingResult{}, err
	}
	bend := table.LineBend{Factor: 1, Source: geometry}
	if l.Pin > 0 {
		if bend, err = table.LineBendAt(l.Pin / l.Line); err != nil {
			return LashingResult{}, err
		}
	}
	return l.reckon(end, bend), nil
}

func (l Lashing) reckon(end table.LineEnd, bend table.LineBend) LashingResult {
	r := LashingResult{Least: end.End, of: l}
	if bend.Factor < end.Factor {
		r.Least = "bend over the round"
	}
	ends := LashingFactor{end.End, end.Factor, end.Source}
	if l.Pin > 0 {
		r.Factors = append(r.Factors, LashingFactor{fmt.Sprintf("bend over %.3g line diameters", l.Pin/l.Line), bend.Factor, bend.Source})
	}
	if l.Parts == 1 {
		r.Factors = append(r.Factors, ends)
		r.BreakLoad = l.LineBreak * end.Factor * bend.Factor
		return r
	}
	r.Factors = append(r.Factors, ends,
		LashingFactor{"parts", float64(l.Parts), statics},
		LashingFactor{"parts that share unevenly", UnevenParts, unevenly})
	r.BreakLoad = float64(l.Parts) * UnevenParts * l.LineBreak * min(end.Factor, bend.Factor)
	return r
}

// from says in a word where a factor comes from.
func (f LashingFactor) from() string {
	switch f.Source {
	case unevenly:
		return "assumed"
	case statics:
		return "as given"
	}
	return "row of the table"
}

// Working writes the calculation down.
func (r LashingResult) Working() []working.Step {
	var steps []working.Step
	for i, f := range r.Factors {
		steps = append(steps, working.Step{Symbol: fmt.Sprintf("k%d", i+1), Meaning: f.What, Formula: f.from(), Value: f.Factor, Source: f.Source})
	}
	formula := "Fline * the factors"
	if r.of.Parts > 1 {
		formula = "n * 0.5 * Fline * the lesser of end and bend"
	}
	return append(steps, working.Step{Symbol: "F", Meaning: "the lashing breaks", Formula: formula, Inputs: given("Fline", r.of.LineBreak, "N", "n", float64(r.of.Parts), ""), Value: r.BreakLoad, Unit: "N", Source: unevenly})
}

// FibreStay is a line that stands in for a wire, or a lashing between two parts of a rig.
//
// Returns its break load, what it may carry for days and for months, its stiffness
// beside the wire's, and when to haul it tight again.
//
// Equation:
//
//	F = the Lashing of c d^2, halved where age and sun are not known
//	for days short * F, for months sustained * F;  EA = stiffness * c d^2 * parts
//
// Symbols: Kind, the sort of line by name; Diameter d, mm; Parts, End, Pin as for
// Lashing; AgeKnown; WireEA, the stiffness of the wire it stands in for, N, 0 if none.
//
// Holds below 40 degC and clear of anything hot or rough.
//
// Source: rows of table lines; the half for age (judgement). Errors: as for Lashing; a
// line that no row knows.
type FibreStay struct {
	Kind     string
	Diameter float64
	Parts    int
	End      string
	Pin      float64
	AgeKnown bool
	WireEA   float64
}

// FibreStayResult is what the line is worth. N.
type FibreStayResult struct {
	BreakLoad, Short, Sustained float64
	EALeast, EAMost             float64
	// Softer is how many times softer than the wire it is at most, 0 if no wire is given.
	Softer  float64
	Lashing LashingResult
	// Tighten are the hours after it is set at which to haul it tight again; then once a day.
	Tighten []float64

	of  FibreStay
	row table.LineRow
}

// UnknownAge is what a line keeps whose age and sun nobody knows (judgement).
const UnknownAge = 0.5

var (
	aged    = working.Source{Title: "this project's allowance for line whose age and sun are not known", As: working.Judgement, For: "the factor 0.5"}
	tighten = []float64{1, 24}
)

// Reckon gives what the line is worth.
func (f FibreStay) Reckon() (FibreStayResult, error) {
	row, err := table.Line(f.Kind)
	if err != nil {
		return FibreStayResult{}, err
	}
	var in inputs
	in.must(f.Diameter >= 2 && f.Diameter <= 24, "lines of 2 to 24 mm are covered, not %g mm", f.Diameter)
	in.notNegative("the stiffness of the wire", f.WireEA, "N")
	if in.err != nil {
		return FibreStayResult{}, in.err
	}
	lashing, err := Lashing{LineBreak: row.BreakLoad(f.Diameter), Parts: f.Parts, End: f.End, Fibre: row.Fibre(), Pin: f.Pin, Line: f.Diameter}.Reckon()
	if err != nil {
		return FibreStayResult{}, err
	}
	r := FibreStayResult{BreakLoad: lashing.BreakLoad, Lashing: lashing, Tighten: append([]float64{}, tighten...), of: f, row: row}
	if !f.AgeKnown {
		r.BreakLoad *= UnknownAge
	}
	r.Short, r.Sustained = row.Short*r.BreakLoad, row.Sustained*r.BreakLoad
	all := row.BreakLoad(f.Diameter) * float64(f.Parts)
	r.EALeast, r.EAMost = row.StiffLeast*all, row.StiffMost*all
	r.Softer = f.WireEA / r.EALeast
	return r, nil
}

// Working writes the calculation down.
func (r FibreStayResult) Working() []working.Step {
	steps := []working.Step{{Symbol: "Fline", Meaning: "least break load of " + r.row.Kind, Formula: "c d^2", Inputs: given("c", r.row.Least, "MPa", "d", r.of.Diameter, "mm"), Value: r.row.BreakLoad(r.of.Diameter), Unit: "N", Source: r.row.Source}}
	steps = append(steps, r.Lashing.Working()...)
	if !r.of.AgeKnown {
		steps = append(steps, working.Step{Symbol: "Fa", Meaning: "the same of line whose age is not known", Formula: "0.5 F", Inputs: given("F", r.Lashing.BreakLoad, "N"), Value: r.BreakLoad, Unit: "N", Source: aged})
	}
	return append(steps,
		working.Step{Symbol: "Fs", Meaning: "it may carry for days", Formula: "share * F", Inputs: given("share", r.row.Short, ""), Value: r.Short, Unit: "N", Source: r.row.Creep},
		working.Step{Symbol: "Fm", Meaning: "it may carry for months", Formula: "share * F", Inputs: given("share", r.row.Sustained, ""), Value: r.Sustained, Unit: "N", Source: r.row.Creep},
		working.Step{Symbol: "EA", Meaning: "its stiffness is at least", Formula: "k c d^2 n", Inputs: given("k", r.row.StiffLeast, "", "n", float64(r.of.Parts), ""), Value: r.EALeast, Unit: "N", Source: r.row.Stiffness})
}
