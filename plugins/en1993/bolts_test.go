package en1993

import (
	"math"
	"strings"
	"testing"

	"chainwale/plugins/clauses/clausetest"
)

// m20 is an M20 of class 8.8, threads in the plane.
var m20 = clausetest.Facts{
	"bolt_diameter": 20.0, "bolt_stress_area": 245.0, "bolt_ultimate": 800.0, "bolt_family": "steel", "grade": "8.8", "threads_in_plane": true, "bolt_head": "hex",
	"largest_share": 0.3, "pull_share": 0.1,
}

// TestEC3Bolts runs the values by which an open program for the standard tests itself.
// The threads of 8.8 close here, since the class is known, where the project's own
// formula takes 0.5 for every thread.
func TestEC3Bolts(t *testing.T) {
	s := book(t)
	threads := clausetest.Published(t, "ec3-m20-8-8-threads")
	in := clausetest.Ask(t, s, "bolt_group", m20)
	clausetest.Near(t, "double shear in the threads", 2*in.Known["bolt_shear"], threads.Odd("shear"), 1e-3)
	clausetest.Near(t, "stress area", clausetest.Steps(t, s, "bolt_group", "bolt_shear", m20)[0].Value, threads.Out("area"), 1e-12)

	shank := clausetest.Published(t, "ec3-m20-8-8-shank")
	out := clausetest.Ask(t, s, "bolt_group", m20.With(clausetest.Facts{"threads_in_plane": false}))
	clausetest.Near(t, "double shear of the shank", 2*out.Known["bolt_shear"], shank.Out("shear"), shank.Tolerance)

	hard := clausetest.Published(t, "ec3-m20-10-9-tension")
	strong := m20.With(clausetest.Facts{"bolt_ultimate": 1000.0, "grade": "class 10.9"})
	a := clausetest.Ask(t, s, "bolt_group", strong)
	clausetest.Near(t, "tension of 10.9", a.Known["bolt_tension"], hard.Out("tension"), hard.Tolerance)
	clausetest.Near(t, "shear of 10.9 in the threads", a.Known["bolt_shear"], 0.5*1000*245/1.25, 1e-12)
	clausetest.AllShown(t, s, "bolt_group", m20)
}

// a4 is an M10 of A4-70, threads in the plane.
var a4 = m20.With(clausetest.Facts{"bolt_diameter": 10.0, "bolt_stress_area": 58.0, "bolt_ultimate": 700.0, "bolt_family": "stainless", "grade": "A4-70"})

func TestStainlessBolts(t *testing.T) {
	s := book(t)
	a := clausetest.Ask(t, s, "bolt_group", a4)
	clausetest.Near(t, "shear in the threads", a.Known["bolt_shear"], 16240, 1e-12)
	clausetest.Near(t, "tension", a.Known["bolt_tension"], 29232, 1e-12)
	clausetest.Near(t, "both together", a.Known["bolts"], 1/(0.3/16240+0.1/(1.4*29232)), 1e-12)
	shank := clausetest.Ask(t, s, "bolt_group", a4.With(clausetest.Facts{"threads_in_plane": false}))
	clausetest.Near(t, "shear of the shank", shank.Known["bolt_shear"], 0.6*700*math.Pi*25/1.25, 1e-12)
	sunk := clausetest.Ask(t, s, "bolt_group", a4.With(clausetest.Facts{"bolt_head": "countersunk"}))
	clausetest.Near(t, "tension of a countersunk head", sunk.Known["bolt_tension"], 29232*0.7, 1e-12)
	bronze := clausetest.Ask(t, s, "bolt_group", a4.With(clausetest.Facts{"bolt_family": "bronze"}))
	for _, clause := range []string{"3.6.1, table 3.4, shear", "3.6.1, table 3.4, tension", "3.6.1, table 3.4, shear and tension"} {
		if !strings.Contains(bronze.Refused[clause], "the bolt is of bronze") {
			t.Errorf("clause %s of a bronze bolt: %q", clause, bronze.Refused[clause])
		}
	}
	idle := clausetest.Ask(t, s, "bolt_group", a4.With(clausetest.Facts{"largest_share": 0.0, "pull_share": 0.0}))
	if !strings.Contains(idle.Refused["3.6.1, table 3.4, shear and tension"], "no load") {
		t.Errorf("bolts that carry nothing: %v", idle)
	}
	leaning := clausetest.Ask(t, s, "bolt_group", a4.With(clausetest.Facts{"pull_share": nil}))
	if _, known := leaning.Known["bolts"]; known || leaning.Known["bolt_shear"] == 0 {
		t.Errorf("the pull is unknown: %v", leaning.Known)
	}
}

