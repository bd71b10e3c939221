package fact

import (
	"chainwale/engine/plan"
	"chainwale/engine/rig"
)

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
	Life         Number `fact:"life" unit:"year" means:"years such a wire is commonly trusted for: 10 on the ocean or in the tropics, 12 on the coast, 15 in fresh water"`
	Waters       Word   `fact:"waters" means:"where the boat sails" from:"/boat/waters" words:"fresh,coastal,ocean" tool:"the owner" where:"the farthest she is to sail"`
	Climate      Word   `fact:"climate" means:"the climate she lies in" from:"/boat/climate" words:"temperate,tropical" tool:"the owner" where:"the warmest place she is to lie in"`
	Toggle       YesNo  `fact:"toggle" means:"whether a toggle at the lower end lets the wire swing" from:"toggle" tool:"the eye" where:"at the lower end"`
	Fittings     Number `fact:"fittings" unit:"" means:"how many fittings of the plan serve it"`

	DesignLoad      Number `fact:"design_load" unit:"N" means:"load that its plate has to outlast: what the wire breaks at, or what a righting moment that was given or found by an inclining test asks of the wire, where that is more"`
	LeastBreak      Number `fact:"least_break" unit:"N" means:"load at which the wire breaks at the least; where its metal is not known, that of the weaker wire"`
	Required        Number `fact:"required" unit:"N" means:"break load that the righting moment asks of the wire"`
	RequiredBy      Word   `fact:"required_by" means:"how the righting moment behind that is known; of what holds a bowsprit, the forestay" words:"given,inclined,roll period,estimated,the forestay"`
	TimesRequired   Number `fact:"times_required" unit:"" means:"least break load of the wire over what the righting moment asks of it"`
	RightingTold    YesNo  `fact:"righting_told" means:"whether the plan says how her righting moment is known" from:"/boat/righting_moment/how"`
	MastTold        YesNo  `fact:"mast_told" means:"whether the plan says anything of the mast as a whole"`
	HoldsMast       YesNo  `fact:"holds_mast" means:"whether its upper end is on the mast that the plan tells of" from:"upper/x" tool:"tape" where:"from the mast's line to its upper end, along and across"`
	FootX           Number `fact:"foot_x" unit:"mm" means:"where its lower end is, forward of the mast" from:"lower/x" tool:"tape" where:"on deck, from the mast"`
	FootY           Number `fact:"foot_y" unit:"mm" means:"where its lower end is, to port of the mast" from:"lower/y" tool:"tape" where:"on deck, from the middle of the boat"`
	FootZ           Number `fact:"foot_z" unit:"mm" means:"where its lower end is, above the mast's heel" from:"lower/z" tool:"tape" where:"from the mast's heel, along the mast and across the deck"`
	Top             Number `fact:"top" unit:"mm" means:"where its upper end is, above the mast's heel" from:"upper/z" tool:"a tape on a halyard" where:"along the mast"`
	Length          Number `fact:"length" unit:"mm" means:"length of the wire from pin to pin"`
	Angle           Number `fact:"angle" unit:"deg" means:"angle to the mast at its upper end"`
	Stiffness       Number `fact:"stiffness" unit:"N" means:"pull that would stretch it to twice its length if it stayed elastic"`
	PullATurn       Number `fact:"pull_a_turn" unit:"N" means:"by how much the pull rises with one turn of the turnbuckle, at the most"`
	Tension         Number `fact:"tension" unit:"N" means:"pull in it at rest" from:"tension" tool:"a tension gauge, or a rule clamped along the wire" where:"on the wire, at rest"`
	TensionTold     YesNo  `fact:"tension_told" means:"whether the plan says how hard it is set up"`
	TensionShare    Number `fact:"tension_share" unit:"" means:"pull at rest over its least break load"`
	TurnbuckleTold  YesNo  `fact:"turnbuckle_told" means:"whether the plan says anything of its turnbuckle"`
	TurnbuckleTimes Number `fact:"turnbuckle_times_wire" unit:"" means:"what the turnbuckle breaks at over what the wire does; 1 where it is proven to hold that" from:"turnbuckle/break_load" tool:"the maker's papers" where:"by the thread and the marks on the body"`
	TurnbuckleMetal Word   `fact:"turnbuckle_metal" means:"metal of the turnbuckle's body" from:"turnbuckle/metal" tool:"the eye and a magnet" where:"on the body"`
	TurnbuckleBrass YesNo  `fact:"turnbuckle_brass" means:"whether the metal of the turnbuckle's body holds enough zinc to lose it in sea water"`
	TerminalsTold   YesNo  `fact:"terminals_told" means:"whether the plan says anything of the terminals of the wire"`
	TerminalsTimes  Number `fact:"terminals_times_wire" unit:"" means:"what the weaker terminal breaks at over what the wire does; 1 where they are proven to hold that" from:"terminals/break_load" tool:"the maker's papers" where:"by the marks on the terminals"`
	Mixed           YesNo  `fact:"mixed" means:"whether the wires of its role on this boat differ in construction, metal or size"`

	plan *plan.Stay
	// tips are those of the spreaders that it leads over, the lowest first; spreaders is
	// unknown where it leads over some and the plan tells of none.
	tips      []rig.Point
	spreaders Number
	// unasked tells that no rule here says what it must break at.
	unasked bool
}

