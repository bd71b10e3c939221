package plan

import "chainwale/engine/finding"

// What a plan says of a part that is folded, and of the old part it is made after.
//
// Seen on face A with the loaded end up, Across and Y grow to the right. Face A is the
// one away from what the part is bolted to.

// FarEnd is the end of a strip away from the wire.
type FarEnd struct {
	At                          finding.Place
	Shape                       Text // round, square, tapered
	Radius, Corner, Nose, Taper Amount
}

// Corner is a corner of a contour; Bulge is the tangent of a quarter of the arc's
// angle to the next one.
type Corner struct {
	At          finding.Place
	X, Y, Bulge Amount
}

// Fold is a fold of the part, placed in its flat.
type Fold struct {
	Name Text
	At   finding.Place
	// Along is from the loaded end to the fold's middle line, Angle how far it turns
	// the metal from flat, Skew how far its line is turned from square.
	Along, Angle, Radius, Skew Amount
	Way                        Text // toward, away
	// NeutralLine is what a test strip gave, in thicknesses from the inside face.
	NeutralLine Amount
}

// Press is the press of the shop.
type Press struct {
	At                            finding.Place
	Die, Block, Punch, Nose, Room Amount
	// Length is the longest fold that it takes, Force what it is rated to push with.
	Length, Force Amount
}

// Measured is the old part as it was measured, bent.
type Measured struct {
	At finding.Place
	// Within is how far a reading of a length may be off, AngleWithin one of an angle.
	Within, AngleWithin Amount
	Thickness, Width    Amount
	ThicknessWithin     Amount
	Legs                []Leg
	Folds               []MeasuredFold
	Holes               []MeasuredHole
	Chords              []Chord
}

// Leg is a leg of the old part, measured outside from corner to corner.
type Leg struct {
	At              finding.Place
	Outside, Within Amount
}

// MeasuredFold is a fold of the old part, by its angle or by the directions of its legs.
type MeasuredFold struct {
	At                   finding.Place
	Angle                Amount
	Way                  Text
	Directions           Directions
	Radius, Skew         Amount
	Within, RadiusWithin Amount
}

// Directions are those of the leg before a fold, of its face A, and of the leg behind.
type Directions struct {
	At                  finding.Place
	Along, Face, Behind Point
}

// MeasuredHole is a hole of the old part on one of its legs.
type MeasuredHole struct {
	At                    finding.Place
	Hole                  Text
	Leg                   Text // counted from 1
	From                  Text // loaded end, far end
	Along, Across, Within Amount
}

// Chord is the straight distance between two holes of the old part.
type Chord struct {
	At             finding.Place
	From, To       Text
	Length, Within Amount
}

// HullHole is a hole that a bolt has to meet, or one that is left over.
type HullHole struct {
	At                              finding.Place
	Hole                            Text
	Along, Across, Diameter, Within Amount
	Is                              Text // round, square, drill at the boat, filled
}

// Lies is how the bolted leg lies on the boat: Along towards the wire, Face out of face A.
type Lies struct {
	At          finding.Place
	Along, Face Point
}
