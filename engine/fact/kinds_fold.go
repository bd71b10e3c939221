package fact

// The kinds of subjects that a part has while it is made: its folds, and how it lands on
// what the old part leaves behind.

// Bend is one fold of a fitting.
type Bend struct {
	Subject
	Fitting *Fitting `fact:"fitting"`

	Radius       Number `fact:"radius" unit:"mm" means:"inside radius of the fold" from:"folds/radius" tool:"radius gauge or drill shanks" where:"on the inside of the fold"`
	Angle        Number `fact:"angle" unit:"deg" means:"how far the fold turns the metal from flat" from:"folds/angle" tool:"bevel gauge" where:"on the inside of the fold, from leg to leg"`
	Skew         Number `fact:"skew" unit:"deg" means:"how far the fold line is turned from square to the strip, either way" from:"folds/skew"`
	Grain        Word   `fact:"grain" means:"how the fold line runs to the direction in which the plate was rolled" from:"grain" words:"across,along" tool:"the eye, or the seller of the plate" where:"on the unpolished plate: the rolling leaves fine lines"`
	Annealed     YesNo  `fact:"annealed" means:"whether the metal is delivered soft" from:"metal/condition" tool:"mill certificate" where:"the metal's papers"`
	RadiusRatio  Number `fact:"radius_ratio" unit:"" means:"inside radius over the thickness"`
	RadiusLeast  Number `fact:"radius_least" unit:"mm" means:"inside radius below which the alloy is not to be folded, even across the grain"`
	RadiusWanted Number `fact:"radius_wanted" unit:"mm" means:"inside radius to ask for: one and a half thicknesses, or the least of the alloy as its grain runs; where that is not known it counts as along"`
	Stretch      Number `fact:"stretch" unit:"" means:"share by which the outer face of the fold is stretched"`
	Deduction    Number `fact:"deduction" unit:"mm" means:"what the flat is shorter than the outside lengths of both legs"`
	Spread       Number `fact:"deduction_spread" unit:"mm" means:"how far the published methods differ on that"`

	Holes    Number `fact:"holes" unit:"" means:"how many holes of the part have a place in the flat" from:"holes"`
	Clear    Number `fact:"hole_clear" unit:"mm" means:"from the middle line of the fold to the edge of the nearest hole" from:"holes/along"`
	CutHoles Number `fact:"cut_holes" unit:"" means:"how many of the holes are made before the part is folded" from:"holes/drill_at_boat"`
	CutClear Number `fact:"cut_hole_clear" unit:"mm" means:"from the middle line of the fold to the edge of the nearest hole that is made before folding" from:"holes/along"`
	Least    Number `fact:"hole_least" unit:"mm" means:"nearer to the middle line of the fold, a hole stands in metal that the fold stretches"`
	Distance Number `fact:"hole_distance" unit:"mm" means:"from here on to the middle line of the fold, a hole can be made before folding"`

	Die          Number `fact:"die" unit:"mm" means:"opening of the die: the shop's, or the usual one for the thickness" from:"press/die"`
	Flange       Number `fact:"flange" unit:"mm" means:"the shorter of the legs beside the fold, outside"`
	FlangeLeast  Number `fact:"flange_least" unit:"mm" means:"shortest leg that the die carries"`
	Length       Number `fact:"length" unit:"mm" means:"length of the fold line, the width of the strip"`
	PressLength  Number `fact:"press_length" unit:"mm" means:"longest fold that the shop's press takes" from:"press/length" tool:"rule" where:"on the shop's die"`
	Force        Number `fact:"force" unit:"N" means:"what the press must push with, at the upper ultimate strength of the grade"`
	PressForce   Number `fact:"press_force" unit:"N" means:"what the shop's press is rated to push with" from:"press/force" tool:"the eye" where:"on the press's plate; a tonne is 9.81 kN"`
	Reachable    YesNo  `fact:"reachable" means:"whether there is an order of the folds in which nothing of the press stands in the way" from:"press"`
	SpringLeast  Number `fact:"spring_least" unit:"deg" means:"angle to press to at the least, so that the wanted one is left"`
	SpringLikely Number `fact:"spring_likely" unit:"deg" means:"angle to press to most likely"`
	SpringMost   Number `fact:"spring_most" unit:"deg" means:"angle to press to at the most"`
}

// Describe names the kind.
func (*Bend) Describe() (string, string) { return "bend", "one fold of a fitting" }

// Match is a part that is made anew against what it has to land on.
type Match struct {
	Subject
	Fitting *Fitting `fact:"fitting"`

	Matched       Number `fact:"matched" unit:"" means:"how many bolt holes have to meet a hole that is there" from:"hull_holes" tool:"rule" where:"at the boat or on the old part: the hole that each bolt hole of the new one meets"`
	Miss          Number `fact:"miss" unit:"mm" means:"how far the worst bolt hole is off the hole that it has to meet, with the part laid on as well as it goes"`
	Clearance     Number `fact:"clearance" unit:"mm" means:"how far that hole may be off for its bolt to go through: the play of the bolt in both holes, less what the cut may be off"`
	Worst         Word   `fact:"worst" means:"name of that hole"`
	Ream          Number `fact:"ream" unit:"mm" means:"diameter that the widest hole has to be reamed to, 0 if all bolts go through"`
	Reamed        Number `fact:"reamed" unit:"" means:"how many holes have to be reamed"`
	ToFill        Number `fact:"to_fill" unit:"" means:"how many holes of the hull are left over and have to be filled" from:"hull_holes" tool:"the eye" where:"at the hull, with the old part off"`
	ToDrill       Number `fact:"to_drill" unit:"" means:"how many bolt holes are drilled at the boat" from:"holes/drill_at_boat"`
	Uncertainty   Number `fact:"uncertainty" unit:"mm" means:"how far the bolt hole that this leaves least play may be off for all that was measured, in 19 cases of 20"`
	Dominated     Word   `fact:"dominated_by" means:"the reading that most of this comes from"`
	LeastSure     Word   `fact:"least_sure" means:"name of that hole"`
	LeastSurePlay Number `fact:"least_sure_play" unit:"mm" means:"how far that hole may be off for its bolt to go through"`
	FlatLength    Number `fact:"flat_length" unit:"mm" means:"length of the flat that the old part comes from"`

	OffWire   Number `fact:"off_wire" unit:"deg" means:"angle between the wire, from pin to pin, and the flat of the loaded leg" from:"lies" tool:"plumb bob and rule" where:"along the bolted leg, and square out of its face"`
	Follows   Word   `fact:"follows" means:"what the folds are made to" from:"follows" words:"old part,wire" tool:"the owner and the rigger" where:"at the boat, with the old part on the bench"`
	OldFailed YesNo  `fact:"old_failed" means:"whether a record tells of a crack, a bent pin or a worn hole on the old part" from:"/records"`
}

// Describe names the kind.
func (*Match) Describe() (string, string) {
	return "match", "a part that is made anew, against the holes and the wire that it has to meet"
}
