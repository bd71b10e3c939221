package fact

import (
	"math"
	"testing"
	"time"

	"chainwale/engine/plan"
)

const bowspritPlan = `chainwale: 1
boat:
  name: Long Nose
  mast: { height: 14 m }
  bowsprit: { heel: { x: 4 m, y: 0 mm, z: 2 m } }
stays:
  - id: forestay
    role: forestay
    side: centre
    wire: { construction: 1x19, metal: 316, diameter: 8 mm }
    lower: { x: 6 m, y: 0 mm, z: 2.4 m }
    upper: { x: 0 mm, y: 0 mm, z: 13.8 m }
  - id: bobstay
    role: bobstay
    side: centre
    wire: { construction: 1x19, metal: 316, diameter: 10 mm }
    lower: { x: 4.2 m, y: 0 mm, z: 0.6 m }
    upper: { x: 6 m, y: 0 mm, z: 2.4 m }
  - id: whisker
    role: whisker
    side: both
    wire: { construction: 1x19, metal: 316, diameter: 6 mm }
    lower: { x: 4 m, y: 0.9 m, z: 2 m }
    upper: { x: 6 m, y: 0 mm, z: 2.4 m }
`

// What holds a bowsprit pulls as the forestay's lift asks: the parts of both pulls across
// the spar are in balance.
func TestBowspritStays(t *testing.T) {
	p, problems, err := plan.Parse("p.yaml", []byte(bowspritPlan))
	if err != nil || len(problems) > 0 {
		t.Fatal(problems, err)
	}
	c, err := TheCatalogue()
	if err != nil {
		t.Fatal(err)
	}
	f, err := Build(c, p, time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC))
	if err != nil {
		t.Fatal(err)
	}
	// In the plane of the spar: a spar of slope 0.4 in 2, the forestay -6 along and 11.4
	// up, the bobstay -1.8 along and 1.8 down.
	spar := math.Hypot(2, 0.4)
	cross := func(x, z float64) float64 { return math.Abs(-2*z+0.4*x) / spar / math.Hypot(x, z) }
	want := 45500 * cross(-6, 11.4) / cross(-1.8, -1.8)
	got := map[string]float64{}
	for _, s := range f.Stays {
		got[s.ID] = s.Required.Float()
		if s.Role.Is("bobstay") && (!s.RequiredBy.Is("the forestay") || s.DesignLoad.Float() != s.BreakLoad.Float()) {
			t.Errorf("required by %s, its plate has to outlast %g N", s.RequiredBy.Text(), s.DesignLoad.Float())
		}
	}
	if math.Abs(got["bobstay"]-want) > 1e-6*want {
		t.Errorf("the bobstay must break at %g N, by the balance at %g N", got["bobstay"], want)
	}
	if got["whisker-port"] != got["whisker-starboard"] || !(got["whisker-port"] > 0) {
		t.Errorf("the whiskers must break at %g and %g N", got["whisker-port"], got["whisker-starboard"])
	}
	if !math.IsNaN(got["forestay"]) {
		t.Errorf("no righting moment is given, and the forestay must break at %g N", got["forestay"])
	}
}
