package fact

import "chainwale/engine/plan"

// The kinds of subjects and their facts. A field's tag is the single source of
// the fact's name, unit and meaning; `from` names the plan value an owner would
// change, `tool` and `where` say how a missing reading is taken.

// Stay is one wire of the standing rigging.
type Stay struct {
	Subject
	Role         Word   `fact:"role" means:"what the wire does" from:"role" words:"forestay,backstay,backstay leg,cap shroud,intermediate,fore lower,aft lower,inner forestay,running backstay,bobstay,whisker"`
	Construction Word   `fact:"wire_construction" means:"how the wire is laid" from:"wire/construction" tool:"the eye" where:"on the wire: count the outer wires"`
	WireMetal    Word   `fact:"wire_metal" means:"metal of the wire" from:"wire/metal" tool:"bill or certificate" where:"the boat's papers"`
	WireDiameter Number `fact:"wire_diameter" unit:"mm" means:"diameter of the wire" from:"wire/diameter" tool:"calipers" where:"on the wire, across the crowns"`
	BreakLoad    Number `fact:"break_load" unit:"N" means:"load at which the wire breaks; where its metal is not known, that of the stronger wire"`
	WorkingLoad  Number `fact:"working_load" unit:"N" means:"load at work, the break load over 2.5"`
	Age          Number `fact:"age" unit:"year" means:"how many years ago the wire was fitted" from:"installed" tool:"the boat's papers" where:"bills, earlier surveys, photographs"`
	Toggle       YesNo  `fact:"toggle" means:"a toggle at the lower end lets the wire swing" from:"toggle" tool:"the eye" where:"at the lower end"`

	plan *plan.Stay
}

// Describe names the kind.
func (*Stay) Describe() (string, string) { return "stay", "one wire of the standing rigging" }

// MetalFacts are what rules may read of a part's metal.
type MetalFacts struct {
	Name      Word   `fact:"name" means:"the metal as the plan names it" from:"metal/name" tool:"mill certificate or an alloy analyser" where:"on bare metal of the part"`
	Yield     Number `fact:"yield" unit:"MPa" means:"least yield strength of the metal" from:"metal/yield"`
	Ultimate  Number `fact:"ultimate" unit:"MPa" means:"least ultimate strength of the metal" from:"metal/ultimate"`
	Family    Word   `fact:"family" means:"family of alloys the metal belongs to"`
	PREN      Number `fact:"pren" unit:"" means:"pitting resistance number at the chemistry minimum (stainless only)"`
	Titanium  YesNo  `fact:"titanium" means:"the metal is titanium"`
	Stainless YesNo  `fact:"stainless" means:"the metal is a stainless steel"`
}

// Fitting is a metal part that holds stays.
type Fitting struct {
	Subject
	State       Word       `fact:"state" means:"kept as it is, remade as it was, or new" from:"state" words:"kept,remade,new"`
	Sort        Word       `fact:"kind" means:"what sort of part it is" from:"kind" words:"chainplate,tang,stemhead,backstay plate,toggle plate,u-bolt,tie rod"`
	Metal       MetalFacts `fact:"metal"`
	Thickness   Number     `fact:"thickness" unit:"mm" means:"thickness of the plate" from:"thickness" tool:"calipers" where:"beside the pin hole, clear of wear and polish"`
	Width       Number     `fact:"width" unit:"mm" means:"width of the plate at the pin hole" from:"outline/width" tool:"calipers" where:"across the plate at the pin hole"`
	Hidden      YesNo      `fact:"hidden" means:"part of it stands where water gets and nobody looks: a deck slot, behind glass, under water" from:"exposure" tool:"the eye" where:"along the whole part, above and below deck"`
	UnderWater  YesNo      `fact:"under_water" means:"it stands under water" from:"exposure" tool:"the eye" where:"along the whole part"`
	Waters      Word       `fact:"waters" means:"where the boat sails" from:"/boat/waters" words:"fresh,coastal,ocean"`
	Climate     Word       `fact:"climate" means:"the climate she lies in" from:"/boat/climate" words:"temperate,tropical"`
	Access      Word       `fact:"access" means:"how both faces are reached" from:"mounting/access" words:"open,panel,tools,cut" tool:"the eye" where:"on both faces of the part"`
	Age         Number     `fact:"age" unit:"year" means:"how many years ago the part was made" from:"installed" tool:"the boat's papers" where:"bills, earlier surveys, the builder's records"`
	Life        Number     `fact:"life" unit:"year" means:"years such a part is commonly trusted for: 10 hidden in the tropics, 25 in the open, 15 otherwise"`
	SinceLook   Number     `fact:"since_look" unit:"year" means:"how many years ago it was last drawn and looked at, or made" from:"/records" tool:"the eye, with a glass" where:"on the part when it is drawn"`
	LookPlanned YesNo      `fact:"look_planned" means:"the plan gives a day, still to come, on which it will be drawn and looked at" from:"next_look"`

	// Seen tells whether any record says that somebody looked at it.
	Seen bool
}

