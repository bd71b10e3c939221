package rig

// Credit is how much of a strength is counted on. A value left 0 is the usual one.
type Credit struct {
	// Wire is the part of what a wire and a sound plate break at, StandIn that of a
	// stand-in, Unattended that of a stand-in that nobody looks after for weeks.
	Wire, StandIn, Unattended float64
	// UnseenPlate is the part of its wire's break load that an old plate is good for
	// because it carries that today, not because it is sound.
	UnseenPlate float64
}

// UsualCredit is this project's judgement; an owner may put his own in its place.
var UsualCredit = Credit{Wire: 1.0 / 3, StandIn: 1.0 / 5, Unattended: 1.0 / 10, UnseenPlate: 0.10}

// Demand is what pushes on the mast while stays are off, and how many times it has to be held.
type Demand struct {
	// PerSquare is the moment of the wind about the heel per square of its speed, N
	// mm/(m/s)^2 (MastWindage), Roll that of a roll at the dock, N mm (DockRoll).
	PerSquare, Roll float64
	// Gust is the highest gust while somebody stands by, Storm the one while nobody
	// does, m/s. Storm is 45 kn if left 0.
	Gust, Storm float64
	// Wanted is how many times the push has to be held while somebody stands by,
	// WantedAlone while nobody does, AfterLoss with any one more stay or stand-in gone.
	// 3, 1.5 and 1 if left 0.
	Wanted, WantedAlone, AfterLoss float64
}

// StormGust is the usual gust for weeks that nobody stands by, m/s.
const StormGust = 45 * KnotInMetresPerSecond

// orUsual is a value, or the usual one where it is left 0.
func orUsual(v *float64, usual float64) {
	if *v == 0 {
		*v = usual
	}
}

// usual fills in what a demand leaves to judgement.
func (d Demand) usual() Demand {
	orUsual(&d.Storm, StormGust)
	orUsual(&d.Wanted, 3)
	orUsual(&d.WantedAlone, 1.5)
	orUsual(&d.AfterLoss, 1)
	return d
}

// usual fills in what a credit leaves to judgement.
func (c Credit) usual() Credit {
	orUsual(&c.Wire, UsualCredit.Wire)
	orUsual(&c.StandIn, UsualCredit.StandIn)
	orUsual(&c.Unattended, UsualCredit.Unattended)
	orUsual(&c.UnseenPlate, UsualCredit.UnseenPlate)
	return c
}

// wind is the gust of a step and how many times its push has to be held.
func (d Demand) wind(attended bool) (gust, wanted float64) {
	if attended {
		return d.Gust, d.Wanted
	}
	return d.Storm, d.WantedAlone
}

func (d Demand) check() error {
	var in inputs
	in.must(d.PerSquare > 0 && d.PerSquare <= most, "the moment of the wind is missing: without it nothing can be said of a gust")
	in.moment("the moment of the roll", d.Roll)
	in.must(d.Gust > 0, "the gust while somebody stands by must be above 0 m/s, not %g", d.Gust)
	in.wind(d.Gust)
	in.wind(d.Storm)
	in.must(d.Storm >= d.Gust, "the gust while nobody stands by (%.1f m/s) is below the one while somebody does (%.1f m/s)", d.Storm, d.Gust)
	for _, w := range []float64{d.Wanted, d.WantedAlone, d.AfterLoss} {
		in.must(w >= 1 && w <= 100, "a margin of %g is not covered: 1 to 100 are", w)
	}
	return in.err
}

func (c Credit) check() error {
	var in inputs
	in.share("the part of a wire's break load that is counted on", c.Wire)
	in.share("the part of a stand-in's strength that is counted on", c.StandIn)
	in.share("the part of an unattended stand-in's strength that is counted on", c.Unattended)
	in.share("the part of the wire that an old plate is good for", c.UnseenPlate)
	return in.err
}
