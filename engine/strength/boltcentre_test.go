package strength

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// upright is n bolts in a line up the plate, 3 in apart, and a load straight up
// beside them by so many inches.
func upright(n int, ex float64) BoltGroupUltimate {
	g := BoltGroupUltimate{Force: Vector{0, 1000}, At: Vector{ex * 25.4, 0}}
	for i := range n {
		g.Bolts = append(g.Bolts, GroupBolt{Y: float64(i) * 76.2})
	}
	return g
}

// TestBoltGroupUltimate holds coefficients of one line of bolts, which another
// program found; the one of six bolts is in the tables of the AISC Manual as 3.55.
func TestBoltGroupUltimate(t *testing.T) {
	arms := []float64{1, 2, 3, 4, 6, 8, 12}
	for n, want := range map[int][]float64{
		2: {1.6333, 1.1778, .8779, .6893, .4761, .3618, .2435},
		3: {2.7148, 2.2249, 1.7544, 1.3996, .9673, .7319, .4900},
		4: {3.7515, 3.3195, 2.8139, 2.3645, 1.7299, 1.3434, .9187},
		5: {4.7668, 4.3927, 3.8990, 3.3985, 2.5849, 2.0360, 1.4025},
		6: {5.7711, 5.4452, 4.9841, 4.4741, 3.5453, 2.8537, 2.0049},
		8: {7.7628, 7.5071, 7.1180, 6.6430, 5.6254, 4.7202, 3.4423},
	} {
		for i, ex := range arms {
			r, err := upright(n, ex).Reckon()
			if err != nil {
				t.Fatalf("%d bolts at %g in: %v", n, ex, err)
			}
			near(t, "C", r.Coefficient, want[i], 2e-4)
		}
	}
}

func TestBoltGroupUltimateInclined(t *testing.T) {
	r, err := BoltGroupUltimate(line4).Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "C", r.Coefficient, 3.8294746511625055, 1e-7)
	near(t, "the centre along x", r.Centre.X, 314.234458098327, 1e-5)
	near(t, "the centre along y", r.Centre.Y-90, -45.917453117810766, 1e-5)
	checkWorking(t, r.Working(), map[string]float64{"C": r.Coefficient, "xi": r.Centre.X, "Mz": r.moment})

	eight := BoltGroupUltimate{Force: Vector{80, -80}, Moment: -160 * 25.4}
	for i := range 4 {
		eight.Bolts = append(eight.Bolts, GroupBolt{X: -38.1, Y: float64(i)*76.2 - 114.3}, GroupBolt{X: 38.1, Y: float64(i)*76.2 - 114.3})
	}
	if r, err = eight.Reckon(); err != nil {
		t.Fatal(err)
	}
	near(t, "C of two lines of four", r.Coefficient, 6.621, 1e-3)
	near(t, "its centre along x", r.Centre.X, -4.122*25.4, 1e-3)
	near(t, "its centre along y", r.Centre.Y, -4.892*25.4, 1e-3)
}

// TestBoltGroupUltimateAlike: without a moment the bolts share alike.
func TestBoltGroupUltimateAlike(t *testing.T) {
	r, err := upright(4, 0).Reckon()
	if err != nil || r.HasCentre || r.Bolts[2] != (Vector{0, 250}) {
		t.Fatalf("%+v, %v", r, err)
	}
	near(t, "C", r.Coefficient, 4*0.98150, 1e-4)
	checkWorking(t, r.Working(), map[string]float64{"C": r.Coefficient})
	one, err := BoltGroupUltimate{Bolts: []GroupBolt{{}}, Force: Vector{3, 4}}.Reckon()
	if err != nil || one.Largest != 5 {
		t.Errorf("one bolt: %+v, %v", one, err)
	}
}

func TestBoltGroupUltimateRefuses(t *testing.T) {
	unlike := upright(3, 2)
	for i := range unlike.Bolts {
		unlike.Bolts[i].Area = float64(50 + i)
	}
	idle := upright(3, 2)
	idle.Force = Vector{}
	idle.Moment = 1000
	for says, g := range map[string]BoltGroupUltimate{"like bolts only": unlike, "needs a force": idle, "at least one bolt": {Force: Vector{1, 1}}} {
		if _, err := g.Reckon(); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("want an error that says %q, got %v", says, err)
		}
	}
}

// TestBoltGroupUltimateBalances: the bolts' forces add up to the load and its
// moment, none passes what a bolt needs, and the group is worth no more than its
// bolts.
func TestBoltGroupUltimateBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := groups(t)
		for i := range g.Bolts {
			g.Bolts[i].Area = 0
		}
		if g.Force.Size() < 1 {
			t.Skip("no force")
		}
		r, err := BoltGroupUltimate(g).Reckon()
		if err != nil {
			t.Fatal(err)
		}
		var sum Vector
		moment := 0.0
		for i, f := range r.Bolts {
			sum = Vector{sum.X + f.X, sum.Y + f.Y}
			moment += g.Bolts[i].X*f.Y - g.Bolts[i].Y*f.X
		}
		applied := g.At.X*g.Force.Y - g.At.Y*g.Force.X + g.Moment
		scale := math.Abs(g.Moment) + 1000*(g.Force.Size()+r.Largest)
		if !r.HasCentre {
			// The load runs through the bolts' centre but for less than matters.
			scale *= 1e4
		}
		if sum.minus(g.Force).Size() > 1e-6*g.Force.Size()+1e-9*r.Largest || math.Abs(moment-applied) > 1e-6*scale {
			t.Fatalf("the bolts sum to %v and %g, applied are %v and %g", sum, moment, g.Force, applied)
		}
		if r.Largest > r.BoltNeeded || r.Coefficient > float64(len(g.Bolts)) {
			t.Fatalf("a bolt carries %g of %g, the group is worth %g of %d bolts", r.Largest, r.BoltNeeded, r.Coefficient, len(g.Bolts))
		}
	})
}