// Describe names the kind.
func (*Fitting) Describe() (string, string) { return "fitting", "a metal part that holds stays" }

// Landing is where a stay meets a fitting, through its pin and fork.
type Landing struct {
	Subject
	Stay    *Stay    `fact:"stay"`
	Fitting *Fitting `fact:"fitting"`

	Hole        Number `fact:"hole" unit:"mm" means:"diameter of the pin hole" from:"holes/diameter" tool:"calipers" where:"inside the pin hole, along and across the load"`
	End         Number `fact:"end" unit:"mm" means:"from the centre of the pin hole to the loaded end of the plate" from:"holes/along" tool:"calipers" where:"from the hole's edge to the plate's end, plus half the hole"`
	Across      Number `fact:"across" unit:"mm" means:"how far the pin hole stands off the plate's centre line" from:"holes/across"`
	PinNominal  Number `fact:"pin_nominal" unit:"mm" means:"nominal diameter of the pin" from:"pin/diameter" tool:"calipers" where:"on the pin, at the plate"`
	PinDiameter Number `fact:"pin_diameter" unit:"mm" means:"diameter of the pin: as measured, or else nominal" from:"pin/diameter" tool:"calipers" where:"on the pin, at the plate"`
	PinMeasured Number `fact:"pin_measured" unit:"mm" means:"diameter of the pin as measured" from:"pin/measured" tool:"calipers" where:"on the pin, at the plate"`
	PinMetal    Word   `fact:"pin_metal" means:"metal of the pin" from:"pin/metal" tool:"marking or mill certificate" where:"on the pin's head"`
	PinYield    Number `fact:"pin_yield" unit:"MPa" means:"least yield strength of the pin's metal" from:"pin/yield" tool:"marking or mill certificate" where:"on the pin's head"`
	PinUltimate Number `fact:"pin_ultimate" unit:"MPa" means:"least ultimate strength of the pin's metal" from:"pin/ultimate" tool:"marking or mill certificate" where:"on the pin's head"`
	ForkOpening Number `fact:"fork_opening" unit:"mm" means:"clear width between the fork's cheeks" from:"fork/opening" tool:"calipers" where:"between the cheeks, at the pin"`
	ForkCheek   Number `fact:"fork_cheek" unit:"mm" means:"thickness of one cheek of the fork" from:"fork/cheek" tool:"calipers" where:"on one cheek, at the pin"`

	PlateUltimate       Number `fact:"plate_ultimate" unit:"N" means:"least ultimate strength of the plate at the pin hole"`
	PlateBearing        Number `fact:"plate_bearing" unit:"N" means:"load at which the plate's hole begins to yield under the pin, the lowest of three codes"`
	PinShear            Number `fact:"pin_shear" unit:"N" means:"load at which the pin shears, in double shear"`
	PinBending          Number `fact:"pin_bending" unit:"N" means:"load at which the pin is bent out, across the fork's gaps"`
	PlateTimesWire      Number `fact:"plate_times_wire" unit:"" means:"strength of the plate at the pin hole over the wire's break load"`
	PinShearTimesWire   Number `fact:"pin_shear_times_wire" unit:"" means:"load at which the pin shears over the wire's break load"`
	PinBendingTimesWire Number `fact:"pin_bending_times_wire" unit:"" means:"load at which the pin is bent out over the wire's break load"`
	PinClearance        Number `fact:"pin_clearance" unit:"mm" means:"hole less pin, the pin as measured"`
	EndRatio            Number `fact:"end_ratio" unit:"" means:"distance from hole centre to loaded end, over the hole"`
	SideRatio           Number `fact:"side_ratio" unit:"" means:"width of the plate at the pin hole, twice the narrower side where the hole is off centre, over the hole"`
	ForkFill            Number `fact:"fork_fill" unit:"" means:"thickness of the plate over the fork's opening"`
}

