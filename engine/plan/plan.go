// Package plan reads what an owner wrote: one file in YAML (or JSON), checked
// against schema/plan.schema.json, with the place of every value kept. It judges
// nothing and derives nothing; it says what the file says, and where.
package plan

import (
	"fmt"
	"time"

	"chainwale/engine/finding"
	"chainwale/engine/quantity"
)

// Amount is a quantity in its canonical unit. Where the plan lists several
// readings, Value is their mean, Spread the largest less the smallest, and Each are the
// readings themselves, none where there is only one.
//
// Every value of a plan has a place even when it is not given: that of its
// parent's key, with the pointer at which it would stand.
type Amount struct {
	Given    bool
	Value    float64
	Spread   float64
	Readings int
	Each     Each
	At       finding.Place
}

// Each are the single readings of a list, in the plan's own memory.
type Each struct{ of *quantity.Readings }

// Values are the readings in the order in which they stand, nil if there are none.
func (e Each) Values() []float64 {
	if e.of == nil {
		return nil
	}
	return e.of.Values()
}

// String lists the readings.
func (e Each) String() string { return fmt.Sprint(e.Values()) }

// Text is a word or words, as they stand in the file.
type Text struct {
	Given bool
	Value string
	At    finding.Place
}

// YesNo is a yes or a no.
type YesNo struct {
	Given, Value bool
	At           finding.Place
}

// Whole is a whole number.
type Whole struct {
	Given bool
	Value int
	At    finding.Place
}

// Day is a date. An owner who only knows the year or the month writes that much;
// First is the earliest day it can mean and Last the latest.
type Day struct {
	Given       bool
	Text        string
	First, Last time.Time
	At          finding.Place
}

// Point is a position on the boat: x forward, y to port, z up from the mast heel.
type Point struct {
	X, Y, Z Amount
	At      finding.Place
}

// Plan is one boat's refit plan. A field's key in the file is its name in small
// letters with underscores: InPlane stands under in_plane.
type Plan struct {
	// File is the name as given on the command line, Hash "sha256:" over all files read.
	File, Hash string
	// Chainwale is the version of the plan format.
	Chainwale Whole
	// Template is the file that this one builds on.
	Template Text
	Boat     Boat
	Stays    []Stay
	Fittings []Fitting
	Contacts []Contact
	Records  []Record
	// Standing is the order of work with the mast up.
	Standing Standing
	// Accepted are the findings that somebody takes on themselves.
	Accepted []Accepted
	Packs    []Text
	// Standards are asked; those of MustMeet are asked too, and weigh in full.
	Standards []Text
	MustMeet  []Text

	sources []Source
}

// Sources are the files that the plan was read from: itself, then its template,
// that one's template and so on. Each value's place says in which of them it stands.
func (p *Plan) Sources() []Source { return p.sources }

// Boat is the boat itself.
type Boat struct {
	At          finding.Place
	Name, Class Text
	// Waters: fresh, coastal, ocean. Climate: temperate, tropical.
	Waters, Climate Text
	MastStep        Text // keel-stepped, deck-stepped
	// Units the owner wants to read: metric, us.
	Units                                    Text
	Displacement, Beam, Waterline, Freeboard Amount
	Mast                                     Mast
	Bowsprit                                 Bowsprit
	RightingMoment                           RightingMoment
	ReefedMain                               ReefedMain
}

// Stay is one wire of the standing rigging, or two alike when Side is both.
type Stay struct {
	ID, Role, Side Text
	At             finding.Place
	Wire           Wire
	// Lower and Upper are the centres of the pins at its two ends.
	Lower, Upper Point
	Pin          Pin
	Fork         Fork
	Toggle       YesNo
	Lean         Lean
	Installed    Day
	Turnbuckle   Turnbuckle
	Terminals    Terminals
	// Tension is the pull in it at rest.
	Tension Amount
	// OverSpreaders tells whether it leads over the tips of the spreaders below its upper end.
	OverSpreaders YesNo
}

// Wire is what the stay is made of.
type Wire struct {
	At                  finding.Place
	Construction, Metal Text
	Diameter            Amount
	// BreakLoad replaces the table's value and needs a certificate.
	BreakLoad   Amount
	Certificate Text
}

// Pin is the clevis pin at the stay's lower end.
type Pin struct {
	At finding.Place
	// Diameter is the nominal size, Measured what the calipers say.
	Diameter, Measured Amount
	Metal              Text
	Yield, Ultimate    Amount
}

// Fork holds the pin on both sides of the plate: a jaw or a toggle's jaw.
type Fork struct {
	At finding.Place
	// Opening is the clear width between the cheeks, Cheek the thickness of one.
	Opening, Cheek Amount
}

// Lean is how the wire leaves the plate, as angles from the plate's centre line.
type Lean struct {
	At                  finding.Place
	InPlane, OutOfPlane Amount
}