// Describe names the kind.
func (*Stay) Describe() (string, string) { return "stay", "one wire of the standing rigging" }

// MetalFacts are what rules may read of a part's metal.
type MetalFacts struct {
	Name      Word   `fact:"name" means:"name of the metal" from:"metal/name" tool:"mill certificate or an alloy analyser" where:"on bare metal of the part"`
	Yield     Number `fact:"yield" unit:"MPa" means:"least yield strength of the metal" from:"metal/yield"`
	Ultimate  Number `fact:"ultimate" unit:"MPa" means:"least ultimate strength of the metal" from:"metal/ultimate"`
	Family    Word   `fact:"family" means:"family of alloys the metal belongs to"`
	Brass     YesNo  `fact:"brass" means:"whether the metal holds enough zinc to lose it in sea water"`
	Carbon    Number `fact:"carbon" unit:"" means:"the most carbon the metal may hold, in per cent by mass" from:"metal/carbon" tool:"mill certificate" where:"the metal's papers"`
	Certified YesNo  `fact:"certified" means:"whether a certificate goes with the metal" from:"metal/certificate"`
	PREN      Number `fact:"pren" unit:"" means:"pitting resistance number at the chemistry minimum (stainless only)"`
	Titanium  YesNo  `fact:"titanium" means:"whether the metal is titanium"`
	Stainless YesNo  `fact:"stainless" means:"whether the metal is a stainless steel"`
}

