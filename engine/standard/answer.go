package standard

import (
	"errors"
	"math"
	"slices"

	"chainwale/engine/working"
)

// CheckAnswer tells why an answer can't be taken: a column is missing, misnamed or
// of another length, a number is not finite, a fact is known although something it
// can't do without is unknown, or unknown and nobody says why.
func CheckAnswer(t Table, q Question, a Answer) error {
	if len(a.Columns) != len(t.Derives) {
		return broken("it answers with %d columns for the kind %s and declares %d", len(a.Columns), t.Kind, len(t.Derives))
	}
	excused, err := excuses(t, q, a.NotCovered)
	if err != nil {
		return err
	}
	for i, d := range t.Derives {
		c := &a.Columns[i]
		if c.Name != d.Name {
			return broken("its column %d for the kind %s is called %+q and should be %s", i+1, t.Kind, shortened(c.Name), d.Name)
		}
		if err := checkShape(c, q.Rows); err != nil {
			return err
		}
		if err := checkRows(d, c, q, excused[d.Clause]); err != nil {
			return err
		}
	}
	return nil
}

// excuses are, by clause, the rows of which it says nothing.
func excuses(t Table, q Question, list []NotCovered) (map[string]Bits, error) {
	excused := map[string]Bits{}
	for _, d := range t.Derives {
		excused[d.Clause] = NewBits(q.Rows)
	}
	for _, n := range list {
		if n.Row < 0 || n.Row >= q.Rows {
			return nil, broken("it says that row %d is not covered, and there are %d (the first is 0)", n.Row, q.Rows)
		}
		if excused[n.Clause] == nil {
			return nil, broken("it says that clause %+q does not cover row %d, but derives nothing of a %s by that clause", shortened(n.Clause), n.Row, t.Kind)
		}
		if err := CheckText("reason why clause "+n.Clause+" does not cover a row", n.Why); err != nil {
			return nil, err
		}
		excused[n.Clause].Set(n.Row)
	}
	return excused, nil
}

// checkShape tells why a column is none of so many numbers.
func checkShape(c *Column, rows int) error {
	switch {
	case len(c.Words) > 0 || len(c.Index) > 0:
		return broken("its column %s holds words, and a derived fact is a number", c.Name)
	case len(c.Numbers) != rows:
		return broken("its column %s has %d numbers for %d rows", c.Name, len(c.Numbers), rows)
	case len(c.Known) != len(NewBits(rows)):
		return broken("its column %s has %d bytes to say which of %d rows are known, and should have %d", c.Name, len(c.Known), rows, len(NewBits(rows)))
	case rows%8 > 0 && c.Known[rows/8]>>(rows%8) != 0:
		return broken("its column %s says that rows are known which don't exist", c.Name)
	}
	return nil
}

// checkRows holds each row's number against what it comes from.
func checkRows(d Derive, c *Column, q Question, excused Bits) error {
	for row := range q.Rows {
		number, known := c.Number(row)
		lack := q.lacks(d.From, row)
		switch {
		case known && (math.IsNaN(number) || math.IsInf(number, 0)):
			return broken("it gives %s of row %d as %v, which is no number to reckon with", d.Name, row, number)
		case known && lack != "":
			return broken("it gives %s of row %d although %s is unknown there", d.Name, row, lack)
		case !known && lack == "" && !excused.Has(row):
			return broken("it leaves %s of row %d unknown, and does not say why clause %s does not cover it", d.Name, row, d.Clause)
		}
	}
	return nil
}

// lacks is the first of the columns that is unknown in a row, "" if none is.
func (q *Question) lacks(names []string, row int) string {
	for _, name := range names {
		i := slices.IndexFunc(q.Columns, func(c Column) bool { return c.Name == name })
		if i < 0 {
			return name
		}
		_, number := q.Columns[i].Number(row)
		_, word := q.Columns[i].Word(row)
		if !number && !word {
			return name
		}
	}
	return ""
}

// CheckWorking tells why steps don't show how a fact came about: they are not sound,
// or none of them comes to the number that was derived.
func CheckWorking(d Derive, number float64, steps []working.Step) error {
	if err := CheckSteps(steps); err != nil {
		return err
	}
	for _, s := range steps {
		if s.Unit == d.Unit && math.Abs(s.Value-number) <= 1e-6*math.Abs(number) {
			return nil
		}
	}
	return broken("none of the steps that it shows for %s comes to the %g %s that it derived", d.Name, number, d.Unit)
}

// CheckSteps tells why a working can't be shown: it has no step, or a step lacks
// its formula or source, or holds what is no number.
func CheckSteps(steps []working.Step) error {
	if len(steps) == 0 {
		return broken("it shows a working without a step")
	}
	for i, s := range steps {
		err := firstError(CheckText("symbol", s.Symbol), CheckText("formula", s.Formula), checkNumbers(s), checkSource(s.Source), checkMaybe("meaning", s.Meaning))
		var f *Fault
		if errors.As(err, &f) {
			return broken("step %d of a working: %s", i+1, f.Message)
		}
	}
	return nil
}

func checkNumbers(s working.Step) error {
	all := append([]working.Input{{Symbol: s.Symbol, Value: s.Value, Unit: s.Unit}}, s.Inputs...)
	for _, n := range all {
		if err := firstError(CheckText("symbol", n.Symbol), checkMaybe("unit", n.Unit)); err != nil {
			return err
		}
		if math.IsNaN(n.Value) || math.IsInf(n.Value, 0) {
			return broken("its %s is %v, which is no number to reckon with", n.Symbol, n.Value)
		}
	}
	return nil
}

func checkSource(s working.Source) error {
	err := firstError(CheckText("source", s.Title), checkMaybe("edition", s.Edition), checkMaybe("clause", s.Clause), checkMaybe("part of a source", s.For))
	if err == nil && !slices.Contains(working.AllHowKnown(), s.As) {
		err = broken("its source is known as %+q, which is no word for how far something is known", shortened(string(s.As)))
	}
	return err
}
