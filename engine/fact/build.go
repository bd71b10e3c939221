package fact

import (
	"strings"
	"sync"
	"time"

	"chainwale/engine/plan"
)

// TheCatalogue is the catalogue of our own kinds. It is read off the structs once.
var TheCatalogue = sync.OnceValues(func() (*Catalogue, error) { return NewCatalogue(prototypes()...) })

// Facts are all subjects of one plan, each sealed.
type Facts struct {
	Mast       *Mast
	Stays      []*Stay
	Fittings   []*Fitting
	Landings   []*Landing
	BoltGroups []*BoltGroup
	BoltHoles  []*BoltHole
	Sections   []*Section
	Mountings  []*Mounting
	Contacts   []*Contact
	Records    []*Record
	Bends      []*Bend
	Matches    []*Match
	StandIns   []*StandIn
	Steps      []*Step
	// Standing is the order of work with the mast up, nil where the plan has none.
	Standing *Standing

	all     []*Subject
	unshown unshown
	// expanded maps a fitting's id as written to the ids it stands for.
	expanded map[string][]string
}

// Subjects lists all subjects, kind by kind, in the plan's order.
func (f *Facts) Subjects() []*Subject { return f.all }

// FittingIDs gives the ids that a fitting's name stands for: itself, or port and
// starboard of a pair; nil if no fitting is called so.
func (f *Facts) FittingIDs(name string) []string { return f.expanded[name] }

// AllFittingIDs lists every name a fitting may be called by.
func (f *Facts) AllFittingIDs() []string {
	var ids []string
	for _, fit := range f.Fittings {
		ids = append(ids, fit.ID)
	}
	for name := range f.expanded {
		ids = append(ids, name)
	}
	return ids
}

// Build makes the facts of a plan, as of a day. An error is a fault of ours.
func Build(c *Catalogue, p *plan.Plan, on time.Time) (*Facts, error) {
	b := &builder{plan: p, on: on, facts: &Facts{expanded: map[string][]string{}}, installed: map[string]plan.Day{}, made: map[*plan.Fitting]*made{}}
	for i := range p.Stays {
		b.stays(&p.Stays[i])
	}
	b.mixed()
	b.mast()
	b.required()
	for i := range p.Fittings {
		b.fittings(&p.Fittings[i])
	}
	for i := range p.Contacts {
		b.contact(&p.Contacts[i])
	}
	for i := range p.Records {
		b.records(&p.Records[i])
	}
	b.standing()
	return b.facts, b.facts.seal(c)
}

// builder carries what every derivation needs.
type builder struct {
	plan  *plan.Plan
	on    time.Time
	facts *Facts
	// installed says when each fitting was made.
	installed map[string]plan.Day
	// made is what takes long to work out of a fitting that stands on both sides.
	made map[*plan.Fitting]*made
}

// seal fixes all subjects, neighbours before those who read them.
func (f *Facts) seal(c *Catalogue) error {
	all := make([]Described, 0, len(f.Stays)+len(f.Fittings)+len(f.Landings)+len(f.BoltGroups)+len(f.BoltHoles)+len(f.Sections)+len(f.Mountings)+len(f.Contacts)+len(f.Records)+len(f.Bends)+len(f.Matches)+len(f.StandIns)+len(f.Steps)+1)
	all = append(all, f.Mast)
	all = appendAll(all, f.Stays)
	all = appendAll(all, f.Fittings)
	all = appendAll(all, f.Landings)
	all = appendAll(all, f.BoltGroups)
	all = appendAll(all, f.BoltHoles)
	all = appendAll(all, f.Sections)
	all = appendAll(all, f.Mountings)
	all = appendAll(all, f.Contacts)
	all = appendAll(all, f.Records)
	all = appendAll(all, f.Bends)
	all = appendAll(all, f.Matches)
	all = appendAll(all, f.StandIns)
	all = appendAll(all, f.Steps)
	l := &sealer{catalogue: c}
	l.expect(all)
	f.all = make([]*Subject, 0, len(all))
	for _, d := range all {
		if err := l.seal(d); err != nil {
			return err
		}
		f.all = append(f.all, d.Base())
	}
	return nil
}

func appendAll[D Described](all []Described, some []D) []Described {
	for _, d := range some {
		all = append(all, d)
	}
	return all
}

// side is one of the sides that an item of the plan stands for.
type side struct{ id, name string }

// sides gives the ids that an item stands for: port and starboard where it is
// both, else itself.
func sides(id, written plan.Text) []side {
	if written.Value != "both" {
		return []side{{id.Value, written.Value}}
	}
	return []side{{id.Value + "-port", "port"}, {id.Value + "-starboard", "starboard"}}
}

// stayCalled finds the stays that a fitting of one side means by an id: the one
// of that id, or of a pair written as both the one on its own side, or both
// where the fitting stands amidships.
func (f *Facts) stayCalled(id, side string) []*Stay {
	var found []*Stay
	for _, s := range f.Stays {
		base, of, paired := strings.Cut(s.ID, id+"-")
		switch {
		case s.ID == id:
			return []*Stay{s}
		case paired && base == "" && (of == "port" || of == "starboard"):
			if of == side || side != "port" && side != "starboard" {
				found = append(found, s)
			}
		}
	}
	return found
}

// give takes a value over from the plan, or the place where it would stand.
func give(n *Number, a plan.Amount) {
	if !a.Given {
		n.WouldStand(a.At)
		return
	}
	n.Give(a.Value, a.At)
}

func giveWord(w *Word, t plan.Text) {
	if !t.Given {
		w.WouldStand(t.At)
		return
	}
	w.Give(t.Value, t.At)
}

func giveYesNo(y *YesNo, p plan.YesNo) {
	if !p.Given {
		y.WouldStand(p.At)
		return
	}
	y.Give(p.Value, p.At)
}

// years is the time from the earliest day a date can mean to the day judged on.
// A date in the future gives no age.
func (b *builder) years(n *Number, d plan.Day) {
	switch {
	case !d.Given:
		n.WouldStand(d.At)
	case d.First.After(b.on):
		n.WouldStand(d.At)
		n.Refuse(d.Text + " is later than the day judged on")
	default:
		n.Give(b.on.Sub(d.First).Hours()/24/365.25, d.At)
	}
}
