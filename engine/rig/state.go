package rig

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// Held is a stay or stand-in that stands, with what it is counted on for.
type Held struct {
	Name string
	// Allowable is the pull in N, Governs what it hangs on.
	Allowable float64
	Governs   string
	StandIn   bool
	// OnTrust says that it hangs on a plate that nobody has seen or whose strength is not known.
	OnTrust bool
}

// directions are those that a capacity is given for, deg.
var directions = [8]float64{0, 45, 90, 135, 180, 225, 270, 315}

// State is what a rig holds at one time.
type State struct {
	On  []Held
	Off []string
	// ByDirection is the moment held, N mm, when the mast is pushed towards 0, 45, ...
	// 315 deg, 0 forward, 90 port. Worst is the least of all directions.
	ByDirection [8]float64
	Worst       float64
	// Wind and Roll are the moments that push at the gust of the step, N mm.
	Wind, Roll float64
	// Margin is how many times the push is held, Wanted how many times it has to be.
	Margin, Wanted float64
	// Falls is the direction that the mast falls in first, deg, 0 forward, 90 port; Toward
	// says it in words. Governs is the stay or stand-in that gives first there, Because
	// what that hangs on.
	Falls            float64
	Toward           string
	Governs, Because string
	// Gust is that of the step, UsedUp the gust at which the wanted margin is used up,
	// Gone the one at which all that is credited is. 0 where the roll alone does it. m/s.
	Gust, UsedUp, Gone float64
	// AfterLoss is the margin with any one more stay or stand-in gone, Lost the one that
	// hurts most.
	AfterLoss, WantedAfterLoss float64
	Lost                       string
	// Holds says whether both margins are met. It does not say that the mast is safe.
	Holds    bool
	Concerns []Concern
	// Uncounted are the stand-ins that are up and count as nothing, with why.
	Uncounted []Held

	// m are the moments of what is On, push and perSquare what pushes.
	m         []vector
	push      pushing
	perSquare float64
}

// StepState is a step with what the rig holds.
type StepState struct {
	Step Step
	// During is the rig while the step is on, at its weakest; After is it afterwards.
	During, After State
	// Tighten are the days from the beginning of the step at which stand-ins of line
	// have to be hauled tight again and looked at for chafe; none if none is up. Watch
	// says what else to look at while they are.
	Tighten []float64
	Watch   []string
}

// StandingResult is how the mast stands through all steps.
type StandingResult struct {
	Before State
	Steps  []StepState
	// Weakest is the step with the least margin over what is wanted, -1 if there is none.
	Weakest     int
	Assumptions []string
}

// Reckon goes through the steps.
func (s Standing) Reckon() (StandingResult, error) {
	p, faults := s.Rig.prepare()
	demand := s.Demand.usual()
	if err := demand.check(); err != nil {
		faults = append(faults, err)
	}
	if len(s.Steps) > mostWork {
		faults = append(faults, fmt.Errorf("%d steps are more than the %d that are covered", len(s.Steps), mostWork))
	}
	if len(faults) > 0 {
		return StandingResult{}, errorsOf(faults)
	}
	plan := newPlanned(p)
	r := StandingResult{Weakest: -1, Before: p.state(plan.now, demand, true), Assumptions: p.assumptions(demand)}
	spare := math.Inf(1)
	for i, step := range s.Steps {
		name := step.called(i)
		if !(step.Days >= 0 && step.Days <= 3660) {
			plan.fault("%s: it can't last %g days", name, step.Days)
		}
		during, after := plan.take(name, step)
		if len(plan.faults) > 0 {
			continue
		}
		state := StepState{Step: step, During: p.state(during, demand, step.Attended), After: p.state(after, demand, step.Attended)}
		if slices.Contains(during.rigged, true) {
			state.Tighten, state.Watch = TightenDays(step.Days), watches(step)
		}
		if now := state.During.Margin / state.During.Wanted; now < spare {
			spare, r.Weakest = now, i
		}
		r.Steps = append(r.Steps, state)
	}
	if err := errors.Join(plan.faults...); err != nil {
		return StandingResult{}, err
	}
	return r, nil
}

func (s Step) called(i int) string {
	if s.Name == "" {
		return fmt.Sprintf("step %d", i+1)
	}
	return fmt.Sprintf("step %d (%s)", i+1, s.Name)
}

// watches are what stand-ins want while they are up.
func watches(s Step) []string {
	list := []string{"line creeps under load and with warmth: haul it tight again on the days given", "look for chafe at sheaves, knots and edges each time"}
	if !s.Attended {
		list = append(list, "nobody stands by: stand-ins are counted on for what line may carry for months, and the gust is that of a storm")
	}
	return list
}

// TightenDays are the days after a line is set at which it has to be hauled tight
// again, through a number of days: after an hour, after a day, then every day.
func TightenDays(days float64) []float64 {
	list := []float64{1.0 / 24}
	for day := 1.0; day <= days; day++ {
		list = append(list, day)
	}
	return list
}

// anyWay is where a mast falls that nothing holds.
const anyWay = "any way: nothing holds it"

// above says that the plan counts on more than is usual, "" where it doesn't.
func above(share, usual float64) string {
	if share <= usual*(1+alike) {
		return ""
	}
	return fmt.Sprintf(" (more than the usual %.2f: the plan asks for it)", usual)
}