// Fitting is a metal part that holds stays.
type Fitting struct {
	Subject
	State       Word       `fact:"state" means:"kept as it is, remade as it was, or new" from:"state" words:"kept,remade,new"`
	Sort        Word       `fact:"kind" means:"what sort of part it is" from:"kind" words:"chainplate,tang,stemhead,backstay plate,toggle plate,triangle plate,bobstay plate,whisker plate,u-bolt,tie rod"`
	Metal       MetalFacts `fact:"metal"`
	Thickness   Number     `fact:"thickness" unit:"mm" means:"thickness of the plate" from:"thickness" tool:"calipers" where:"beside the pin hole, clear of wear and polish"`
	Width       Number     `fact:"width" unit:"mm" means:"width of the plate at the pin hole" from:"outline/width" tool:"calipers" where:"across the plate at the pin hole"`
	Hidden      YesNo      `fact:"hidden" means:"whether part of it stands where water gets and nobody looks (a deck slot, behind glass, under water)" from:"exposure" tool:"the eye" where:"along the whole part, above and below deck"`
	UnderWater  YesNo      `fact:"under_water" means:"whether it stands under water" from:"exposure" tool:"the eye" where:"along the whole part"`
	Waters      Word       `fact:"waters" means:"where the boat sails" from:"/boat/waters" words:"fresh,coastal,ocean" tool:"the owner" where:"the farthest she is to sail"`
	Climate     Word       `fact:"climate" means:"the climate she lies in" from:"/boat/climate" words:"temperate,tropical" tool:"the owner" where:"the warmest place she is to lie in"`
	Access      Word       `fact:"access" means:"how both faces are reached" from:"mounting/access" words:"open,panel,tools,cut" tool:"the eye" where:"on both faces of the part"`
	Age         Number     `fact:"age" unit:"year" means:"how many years ago the part was made" from:"installed" tool:"the boat's papers" where:"bills, earlier surveys, the builder's records"`
	Life        Number     `fact:"life" unit:"year" means:"years such a part is commonly trusted for: 10 hidden in the tropics, 25 in the open, 15 otherwise"`
	AgeKnown    YesNo      `fact:"age_known" means:"whether the plan says when the part was made" from:"installed"`
	Welded      YesNo      `fact:"welded" means:"whether something is welded to it or it is welded together" from:"welded" tool:"the eye" where:"along all edges and at every joint of the part"`
	Stays       Number     `fact:"stays" unit:"" means:"how many stays it serves" from:"serves"`
	BearsAll    Number     `fact:"bears_all" unit:"" means:"what it holds over what all its stays ask of it together: bolts and section over the sum with one stay at its design load and the rest at work, what the bolts go through over the sum of all at work"`
	SinceLook   Number     `fact:"since_look" unit:"year" means:"how many years ago it was last drawn and looked at, or made" from:"/records" tool:"the eye, with a glass" where:"on the part when it is drawn"`
	GlassedIn   YesNo      `fact:"glassed_in" means:"whether it is laminated into the hull, so that nobody can see the metal" from:"mounting/glassed_in" tool:"the eye" where:"along the part, inside the boat"`
	BoltsAre    Word       `fact:"bolts_are" means:"what its bolts, and the metal and wood about them, are like" from:"mounting/glassed_in" words:"in sight" tool:"a saw, then the eye" where:"on its bolts, once the laminate over them is cut away"`
	Bonding     Word       `fact:"bonding" means:"whether the wire that leads lightning or stray current from it to the water is joined, cut, or there is none" from:"bonding" words:"joined,cut,none" tool:"ohm meter" where:"from the fitting to the keel bolts"`
	BondingTold YesNo      `fact:"bonding_told" means:"whether the plan says anything of that wire"`
	LookPlanned YesNo      `fact:"look_planned" means:"whether the plan gives a day, still to come, on which it will be drawn and looked at" from:"next_look"`

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
	// narrow is the pin hole's width: that of the hole, or across an oval one.
	narrow *Number

	Hole        Number `fact:"hole" unit:"mm" means:"diameter of the pin hole; of an oval one, what it takes out of the plate across the pull" from:"holes/diameter" tool:"calipers" where:"inside the pin hole, along and across the load"`
	HoleLong    Number `fact:"hole_long" unit:"mm" means:"greatest inside measure of the pin hole: its diameter, or its length where it is oval" from:"holes/diameter" tool:"calipers" where:"inside the pin hole, along and across the load"`
	End         Number `fact:"end" unit:"mm" means:"metal before the centre of the pin hole: to the loaded end of the plate, or to the edge of another hole in between" from:"holes/along" tool:"calipers" where:"from the hole's edge to the plate's end, plus half the hole"`
	Across      Number `fact:"across" unit:"mm" means:"how far the pin hole stands off the plate's centre line" from:"holes/across"`
	PinNominal  Number `fact:"pin_nominal" unit:"mm" means:"nominal diameter of the pin" from:"pin/diameter" tool:"calipers" where:"on the pin, at the plate"`
	PinDiameter Number `fact:"pin_diameter" unit:"mm" means:"diameter of the pin (as measured, or else nominal)" from:"pin/diameter" tool:"calipers" where:"on the pin, at the plate"`
	PinMeasured Number `fact:"pin_measured" unit:"mm" means:"diameter of the pin as measured" from:"pin/measured" tool:"calipers" where:"on the pin, at the plate"`
	PinMetal    Word   `fact:"pin_metal" means:"metal of the pin" from:"pin/metal" tool:"marking or mill certificate" where:"on the pin's head"`
	PinBrass    YesNo  `fact:"pin_brass" means:"whether the pin's metal holds enough zinc to lose it in sea water"`
	PinFamily   Word   `fact:"pin_family" means:"family of alloys the pin's metal belongs to"`
	PinYield    Number `fact:"pin_yield" unit:"MPa" means:"least yield strength of the pin's metal" from:"pin/yield" tool:"marking or mill certificate" where:"on the pin's head"`
	PinUltimate Number `fact:"pin_ultimate" unit:"MPa" means:"least ultimate strength of the pin's metal" from:"pin/ultimate" tool:"marking or mill certificate" where:"on the pin's head"`
	ForkOpening Number `fact:"fork_opening" unit:"mm" means:"clear width between the fork's cheeks" from:"fork/opening" tool:"calipers" where:"between the cheeks, at the pin"`
	ForkCheek   Number `fact:"fork_cheek" unit:"mm" means:"thickness of one cheek of the fork" from:"fork/cheek" tool:"calipers" where:"on one cheek, at the pin"`

	LeanIn    Number `fact:"lean_in" unit:"deg" means:"angle in the plate's plane between wire and plate" from:"lean/in_plane" tool:"bevel gauge" where:"between the wire and the plate's centre line, seen square on the plate's face"`
	LeanOut   Number `fact:"lean_out" unit:"deg" means:"angle out of the plate's plane between wire and plate" from:"lean/out_of_plane" tool:"bevel gauge" where:"between the wire and the plate's face, seen along its edge"`
	OneSystem YesNo  `fact:"one_system" means:"whether pin and hole are both of inch sizes, or both of metric ones"`

	PinPlastic          Number `fact:"pin_plastic" unit:"N mm" means:"moment at which the pin takes a set across its whole section"`
	PinMoment           Number `fact:"pin_moment" unit:"N mm" means:"moment in the pin under the wire's load at work"`
	PlateUltimate       Number `fact:"plate_ultimate" unit:"N" means:"least ultimate strength of the plate at the pin hole"`
	PlateBearing        Number `fact:"plate_bearing" unit:"N" means:"load at which the plate's hole begins to yield under the pin, the lowest of three codes"`
	PinShear            Number `fact:"pin_shear" unit:"N" means:"load at which the pin shears, in double shear"`
	PinBending          Number `fact:"pin_bending" unit:"N" means:"load at which the pin gives way in bending between the cheeks of its fork"`
	PlateTimesWire      Number `fact:"plate_times_wire" unit:"" means:"strength of the plate at the pin hole over the wire's break load"`
	PinShearTimesWire   Number `fact:"pin_shear_times_wire" unit:"" means:"load at which the pin shears over the wire's break load"`
	PinBendingTimesWire Number `fact:"pin_bending_times_wire" unit:"" means:"load at which the pin gives way in bending over the wire's break load"`
	PinClearance        Number `fact:"pin_clearance" unit:"mm" means:"hole less pin, the pin as measured; of an oval hole its length, if the pin goes in"`
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

	Count          Number `fact:"count" unit:"" means:"how many bolts hold the fitting" from:"holes" tool:"the eye" where:"on the plate: the places of all bolt holes"`
	Lean           Number `fact:"lean" unit:"deg" means:"angle in the plate's plane between wire and plate" from:"lean/in_plane" tool:"bevel gauge" where:"between the wire and the plate's centre line, seen square on the plate's face"`
	LeanOut        Number `fact:"lean_out" unit:"deg" means:"angle out of the plate's plane between wire and plate" from:"lean/out_of_plane" tool:"bevel gauge" where:"between the wire and the plate's face, seen along its edge"`
	PinAlong       Number `fact:"pin_along" unit:"mm" means:"from the loaded end of the plate to the centre of the pin hole" from:"holes/along" tool:"calipers" where:"from the hole's edge to the plate's end, plus half the hole"`
	Length         Number `fact:"length" unit:"mm" means:"length of the plate" from:"outline/length" tool:"rule" where:"from the loaded end to the other"`
	Thread         Word   `fact:"thread" means:"thread of the bolts" from:"mounting/bolts/thread" tool:"thread gauge" where:"on a bolt's end"`
	Grade          Word   `fact:"grade" means:"strength grade of the bolts" from:"mounting/bolts/grade" tool:"the eye" where:"marking on a bolt's head"`
	ThreadsInPlane YesNo  `fact:"threads_in_plane" means:"whether the threads of the bolts reach into the joint between plate and host" from:"mounting/bolts/threads_in_plane" tool:"the eye and a rule" where:"on a drawn bolt, against the plate's thickness"`
	BoltDiameter   Number `fact:"bolt_diameter" unit:"mm" means:"diameter of the bolts' thread"`
	BoltPREN       Number `fact:"bolt_pren" unit:"" means:"pitting resistance number of the bolts' metal at the chemistry minimum"`
	BoltMetal      Word   `fact:"bolt_metal" means:"metal of the bolts, by their grade where it is not named" from:"mounting/bolts/metal" tool:"the eye and a magnet" where:"marking on a bolt's head"`
	BoltBrass      YesNo  `fact:"bolt_brass" means:"whether the bolts' metal holds enough zinc to lose it in sea water"`
	BoltFamily     Word   `fact:"bolt_family" means:"family of alloys the bolts' metal belongs to"`
	BoltHead       Word   `fact:"bolt_head" means:"head of the bolts" from:"mounting/bolts/head" words:"hex,square-neck,countersunk,stud" tool:"the eye" where:"on the face of the plate"`
	BoltStressArea Number `fact:"bolt_stress_area" unit:"mm2" means:"stress area of the bolts' thread"`
	BoltUltimate   Number `fact:"bolt_ultimate" unit:"MPa" means:"least ultimate strength of the bolts"`
	BoltShear      Number `fact:"bolt_shear" unit:"N" means:"load at which one bolt shears"`
	BoltTension    Number `fact:"bolt_tension" unit:"N" means:"pull at which one bolt breaks along its length"`
	LargestShare   Number `fact:"largest_share" unit:"" means:"share of the wire's load that shears the bolt which carries most"`
	PullShare      Number `fact:"pull_share" unit:"" means:"share of the wire's load that pulls at the bolt which is pulled most"`
	BoltsUltimate  Number `fact:"bolts_ultimate" unit:"N" means:"load of the wire at which the bolts give way, sheared and pulled together"`
	BoltsTimesWire Number `fact:"bolts_times_wire" unit:"" means:"strength of the bolts over the wire's break load"`
	Spacing        Number `fact:"spacing" unit:"" means:"least distance from bolt to bolt, over the hole"`

	HostKind      Word   `fact:"host_kind" means:"what the bolts go through" from:"mounting/host/kind" words:"plywood,timber,laminate,cored,metal" tool:"the eye" where:"at a bolt hole or a cut edge of what it is bolted to"`
	HostThickness Number `fact:"host_thickness" unit:"mm" means:"thickness of what the bolts go through" from:"mounting/host/thickness" tool:"a bent wire or depth gauge" where:"through a bolt hole"`
	Washer        Number `fact:"washer" unit:"mm" means:"outer diameter of the washers under the nuts" from:"mounting/bolts/washer" tool:"calipers" where:"under a nut"`
	Host          Number `fact:"host" unit:"N" means:"load at work that what the bolts go through holds (by the yield modes of timber, or a third of what crushes laminate)"`
	HostEdge      Number `fact:"host_edge" unit:"" means:"distance from the bolts to the edge of what they go through, over their diameter" from:"mounting/host/edge" tool:"rule" where:"from the last bolt to the edge towards which it is pulled"`
	PullThrough   Number `fact:"pull_through" unit:"N" means:"pull at which a bolt's washer or backing comes through the laminate"`
	PullAtWork    Number `fact:"pull_at_work" unit:"N" means:"pull at the bolt which is pulled most, under the wire's load at work"`
}