// Describe names the kind.
func (*Landing) Describe() (string, string) {
	return "landing", "a stay on a fitting, through pin and fork"
}

// BoltGroup is the bolts of a fitting under the pull of one of its stays.
type BoltGroup struct {
	Subject
	Stay    *Stay    `fact:"stay"`
	Fitting *Fitting `fact:"fitting"`

	Count          Number `fact:"count" unit:"" means:"how many bolts hold the fitting" from:"holes"`
	Lean           Number `fact:"lean" unit:"deg" means:"angle between wire and plate, in the plate's plane" from:"lean/in_plane" tool:"bevel gauge" where:"between the wire and the plate's centre line, seen square on the plate's face"`
	Thread         Word   `fact:"thread" means:"thread of the bolts" from:"mounting/bolts/thread" tool:"thread gauge" where:"on a bolt's end"`
	Grade          Word   `fact:"grade" means:"strength grade of the bolts" from:"mounting/bolts/grade" tool:"the eye" where:"marking on a bolt's head"`
	ThreadsInPlane YesNo  `fact:"threads_in_plane" means:"the threads of the bolts reach into the joint between plate and host" from:"mounting/bolts/threads_in_plane" tool:"the eye and a rule" where:"on a drawn bolt, against the plate's thickness"`
	BoltShear      Number `fact:"bolt_shear" unit:"N" means:"load at which one bolt shears"`
	LargestShare   Number `fact:"largest_share" unit:"" means:"share of the wire's load on the bolt that carries most"`
	BoltsUltimate  Number `fact:"bolts_ultimate" unit:"N" means:"load of the wire at which the bolt that carries most shears"`
	BoltsTimesWire Number `fact:"bolts_times_wire" unit:"" means:"strength of the bolts over the wire's break load"`
}

// Describe names the kind.
func (*BoltGroup) Describe() (string, string) {
	return "bolt_group", "the bolts of a fitting under the pull of one of its stays"
}

// Contact is a place where two metals touch.
type Contact struct {
	Subject
	Exposure   Word   `fact:"exposure" means:"how wet the place is" from:"exposure" words:"harsh,normal,controlled,sea water" tool:"the eye" where:"at the joint"`
	Hidden     YesNo  `fact:"hidden" means:"the joint is hidden, wet or without air" from:"hidden" tool:"the eye" where:"at the joint"`
	Apart      Number `fact:"apart" unit:"V" means:"potential between the two metals in sea water, the worst of their states"`
	Limit      Number `fact:"limit" unit:"V" means:"potential that this exposure bears"`
	Isolated   YesNo  `fact:"isolated" means:"the metals are kept apart by something that doesn't conduct" from:"isolated" tool:"ohm meter" where:"between the two metals, dry"`
	SameFamily YesNo  `fact:"same_family" means:"both metals are of one family"`
	Anode      Word   `fact:"anode" means:"the metal that is eaten"`
}

// Describe names the kind.
func (*Contact) Describe() (string, string) { return "contact", "a place where two metals touch" }

// Record is what somebody saw of a fitting on a day.
type Record struct {
	Subject
	Fitting *Fitting `fact:"fitting"`
	Crack   Word     `fact:"crack" means:"whether a crack or any line was seen" from:"crack" words:"none seen,seen,not looked for" tool:"the eye, with a glass, after cleaning" where:"at the deck line, bends and holes"`
	Since   Number   `fact:"since" unit:"year" means:"years since that day" from:"on"`
}

// Describe names the kind.
func (*Record) Describe() (string, string) {
	return "record", "what somebody saw of a fitting on a day"
}

// prototypes lists the kinds, neighbours before those who read them.
func prototypes() []Described {
	return []Described{&Stay{}, &Fitting{}, &Landing{}, &BoltGroup{}, &Contact{}, &Record{}}
}
