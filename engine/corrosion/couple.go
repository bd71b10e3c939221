package corrosion

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"chainwale/engine/table"
	"chainwale/engine/working"
)

// Verdict says what two metals that touch do to each other.
type Verdict string

const (
	// Compatible: they may touch.
	Compatible Verdict = "compatible"
	// Conditional: isolate or seal them, and look at the areas.
	Conditional Verdict = "conditional"
	// Incompatible: they may touch only through isolation, and sealed.
	Incompatible Verdict = "incompatible"
)

var verdicts = []Verdict{Compatible, Conditional, Incompatible}

// worse moves a verdict so many steps towards incompatible.
func (v Verdict) worse(steps int) Verdict {
	i := slices.Index(verdicts, v) + steps
	return verdicts[max(0, min(i, len(verdicts)-1))]
}

// Exposure is how wet the joint lives.
type Exposure string

const (
	// Harsh: splash, bilge, and wherever salt water stands.
	Harsh Exposure = "harsh"
	// Normal: deck and aloft, where rain washes the film.
	Normal Exposure = "normal"
	// Controlled: a dry, aired cabin.
	Controlled Exposure = "controlled"
	// SeaWater: under water; it counts as harsh.
	SeaWater Exposure = "sea water"
)

// limits are the differences in millivolts up to which metals are compatible.
var limits = map[Exposure]int{Harsh: 150, Normal: 250, Controlled: 500, SeaWater: 150}

// ExposureNamed finds an exposure by its plain name.
func ExposureNamed(name string) (Exposure, error) {
	word := Exposure(strings.NewReplacer("-", " ", "_", " ").Replace(strings.ToLower(strings.TrimSpace(name))))
	if _, ok := limits[word]; !ok {
		return "", fmt.Errorf("no exposure is called %q: it is harsh, normal, controlled or sea water", name)
	}
	return word, nil
}

// Couple is two metals that touch in salt water or its spray.
//
// Returns how far apart they stand in the galvanic series (Difference of the
// means, Worst of the ranges, V), which of them is eaten (Anode), and a Verdict.
//
// Equation:
//
//	Difference = |mean(a) - mean(b)|;  Worst = max(high(a) - low(b), high(b) - low(a))
//	L = 0.15 V harsh and sea water, 0.25 V normal, 0.50 V controlled
//	Difference <= L: compatible;  <= L + 0.10 V: conditional;  above: incompatible
//
// A stainless counts as passive in the open. Where the joint is Hidden every pair
// of states counts, and the active state alone makes the verdict worse by one step
// at most. A metal whose name leaves open which alloy it is counts as the worst of
// them. The same metal on both sides is compatible. With both wetted areas known,
// cathode/anode above 10 makes the verdict one step worse, up to 0.1 one step
// better. Isolated (through an insulator and sealed) makes any pair compatible.
//
// Symbols: A, B rows of the galvanic series, V; AreaA, AreaB wetted areas in mm2,
// 0 if not known.
//
// Holds for sea water and its film at boating temperatures; it ranks couples and
// says nothing of how fast metal goes.
//
// Source: potentials after the series that each row names; the limits after trade
// rules near MIL-F-14072, written for the anodic index (published); that they are
// used on the sea-water chart, the step of 0.10 V, the areas and the one step for
// the active state are this project's (judgement). Errors: no row on a side, an
// unknown exposure, an area that is negative or not finite or given on one side only.
type Couple struct {
	A, B             []table.GalvanicRow
	Exposure         Exposure
	Hidden, Isolated bool
	AreaA, AreaB     float64
}

// CoupleResult is the verdict on a Couple.
type CoupleResult struct {
	// Difference and Worst are in V and those of the pair that governs.
	Difference, Worst float64
	// Anode is the metal that is eaten, with its state: "silicon bronze", "316 (active)"; "neither" where both stand level.
	Anode   string
	Verdict Verdict
	// A and B are the rows that govern.
	A, B table.GalvanicRow
	// Swaps says that in another state or alloy the other metal is eaten.
	Swaps bool
	// ByActive says that it is the active state that made the verdict.
	ByActive bool
	// OverLimit says that the ranges may lie further apart than the limit although the means do not.
	OverLimit bool
	// AreaRatio is cathode over anode, NaN where it is not known.
	AreaRatio float64
	// Limit is the difference in V up to which metals are compatible here.
	Limit float64

	isolated bool
}

var (
	trade      = working.Source{Title: "trade limits near MIL-F-14072, written for the anodic index", As: working.Published, For: "the limits 0.15, 0.25 and 0.50 V"}
	convention = working.Source{Title: "this project's use of those limits on the sea-water series", As: working.Judgement, For: "the verdict"}
)

