package plan

import "chainwale/engine/finding"

// Standing is the order in which stays and plates come off and go on again with the
// mast up.
type Standing struct {
	At              finding.Place
	Place           Text // afloat, ashore
	Gust, StormGust Amount
	// Wind is the mean wind, where no gust is forecast.
	Wind   Amount
	Roll   DockRoll
	Credit Credit
	// Away is how long a new part takes once the old one is off.
	Away Amount
	// Jobs are what an order is looked for: ids of fittings and stays.
	Jobs     []Text
	StandIns []StandIn
	Steps    []Step
}

// Given tells whether the plan says anything of it.
func (s *Standing) Given() bool {
	return len(s.Steps) > 0 || len(s.StandIns) > 0 || s.Gust.Given || s.Wind.Given || s.Place.Given || len(s.Jobs) > 0
}

// DockRoll is how far she rolls where she lies; Axis is how far below the mast's heel
// she rolls about.
type DockRoll struct {
	At                  finding.Place
	Angle, Period, Axis Amount
}

// Credit is how much of a strength is counted on, as shares.
type Credit struct {
	At                                     finding.Place
	Wire, UnseenPlate, StandIn, Unattended Amount
}

// StandIn is a line or wire that can take a stay's place for a while.
type StandIn struct {
	At            finding.Place
	ID, Path      Text // over a sheave, made fast
	Height        Amount
	Lower         Point
	LandsOn       Text
	BothPartsDown YesNo
	Line          Line
	// Sheave, Cleat, MastFitting and DeckFitting are what each holds.
	Sheave, Cleat, MastFitting, DeckFitting Amount
}

// Line is the line of a stand-in.
type Line struct {
	At                  finding.Place
	Kind                Text
	Diameter, BreakLoad Amount
	// Parts are those in which it leads, two for each turn of a lashing.
	Parts Whole
	End   Text
	// Round is the diameter of what it bends over at its end.
	Round    Amount
	AgeKnown YesNo
}

// Step is one thing done to the rig.
type Step struct {
	At       finding.Place
	ID, Does Text
	// Fit, Remove and Replace name stays, fittings and stand-ins.
	Fit, Remove, Replace []Text
	Attended             YesNo
	On, Until            Day
	Aloft, BelowWater    YesNo
}
