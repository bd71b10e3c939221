package wire

import (
	"chainwale/engine/standard"
	"chainwale/engine/working"
)

// The way back: from messages to the plain data of engine/standard. A message may be
// nil wherever another holds it; all its parts are empty then.

func described(m *Description) standard.Description {
	return standard.Description{
		Contract: int(m.GetContract()), ID: m.GetId(), Prefix: m.GetPrefix(), Title: m.GetTitle(), Edition: m.GetEdition(),
		Publisher: m.GetPublisher(), Basis: standard.Basis(m.GetBasis()),
		Tables: each(m.GetTables(), tableBack),
		Clauses: each(m.GetClauses(), func(c *Clause) standard.Clause {
			return standard.Clause{Clause: c.GetClause(), Covered: c.GetCovered(), Why: c.GetWhy()}
		}),
		Pack: each(m.GetPack(), func(f *File) standard.File { return standard.File{Path: f.GetPath(), Bytes: f.GetBytes()} }),
	}
}

func tableBack(m *Table) standard.Table {
	return standard.Table{
		Kind: m.GetKind(),
		Reads: each(m.GetReads(), func(r *Read) standard.Read {
			return standard.Read{Name: r.GetName(), Type: standard.Type(r.GetType()), Unit: r.GetUnit()}
		}),
		Derives: each(m.GetDerives(), func(d *Derive) standard.Derive {
			return standard.Derive{Name: d.GetName(), Unit: d.GetUnit(), Clause: d.GetClause(), Meaning: d.GetMeaning(), From: d.GetFrom(), Bears: d.GetBears()}
		}),
	}
}

func columnBack(m *Column) standard.Column {
	return standard.Column{Name: m.GetName(), Numbers: m.GetNumbers(), Known: m.GetKnown(), Words: m.GetWords(), Index: m.GetIndex()}
}

func questionBack(m *Question) standard.Question {
	return standard.Question{Kind: m.GetKind(), Rows: int(m.GetRows()), Columns: each(m.GetColumns(), columnBack)}
}

func answerBack(m *Answer) standard.Answer {
	return standard.Answer{
		Columns: each(m.GetColumns(), columnBack),
		NotCovered: each(m.GetNotCovered(), func(n *NotCovered) standard.NotCovered {
			return standard.NotCovered{Row: int(n.GetRow()), Clause: n.GetClause(), Why: n.GetWhy()}
		}),
	}
}

func askedBack(m *Asked) standard.Asked {
	return standard.Asked{Kind: m.GetKind(), Fact: m.GetFact(), Columns: each(m.GetColumns(), columnBack)}
}

func stepsBack(m *Steps) []working.Step {
	return each(m.GetSteps(), func(s *Step) working.Step {
		from := s.GetSource()
		return working.Step{
			Symbol: s.GetSymbol(), Meaning: s.GetMeaning(), Formula: s.GetFormula(), Value: s.GetValue(), Unit: s.GetUnit(),
			Inputs: each(s.GetInputs(), func(in *Input) working.Input {
				return working.Input{Symbol: in.GetSymbol(), Value: in.GetValue(), Unit: in.GetUnit()}
			}),
			Source: working.Source{Title: from.GetTitle(), Edition: from.GetEdition(), Clause: from.GetClause(), As: working.HowKnown(from.GetAs()), For: from.GetFor()},
		}
	})
}
