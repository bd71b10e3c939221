package strength

import (
	"fmt"
	"math"

	"chainwale/engine/working"
)

// BoltRow is a row of bolts across a plate: its height above the edge about which
// the plate heels over, mm, and how many bolts stand in it.
type BoltRow struct {
	Height float64
	Bolts  int
}

// BoltPull is a plate that its load tips away from the host, so that the bolts pull.
//
// Returns the pull on each bolt of a row, N, by two pictures: Heel, in which the
// plate heels about its edge and the bolts carry no preload, and Centroid, in which
// preload holds the plate to the host all over. Largest is the greatest pull of
// either.
//
// Equation, h from the heeling edge, yc the centre of the bolts:
//
//	M        = force * arm
//	Heel     = (M + normal * normal height) h / sum(n h^2)
//	Centroid = normal/sum(n) + (M + normal (normal height - yc)) (h - yc) / sum(n (h - yc)^2)
//
// Symbols: Force along the plate, N, and its Arm from the face on the host, mm;
// Normal, the load's part away from the host, N, and NormalHeight, where it acts,
// from the heeling edge, mm.
//
// Holds for a stiff plate on a stiff host. Arm and normal are taken to tip the
// plate the same way, about the edge that the rows are measured from. With one row
// Centroid is empty: preload in one row holds no moment. Prying isn't covered.
//
// Source: heel after Bhandari, Design of Machine Elements, 7.11 and example 7.7
// (published); centroid and the normal part are statics (computed). Errors: no
// row, a row below the edge or without bolts, all rows on the edge, numbers that
// are negative or not finite.
type BoltPull struct {
	Rows                 []BoltRow
	Force, Arm           float64
	Normal, NormalHeight float64
}

// BoltPullResult are the pulls of a BoltPull, N a bolt, a value a row.
type BoltPullResult struct {
	Heel, Centroid []float64
	Largest        float64
	// Governs is "heel" or "centroid".
	Governs string

	of                    BoltPull
	moment, atHeel, atMid float64
	heelSum, midSum, mid  float64
	bolts                 int
}

var (
	bhandari = working.Source{Title: "Bhandari, Design of Machine Elements", Clause: "7.11, example 7.7", As: working.Published, For: "the form of the equation"}
)

// Reckon gives the pulls.
func (p BoltPull) Reckon() (BoltPullResult, error) {
	if err := p.check(); err != nil {
		return BoltPullResult{}, err
	}
	r := BoltPullResult{of: p, moment: p.Force * p.Arm}
	for _, row := range p.Rows {
		n := float64(row.Bolts)
		r.bolts += row.Bolts
		r.mid += n * row.Height
		r.heelSum += n * row.Height * row.Height
	}
	r.mid /= float64(r.bolts)
	for _, row := range p.Rows {
		r.midSum += float64(row.Bolts) * math.Pow(row.Height-r.mid, 2)
	}
	r.atHeel = r.moment + p.Normal*p.NormalHeight
	r.atMid = r.moment + p.Normal*(p.NormalHeight-r.mid)
	for _, row := range p.Rows {
		r.Heel = append(r.Heel, r.atHeel*row.Height/r.heelSum)
		if len(p.Rows) > 1 {
			r.Centroid = append(r.Centroid, p.Normal/float64(r.bolts)+r.atMid*(row.Height-r.mid)/r.midSum)
		}
	}
	r.Governs = "heel"
	for i := range p.Rows {
		r.Largest = max(r.Largest, r.Heel[i])
	}
	for _, pull := range r.Centroid {
		if pull > r.Largest {
			r.Largest, r.Governs = pull, "centroid"
		}
	}
	return r, nil
}

func (p BoltPull) check() error {
	var in inputs
	in.must(len(p.Rows) > 0, "a plate needs at least one row of bolts")
	highest := 0.0
	for i, row := range p.Rows {
		if !(row.Height >= 0 && row.Height <= most) {
			in.notNegative(fmt.Sprintf("the height of row %d above the heeling edge", i+1), row.Height, "mm")
		}
		in.must(row.Bolts >= 1 && row.Bolts <= mostBolts, "row %d has %d bolts", i+1, row.Bolts)
		highest = max(highest, row.Height)
		for j := range p.Rows[:i] {
			in.must(math.Abs(row.Height-p.Rows[j].Height) > 1e-3, "rows %d and %d are at one height: count their bolts as one row", j+1, i+1)
		}
	}
	in.must(len(p.Rows) <= mostBolts, "%d rows are more than the %d that are covered", len(p.Rows), mostBolts)
	in.must(len(p.Rows) == 0 || highest > 1e-3, "no row stands above the heeling edge, so none can hold the plate")
	in.notNegative("the force along the plate", p.Force, "N")
	in.notNegative("the arm of the force", p.Arm, "mm")
	in.notNegative("the pull away from the host", p.Normal, "N")
	in.notNegative("the height at which the plate is pulled away", p.NormalHeight, "mm")
	return in.err
}

// Working writes the calculation down.
func (r BoltPullResult) Working() []working.Step {
	p := r.of
	steps := []working.Step{
		{Symbol: "M", Meaning: "moment of the force beside the host's face", Formula: "F arm", Inputs: given("F", p.Force, "N", "arm", p.Arm, "mm"), Value: r.moment, Unit: "N mm", Source: statics},
		{Symbol: "Mh", Meaning: "moment about the heeling edge", Formula: "M + N hN", Inputs: given("M", r.moment, "N mm", "N", p.Normal, "N", "hN", p.NormalHeight, "mm"), Value: r.atHeel, Unit: "N mm", Source: statics},
	}
	for i, row := range p.Rows {
		steps = append(steps, working.Step{Symbol: fmt.Sprintf("Th%d", i+1), Meaning: fmt.Sprintf("pull on a bolt of row %d, the plate heeling", i+1), Formula: "Mh h / sum(n h^2)", Inputs: given("Mh", r.atHeel, "N mm", "h", row.Height, "mm", "sum", r.heelSum, "mm2"), Value: r.Heel[i], Unit: "N", Source: bhandari})
	}
	for i, pull := range r.Centroid {
		steps = append(steps, working.Step{Symbol: fmt.Sprintf("Tc%d", i+1), Meaning: fmt.Sprintf("pull on a bolt of row %d, preload holding", i+1), Formula: "N/sum(n) + (M + N (hN - yc)) (h - yc) / sum(n (h - yc)^2)", Inputs: given("N", p.Normal, "N", "M", r.moment, "N mm", "yc", r.mid, "mm", "h", p.Rows[i].Height, "mm", "sum", r.midSum, "mm2"), Value: pull, Unit: "N", Source: statics})
	}
	return append(steps, working.Step{Symbol: "T", Meaning: "the greatest pull: " + r.Governs, Formula: "max(Th, Tc)", Value: r.Largest, Unit: "N", Source: statics})
}
