package fact

import (
	"context"
	"fmt"
	"sync"
	"time"

	"chainwale/engine/standard"
	"chainwale/engine/working"
)

// patience is how long a standard may take to show one working.
const patience = 10 * time.Second

// Ask has a standard derive its facts of all subjects, table by table, and lays
// them into the subjects' rows. The facts must be built on a catalogue that was
// extended by the description. Where the standard does not answer, or answers what
// it did not declare, its facts stay unknown for that reason, and the error says so.
func (f *Facts) Ask(ctx context.Context, s standard.Standard, d standard.Description) error {
	for _, t := range d.Tables {
		subjects := f.of(t.Kind)
		if len(subjects) == 0 {
			continue
		}
		a := asking{facts: f, standard: s, description: d, table: t, subjects: subjects}
		if err := a.ask(ctx); err != nil {
			f.silence(d)
			return err
		}
	}
	return nil
}

// of gives the subjects of a kind.
func (f *Facts) of(kind string) []*Subject {
	var list []*Subject
	for _, s := range f.all {
		if s.Kind.Name == kind {
			list = append(list, s)
		}
	}
	return list
}

// silence leaves all facts of a standard unknown, those of the tables it answered
// as well: whoever lies about one can't be trusted with another.
func (f *Facts) silence(d standard.Description) {
	for _, t := range d.Tables {
		for _, s := range f.of(t.Kind) {
			for _, fact := range t.Derives {
				if i, ok := s.Kind.SlotOf(d.Prefix + "." + fact.Name); ok {
					*s.Value(i) = Value{gap: &gap{why: "the standard " + d.ID + " did not answer rightly"}, subject: s, column: s.Value(i).column, at: s.At}
					s.row[i] = s.Value(i).Float()
				}
			}
		}
	}
}

// asking is one table asked of one standard.
type asking struct {
	facts       *Facts
	standard    standard.Standard
	description standard.Description
	table       standard.Table
	subjects    []*Subject
}

func (a asking) ask(ctx context.Context) error {
	q := standard.Question{Kind: a.table.Kind, Rows: len(a.subjects), Columns: a.columns(a.subjects)}
	answer, err := a.standard.Derive(ctx, q)
	if err != nil {
		return err
	}
	if err := standard.CheckAnswer(a.table, q, answer); err != nil {
		return err
	}
	for i, d := range a.table.Derives {
		for row, s := range a.subjects {
			a.lay(s, d, &answer.Columns[i], row)
		}
	}
	for _, n := range answer.NotCovered {
		a.excuse(a.subjects[n.Row], n)
	}
	return nil
}

// columns packs what the table reads of the subjects.
func (a asking) columns(subjects []*Subject) []standard.Column {
	columns := make([]standard.Column, len(a.table.Reads))
	for i, r := range a.table.Reads {
		slot, _ := a.subjects[0].Kind.SlotOf(r.Name)
		if r.Type == standard.Word {
			columns[i] = wordColumn(r.Name, subjects, slot)
			continue
		}
		columns[i] = standard.NewNumbers(r.Name, len(subjects))
		for row, s := range subjects {
			if v := s.Value(slot); v.known {
				columns[i].Give(row, v.number)
			}
		}
	}
	return columns
}

func wordColumn(name string, subjects []*Subject, slot int) standard.Column {
	c := standard.NewWords(name, len(subjects))
	for row, s := range subjects {
		if v := s.Value(slot); v.known {
			c.GiveWord(row, WordText(v.number))
		}
	}
	return c
}

// lay sets one derived fact of one subject.
func (a asking) lay(s *Subject, d standard.Derive, c *standard.Column, row int) {
	slot, _ := s.Kind.SlotOf(a.description.Prefix + "." + d.Name)
	v := s.Value(slot)
	v.follows(a.comesFrom(s, d))
	v.because("")
	if number, known := c.Number(row); known {
		v.set(number)
		v.work = sync.OnceValue(func() []working.Step { return a.working(s, d, number) })
	}
	s.row[slot] = v.Float()
}

// comesFrom are the facts that a derived one can't do without.
func (a asking) comesFrom(s *Subject, d standard.Derive) []*Value {
	var from []*Value
	for _, name := range d.From {
		if slot, ok := s.Kind.SlotOf(name); ok {
			from = append(from, s.Value(slot))
		}
	}
	return from
}

// excuse notes why a clause does not cover a subject on each of its facts that is
// unknown although nothing lacks.
func (a asking) excuse(s *Subject, n standard.NotCovered) {
	for _, d := range a.table.Derives {
		slot, _ := s.Kind.SlotOf(a.description.Prefix + "." + d.Name)
		if v := s.Value(slot); d.Clause == n.Clause && !v.known && len(v.lacks()) == 0 {
			v.because(fmt.Sprintf("%s, clause %s, does not cover it: %s", a.description.ID, n.Clause, n.Why))
		}
	}
}

// working asks how a fact came about. One that can't be shown says so in its place:
// a sheet with a line missing would look whole.
func (a asking) working(s *Subject, d standard.Derive, number float64) []working.Step {
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	steps, err := a.standard.Working(ctx, standard.Asked{Kind: a.table.Kind, Fact: d.Name, Columns: a.columns([]*Subject{s})})
	if err == nil {
		err = standard.CheckWorking(d, number, steps)
	}
	if err != nil {
		a.facts.noteUnshown(a.description.ID, d.Name, err)
		return []working.Step{{Symbol: d.Name, Meaning: d.Meaning, Formula: "the standard does not show how: " + standard.Why(err), Value: number, Unit: d.Unit,
			Source: working.Source{Title: a.description.Title, Edition: a.description.Edition, Clause: d.Clause}}}
	}
	return steps
}

// unshown are the workings that standards were asked for and did not show rightly.
type unshown struct {
	sync.Mutex
	list []string
}

func (f *Facts) noteUnshown(id, fact string, err error) {
	f.unshown.Lock()
	defer f.unshown.Unlock()
	f.unshown.list = append(f.unshown.list, fmt.Sprintf("the standard %s does not show how %s came about: %s", id, fact, standard.Why(err)))
}

// Show asks the standards for the workings of what they derived of some subjects, and
// gives a sentence for each that was not shown rightly.
func (f *Facts) Show(subjects []*Subject) []string {
	for _, s := range subjects {
		for i := range s.Kind.further {
			if slot, ok := s.Kind.SlotOf(s.Kind.further[i].Name); ok {
				s.Value(slot).Working()
			}
		}
	}
	f.unshown.Lock()
	defer f.unshown.Unlock()
	return f.unshown.list
}
