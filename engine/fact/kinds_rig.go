package fact

import "chainwale/engine/plan"

// The kinds of subjects that hold the mast as a whole: the mast itself, what stands in
// for a stay, and the steps in which stays come off and go on again.

// Mast is the mast of the boat, with what pushes on it and what she rights herself with.
type Mast struct {
	Subject
	Told      YesNo  `fact:"told" means:"whether the plan says anything of the mast, of her righting moment or of an order of work"`
	Step      Word   `fact:"step" means:"where the mast stands" from:"/boat/mast_step" words:"keel-stepped,deck-stepped" tool:"the eye" where:"at the mast's heel"`
	Height    Number `fact:"height" unit:"mm" means:"height of the masthead above the heel" from:"height" tool:"a tape on a halyard" where:"from the masthead to the deck, and on to the heel"`
	Deck      Number `fact:"deck" unit:"mm" means:"height of the deck above the mast's heel" from:"deck" tool:"tape" where:"along the mast, from its heel to the deck"`
	Wedged    YesNo  `fact:"wedged" means:"whether the wedges bear all round and the heel can't move sideways" from:"wedged" tool:"the eye and a mallet" where:"at the partners and at the heel"`
	Spreaders Number `fact:"spreaders" unit:"" means:"how many pairs of spreaders it has" from:"spreaders" tool:"the eye" where:"on the mast"`

	RightingMoment Number `fact:"righting_moment" unit:"N mm" means:"what she rights herself with at 30 degrees of heel" from:"/boat/righting_moment/moment" tool:"a moved weight and a plumb line, or her papers" where:"afloat, in flat water with slack lines"`
	KnownBy        Word   `fact:"known_by" means:"how the righting moment is known" from:"/boat/righting_moment/how" words:"given,inclined,roll period,estimated" tool:"the boat's papers" where:"her stability booklet, or an inclining test"`
	Displacement   Number `fact:"displacement" unit:"kg" means:"what she weighs as she sails" from:"/boat/displacement" tool:"a crane's scale" where:"when she is lifted"`
	Freeboard      Number `fact:"freeboard" unit:"mm" means:"from the water up to the deck, abreast of the mast" from:"/boat/freeboard" tool:"tape" where:"abreast of the mast"`

	SidePull     Number `fact:"side_pull" unit:"N" means:"what all shrouds of a side pull together, by the old rule of thumb from the righting moment"`
	Thrust       Number `fact:"thrust" unit:"N" means:"what presses the mast down, by the same rule"`
	CreditUsual  YesNo  `fact:"credit_is_usual" means:"whether no more of a strength is counted on while stays are off than is usual" from:"/standing/credit"`
	Mass         Number `fact:"mass" unit:"kg" means:"mass of the mast with all that hangs on it" from:"mass" tool:"a crane's scale, or its section by its length" where:"when it is out"`
	Windage      Number `fact:"windage" unit:"N mm" means:"moment about the heel of a wind of 1 m/s; it grows with the square of the wind"`
	Roll         Number `fact:"roll" unit:"N mm" means:"moment about the heel when she rolls where she lies"`
	BearsBending Number `fact:"bears_bending" unit:"N mm" means:"bending moment that the mast's section may bear: half its yield, with seven tenths of its modulus left by holes and slots"`
}

// Describe names the kind.
func (*Mast) Describe() (string, string) { return "mast", "the mast of the boat" }

// StandIn is a line or wire that can take a stay's place for a while.
type StandIn struct {
	Subject
	Path     Word   `fact:"path" means:"how it leads" from:"path" words:"over a sheave,made fast"`
	Kind     Word   `fact:"line_kind" means:"what sort of line it is" from:"line/kind" tool:"the eye" where:"on the line: its cover and its core"`
	Diameter Number `fact:"line_diameter" unit:"mm" means:"diameter of the line" from:"line/diameter" tool:"calipers" where:"on the line, under a little load"`
	Knot     Word   `fact:"line_end" means:"how the line's end is made" from:"line/end" tool:"the eye" where:"at the line's end"`
	Height   Number `fact:"height" unit:"mm" means:"height above the heel at which it leaves the mast" from:"height" tool:"a tape on the halyard" where:"along the mast"`
	FootX    Number `fact:"foot_x" unit:"mm" means:"where it is made fast, forward of the mast" from:"lower/x" tool:"tape" where:"on deck, from the mast"`
	FootY    Number `fact:"foot_y" unit:"mm" means:"where it is made fast, to port of the mast" from:"lower/y" tool:"tape" where:"on deck, from the middle of the boat"`
	FootZ    Number `fact:"foot_z" unit:"mm" means:"where it is made fast, above the mast's heel" from:"lower/z" tool:"tape" where:"from the mast's heel"`
	Line     Number `fact:"line" unit:"N" means:"load at which the line breaks, in all its parts, before its end is counted"`
	End      Number `fact:"end" unit:"N" means:"load at which the line breaks at its splice or knot"`
	Sheave   Number `fact:"sheave" unit:"N" means:"what the sheave and its pin hold" from:"sheave" tool:"the maker's papers, or the pin's size" where:"at the masthead"`
	Cleat    Number `fact:"cleat" unit:"N" means:"what the cleat or winch and its bolts hold" from:"cleat" tool:"the maker's papers, and the bolts" where:"where the halyard is made fast"`
	AtMast   Number `fact:"mast_fitting" unit:"N" means:"what the fitting on the mast holds" from:"mast_fitting" tool:"the maker's papers, and its rivets or bolts" where:"on the mast"`
	AtDeck   Number `fact:"deck_fitting" unit:"N" means:"what the fitting on deck holds" from:"deck_fitting" tool:"the maker's papers, and its bolts" where:"where it is made fast on deck"`
	Plate    Number `fact:"plate" unit:"N" means:"what the plate that it lands on holds at its pin hole"`
	Strength Number `fact:"strength" unit:"N" means:"what it holds: the least of line, splice or knot, sheave, cleat, and the fittings at its ends"`
	Weakest  Word   `fact:"weakest" means:"the part of it that gives first"`

	plan *plan.StandIn
}