// Describe names the kind.
func (*BoltGroup) Describe() (string, string) {
	return "bolt_group", "the bolts of a fitting under the pull of one of its stays"
}

// BoltHole is one bolt hole of a fitting under the pull of one of its stays.
type BoltHole struct {
	Subject
	Stay    *Stay    `fact:"stay"`
	Fitting *Fitting `fact:"fitting"`

	Hole     Number `fact:"hole" unit:"mm" means:"diameter of the bolt hole; of an oval one, what it takes out of the plate across the pull" from:"holes/diameter" tool:"calipers" where:"inside the bolt hole"`
	Share    Number `fact:"share" unit:"" means:"share of the wire's load on this bolt"`
	Bearing  Number `fact:"bearing" unit:"N" means:"force of the bolt at which the plate gives way at the hole, the least of three forms"`
	Ultimate Number `fact:"ultimate" unit:"N" means:"load of the wire at which the plate gives way at this hole"`
	EndRatio Number `fact:"end_ratio" unit:"" means:"from the hole's centre to the plate's far end, over the hole"`

	End          Number `fact:"end" unit:"mm" means:"from the hole's centre to the plate's far end"`
	Side         Number `fact:"side" unit:"mm" means:"from the hole's centre to the nearer side of the plate"`
	Pitch        Number `fact:"pitch" unit:"mm" means:"from the hole's centre to that of the next towards the far end, 0 where there is none"`
	InLine       YesNo  `fact:"in_line" means:"whether all bolts of the fitting stand in one line along the plate"`
	Lean         Number `fact:"lean" unit:"deg" means:"angle in the plate's plane between wire and plate"`
	BoltDiameter Number `fact:"bolt_diameter" unit:"mm" means:"diameter of the bolt's thread"`
	BoltUltimate Number `fact:"bolt_ultimate" unit:"MPa" means:"least ultimate strength of the bolt"`
	BoltHead     Word   `fact:"bolt_head" means:"head of the bolt" words:"hex,square-neck,countersunk,stud"`
}