// Fitting is a metal part that holds one stay or several, or two alike when Side is both.
type Fitting struct {
	ID, State, Kind, Side Text
	At                    finding.Place
	// Serves are the ids of the stays it holds.
	Serves    []Text
	Metal     Metal
	Thickness Amount
	Outline   Outline
	Holes     []Hole
	// Folds stand in their order from the loaded end.
	Folds []Fold
	// Grain is how fold lines run to the rolling direction: across, along, unknown.
	Grain, Finish Text
	Press         Press
	// Measured is the old part as it was measured, bent.
	Measured Measured
	// HullHoles are those that the bolts of the new part have to meet.
	HullHoles []HullHole
	// Follows says what the folds are made to: old part, wire.
	Follows   Text
	Lies      Lies
	Exposure  Text
	Welded    YesNo
	Installed Day
	// NextLook is when it will next be drawn or opened up and looked at.
	NextLook Day
	// Bonding is the wire that leads lightning to the water: joined, cut, none.
	Bonding  Text
	Mounting Mounting
}

// Metal is the metal of a part. Yield and Ultimate replace the table's minima and need a certificate.
type Metal struct {
	At                           finding.Place
	Name, Condition, Certificate Text
	// Heat is the number of the melt that the metal was poured from.
	Heat            Text
	Yield, Ultimate Amount
	// Carbon is what the certificate says, as a share.
	Carbon Amount
}

// Outline is the flat part: a strip, its loaded end at the pin hole.
type Outline struct {
	At            finding.Place
	Width, Length Amount
	// End is round, square or tapered; EndRadius is the radius of a round end (half the width if not given).
	End       Text
	EndRadius Amount
	// Corner rounds a square end; Nose and Taper shape a tapered one.
	Corner, Nose, Taper Amount
	FarEnd              FarEnd
	// Contour are the corners of a flat that is no strip.
	Contour []Corner
}

// Hole is a hole in the flat part. Along is measured from the loaded end to the
// hole's centre, Across from the strip's centre line.
type Hole struct {
	At            finding.Place
	Name          Text
	Role          Text // pin, bolt
	Stay          Text // which stay's pin, where the part serves several
	Diameter      Amount
	Along, Across Amount
	// Shape is round, square or oval; a square hole's Diameter is across flats, an oval
	// one's is its width.
	Shape Text
	// Long is the whole length of an oval hole, LongWay along or across: which way of the
	// strip that runs (along if not given).
	Long        Amount
	LongWay     Text
	DrillAtBoat YesNo
}

// Mounting is how the fitting is held to the boat.
type Mounting struct {
	At                     finding.Place
	To                     Text // hull, bulkhead, knee, deck, mast
	ThroughDeck, GlassedIn YesNo
	Access                 Text // open, panel, tools, cut
	Bolts                  Bolts
	BackingPlate           YesNo
	Host                   Host
	Slot                   Slot
	// FirstFixed is from the pin hole's centre to the first point that holds the
	// plate fast, StandOff from the host's face to the plate's middle at the pin hole.
	FirstFixed, StandOff Amount
}

// Host is what the bolts go through.
type Host struct {
	At                 finding.Place
	Kind               Text // plywood, timber, laminate, cored, metal
	Thickness, Density Amount
	// Grain is the angle between the pull and the grain of timber.
	Grain           Amount
	Found, How      Text // sound, damp, soft, rotten, not looked at
	SolidUnderBolts YesNo
	// Edge is from the bolt nearest to it to the edge towards which it is pulled.
	Edge Amount
}

// Slot is the slot in the deck that a plate comes up through.
type Slot struct {
	At                              finding.Place
	Gap                             Amount
	EdgeSealed, LetsGo, PlasticNear YesNo
	Sealant                         Text
}

// Bolts are the fastenings of a fitting, all alike, one in each bolt hole.
type Bolts struct {
	At             finding.Place
	Thread, Grade  Text
	ThreadsInPlane YesNo
	// Metal is what they are made of, where the grade doesn't say it.
	Metal, Head Text // hex, square-neck, countersunk, stud
	Washer      Amount
}

// Contact is a place where two metals touch.
type Contact struct {
	ID       Text
	At       finding.Place
	Between  []Text
	Exposure Text // harsh, normal, controlled, sea water
	Hidden   YesNo
	Isolated YesNo
	// AreaA and AreaB are the wetted areas of the two metals near the joint.
	AreaA, AreaB Amount
}

// Record is what somebody saw of a fitting on a day.
type Record struct {
	ID, Fitting Text
	At          finding.Place
	On          Day
	Did         Text // looked at, drawn and looked at, tested
	Crack       Text // none seen, seen, not looked for
	By          Text
	// Leak, RustWeep, Pits and PinBent: none seen, seen, not looked for.
	Leak, RustWeep, Pits, PinBent Text
	// Loss is the share of the thickness that is gone, Ovality how much longer
	// than wide the pin hole is.
	Loss, Ovality Amount
	LossAtHole    YesNo
}

// Accepted is a finding that somebody takes on themselves until a day.
type Accepted struct {
	At finding.Place
	// Rule is the rule's id. Subject is the id of a stay or a fitting, or "kind:id";
	// not given, it is all that the rule judges.
	Rule, Subject Text
	// Grade is the worst that is accepted: stop, mend, watch.
	Grade    Text
	Who, Why Text
	// Until is the last day, always a whole one.
	Until Day
}
