package wire

import (
	"chainwale/engine/standard"
	"chainwale/engine/working"
)

// The way there: from the plain data of engine/standard to messages. What is empty
// and what is not there are the same on the wire.

// each makes one list of another.
func each[From, To any](list []From, one func(From) To) []To {
	if len(list) == 0 {
		return nil
	}
	made := make([]To, len(list))
	for i, from := range list {
		made[i] = one(from)
	}
	return made
}

func describes(d standard.Description) *Description {
	return &Description{
		Contract: int32(d.Contract), Id: d.ID, Prefix: d.Prefix, Title: d.Title, Edition: d.Edition, Publisher: d.Publisher, Basis: string(d.Basis),
		Tables: each(d.Tables, tableOf),
		Clauses: each(d.Clauses, func(c standard.Clause) *Clause {
			return &Clause{Clause: c.Clause, Covered: c.Covered, Why: c.Why}
		}),
		Pack: each(d.Pack, func(f standard.File) *File { return &File{Path: f.Path, Bytes: f.Bytes} }),
	}
}

func tableOf(t standard.Table) *Table {
	return &Table{
		Kind:  t.Kind,
		Reads: each(t.Reads, func(r standard.Read) *Read { return &Read{Name: r.Name, Type: string(r.Type), Unit: r.Unit} }),
		Derives: each(t.Derives, func(d standard.Derive) *Derive {
			return &Derive{Name: d.Name, Unit: d.Unit, Clause: d.Clause, Meaning: d.Meaning, From: d.From, Bears: d.Bears}
		}),
	}
}

func columnOf(c standard.Column) *Column {
	return &Column{Name: c.Name, Numbers: c.Numbers, Known: c.Known, Words: c.Words, Index: c.Index}
}

func questionOf(q standard.Question) *Question {
	return &Question{Kind: q.Kind, Rows: int32(q.Rows), Columns: each(q.Columns, columnOf)}
}

func answerOf(a standard.Answer) *Answer {
	return &Answer{
		Columns: each(a.Columns, columnOf),
		NotCovered: each(a.NotCovered, func(n standard.NotCovered) *NotCovered {
			return &NotCovered{Row: int32(n.Row), Clause: n.Clause, Why: n.Why}
		}),
	}
}

func askedOf(a standard.Asked) *Asked {
	return &Asked{Kind: a.Kind, Fact: a.Fact, Columns: each(a.Columns, columnOf)}
}

func stepsOf(steps []working.Step) *Steps {
	return &Steps{Steps: each(steps, func(s working.Step) *Step {
		return &Step{
			Symbol: s.Symbol, Meaning: s.Meaning, Formula: s.Formula, Value: s.Value, Unit: s.Unit,
			Inputs: each(s.Inputs, func(in working.Input) *Input { return &Input{Symbol: in.Symbol, Value: in.Value, Unit: in.Unit} }),
			Source: &Source{Title: s.Source.Title, Edition: s.Source.Edition, Clause: s.Source.Clause, As: string(s.Source.As), For: s.Source.For},
		}
	})}
}