// Describe names the kind.
func (*StandIn) Describe() (string, string) {
	return "stand_in", "a line or wire that can take a stay's place for a while"
}

// Step is one thing done to the rig while the mast is up.
type Step struct {
	Subject
	Mast *Mast `fact:"mast"`

	Attended YesNo  `fact:"attended" means:"whether somebody stands by from the beginning of the step until the next one begins" from:"attended" tool:"the owner" where:"in the plan of work"`
	Aloft    YesNo  `fact:"aloft" means:"whether anybody goes aloft in the step" from:"aloft" tool:"the owner" where:"in the plan of work"`
	Afloat   YesNo  `fact:"afloat" means:"whether she lies afloat" from:"/standing/place" tool:"the eye" where:"where she lies"`
	Days     Number `fact:"days" unit:"year" means:"how long the rig stands so" from:"until" tool:"the owner" where:"in the plan of work"`
	Off      Number `fact:"stays_off" unit:"" means:"how many stays are off while the step is on, or after it"`
	OffAfter Number `fact:"stays_off_after" unit:"" means:"how many stays are still off when the step is done"`
	Opens    YesNo  `fact:"opens_below_water" means:"whether a bolt or fitting near or below the water is taken out" from:"below_water" tool:"the eye" where:"from the bolt to the water, outside, with her as she lies"`

	Gust      Number `fact:"gust" unit:"mm/year" means:"gust that the step is reckoned with: the forecast's while somebody stands by, else the storm's" from:"/standing/gust" tool:"the weather forecast" where:"for the whole of the step, and half as much again"`
	Margin    Number `fact:"margin" unit:"" means:"how many times the push of gust and roll is held from the weakest direction, while the step is on or after it"`
	AfterLoss Number `fact:"margin_after_loss" unit:"" means:"the same with any one more stay or stand-in gone"`
	UsedUp    Number `fact:"gust_used_up" unit:"mm/year" means:"gust at which the wanted margin is used up"`
	Gone      Number `fact:"gust_gone" unit:"mm/year" means:"gust at which all that is counted on is used up"`
	Weakest   Word   `fact:"weakest" means:"the way the mast falls first" words:"forward,forward and to port,to port,aft and to port,aft,aft and to starboard,to starboard,forward and to starboard,any way: nothing holds it"`
	Governs   Word   `fact:"governs" means:"the stay or stand-in that gives first there"`
	Lost      Word   `fact:"lost" means:"the stay or stand-in whose loss would hurt most"`
	Bending   Number `fact:"bending_used" unit:"" means:"share of what its section bears that gust and roll bend the mast with, between what still holds it"`

	ElasticTold YesNo  `fact:"elastic_told" means:"whether the pull at rest and the stiffness of every stay that holds are known"`
	Elastic     Number `fact:"elastic_used" unit:"" means:"of the stay or stand-in that is pulled hardest when they share the push by their stiffness, its pull over what it is counted on for"`
	Hardest     Word   `fact:"pulled_hardest" means:"that stay or stand-in"`
	Sways       Number `fact:"masthead_sways" unit:"mm" means:"how far the masthead goes when they share the push by their stiffness"`

	BothEnds    YesNo  `fact:"both_ends_off" means:"whether forestay and backstay are off together"`
	LoneEnd     YesNo  `fact:"end_without_stand_ins" means:"whether the forestay or the backstay is off and no two stand-ins lead its way, one to either side of its line"`
	CapAndLower YesNo  `fact:"cap_and_lower_off" means:"whether a cap shroud and a lower of one side are off together"`
	CapsOff     YesNo  `fact:"both_caps_off" means:"whether both cap shrouds are off"`
	Uncounted   Number `fact:"stand_ins_uncounted" unit:"" means:"how many stand-ins are up and count as nothing"`
	StandIns    Number `fact:"stand_ins_up" unit:"" means:"how many stand-ins are up"`
	OnTrust     Number `fact:"plates_on_trust" unit:"" means:"how many stays that hold the mast land on plates that nobody has seen, or whose strength is not known"`
}

// Describe names the kind.
func (*Step) Describe() (string, string) {
	return "step", "one thing done to the rig while the mast is up"
}
