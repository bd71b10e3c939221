package fact

import (
	"math"
	"strings"
	"testing"
)

const (
	capPin  = "{ role: pin, diameter: 16.2 mm, along: 25 mm }"
	capTop  = "- { role: bolt, diameter: 10 mm, along: 140 mm }\n      - { role: bolt, diameter: 10 mm, along: 200 mm }\n      - { role: bolt, diameter: 10 mm, along: 260 mm }\n      - { role: bolt, diameter: 10 mm, along: 320 mm }\n      - { role: bolt, diameter: 10 mm, along: 375 mm }"
	capLast = "diameter: 10 mm, along: 375 mm"
)

// capLanding is where the cap shroud meets its plate to port.
func capLanding(t *testing.T, replace ...string) *Landing {
	t.Helper()
	for _, l := range foldedBoat(t, replace...).Landings {
		if l.Fitting.ID == "cap-plate-port" {
			return l
		}
	}
	t.Fatal("nothing lands on the cap plate")
	return nil
}

// TestOvalPinHole: along the pull an oval pin hole takes its width from the plate and
// comes nearer to the end by half of what it is longer; across it takes its length. The
// pin is as loose as the hole is long.
func TestOvalPinHole(t *testing.T) {
	round := capLanding(t)
	measured := round.PinMeasured.Float()
	along := capLanding(t, capPin, "{ role: pin, shape: oval, diameter: 16.2 mm, long: 20.2 mm, along: 25 mm }")
	closeTo(t, "what it takes", &along.Hole, 16.2, 1e-9)
	closeTo(t, "its length", &along.HoleLong, 20.2, 1e-9)
	closeTo(t, "metal before it", &along.End, 23, 1e-9)
	closeTo(t, "clearance", &along.PinClearance, 20.2-measured, 1e-9)
	nearer := capLanding(t, capPin, "{ role: pin, diameter: 16.2 mm, along: 23 mm }")
	closeTo(t, "strength", &along.PlateUltimate, nearer.PlateUltimate.Float(), 1e-6)
	closeTo(t, "end ratio", &along.EndRatio, 23/16.2, 1e-9)
	closeTo(t, "side ratio", &along.SideRatio, round.SideRatio.Float(), 1e-9)
	if !along.OneSystem.Known() || along.OneSystem.Yes() != round.OneSystem.Yes() {
		t.Error("a hole that wear has drawn out is of another system than when it was round")
	}

	across := capLanding(t, capPin, "{ role: pin, shape: oval, diameter: 16.2 mm, long: 20.2 mm, long_way: across, along: 25 mm }")
	closeTo(t, "what it takes, across", &across.Hole, 20.2, 1e-9)
	closeTo(t, "metal before it, across", &across.End, 25, 1e-9)
	closeTo(t, "clearance, across", &across.PinClearance, 20.2-measured, 1e-9)
	wide := capLanding(t, capPin, "{ role: pin, diameter: 20.2 mm, along: 25 mm }")
	closeTo(t, "strength, across", &across.PlateUltimate, wide.PlateUltimate.Float(), 1e-6)
	for name, l := range map[string]*Landing{"along": along, "across": across} {
		if !(l.PlateUltimate.Float() < round.PlateUltimate.Float()) || len(l.PinClearance.Working()) == 0 {
			t.Errorf("%s: an oval hole leaves the plate as strong as a round one, or its clearance has no working", name)
		}
	}
	closeTo(t, "a round hole's length", &round.HoleLong, 16.2, 0)

	tight := capLanding(t, capPin, "{ role: pin, shape: oval, diameter: 15 mm, long: 30 mm, along: 25 mm }")
	closeTo(t, "a pin that does not go in", &tight.PinClearance, 15-measured, 1e-9)
	unknown := capLanding(t, capPin, "{ role: pin, shape: oval, long: 20 mm, along: 25 mm }")
	for name, n := range map[string]*Number{"hole": &unknown.Hole, "strength": &unknown.PlateUltimate, "clearance": &unknown.PinClearance} {
		if n.Known() {
			t.Errorf("without a width the %s is %v", name, n.Float())
		}
	}
}

// TestOvalBeforePin: another hole before the pin's takes as much metal as it reaches.
func TestOvalBeforePin(t *testing.T) {
	const two = "{ role: pin, diameter: 16.2 mm, along: 60 mm }\n      - { role: bolt, shape: oval, diameter: 6 mm, long: 20 mm, along: 25 mm"
	closeTo(t, "along", &capLanding(t, capPin, two+" }").End, 60-25-10, 1e-9)
	closeTo(t, "across", &capLanding(t, capPin, two+", long_way: across }").End, 60-25-3, 1e-9)
	closeTo(t, "beside", &capLanding(t, capPin, two+", across: 13 mm }").End, 60, 1e-9)
	closeTo(t, "across and beside", &capLanding(t, capPin, two+", across: -12 mm, long_way: across }").End, 60-25-3, 1e-9)
}

