// Package clauses is the frame for a design standard that is written in Go: a file
// a clause, each clause saying which facts it reads and how each fact it derives is
// worked out of one row. The frame turns that into the columns of the contract.
package clauses

import (
	"context"
	"fmt"
	"io/fs"
	"math"
	"slices"

	"chainwale/engine/standard"
	"chainwale/engine/working"
)

// Book is a standard: what it declares of itself and the clauses it covers.
type Book struct {
	ID, Prefix                string
	Title, Edition, Publisher string
	Basis                     standard.Basis
	Clauses                   []Clause
	// Left are the clauses of the text that the book does not cover, each with its reason.
	Left []standard.Clause
	// Pack holds the pack of rules, pack.yaml at its root.
	Pack fs.FS
}

// Clause is one clause that the book covers.
type Clause struct {
	// Clause is its number in the text, Covers what of it is covered, in a sentence.
	Clause, Covers string
	// Kind is the kind of subject whose rows it reads.
	Kind  string
	Reads []standard.Read
	Facts []Fact
}

// Fact is one fact that a clause derives.
type Fact struct {
	Name, Unit, Meaning string
	// From names the reads that the fact can't do without.
	From []string
	// Bears tells that the fact is the load of the wire, in N, at which the clause's
	// limit is reached; comparing standards sets it over the wire.
	Bears bool
	// Reckon works the fact out of a row in which all of From is known. An error says
	// in a sentence why the clause does not cover the row.
	Reckon func(Row) (Result, error)
}

// Result is a number and the steps by which it came about. Working is called only
// when somebody asks.
type Result struct {
	Value   float64
	Working func() []working.Step
}

// Standard makes a standard of the book. An error is a fault of the book: a fact
// twice, a read that two clauses declare differently, a From that is no read.
func (b Book) Standard() (standard.Standard, error) {
	s := &bound{book: b, tables: map[string]*table{}}
	for i := range b.Clauses {
		if err := s.bind(&b.Clauses[i]); err != nil {
			return nil, fmt.Errorf("%s, clause %s: %w", b.ID, b.Clauses[i].Clause, err)
		}
	}
	if err := s.describe(); err != nil {
		return nil, fmt.Errorf("%s: %w", b.ID, err)
	}
	return s, nil
}

// bound is a book bound to the contract.
type bound struct {
	book     Book
	declared standard.Description
	kinds    []string
	tables   map[string]*table
}

// table gathers the clauses of one kind.
type table struct {
	standard.Table
	facts []Fact
}

func (s *bound) bind(c *Clause) error {
	t := s.tables[c.Kind]
	if t == nil {
		t = &table{Table: standard.Table{Kind: c.Kind}}
		s.tables[c.Kind] = t
		s.kinds = append(s.kinds, c.Kind)
	}
	for _, r := range c.Reads {
		i := slices.IndexFunc(t.Reads, func(o standard.Read) bool { return o.Name == r.Name })
		switch {
		case i < 0:
			t.Reads = append(t.Reads, r)
		case t.Reads[i] != r:
			return fmt.Errorf("it reads %s as another clause does not", r.Name)
		}
	}
	for _, f := range c.Facts {
		if slices.ContainsFunc(t.facts, func(o Fact) bool { return o.Name == f.Name }) {
			return fmt.Errorf("it derives %s, which another clause does", f.Name)
		}
		for _, name := range f.From {
			if !slices.ContainsFunc(c.Reads, func(o standard.Read) bool { return o.Name == name }) {
				return fmt.Errorf("%s comes from %s, which the clause does not read", f.Name, name)
			}
		}
		t.facts = append(t.facts, f)
		t.Derives = append(t.Derives, standard.Derive{Name: f.Name, Unit: f.Unit, Clause: c.Clause, Meaning: f.Meaning, From: f.From, Bears: f.Bears})
	}
	return nil
}

func (s *bound) describe() error {
	b := s.book
	s.declared = standard.Description{Contract: standard.Contract, ID: b.ID, Prefix: b.Prefix, Title: b.Title, Edition: b.Edition, Publisher: b.Publisher, Basis: b.Basis}
	for _, kind := range s.kinds {
		s.declared.Tables = append(s.declared.Tables, s.tables[kind].Table)
	}
	for _, c := range b.Clauses {
		s.declared.Clauses = append(s.declared.Clauses, standard.Clause{Clause: c.Clause, Covered: true, Why: c.Covers})
	}
	s.declared.Clauses = append(s.declared.Clauses, b.Left...)
	return fs.WalkDir(b.Pack, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		bytes, err := fs.ReadFile(b.Pack, name)
		s.declared.Pack = append(s.declared.Pack, standard.File{Path: name, Bytes: bytes})
		return err
	})
}

// Describe says what the book declares.
func (s *bound) Describe(context.Context) (standard.Description, error) { return s.declared, nil }

// Derive works the facts of a table out, row by row.
func (s *bound) Derive(ctx context.Context, q standard.Question) (standard.Answer, error) {
	t := s.tables[q.Kind]
	if t == nil {
		return standard.Answer{}, fmt.Errorf("%s has no table of the kind %s", s.book.ID, q.Kind)
	}
	var a standard.Answer
	for i, f := range t.facts {
		if err := ctx.Err(); err != nil {
			return standard.Answer{}, err
		}
		column := standard.NewNumbers(f.Name, q.Rows)
		for row := range q.Rows {
			r := Row{columns: q.Columns, row: row}
			if !r.knows(f.From) {
				continue
			}
			value, err := f.value(r)
			if err != nil {
				a.NotCovered = append(a.NotCovered, standard.NotCovered{Row: row, Clause: t.Derives[i].Clause, Why: err.Error()})
				continue
			}
			column.Give(row, value)
		}
		a.Columns = append(a.Columns, column)
	}
	return a, nil
}

// value is the fact's number; one that is not finite is none.
func (f Fact) value(r Row) (float64, error) {
	result, err := f.Reckon(r)
	if err != nil {
		return 0, err
	}
	if math.IsNaN(result.Value) || math.IsInf(result.Value, 0) {
		return 0, fmt.Errorf("the calculation gave no finite number")
	}
	return result.Value, nil
}

// Working writes down how one fact of one row came about.
func (s *bound) Working(_ context.Context, a standard.Asked) ([]working.Step, error) {
	t := s.tables[a.Kind]
	if t == nil {
		return nil, fmt.Errorf("%s has no table of the kind %s", s.book.ID, a.Kind)
	}
	for _, f := range t.facts {
		if f.Name != a.Fact {
			continue
		}
		r := Row{columns: a.Columns}
		if !r.knows(f.From) {
			return nil, fmt.Errorf("%s can't be worked out: something that it comes from is unknown", f.Name)
		}
		result, err := f.Reckon(r)
		if err != nil {
			return nil, err
		}
		return result.Working(), nil
	}
	return nil, fmt.Errorf("%s derives no fact %s of a %s", s.book.ID, a.Fact, a.Kind)
}