// TestLineOfFour: four M10 along the plate under a wire that leans 8 deg, whose worst
// bolt carries 10 734.4 N of 40 kN.
func TestLineOfFour(t *testing.T) {
	c := clausetest.Published(t, "golden-bolt-line")
	bolts, ok := c.Outputs["bolts"].([]any)
	if !ok || bolts[3] != "10734.44 N" {
		t.Fatalf("the line of bolts carries %v", bolts)
	}
	a := clausetest.Ask(t, book(t), "bolt_group", a4.With(clausetest.Facts{"largest_share": 10734.44 / 40000, "pull_share": 0.0}))
	clausetest.Near(t, "design load of the wire", a.Known["bolts"], 16240*40000/10734.44, 1e-12)
}

// oneHole is the hole of an M10 of A4-70 in 6 mm of 316, which carries a quarter.
var oneHole = clausetest.Facts{
	"hole": 11.0, "end": 22.0, "side": 25.0, "pitch": 0.0, "in_line": true, "lean": 0.0, "bolt_diameter": 10.0, "bolt_ultimate": 700.0, "bolt_head": "hex", "share": 0.25,
	"fitting.thickness": 6.0, "fitting.metal.yield": 205.0, "fitting.metal.ultimate": 515.0, "fitting.metal.family": "steel",
}

func TestBoltHole(t *testing.T) {
	s := book(t)
	for family, id := range map[string]string{"steel": "m10-a4-70-in-316", "stainless": "m10-a4-70-in-316-reduced"} {
		c := clausetest.Published(t, id)
		facts := oneHole.With(clausetest.Facts{"fitting.metal.family": family, "fitting.thickness": c.In("thickness"), "hole": c.In("hole"), "end": c.In("end"), "side": c.In("side")})
		a := clausetest.Ask(t, s, "bolt_hole", facts)
		clausetest.Near(t, "bearing in "+family, a.Known["hole_bearing"]*0.25, c.Out("en"), c.Tolerance)
		clausetest.AllShown(t, s, "bolt_hole", facts)
	}
	inner := clausetest.Ask(t, s, "bolt_hole", oneHole.With(clausetest.Facts{"pitch": 24.2}))
	clausetest.Near(t, "bearing of a close pitch", inner.Known["hole_bearing"]*0.25, 2.5*(24.2/33-0.25)*515*60/1.25, 1e-9)
	a := clausetest.Ask(t, s, "bolt_hole", clausetest.Facts{"hole": 11.0})
	for name, want := range map[string]float64{"end_needed": 13.2, "side_needed": 13.2, "pitch_needed": 24.2} {
		clausetest.Near(t, name, a.Known[name], want, 1e-12)
	}
	if len(a.Known) != 3 {
		t.Errorf("a hole alone gives %v", a.Known)
	}
}

func TestBoltHoleNotCovered(t *testing.T) {
	for says, change := range map[string]clausetest.Facts{
		"countersunk":              {"bolt_head": "countersunk"},
		"square neck":              {"bolt_head": "square-neck"},
		"beside each other":        {"in_line": false},
		"leans 6 deg":              {"lean": 6.0},
		"leans -6 deg":             {"lean": -6.0},
		"the plate is of titanium": {"fitting.metal.family": "titanium"},
		"no share":                 {"share": 0.0},
		"breaks out of the end":    {"end": 5.0},
	} {
		a := clausetest.Ask(t, book(t), "bolt_hole", oneHole.With(change))
		if why := a.Refused["3.6.1, table 3.4, bearing"]; !strings.Contains(why, says) {
			t.Errorf("%v is refused for %q", change, why)
		}
	}
}
