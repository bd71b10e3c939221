package strength

import (
	"math"
	"strings"

	"chainwale/engine/working"
)

// TimberKind is what the host of the bolts is made of.
type TimberKind string

const (
	// Plywood has one embedment strength in every direction.
	Plywood TimberKind = "plywood"
	// Softwood and Hardwood are solid timber, weaker across the grain.
	Softwood TimberKind = "softwood"
	Hardwood TimberKind = "hardwood"
)

// TimberBolts is a steel plate bolted to timber or plywood, one shear plane a bolt.
//
// Returns the embedment strength of the host (Embedment, MPa), the shear that one
// bolt and all of them hold (EachBolt, Capacity, N), what they would hold at most
// with plates on both sides or a backing that keeps the bolts from tilting
// (HeldBothSides), and Mode, the way it gives.
//
// Equation, with fh the embedment and My = 0.3 fu d^2.6:
//
//	plywood   fh = 0.11 (1 - 0.01 d) rho
//	timber    fh0 = 0.082 (1 - 0.01 d) rho;  fh = fh0/(k90 sin^2 g + cos^2 g)
//	          k90 = 1.35 + 0.015 d softwood, 0.90 + 0.015 d hardwood
//	thin plate,  tp <= d/2:  min(0.4 fh t d, 1.15 sqrt(2 My fh d))
//	thick plate, tp >= d:    min(fh t d, fh t d (sqrt(2 + 4 My/(fh d t^2)) - 1), 2.3 sqrt(My fh d))
//	between them a straight line in tp
//	HeldBothSides = fh t d a bolt
//
// Symbols: Thickness t of the host, Plate tp, Bolt d, mm; Density rho, kg/m3;
// BoltUltimate fu, MPa; Grain, the angle between force and grain, deg; Count of
// bolts; Spacing of the bolts along the grain, mm, 0 if they don't stand in a row
// along it.
//
// Holds for bolts of 6 to 30 mm in timber of 200 to 1000 kg/m3, sound and dry,
// characteristic strengths without factors of load time or moisture. No pull along
// the bolt and no friction is credited: preload creeps away. Bolts in a row along
// the grain of solid timber count as n^0.9 (a1/(13 d))^0.25, at most n.
//
// Source: after EN 1995-1-1:2004, 8.2.3, 8.5.1 and 8.5.1.1 (embedment published by way of
// two public timber programs; the modes and the row memory). It reproduces the
// timber rows of this project's nine ordinary plates. Errors: a kind that is not
// known; sizes, densities or counts outside these bounds.
type TimberBolts struct {
	Kind               TimberKind
	Density            float64
	Thickness, Plate   float64
	Bolt, BoltUltimate float64
	Grain              float64
	Count              int
	Spacing            float64
}

// TimberBoltsResult is what a TimberBolts holds.
type TimberBoltsResult struct {
	Embedment          float64
	EachBolt, Capacity float64
	HeldBothSides      float64
	// Mode is "embedment", "bolt tilts", "bolt bends once" or "bolt bends twice".
	Mode string

	of                       TimberBolts
	yieldMoment, thin, thick float64
	counted                  float64
}

var (
	enEmbedment = working.Source{Title: "after EN 1995-1-1", Edition: "2004", Clause: "8.5.1, embedment, by way of two public timber programs", As: working.Published, For: "the form of the equation"}
	enTimber    = working.Source{Title: "after EN 1995-1-1", Edition: "2004", Clause: "8.2.3, steel to timber", As: working.Memory, For: "the ways of yielding"}
	enRow       = working.Source{Title: "after EN 1995-1-1", Edition: "2004", Clause: "8.5.1.1", As: working.Memory, For: "bolts in a row along the grain"}
)

// TimberKindNamed finds a kind by its plain name; "solid timber" counts as softwood.
func TimberKindNamed(name string) (TimberKind, error) {
	switch word := strings.ReplaceAll(strings.ToLower(strings.TrimSpace(name)), "-", " "); word {
	case "plywood", "ply":
		return Plywood, nil
	case "softwood", "timber", "solid timber", "solid_timber", "wood":
		return Softwood, nil
	case "hardwood":
		return Hardwood, nil
	}
	in := inputs{}
	in.refuse("no timber is called %q: it is plywood, softwood or hardwood", name)
	return "", in.err
}

// Reckon gives the capacity.
func (b TimberBolts) Reckon() (TimberBoltsResult, error) {
	if err := b.check(); err != nil {
		return TimberBoltsResult{}, err
	}
	r := TimberBoltsResult{of: b, Embedment: b.embedment(), yieldMoment: 0.3 * b.BoltUltimate * math.Pow(b.Bolt, 2.6)}
	fd := r.Embedment * b.Bolt
	pressed := fd * b.Thickness
	bends := math.Sqrt(r.yieldMoment * fd)
	var thinMode, thickMode string
	r.thin, thinMode = leastOf(named{"bolt tilts", 0.4 * pressed}, named{"bolt bends once", 1.15 * math.Sqrt2 * bends})
	r.thick, thickMode = leastOf(named{"embedment", pressed}, named{"bolt bends once", pressed * (math.Sqrt(2+4*r.yieldMoment/(fd*b.Thickness*b.Thickness)) - 1)}, named{"bolt bends twice", 2.3 * bends})
	// How far the plate is from thin (0) to thick (1).
	stiff := max(0, min(1, (b.Plate-b.Bolt/2)/(b.Bolt/2)))
	r.EachBolt = r.thin + stiff*(r.thick-r.thin)
	r.Mode = thinMode
	if stiff == 1 {
		r.Mode = thickMode
	}
	r.counted = b.counted()
	r.Capacity = r.counted * r.EachBolt
	r.HeldBothSides = r.counted * pressed
	return r, nil
}