// CoupleOf looks two metals up in the galvanic series by their plain names.
func CoupleOf(a, b string, exposure Exposure) (Couple, error) {
	rowsA, err := table.Galvanic(a)
	if err != nil {
		return Couple{}, err
	}
	rowsB, err := table.Galvanic(b)
	return Couple{A: rowsA, B: rowsB, Exposure: exposure}, err
}

// Reckon gives the verdict.
func (c Couple) Reckon() (CoupleResult, error) {
	limit, err := c.check()
	if err != nil {
		return CoupleResult{}, err
	}
	a, b := c.rows()
	inOpen := pairs(open(a), open(b), limit)
	p := governing(inOpen)
	all, verdict, byActive := inOpen, p.verdict, false
	if c.Hidden {
		all = pairs(a, b, limit)
		if hidden := governing(all); slices.Index(verdicts, hidden.verdict) > slices.Index(verdicts, p.verdict) {
			verdict, p, byActive = p.verdict.worse(1), hidden, true
		}
	}
	r := CoupleResult{A: p.a, B: p.b, Difference: float64(p.twice) / 2000, Worst: float64(p.apart) / 1000, Anode: p.anode(),
		ByActive: byActive, OverLimit: p.twice <= 2*limit && p.apart > limit, AreaRatio: c.areaRatio(p), Limit: float64(limit) / 1000, isolated: c.Isolated}
	for _, q := range all {
		r.Swaps = r.Swaps || (!q.level && !p.level && q.anodeIsA != p.anodeIsA)
	}
	r.Verdict = c.finish(verdict, r.AreaRatio)
	return r, nil
}

// rows are both sides; one and the same metal on both is compared in its open
// state alone. A name that leaves the alloy open is never one and the same.
func (c Couple) rows() (a, b []table.GalvanicRow) {
	same := len(c.A) == len(c.B)
	for i := range c.A {
		same = same && c.A[i].Name == c.A[0].Name && c.A[i].Name == c.B[i].Name && c.A[i].State == c.B[i].State
	}
	if same {
		one := open(c.A)[:1]
		return one, one
	}
	return c.A, c.B
}

// finish lets areas and isolation change the verdict of the potentials.
func (c Couple) finish(v Verdict, areaRatio float64) Verdict {
	switch {
	case c.Isolated:
		return Compatible
	case v == Compatible:
		return v
	case areaRatio > 10:
		return v.worse(1)
	case areaRatio <= 0.1:
		return v.worse(-1)
	}
	return v
}

// areaRatio is the wetted area of the cathode over that of the anode.
func (c Couple) areaRatio(p pair) float64 {
	switch {
	case c.AreaA == 0 || p.level:
		return math.NaN()
	case p.anodeIsA:
		return c.AreaB / c.AreaA
	}
	return c.AreaA / c.AreaB
}

func (c Couple) check() (limit int, err error) {
	limit, known := limits[c.Exposure]
	var in inputs
	in.must(len(c.A) > 0 && len(c.B) > 0, "a couple needs a metal of the galvanic series on both sides")
	in.must(known, "no exposure is called %q: it is harsh, normal, controlled or sea water", string(c.Exposure))
	for _, area := range []float64{c.AreaA, c.AreaB} {
		in.must(area >= 0 && area <= 1e9, "a wetted area can't be %g mm2", area)
	}
	in.must((c.AreaA > 0) == (c.AreaB > 0), "a wetted area is given for one of the metals only")
	for _, g := range slices.Concat(c.A, c.B) {
		in.must(g.Low <= g.High && math.Abs(g.Low) < 10 && math.Abs(g.High) < 10, "%s has no potential that counts: %g to %g V", g, g.Low, g.High)
	}
	return limit, in.err
}

// Working writes the comparison down.
func (r CoupleResult) Working() []working.Step {
	steps := []working.Step{
		{Symbol: "Va", Meaning: "potential of " + r.A.String(), Formula: "(low + high)/2", Inputs: given("low", r.A.Low, "V", "high", r.A.High, "V"), Value: r.A.Mean(), Unit: "V", Source: r.A.Source},
		{Symbol: "Vb", Meaning: "potential of " + r.B.String(), Formula: "(low + high)/2", Inputs: given("low", r.B.Low, "V", "high", r.B.High, "V"), Value: r.B.Mean(), Unit: "V", Source: r.B.Source},
		{Symbol: "d", Meaning: "they stand apart, " + r.Anode + " is eaten", Formula: "|Va - Vb|", Inputs: given("Va", r.A.Mean(), "V", "Vb", r.B.Mean(), "V"), Value: r.Difference, Unit: "V", Source: convention},
		{Symbol: "L", Meaning: "compatible up to", Formula: "by exposure", Value: r.Limit, Unit: "V", Source: trade},
	}
	if r.AreaRatio == r.AreaRatio {
		steps = append(steps, working.Step{Symbol: "R", Meaning: "wetted area of the cathode over that of the anode", Formula: "area(cathode)/area(anode)", Value: r.AreaRatio, Source: convention})
	}
	return steps
}
