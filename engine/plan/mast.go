package plan

import "chainwale/engine/finding"

// Mast is the mast, with heights above its heel.
type Mast struct {
	At finding.Place
	// Deck is where the partners hold a keel-stepped mast.
	Height, Deck          Amount
	Section               MastSection
	Alloy                 Text
	Mass                  Amount
	Wedged, CountPartners YesNo
	// Spreaders stand from the lowest up.
	Spreaders []Spreader
	Windage   []Windage
}

// MastSection is the outside of the spar: Long fore and aft, Broad across.
type MastSection struct {
	At                finding.Place
	Long, Broad, Wall Amount
}

// Spreader is a pair of spreaders: HalfLength from the mast's middle to a tip, Sweep
// how far the tips stand aft.
type Spreader struct {
	At                        finding.Place
	Height, HalfLength, Sweep Amount
}

// Windage is something aloft that the wind pushes on; the mast takes the share Carried.
type Windage struct {
	At                             finding.Place
	Name                           Text
	Diameter, Bottom, Top, Carried Amount
}

// RightingMoment is what the boat rights herself with at 30 degrees.
type RightingMoment struct {
	At  finding.Place
	How Text // given, inclined, roll period, estimated
	// Moment and By are of a moment that is given; Weight, Distance and Heel of an
	// inclining test; Period of a roll.
	Moment                 Amount
	By                     Text
	Weight, Distance, Heel Amount
	Period                 Amount
}

// ReefedMain is the deeply reefed mainsail, heights above the mast heel.
type ReefedMain struct {
	At                 finding.Place
	Boom, Head, Centre Amount
}

// Turnbuckle is the stay's turnbuckle.
type Turnbuckle struct {
	At        finding.Place
	Thread    Text
	BreakLoad Amount
	Metal     Text
	Proven    YesNo
}

// Terminals are the fittings at the ends of the wire.
type Terminals struct {
	At        finding.Place
	Kind      Text // swaged, mechanical, spliced, clamped
	BreakLoad Amount
	Proven    YesNo
	LookedAt  Day
}

// Bowsprit is what the forestay ends on where it does not end on the hull; Heel is where
// its inboard end is held.
type Bowsprit struct {
	At   finding.Place
	Heel Point
}