// Describe names the kind.
func (*BoltHole) Describe() (string, string) {
	return "bolt_hole", "one bolt hole of a fitting under the pull of one of its stays"
}

// Section is the plate at the first point that holds it fast.
type Section struct {
	Subject
	Stay    *Stay    `fact:"stay"`
	Fitting *Fitting `fact:"fitting"`

	Lever       Number `fact:"lever" unit:"mm" means:"from the pin to the first point that holds the plate fast" from:"mounting/first_fixed" tool:"rule" where:"from the pin hole to the top bolt, or to the edge of what the plate is bolted to"`
	NetUltimate Number `fact:"net_ultimate" unit:"N" means:"load at which the plate breaks across its first bolt hole"`
	Elastic     Number `fact:"elastic" unit:"" means:"share of its yield that the worst corner uses at work"`
	Plastic     Number `fact:"plastic" unit:"" means:"share of its plastic strength that the section uses at work, tension and bending together"`
}

// Describe names the kind.
func (*Section) Describe() (string, string) {
	return "section", "the plate at the first point that holds it fast, under the pull of one of its stays"
}

// Mounting is how a fitting is held to the boat.
type Mounting struct {
	Subject
	Fitting *Fitting `fact:"fitting"`

	ThroughDeck     YesNo  `fact:"through_deck" means:"whether the plate comes up through a slot in the deck" from:"mounting/through_deck" tool:"the eye" where:"where the plate meets the deck"`
	HostKind        Word   `fact:"host_kind" means:"what the bolts go through" from:"mounting/host/kind" words:"plywood,timber,laminate,cored,metal" tool:"the eye" where:"at a bolt hole or a cut edge of what it is bolted to"`
	Found           Word   `fact:"found" means:"whether what the bolts go through was found sound, damp, soft or rotten" from:"mounting/host/found" words:"sound,damp,soft,rotten,not looked at" tool:"spike, hammer and moisture meter" where:"round each bolt and under the deck slot"`
	SolidUnderBolts YesNo  `fact:"solid_under_bolts" means:"whether core was taken out under the bolts and solid stuff put in" from:"mounting/host/solid_under_bolts" tool:"the eye" where:"in a bolt hole"`
	Backing         YesNo  `fact:"backing" means:"whether a metal plate stands under the nuts" from:"mounting/backing_plate" tool:"the eye" where:"on the far side of the bolts"`
	SlotGap         Number `fact:"slot_gap" unit:"mm" means:"room between plate and deck at the narrowest" from:"mounting/slot/gap" tool:"feeler gauge or drill shanks" where:"all round the plate in its slot"`
	EdgeSealed      YesNo  `fact:"edge_sealed" means:"whether the cut edge of the deck is sealed with resin" from:"mounting/slot/edge_sealed" tool:"the eye" where:"in the slot, with the plate drawn"`
	LetsGo          YesNo  `fact:"lets_go" means:"whether the sealant can be cut, so that the plate can be drawn again" from:"mounting/slot/lets_go" tool:"the sealant's papers" where:"its label"`
	Attacks         YesNo  `fact:"attacks" means:"whether the sealant attacks a plastic that stands close by" from:"mounting/slot/plastic_near" tool:"the eye" where:"round the slot: windows, hatches, vents"`
}

