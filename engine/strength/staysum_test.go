package strength

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestStaySum(t *testing.T) {
	up, port := Direction{0, 0, 1}, Direction{0, 1, 0}
	r, err := StaySum{Pulls: []Pull{{3000, Direction{0, 0, 2}}, {4000, Direction{5, 0, 0}}}, Axis: up, Normal: port}.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "size", r.Size, 5000, 1e-12)
	near(t, "along", r.Along, 3000, 1e-12)
	near(t, "across", math.Abs(r.Across), 4000, 1e-12)
	near(t, "angle in the plane", math.Abs(r.In), 53.130102, 1e-7)
	if r.Off != 0 || r.Out != 0 {
		t.Errorf("off the plane: %g N, %g deg", r.Off, r.Out)
	}
	checkWorking(t, r.Working(), map[string]float64{"F": r.Size, "Fa": r.Along, "F2": 4000})
	out, _ := StaySum{Pulls: []Pull{{1000, Direction{0, math.Sin(math.Pi / 36), math.Cos(math.Pi / 36)}}}, Axis: up, Normal: port}.Reckon()
	near(t, "angle out of the plane", out.Out, 5, 1e-9)
	slack, err := StaySum{Pulls: []Pull{{0, up}}, Axis: up, Normal: port}.Reckon()
	if err != nil || slack.Size != 0 || slack.In != 0 {
		t.Errorf("a slack wire: %+v, %v", slack, err)
	}
}

func TestStaySumRefuses(t *testing.T) {
	up, port := Direction{0, 0, 1}, Direction{0, 1, 0}
	one := []Pull{{100, up}}
	for says, s := range map[string]StaySum{
		"at least one":             {Axis: up, Normal: port},
		"wire 1 leads nowhere":     {Pulls: []Pull{{100, Direction{}}}, Axis: up, Normal: port},
		"force of wire 1":          {Pulls: []Pull{{-100, up}}, Axis: up, Normal: port},
		"the fitting's axis leads": {Pulls: one, Normal: port},
		"normal to the fitting":    {Pulls: one, Axis: up, Normal: Direction{X: math.NaN()}},
		"does not lie":             {Pulls: one, Axis: up, Normal: Direction{0, 1, 1}},
	} {
		if _, err := s.Reckon(); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("want an error that says %q, got %v", says, err)
		}
	}
}

// TestStaySumParts: the three parts make up the sum, whatever way the fitting faces.
func TestStaySumParts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		part := rapid.Float64Range(-1, 1)
		s := StaySum{Axis: Direction{part.Draw(t, "ax"), part.Draw(t, "ay"), 1.5}}
		other := Direction{1.5, part.Draw(t, "by"), part.Draw(t, "bz")}
		s.Normal = Direction{s.Axis.Y*other.Z - s.Axis.Z*other.Y, s.Axis.Z*other.X - s.Axis.X*other.Z, s.Axis.X*other.Y - s.Axis.Y*other.X}
		for range rapid.IntRange(1, 5).Draw(t, "wires") {
			s.Pulls = append(s.Pulls, Pull{rapid.Float64Range(0, 5e4).Draw(t, "F"), Direction{part.Draw(t, "x"), part.Draw(t, "y"), 1.1}})
		}
		r, err := s.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		if whole := math.Sqrt(r.Along*r.Along + r.Across*r.Across + r.Off*r.Off); math.Abs(whole-r.Size) > 1e-9*(1+r.Size) {
			t.Fatalf("the parts make %g of %g", whole, r.Size)
		}
	})
}
