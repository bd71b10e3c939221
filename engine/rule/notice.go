package rule

import (
	"math"
	"slices"
	"strconv"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
)

// Noticing finds an example that would notice the change: facts on which the rule
// and the changed rule come to different ends. It starts from the examples that there
// are and changes one fact of them, or two; ok is false if none of these tells the two
// apart, as where a later limit decides all that this one could.
func (m Mutation) Noticing() (s Sample, ok bool) {
	w := m.witness()
	row, ok := w.search()
	if !ok {
		return Sample{}, false
	}
	return m.rule.sample(w.tidy(row)), true
}

// wording tells whether the change makes the rule say another band's own sentence.
func (m Mutation) wording() bool {
	w := m.witness()
	w.wording = true
	_, ok := w.search()
	return ok
}

func (m Mutation) witness() *witness {
	return &witness{Mutation: m, frame: frame{sides: make([]side, max(m.rule.sides, m.changed.sides))}}
}

// Differing looks for facts on which two readings of one rule come to different ends,
// and gives them as an example of the first. ok is false if none was found: then the
// rule judges as before, as far as its examples and what stands round them can tell.
func (r *Rule) Differing(changed *Rule) (s Sample, ok bool) {
	return Mutation{rule: r, changed: changed}.Noticing()
}

// search goes through the examples, at first as they are, then with one fact changed,
// then with two.
func (w *witness) search() ([]float64, bool) {
	for _, change := range []func([]float64) ([]float64, bool){w.asItIs, w.alone, w.together} {
		for _, x := range w.bases() {
			if row, ok := change(x); ok {
				return row, true
			}
		}
	}
	return nil, false
}

// tidy writes each number that no example has with as few digits as will do.
func (w *witness) tidy(row []float64) []float64 {
	row = slices.Clone(row)
	for _, slot := range w.rule.reads {
		known := slices.ContainsFunc(w.rule.examples, func(x example) bool { return x.row[slot] == row[slot] })
		if !known && finite(row[slot], 0) {
			w.settle(row, slot, math.NaN(), math.NaN())
		}
	}
	return row
}

// mostTried is how many judgements a search may take: some hundredths of a second. A
// rule of a stranger's with many facts and many examples must not take hours.
const mostTried = 200_000

// witness looks for a row of facts on which a rule and its changed copy differ.
type witness struct {
	Mutation
	frame frame
	tried int
	// wording tells to look at which sentence is said as well.
	wording bool
}

// end is where a rule comes to: outcome and grade, and the first piece of a band's own
// sentence where that is looked at.
type end struct {
	outcome outcome
	grade   finding.Grade
	says    *piece
}

func (w *witness) end(r *Rule, row []float64) end {
	w.frame.facts, w.tried = row, w.tried+1
	v := r.evaluate(&w.frame)
	e := end{outcome: v.outcome, grade: r.grade(v)}
	if w.wording && v.outcome == fails && len(r.bands[v.last].says) > 0 {
		e.says = &r.bands[v.last].says[0]
	}
	return e
}

// differs tells whether rule and changed rule come to different ends.
func (w *witness) differs(row []float64) bool { return w.end(w.rule, row) != w.end(w.changed, row) }

// bases are the rows to start from: the examples' own, those that know most first.
func (w *witness) bases() [][]float64 {
	var rows [][]float64
	for _, x := range w.rule.examples {
		rows = append(rows, x.row)
	}
	slices.SortStableFunc(rows, func(a, b []float64) int { return w.known(b) - w.known(a) })
	return rows
}

// known counts what a row knows of what the rule reads.
func (w *witness) known(row []float64) (n int) {
	for _, slot := range w.rule.reads {
		if finite(row[slot], 0) {
			n++
		}
	}
	return n
}

// asItIs changes nothing: an example that says less than it could, as one without its
// grade does, needs only to say it.
func (w *witness) asItIs(base []float64) ([]float64, bool) { return base, w.differs(base) }

// alone changes one fact of a row, or none.
func (w *witness) alone(base []float64) ([]float64, bool) {
	if w.differs(base) {
		return base, true
	}
	row := slices.Clone(base)
	for _, slot := range w.rule.reads {
		if w.tried > mostTried {
			break
		}
		if w.along(row, slot) {
			return row, true
		}
		row[slot] = base[slot]
	}
	return nil, false
}