// Describe names the kind.
func (*Mounting) Describe() (string, string) {
	return "mounting", "how a fitting is held to the boat"
}

// Contact is a place where two metals touch.
type Contact struct {
	Subject
	Exposure   Word   `fact:"exposure" means:"how wet the place is" from:"exposure" words:"harsh,normal,controlled,sea water" tool:"the eye" where:"at the joint"`
	Hidden     YesNo  `fact:"hidden" means:"whether the joint is hidden, wet or without air" from:"hidden" tool:"the eye" where:"at the joint"`
	Apart      Number `fact:"apart" unit:"V" means:"potential between the two metals in sea water, the worst of their states"`
	Limit      Number `fact:"limit" unit:"V" means:"potential that this exposure bears"`
	Isolated   YesNo  `fact:"isolated" means:"whether the metals are kept apart by something that doesn't conduct" from:"isolated" tool:"ohm meter" where:"between the two metals, dry"`
	SameFamily YesNo  `fact:"same_family" means:"whether both metals are of one family"`
	AreaRatio  Number `fact:"area_ratio" unit:"" means:"wetted area of the metal that is not eaten over that of the one that is" from:"area_a" tool:"rule" where:"on both metals, near the joint"`
	Anode      Word   `fact:"anode" means:"the metal that is eaten"`
}

