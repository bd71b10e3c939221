package fact

import (
	"math"

	"chainwale/engine/finding"
	"chainwale/engine/quantity"
	"chainwale/engine/working"
)

// Value is one fact about one subject. The zero Value is UNKNOWN: not zero, and
// nothing that was worked out from it is known either.
//
// A value is either given (the plan says it), looked up or derived. Whichever it
// is, it remembers the place in the plan that an owner would change, and a
// derived one can show its working.
type Value struct {
	known bool
	// shown tells that the subject shows how the value came about: work is nil then.
	shown  bool
	number float64

	at   finding.Place
	from []*Value
	work func() []working.Step

	subject *Subject
	column  *Column
	// gap is what there is to say of an unknown value, nil if there is nothing: most
	// values are known, so it does not stand in each of them.
	gap *gap
}

// gap says why a value is unknown, and which of those that it was to come from are.
type gap struct {
	why   string
	lacks []*Value
}

// Number, Word and YesNo are facts of the three sorts that rules may read.
type (
	Number struct{ Value }
	Word   struct{ Value }
	YesNo  struct{ Value }
)

// Known tells whether the value can be used.
func (v *Value) Known() bool { return v.known }

// Float is the value in canonical units (a word's id, 1 or 0 for a yes or no),
// or NaN if it is unknown.
func (v *Value) Float() float64 {
	if !v.known {
		return math.NaN()
	}
	return v.number
}

// Text is a word's text, "" if it is unknown.
func (w *Word) Text() string {
	if !w.known {
		return ""
	}
	return WordText(w.number)
}

// Is tells whether the word is known and equal to text.
func (w *Word) Is(text string) bool { return w.known && w.Text() == text }

// Yes tells whether the value is known and a yes.
func (y *YesNo) Yes() bool { return y.known && y.number == 1 }

// No tells whether the value is known and a no.
func (y *YesNo) No() bool { return y.known && y.number == 0 }

// At is where the plan says the value, or where it would say it.
func (v *Value) At() finding.Place { return v.at }

// Why says why a value is unknown although nothing it needs is missing from the
// plan: a formula that refused its inputs, a table without a row. "" otherwise.
func (v *Value) Why() string {
	if v.known {
		return ""
	}
	if v.gap != nil && v.gap.why != "" {
		return v.gap.why
	}
	for _, l := range v.lacks() {
		if w := l.Why(); w != "" {
			return w
		}
	}
	return ""
}

// Subject is whose fact this is, Column what fact it is. Both are set when the
// subject is sealed.
func (v *Value) Subject() *Subject { return v.subject }
func (v *Value) Column() *Column   { return v.column }

// Missing lists the plan values whose absence makes v unknown: v itself if it
// is one, or those that it was to be derived from. Each stands once.
func (v *Value) Missing() []*Value {
	if v.known {
		return nil
	}
	seen := map[*Value]bool{}
	var roots []*Value
	var walk func(*Value)
	walk = func(u *Value) {
		if u.known || seen[u] {
			return
		}
		seen[u] = true
		lacks := u.lacks()
		if len(lacks) == 0 {
			roots = append(roots, u)
			return
		}
		for _, l := range lacks {
			walk(l)
		}
	}
	walk(v)
	return roots
}

// RestsOn lists the places of the plan that the value comes from: its own, and
// those of all that it was derived from.
func (v *Value) RestsOn() []finding.Place {
	places := []finding.Place{v.at}
	for _, f := range v.from {
		places = append(places, f.RestsOn()...)
	}
	return places
}

// adopt labels inputs that are facts of nobody, such as the diameter of one hole
// among many, as belonging to what was derived from them: so that a reading which
// is missing is asked for even where no rule reads it by a name of its own.
func (v *Value) adopt() {
	for _, f := range v.from {
		if f.subject == nil {
			f.subject, f.column = v.subject, v.column
			f.adopt()
		}
	}
}

// Working is how the value came about, step by step; nil if it was given.
func (v *Value) Working() []working.Step {
	switch {
	case v.work != nil:
		return v.work()
	case v.shown && v.subject != nil:
		return v.subject.shower.show(v)
	}
	return nil
}

// shower shows how the facts of its subject came about. There are many of the small
// subjects, and this costs them nothing, where a function for each fact would.
type shower interface {
	show(v *Value) []working.Step
}

// set makes the value known, unless the number is NaN or infinite: those are
// unknown, whoever computed them.
func (v *Value) set(number float64) {
	v.known = !math.IsNaN(number) && !math.IsInf(number, 0)
	v.number = number
	if !v.known {
		v.because("the calculation gave no finite number")
	}
}

// Give sets the value to what the plan says at a place.
func (n *Number) Give(number float64, at finding.Place) {
	n.at = at
	n.set(number)
}

// Give sets the word to what the plan says at a place.
func (w *Word) Give(text string, at finding.Place) {
	w.at = at
	w.set(WordID(text))
}

// Give sets the yes or no to what the plan says at a place.
func (y *YesNo) Give(yes bool, at finding.Place) {
	y.at = at
	y.number, y.known = 0, true
	if yes {
		y.number = 1
	}
}

// WouldStand says where an unknown value would stand in the plan.
func (v *Value) WouldStand(at finding.Place) { v.at = at }

// Refuse leaves the value unknown and says why.
func (v *Value) Refuse(why string) {
	v.known = false
	v.because(why)
}

// because says why the value is unknown, "" for no reason of its own.
func (v *Value) because(why string) {
	if v.gap == nil && why == "" {
		return
	}
	v.gap = &gap{why, v.lacks()}
}

// lacks are the values for want of which this one is unknown.
func (v *Value) lacks() []*Value {
	if v.gap == nil {
		return nil
	}
	return v.gap.lacks
}

// lack says for want of which values this one is unknown.
func (v *Value) lack(lacks []*Value) {
	if v.gap == nil && len(lacks) == 0 {
		return
	}
	why := ""
	if v.gap != nil {
		why = v.gap.why
	}
	v.gap = &gap{why, lacks}
}

// Derive works the number out from others. If any of them is unknown, so is the
// result, and it lacks what they lack. compute may refuse by an error; work
// makes the steps that show how, and is called only when somebody asks.
// The place of a derived value is the place of the first input.
func (n *Number) Derive(from []*Value, compute func() (float64, error), work func() []working.Step) {
	if n.comes(from, compute) {
		n.work = work
	}
}

// derive is Derive for a fact whose subject shows how it came about.
func (n *Number) derive(from []*Value, compute func() (float64, error)) {
	n.shown = n.comes(from, compute)
}

// comes works the number out and tells whether that went well.
func (n *Number) comes(from []*Value, compute func() (float64, error)) bool {
	if !n.follows(from) {
		return false
	}
	number, err := compute()
	if err != nil {
		n.fails(err)
		return false
	}
	n.set(number)
	return true
}

// fails leaves a derived value unknown although all that it needs is known.
func (n *Number) fails(err error) {
	n.Refuse(err.Error())
	n.lack(nil)
}

// follows takes place and gaps from the inputs and tells whether all are known.
func (v *Value) follows(from []*Value) bool {
	v.from = from
	var lacks []*Value
	for i, f := range from {
		if i == 0 {
			v.at = f.at
		}
		if !f.known {
			lacks = append(lacks, f)
		}
	}
	v.lack(lacks)
	return len(lacks) == 0
}

// Dimension is the dimension of the value's column; the bare number if unsealed.
func (v *Value) Dimension() quantity.Dimension {
	if v.column == nil {
		return quantity.Bare
	}
	return v.column.Dimension
}
