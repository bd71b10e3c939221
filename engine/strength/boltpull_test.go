package strength

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

var fourRows = BoltPull{Rows: []BoltRow{{20, 1}, {80, 1}, {140, 1}, {200, 1}}, Force: 40000, Arm: 15}

func TestBoltPull(t *testing.T) {
	r, err := fourRows.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{181, 723, 1265, 1807} {
		near(t, "heel", r.Heel[i], want, 2e-3)
	}
	for i, want := range []float64{-3000, -1000, 1000, 3000} {
		near(t, "centroid", r.Centroid[i], want, 1e-9)
	}
	if r.Largest != r.Centroid[3] || r.Governs != "centroid" {
		t.Errorf("%s governs with %g", r.Governs, r.Largest)
	}
	checkWorking(t, r.Working(), map[string]float64{"M": 600000, "Th4": r.Heel[3], "Tc4": r.Centroid[3], "T": r.Largest})
}

// TestBoltPullOfOutwardWire: five degrees of outward lead pull on the top bolt
// several times as hard as the strip's own offset does.
func TestBoltPullOfOutwardWire(t *testing.T) {
	offset := BoltPull{Rows: []BoltRow{{20, 1}, {70, 1}, {120, 1}, {170, 1}}, Force: 35500 * math.Cos(5*math.Pi/180), Arm: 6.35 / 2}
	out := offset
	out.Normal, out.NormalHeight = 35500*math.Sin(5*math.Pi/180), 270
	a, _ := offset.Reckon()
	b, err := out.Reckon()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "heel of the outward part over that of the offset", (b.Heel[3]-a.Heel[3])/a.Heel[3], 7.4, 0.02)
}

func TestBoltPullOfOneRow(t *testing.T) {
	r, err := BoltPull{Rows: []BoltRow{{40, 2}}, Force: 1000, Arm: 10, Normal: 100, NormalHeight: 60}.Reckon()
	if err != nil || r.Centroid != nil {
		t.Fatalf("%+v, %v", r, err)
	}
	near(t, "heel", r.Largest, (10000+6000)/40.0/2, 1e-12)
}

func TestBoltPullRefuses(t *testing.T) {
	for says, change := range map[string]func(*BoltPull){
		"at least one row":   func(p *BoltPull) { p.Rows = nil },
		"row 2 has 0 bolts":  func(p *BoltPull) { p.Rows[1].Bolts = 0 },
		"height of row 1":    func(p *BoltPull) { p.Rows[0].Height = -1 },
		"at one height":      func(p *BoltPull) { p.Rows[0].Height = 80 },
		"none can hold":      func(p *BoltPull) { p.Rows = []BoltRow{{0, 2}} },
		"arm of the force":   func(p *BoltPull) { p.Arm = math.NaN() },
		"force along":        func(p *BoltPull) { p.Force = math.Inf(1) },
		"away from the host": func(p *BoltPull) { p.Normal = -3 },
		"pulled away":        func(p *BoltPull) { p.NormalHeight = 1e308 },
	} {
		p := fourRows
		p.Rows = append([]BoltRow(nil), fourRows.Rows...)
		change(&p)
		if _, err := p.Reckon(); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("want an error that says %q, got %v", says, err)
		}
	}
}

// TestBoltPullBalances: heeling, the pulls hold the moment about the edge;
// preloaded, they add up to the outward pull and hold its moment.
func TestBoltPullBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := BoltPull{Force: rapid.Float64Range(0, 1e5).Draw(t, "force"), Arm: rapid.Float64Range(0, 50).Draw(t, "arm"),
			Normal: rapid.Float64Range(0, 1e4).Draw(t, "normal"), NormalHeight: rapid.Float64Range(0, 400).Draw(t, "at")}
		for i := range rapid.IntRange(2, 6).Draw(t, "rows") {
			p.Rows = append(p.Rows, BoltRow{Height: 10 + 50*float64(i) + rapid.Float64Range(0, 40).Draw(t, "height"), Bolts: rapid.IntRange(1, 3).Draw(t, "bolts")})
		}
		r, err := p.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		applied := p.Force*p.Arm + p.Normal*p.NormalHeight
		heel, sum, centroid := 0.0, 0.0, 0.0
		for i, row := range p.Rows {
			heel += float64(row.Bolts) * r.Heel[i] * row.Height
			sum += float64(row.Bolts) * r.Centroid[i]
			centroid += float64(row.Bolts) * r.Centroid[i] * row.Height
		}
		if math.Abs(heel-applied) > 1e-9*(1+applied) || math.Abs(centroid-applied) > 1e-8*(1+applied) || math.Abs(sum-p.Normal) > 1e-8*(1+p.Normal+applied/10) {
			t.Fatalf("heel %g, centroid %g of %g; sum %g of %g", heel, centroid, applied, sum, p.Normal)
		}
	})
}