// Describe names the kind.
func (*Contact) Describe() (string, string) { return "contact", "a place where two metals touch" }

// Record is what somebody saw of a fitting on a day.
type Record struct {
	Subject
	Fitting        *Fitting `fact:"fitting"`
	Crack          Word     `fact:"crack" means:"whether a crack or any line was seen" from:"crack" words:"none seen,seen,not looked for" tool:"the eye, with a glass, after cleaning" where:"at the deck line, bends and holes"`
	Leak           Word     `fact:"leak" means:"whether water had come in beside the part" from:"leak" words:"none seen,seen,not looked for" tool:"the eye, after rain" where:"below the part, inside"`
	RustWeep       Word     `fact:"rust_weep" means:"whether rust had run from the slot or from under the part" from:"rust_weep" words:"none seen,seen,not looked for" tool:"the eye" where:"at the slot and round the part's edges"`
	Pits           Word     `fact:"pits" means:"whether pits were seen in the metal" from:"pits" words:"none seen,seen,not looked for" tool:"the eye, with a glass" where:"where the part stood in the slot"`
	PinBent        Word     `fact:"pin_bent" means:"whether the pin was found bent or scored" from:"pin_bent" words:"none seen,seen,not looked for" tool:"the eye and a flat plate" where:"on the drawn pin, rolled on the flat"`
	Loss           Number   `fact:"loss" unit:"" means:"share of the thickness that pits and wear have taken" from:"loss" tool:"calipers" where:"at the deepest pit, against sound metal beside it"`
	LossPercent    Number   `fact:"loss_percent" unit:"" means:"what pits and wear have taken of the thickness, in per cent"`
	LossAtHole     YesNo    `fact:"loss_at_hole" means:"whether the worst place lies at a hole or a bend" from:"loss_at_hole" tool:"the eye" where:"at the deepest pit"`
	Ovality        Number   `fact:"ovality" unit:"" means:"how much longer than wide the pin hole has become" from:"ovality" tool:"calipers" where:"in the pin hole, along and across the load"`
	OvalityPercent Number   `fact:"ovality_percent" unit:"" means:"how much longer than wide the pin hole has become, in per cent"`
	Drawn          YesNo    `fact:"drawn" means:"whether the record says that the part was drawn" from:"did"`
	Of             Word     `fact:"of" means:"of which part the record is" words:"the part that is there,the part that is to go,the part that is gone"`
	Dated          Word     `fact:"dated" means:"of which time the record is" from:"on" words:"in the part's time,before the part was there,after the day judged on"`
	Since          Number   `fact:"since" unit:"year" means:"years since that day" from:"on"`
}

// Describe names the kind.
func (*Record) Describe() (string, string) {
	return "record", "what somebody saw of a fitting on a day"
}

// prototypes lists the kinds, neighbours before those who read them.
func prototypes() []Described {
	return []Described{&Mast{}, &Stay{}, &Fitting{}, &Landing{}, &BoltGroup{}, &BoltHole{}, &Section{}, &Mounting{}, &Contact{}, &Record{}, &Bend{}, &Match{}, &StandIn{}, &Step{}}
}