// capGroup are the bolts of the cap plate to port.
func capGroup(t *testing.T, replace ...string) *BoltGroup {
	t.Helper()
	for _, g := range foldedBoat(t, replace...).BoltGroups {
		if g.Fitting.ID == "cap-plate-port" {
			return g
		}
	}
	t.Fatal("the cap plate has no bolts")
	return nil
}

// TestOvalBoltHole: the last bolt stands in an oval hole. It is nearer to the far end, and
// the others carry without it.
func TestOvalBoltHole(t *testing.T) {
	const along, across = "shape: oval, diameter: 10 mm, long: 18 mm, along: 375 mm", "shape: oval, diameter: 10 mm, long: 18 mm, long_way: across, along: 375 mm"
	round, _ := capHoles(t)
	holes, _ := capHoles(t, capLast, along)
	last := holes[4]
	closeTo(t, "what it takes", &last.Hole, 10, 0)
	closeTo(t, "to the far end", &last.End, 21, 1e-9)
	closeTo(t, "end ratio", &last.EndRatio, 2.1, 1e-9)
	closeTo(t, "pitch before it", &holes[3].Pitch, 55-4, 1e-9)
	closeTo(t, "its own share", &last.Share, round[4].Share.Float(), 1e-9)
	four := strings.Replace(capTop, "\n      - { role: bolt, "+capLast+" }", "", 1)
	without, _ := capHoles(t, capTop, four)
	closeTo(t, "the others' share", &holes[0].Share, without[0].Share.Float(), 1e-9)
	nearer, _ := capHoles(t, capLast, "diameter: 10 mm, along: 379 mm")
	closeTo(t, "bearing", &last.Bearing, nearer[4].Bearing.Float(), 1e-6)

	holes, _ = capHoles(t, capLast, across)
	last = holes[4]
	closeTo(t, "what it takes, across", &last.Hole, 18, 0)
	closeTo(t, "to the far end, across", &last.End, 25, 1e-9)
	wide, _ := capHoles(t, capLast, "diameter: 18 mm, along: 375 mm")
	closeTo(t, "bearing, across", &last.Bearing, 0.6*wide[4].Bearing.Float(), 1e-6)
	if steps := last.Bearing.Working(); len(steps) == 0 || steps[len(steps)-1].Value != last.Bearing.Float() {
		t.Error("the working ends in another number")
	}

	g := capGroup(t, capLast, along)
	closeTo(t, "spacing", &g.Spacing, (375-320-4)/10.0, 1e-9)
	closeTo(t, "the largest share", &g.LargestShare, capGroup(t, capTop, four).LargestShare.Float(), 1e-9)
	if g := capGroup(t, capLast, across); math.Abs(g.Spacing.Float()-55/18.0) > 1e-9 {
		t.Errorf("spacing %v", g.Spacing.Float())
	}
}

// TestOvalTopHole: the section at the top bolt loses what its hole takes.
func TestOvalTopHole(t *testing.T) {
	_, round := capHoles(t)
	const top = "diameter: 10 mm, along: 140 mm }\n      - { role: bolt, diameter: 10 mm, along: 200 mm }\n      - { role: bolt, diameter: 10 mm, along: 260 mm }\n      - { role: bolt, diameter: 10 mm, along: 320 mm }\n      - { role: bolt, diameter: 10 mm, along: 375 mm }"
	_, along := capHoles(t, top, "shape: oval, long: 20 mm, "+top)
	_, across := capHoles(t, top, "shape: oval, long: 20 mm, long_way: across, "+top)
	closeTo(t, "along", &along.NetUltimate, round.NetUltimate.Float(), 1e-6)
	closeTo(t, "across", &across.NetUltimate, round.NetUltimate.Float()*(45-20)/(45-10), 1e-6)
}

// TestOvalsAlone: where every bolt can slide, which of them bears can't be told.
func TestOvalsAlone(t *testing.T) {
	all := strings.ReplaceAll(capTop, "role: bolt,", "role: bolt, shape: oval, long: 20 mm,")
	g := capGroup(t, capTop, all)
	for name, n := range map[string]*Number{"share": &g.LargestShare, "bolts": &g.BoltsTimesWire, "host": &g.Host} {
		if n.Known() {
			t.Errorf("the %s is %v", name, n.Float())
		}
	}
	if !strings.Contains(g.LargestShare.Why(), "every bolt stands in an oval hole") {
		t.Errorf("it says %q", g.LargestShare.Why())
	}
	holes, _ := capHoles(t, capTop, all)
	if len(holes) != 5 || holes[0].Ultimate.Known() {
		t.Errorf("%d holes, the first stands %v", len(holes), holes[0].Ultimate.Float())
	}
}

// TestOvalMeets: in the match of holes only the width of an oval one counts as play.
func TestOvalMeets(t *testing.T) {
	const low, long = "name: low, role: bolt, diameter: 10 mm", "name: low, role: bolt, shape: oval, long: 20 mm, diameter: 10 mm"
	round, oval := foldedBoat(t).Matches[0], foldedBoat(t, low, long).Matches[0]
	closeTo(t, "clearance", &oval.Clearance, round.Clearance.Float(), 0)
	closeTo(t, "miss", &oval.Miss, round.Miss.Float(), 0)
}
