package rig

import "fmt"

// PlateState says what is known of a plate that holds stays.
type PlateState string

// The states of a plate. The zero value is Unseen: what nobody says anything of has
// not been seen.
const (
	// Unseen is an old plate that nobody has drawn and looked at: it is credited with
	// what it carries today and no more.
	Unseen PlateState = ""
	// Seen is an old plate that has been drawn, looked at and found sound.
	Seen PlateState = "seen"
	// New is a remade plate.
	New PlateState = "new"
	// Cracked is an old plate in which somebody saw a crack: nothing is counted on it.
	Cracked PlateState = "cracked"
)

// Plate is a fitting that stays land on.
type Plate struct {
	Name  string
	State PlateState
	// Strength is what the plate breaks at, N, 0 if nobody knows.
	Strength float64
	// Renewed is what it breaks at once it has been replaced, N, 0 if nobody knows.
	Renewed float64
}

// renewed is the plate once it has been replaced. What the old one broke at says
// nothing of it.
func (p Plate) renewed() Plate {
	p.State, p.Strength = New, p.Renewed
	return p
}

// Stay is a stay of the rig.
type Stay struct {
	Name string
	Role StayRole
	Line StayLine
	// BreakLoad is that of its wire, N.
	BreakLoad float64
	// Ends is what the weaker of its turnbuckle and terminals breaks at, N, 0 where they
	// are no weaker than the wire or nothing is said of them.
	Ends float64
	// AtRest is the pull it has at rest, N, 0 if it has not been measured.
	AtRest float64
	// Plate is the name of the plate it lands on. One without is taken for unseen.
	Plate string
	// Needs are the names of others that it can't do without: the bobstay of a forestay
	// that ends on a bowsprit, the legs of a split backstay.
	Needs []string
}

// Other is a stay that does not hold the mast by itself: a bobstay, a leg of a backstay,
// a running backstay that nobody counts on.
type Other struct {
	Name string
	// Plate is the name of the plate it lands on, "" if that is none of the rig's.
	Plate string
	// InLine says that it bears the same pull as the stay that needs it: a toggle plate
	// between the stay and its chainplate.
	InLine bool
}

// StandIn is a line or wire that can take a stay's place for a while.
type StandIn struct {
	Name     string
	Line     StayLine
	Strength StandInStrength
	// Plate is the name of the plate it lands on, "" for a fitting of its own.
	Plate string
}

// Rig is a mast with all that can hold it.
type Rig struct {
	// Masthead is the height of the mast above its heel, mm, 0 if it is not known.
	Masthead float64
	// Partners is a moment counted on at the partners of a keel-stepped mast, N mm. It
	// is 0 unless somebody has looked at the wedges; a deck-stepped mast has none.
	Partners    float64
	DeckStepped bool
	Stays       []Stay
	Others      []Other
	Plates      []Plate
	StandIns    []StandIn
	Credit      Credit
}

// Step is one thing done to the rig. Stand-ins that are fitted go up first; then what
// is removed or replaced comes off; what is fitted or replaced comes back last.
type Step struct {
	Name string
	// Fit, Remove and Replace name stays, plates or stand-ins. Removing a plate takes
	// the stays on it off, fitting it puts them back. What is replaced comes back new.
	Fit, Remove, Replace []string
	// Attended says that somebody stands by until the step is done; Days how long it lasts.
	Attended bool
	Days     float64
}

// Standing asks how a mast stands through a list of steps.
//
// Returns for each step what the rig holds while the step is on and after it.
//
// Equation: as Capacity, for the moment that holds a push of
//
//	PerSquare Gust^2 from anywhere + Roll to either side
//	margin = min over n of (h(n) + Mp)/(PerSquare Gust^2 + Roll |n_y|)
//
// Symbols: Rig, Steps, Demand.
//
// Holds under the assumptions that the result lists.
//
// Source: statics (computed); credits, margins and the storm gust (judgement). Errors:
// a plan that can't be: what is taken off twice, names that nothing bears, a stay
// above the masthead, a shroud plate on the centreline; all of them, a line each.
type Standing struct {
	Rig    Rig
	Steps  []Step
	Demand Demand
}

// shrouds are the roles that hold a mast sideways.
var shrouds = map[StayRole]bool{CapShroud: true, Intermediate: true, SingleLower: true, ForeLower: true, AftLower: true}

// mostWork bounds stays, plates, stand-ins and steps, each.
const mostWork = 60