// state is what stands at one time.
func (p *prepared) state(o onBoard, d Demand, attended bool) State {
	s := State{Roll: d.Roll, WantedAfterLoss: d.AfterLoss}
	s.Gust, s.Wanted = d.wind(attended)
	s.Wind = d.PerSquare * s.Gust * s.Gust
	m := s.gather(p, o, attended)
	push := pushing{wind: s.Wind, roll: d.Roll, partners: p.Partners}
	s.m, s.push, s.perSquare = m, push, d.PerSquare
	found := push.tightest(m)
	s.Margin, s.AfterLoss = found.margin, found.afterLoss
	s.Worst = pushing{wind: 1, partners: p.Partners}.least(m)
	for i, deg := range directions {
		s.ByDirection[i] = along(m, toward(deg).times(-1)) + p.Partners
	}
	s.Falls, s.Toward = 0, anyWay
	if len(found.falls) > 0 {
		s.Falls, s.Toward = found.falls[0], InWords(found.falls[0])
	}
	s.UsedUp, s.Gone = push.usedUp(m, d.PerSquare, s.Wanted), push.usedUp(m, d.PerSquare, 1)
	s.name(found)
	s.Holds = s.Margin >= s.Wanted && s.AfterLoss >= s.WantedAfterLoss
	s.Concerns = p.concerns(o)
	return s
}

// gather lists what stands, with its moments in the same order.
func (s *State) gather(p *prepared, o onBoard, attended bool) []vector {
	m := make([]vector, 0, len(p.Stays)+len(p.StandIns))
	s.On = make([]Held, 0, cap(m))
	for i, stay := range p.Stays {
		if !p.on(o, i) {
			s.Off = append(s.Off, stay.Name)
			continue
		}
		worth := p.stayWorth(o, i)
		s.On = append(s.On, Held{Name: stay.Name, Allowable: worth.pull, Governs: worth.governs, OnTrust: worth.onTrust})
		m = append(m, p.stayLever[i].times(worth.pull))
	}
	for i, in := range p.StandIns {
		if !o.rigged[i] {
			continue
		}
		worth, governs := p.standInWorth(o, i, attended)
		held := Held{Name: in.Name, Allowable: worth, Governs: governs, StandIn: true}
		if worth == 0 {
			s.Uncounted = append(s.Uncounted, held)
			continue
		}
		s.On = append(s.On, held)
		m = append(m, p.standInLever[i].times(worth))
	}
	return m
}

// name says which stay governs and which hurts most when lost.
func (s *State) name(t tightest) {
	if t.governs >= 0 {
		s.Governs, s.Because = s.On[t.governs].Name, s.On[t.governs].Governs
	}
	if t.lost >= 0 {
		s.Lost = s.On[t.lost].Name
	}
}

// least is the margin alone.
func (d pushing) least(m []vector) float64 {
	now, _ := d.margins(m)
	return now
}

// usedUp is the gust in m/s at which a margin is used up, 0 where the roll alone does.
func (d pushing) usedUp(m []vector, perSquare, margin float64) float64 {
	square := math.Inf(1)
	d.eachNormal(m, func(p vector, h, _ float64) {
		size := p.size()
		square = min(square, ((h/size+d.partners)/margin-d.roll*math.Abs(p.y)/size)/perSquare)
	})
	if math.IsInf(square, 1) {
		square = (d.partners/margin - d.roll) / perSquare
	}
	return math.Sqrt(max(0, square))
}

// assumptions are what every number of a standing mast rests on.
func (p *prepared) assumptions(d Demand) []string {
	list := []string{
		"no margin says that the mast is safe: it says what is held under these assumptions",
		"the mast is a stiff strut hinged at its heel; its bending, its buckling and what the heel stands on are other checks",
		"the stays share a push as well as they can, which brittle wire does not quite do",
		fmt.Sprintf("a wire or a sound plate is counted on for %.2f of what it breaks at%s, and the push has to be held %.3g times on top of that", p.Credit.Wire, above(p.Credit.Wire, UsualCredit.Wire), d.Wanted),
		fmt.Sprintf("a stand-in is counted on for %.2f of its weakest part%s, %.2f where nobody stands by%s", p.Credit.StandIn, above(p.Credit.StandIn, UsualCredit.StandIn), p.Credit.Unattended, above(p.Credit.Unattended, UsualCredit.Unattended)),
		fmt.Sprintf("an old plate that nobody has seen is credited with what it carries at rest (%.2f of its wire where that was not measured%s), because it stands today, not because it is sound", p.Credit.UnseenPlate, above(p.Credit.UnseenPlate, UsualCredit.UnseenPlate)),
		fmt.Sprintf("gusts do not pass %.0f kn while somebody stands by and %.0f kn while nobody does", d.Gust/KnotInMetresPerSecond, d.Storm/KnotInMetresPerSecond),
		"the wind pushes on the mast, its wires and what the plan lists as windage, and on nothing else: sails that are not listed are down",
		"no wake and no swell rolls the boat further than was reckoned with; nobody is aloft or stands under the mast",
	}
	if p.Partners > 0 {
		list = append(list, "the wedges at the partners bear and the heel can't move sideways")
	} else {
		list = append(list, "nothing is counted on at the partners")
	}
	return list
}
