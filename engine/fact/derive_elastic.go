package fact

import (
	"math"

	"chainwale/engine/rig"
	"chainwale/engine/table"
	"chainwale/engine/working"
)

// elastic shares the push of a step by the stiffness of what holds, from the direction
// in which the mast falls first. It asks for the pull at rest of every stay that holds;
// where one is not known nothing is told of it, and the margin is all there is.
func (b *builder) elastic(s *Standing, t *Step, i int) {
	t.ElasticTold.Give(false, t.At)
	if s.Result == nil {
		t.Elastic.follows(values(&t.Margin.Value))
		return
	}
	state := &s.Result.Steps[i].During
	stays, from := b.elasticStays(s, state)
	from = append(from, &t.Margin.Value)
	reckon(&t.Elastic, from, func() (formula[sharedPush], error) { return sharing{stays(), state, s.Rig.Masthead}, nil },
		func(r sharedPush) float64 { return r.used })
	if !t.Elastic.Known() {
		return
	}
	t.ElasticTold.Give(true, t.At)
	if r, err := (sharing{stays(), state, s.Rig.Masthead}).Reckon(); err == nil {
		t.Hardest.Give(r.hardest, t.At)
		t.Sways.Derive(from, func() (float64, error) { return r.sways, nil }, r.Working)
	}
}

// elasticStays are the stays and stand-ins that hold, with their stiffness and pull at
// rest. A line is taken as just tight: it gives before it holds.
func (b *builder) elasticStays(s *Standing, state *rig.State) (stays func() []rig.ElasticStay, from []*Value) {
	for _, h := range state.On {
		for _, stay := range b.facts.Stays {
			if stay.ID == h.Name {
				from = append(from, &stay.Stiffness.Value, &stay.Tension.Value)
			}
		}
		for _, in := range b.facts.StandIns {
			if in.ID == h.Name {
				from = append(from, &in.Diameter.Value, &in.Kind.Value)
			}
		}
	}
	return func() []rig.ElasticStay {
		var list []rig.ElasticStay
		for i := range s.Rig.Stays {
			r := &s.Rig.Stays[i]
			for _, stay := range b.facts.Stays {
				if stay.ID == r.Name && standsIn(state, r.Name) {
					list = append(list, rig.ElasticStay{Name: r.Name, Line: r.Line, EA: stay.Stiffness.Float(), AtRest: stay.Tension.Float()})
				}
			}
		}
		for i, in := range b.facts.StandIns {
			if standsIn(state, in.ID) {
				list = append(list, rig.ElasticStay{Name: in.ID, Line: s.Rig.StandIns[i].Line, EA: in.stiffness()})
			}
		}
		return list
	}, from
}

func standsIn(state *rig.State, name string) bool {
	for _, h := range state.On {
		if h.Name == name {
			return true
		}
	}
	return false
}

// stiffness is the least that the line has in all its parts.
func (s *StandIn) stiffness() float64 {
	row, err := table.Line(s.Kind.Text())
	if err != nil {
		return math.NaN()
	}
	return row.StiffLeast * row.BreakLoad(s.Diameter.Float()) * float64(s.parts())
}

// sharing is a push shared by stiffness.
type sharing struct {
	stays    []rig.ElasticStay
	state    *rig.State
	masthead float64
}

type sharedPush struct {
	used    float64
	hardest string
	sways   float64
	result  rig.SharingResult
}

func (r sharedPush) Working() []working.Step { return r.result.Working() }

// Reckon pushes the way that the mast falls first, with gust and roll together, and
// finds the stay that uses most of what it is counted on for.
func (s sharing) Reckon() (sharedPush, error) {
	fall := s.state.Falls * math.Pi / 180
	result, err := rig.Sharing{Stays: s.stays, Push: s.state.Wind + s.state.Roll*math.Abs(math.Sin(fall)), Toward: s.state.Falls}.Reckon()
	if err != nil {
		return sharedPush{}, err
	}
	r := sharedPush{result: result}
	for i, pull := range result.Pulls {
		for _, h := range s.state.On {
			if h.Name == s.stays[i].Name && h.Allowable > 0 && pull/h.Allowable >= r.used {
				r.used, r.hardest = pull/h.Allowable, h.Name
			}
		}
	}
	x, y := result.Moves(s.masthead)
	r.sways = math.Hypot(x, y)
	return r, nil
}