func (b TimberBolts) check() error {
	var in inputs
	in.must(b.Kind == Plywood || b.Kind == Softwood || b.Kind == Hardwood, "no timber is called %q: it is plywood, softwood or hardwood", string(b.Kind))
	in.must(b.Density >= 200 && b.Density <= 1000, "timber of %g kg/m3 is not covered: 200 to 1000", b.Density)
	in.positive("the thickness of the host", b.Thickness, "mm")
	in.positive("the thickness of the plate", b.Plate, "mm")
	in.must(b.Bolt >= 5.9 && b.Bolt <= 30, "a bolt of %g mm in timber is not covered: 6 to 30", b.Bolt)
	in.positive("the ultimate strength of the bolt", b.BoltUltimate, "MPa")
	in.must(b.Grain >= 0 && b.Grain <= 90, "force and grain lie 0 to 90 deg apart, not %g", b.Grain)
	in.must(b.Count >= 1 && b.Count <= mostBolts, "%d bolts hold nothing that can be reckoned", b.Count)
	in.notNegative("the spacing of the bolts", b.Spacing, "mm")
	return in.err
}

// embedment is the strength of the host under the bolt, MPa.
func (b TimberBolts) embedment() float64 {
	size := 1 - 0.01*b.Bolt
	if b.Kind == Plywood {
		return 0.11 * size * b.Density
	}
	across := 1.35 + 0.015*b.Bolt
	if b.Kind == Hardwood {
		across = 0.90 + 0.015*b.Bolt
	}
	s, c := math.Sincos(radians(b.Grain))
	return 0.082 * size * b.Density / (across*s*s + c*c)
}

// counted is how many bolts count: fewer where they stand in a row along the grain
// and may split it.
func (b TimberBolts) counted() float64 {
	n := float64(b.Count)
	if b.Kind == Plywood || b.Spacing == 0 {
		return n
	}
	inRow := min(n, math.Pow(n, 0.9)*math.Pow(b.Spacing/(13*b.Bolt), 0.25))
	// Pulled across the grain the row does not split; between, a straight line.
	return inRow + (n-inRow)*b.Grain/90
}

// Working writes the calculation down.
func (r TimberBoltsResult) Working() []working.Step {
	b := r.of
	embedment := "0.11 (1 - 0.01 d) rho"
	if b.Kind != Plywood {
		embedment = "0.082 (1 - 0.01 d) rho/(k90 sin^2 g + cos^2 g)"
	}
	return []working.Step{
		{Symbol: "fh", Meaning: "embedment strength of the host", Formula: embedment, Inputs: given("d", b.Bolt, "mm", "rho", b.Density, "kg/m3", "g", b.Grain, "deg"), Value: r.Embedment, Unit: "MPa", Source: enEmbedment},
		{Symbol: "My", Meaning: "yield moment of the bolt", Formula: "0.3 fu d^2.6", Inputs: given("fu", b.BoltUltimate, "MPa", "d", b.Bolt, "mm"), Value: r.yieldMoment, Unit: "N mm", Source: enTimber},
		{Symbol: "Fthin", Meaning: "a bolt through a thin plate", Formula: "min(0.4 fh t d, 1.15 sqrt(2 My fh d))", Inputs: given("fh", r.Embedment, "MPa", "t", b.Thickness, "mm", "d", b.Bolt, "mm", "My", r.yieldMoment, "N mm"), Value: r.thin, Unit: "N", Source: enTimber},
		{Symbol: "Fthick", Meaning: "a bolt through a thick plate", Formula: "min(fh t d, fh t d (sqrt(2 + 4 My/(fh d t^2)) - 1), 2.3 sqrt(My fh d))", Inputs: given("fh", r.Embedment, "MPa", "t", b.Thickness, "mm", "d", b.Bolt, "mm", "My", r.yieldMoment, "N mm"), Value: r.thick, Unit: "N", Source: enTimber},
		{Symbol: "F1", Meaning: "one bolt holds: " + r.Mode, Formula: "Fthin to Fthick in a straight line from tp = d/2 to d", Inputs: given("tp", b.Plate, "mm", "d", b.Bolt, "mm"), Value: r.EachBolt, Unit: "N", Source: enTimber},
		{Symbol: "n", Meaning: "bolts that count", Formula: "n, or n^0.9 (a1/(13 d))^0.25 in a row along the grain", Inputs: given("n", float64(b.Count), "", "a1", b.Spacing, "mm", "d", b.Bolt, "mm"), Value: r.counted, Source: enRow},
		{Symbol: "Rk", Meaning: "the host holds the bolts", Formula: "n F1", Inputs: given("n", r.counted, "", "F1", r.EachBolt, "N"), Value: r.Capacity, Unit: "N", Source: enTimber},
		{Symbol: "Rmax", Meaning: "at most, with the bolts held on both sides", Formula: "n fh t d", Inputs: given("n", r.counted, "", "fh", r.Embedment, "MPa", "t", b.Thickness, "mm", "d", b.Bolt, "mm"), Value: r.HeldBothSides, Unit: "N", Source: enEmbedment},
	}
}