// together gives one fact each value that it has in some example, or each of its words,
// and then changes another: what a word or a yes or no shuts off is seen only behind it.
func (w *witness) together(base []float64) ([]float64, bool) {
	row := slices.Clone(base)
	for _, first := range w.rule.reads {
		for _, v := range w.given(first) {
			row[first] = v
			if found, ok := w.alone(row); ok || w.tried > mostTried {
				return found, ok
			}
		}
		row[first] = base[first]
	}
	return nil, false
}

// along changes one fact of a row until rule and changed rule differ. Between two
// values that the rule judges differently it closes in on the limit.
func (w *witness) along(row []float64, slot int) bool {
	values := w.values(slot)
	for _, v := range values {
		if row[slot] = v; w.differs(row) {
			return w.settle(row, slot, math.NaN(), math.NaN())
		}
	}
	if w.rule.Kind.Slots[slot].Sort != fact.IsNumber {
		return false
	}
	for i := range len(values) - 1 {
		if w.tried > mostTried {
			break
		}
		if w.between(row, slot, values[i], values[i+1]) {
			return true
		}
	}
	return false
}

// between closes in on where the rule's end changes from one value to another, and
// tells whether the changed rule differs there.
func (w *witness) between(row []float64, slot int, low, high float64) bool {
	at := func(r *Rule, v float64) end {
		row[slot] = v
		return w.end(r, row)
	}
	for _, r := range []*Rule{w.rule, w.changed} {
		a, b := low, high
		below := at(r, a)
		if below == at(r, b) {
			continue
		}
		for m := middle(a, b); m != a && m != b; m = middle(a, b) {
			if at(r, m) == below {
				a = m
			} else {
				b = m
			}
		}
		for _, v := range []float64{a, b} {
			if row[slot] = v; w.differs(row) {
				return w.settle(row, slot, low, high)
			}
		}
	}
	return false
}

func middle(a, b float64) float64 { return a + (b-a)/2 }

// tieDigits is how many digits a number may take to meet a limit exactly. A tie that
// takes more is one that nobody measures.
const tieDigits = 6

// settle writes the fact that was found with as few digits as still make the two
// rules differ, so that an author can take it as it stands.
func (w *witness) settle(row []float64, slot int, low, high float64) bool {
	found := row[slot]
	if w.rule.Kind.Slots[slot].Sort != fact.IsNumber {
		return true
	}
	for digits := 1; digits <= 17 && (!w.tie || digits <= tieDigits); digits++ {
		for _, v := range []float64{found, step(found, digits, -1), step(found, digits, 1)} {
			row[slot], _ = strconv.ParseFloat(strconv.FormatFloat(v, 'g', digits, 64), 64)
			if !(row[slot] < low) && !(row[slot] > high) && w.differs(row) {
				return true
			}
		}
	}
	row[slot] = found
	return !w.tie
}

// step is a value and one of its last digit more or less.
func step(v float64, digits int, sign float64) float64 {
	return v + sign*math.Pow(10, math.Floor(math.Log10(math.Abs(v)))-float64(digits-1))
}

// spread are the shares of a known value at which a fact is tried.
var spread = [...]float64{0, 0.01, 0.1, 0.3, 0.5, 0.7, 0.85, 0.95, 1, 1.05, 1.15, 1.3, 1.5, 2, 3, 10, 100}

// values are those at which a fact is tried, in order: its words, yes and no, or
// numbers round those that the examples have.
func (w *witness) values(slot int) []float64 {
	list := w.given(slot)
	if w.rule.Kind.Slots[slot].Sort != fact.IsNumber {
		return list
	}
	return spreadOut(list)
}

// given are a fact's words, yes and no, or the numbers that the examples have.
func (w *witness) given(slot int) []float64 {
	column := w.rule.Kind.Slots[slot]
	var list []float64
	switch column.Sort {
	case fact.IsYesNo:
		return []float64{1, 0}
	case fact.IsWord:
		for _, word := range column.Words {
			list = append(list, fact.WordID(word))
		}
	}
	for _, x := range w.rule.examples {
		if v := x.row[slot]; finite(v, 0) && !slices.Contains(list, v) {
			list = append(list, v)
		}
	}
	if len(list) == 0 && column.Sort == fact.IsNumber {
		list = []float64{1}
	}
	return list
}

// spreadOut are numbers round those given, in order.
func spreadOut(known []float64) []float64 {
	list := []float64{-1}
	for _, v := range known {
		for _, share := range spread {
			list = append(list, v*share)
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}