// check lists all that can't be of a rig.
func (r Rig) check() []error {
	var faults []error
	fault := func(err error) {
		if err != nil {
			faults = append(faults, err)
		}
	}
	var in inputs
	in.must(len(r.Stays) > 0, "no stay is given: without one nothing holds the mast")
	in.must(len(r.Stays) <= mostWork && len(r.Plates) <= mostWork && len(r.Others) <= mostWork && len(r.StandIns) <= mostWork, "more than %d stays, plates or stand-ins are not covered", mostWork)
	in.notNegative("the height of the masthead", r.Masthead, "mm")
	in.moment("the moment at the partners", r.Partners)
	in.must(!r.DeckStepped || r.Partners == 0, "a deck-stepped mast has no partners that hold a moment: no stays, no mast")
	fault(in.err)
	fault(r.Credit.check())
	fault(r.namesOnce())
	for _, s := range r.Stays {
		fault(r.checkStay(s))
	}
	for _, p := range r.Plates {
		fault(p.check())
	}
	for _, o := range r.Others {
		fault(r.checkOther(o))
	}
	for _, s := range r.StandIns {
		fault(r.checkStandIn(s))
	}
	return faults
}

func (r Rig) checkStay(s Stay) error {
	var in inputs
	in.must(!shrouds[s.Role] || s.Line.Foot.Y != 0, "%s: its plate stands on the centreline, and a %s there can't hold the mast sideways", s.Name, s.Role)
	in.stay(s.Name, s.Line, r.Masthead)
	in.positive("the break load of "+s.Name, s.BreakLoad, "N")
	in.notNegative("the pull at rest of "+s.Name, s.AtRest, "N")
	in.notNegative("what the ends of "+s.Name+" break at", s.Ends, "N")
	in.must(s.AtRest <= s.BreakLoad/2, "%s can't stand at rest with %.1f kN, more than half of what it breaks at", s.Name, s.AtRest/1000)
	in.must(s.Plate == "" || r.plateNamed(s.Plate) >= 0, "%s lands on %q, and no plate is called that", s.Name, s.Plate)
	for _, need := range s.Needs {
		in.must(r.otherNamed(need) >= 0, "%s needs %q, and nothing is called that", s.Name, need)
	}
	return in.err
}

func (r Rig) checkOther(o Other) error {
	var in inputs
	in.must(o.Plate == "" || r.plateNamed(o.Plate) >= 0, "%s lands on %q, and no plate is called that", o.Name, o.Plate)
	return in.err
}

func (p Plate) check() error {
	var in inputs
	in.must(p.State == Unseen || p.State == Seen || p.State == New || p.State == Cracked, "%s: %q is no state of a plate", p.Name, p.State)
	in.notNegative("the strength of "+p.Name, p.Strength, "N")
	in.notNegative("the strength of "+p.Name+" once renewed", p.Renewed, "N")
	return in.err
}

func (r Rig) checkStandIn(s StandIn) error {
	var in inputs
	in.stay(s.Name, s.Line, r.Masthead)
	in.must(s.Plate == "" || r.plateNamed(s.Plate) >= 0, "%s lands on %q, and no plate is called that", s.Name, s.Plate)
	if _, err := s.Strength.Reckon(); err != nil {
		in.must(false, "%s: %s", s.Name, err)
	}
	return in.err
}

// namesOnce holds that every stay, plate and stand-in has a name of its own.
func (r Rig) namesOnce() error {
	seen := map[string]bool{}
	for _, name := range r.names() {
		if name == "" {
			return fmt.Errorf("a stay, plate or stand-in has no name")
		}
		if seen[name] {
			return fmt.Errorf("%q stands twice among stays, plates and stand-ins", name)
		}
		seen[name] = true
	}
	return nil
}

func (r Rig) names() []string {
	var names []string
	for _, s := range r.Stays {
		names = append(names, s.Name)
	}
	for _, p := range r.Plates {
		names = append(names, p.Name)
	}
	for _, s := range r.Others {
		names = append(names, s.Name)
	}
	for _, s := range r.StandIns {
		names = append(names, s.Name)
	}
	return names
}

// plateNamed is the place of a plate in the list, -1 if there is none of that name.
func (r Rig) plateNamed(name string) int {
	for i, p := range r.Plates {
		if p.Name == name && name != "" {
			return i
		}
	}
	return -1
}

// otherNamed is the place of an other in the list, -1 if there is none of that name.
func (r Rig) otherNamed(name string) int {
	for i, o := range r.Others {
		if o.Name == name {
			return i
		}
	}
	return -1
}
