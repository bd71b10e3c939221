// Package standard holds what the engine and a design standard say to each other:
// what a standard declares of itself, the columns of facts it is asked with and
// answers by, and the steps behind one answer.
//
// It is a leaf of plain data, so that a standard in the same process, one in a
// process of its own and one in another language speak alike. A standard is a maker
// of columns and judges nothing: the pack it declares does, by the same rules as
// every other pack.
package standard

import (
	"context"

	"chainwale/engine/working"
)

// Contract is the version of this contract. A standard of another version is
// refused, and the refusal says which side is the older.
const Contract = 1

// Standard is a design standard, wherever it runs.
type Standard interface {
	// Describe says what the standard is, reads and derives. It says the same each time.
	Describe(context.Context) (Description, error)
	// Derive makes the facts of one table out of the columns that it reads: once a
	// table a check, with a row for each subject of the table's kind.
	Derive(context.Context, Question) (Answer, error)
	// Working writes down how one derived fact of one subject came about. It is
	// asked only when somebody wants to see it.
	Working(context.Context, Asked) ([]working.Step, error)
}

// Basis says on which footing a standard's strengths stand.
type Basis string

const (
	// Ultimate strengths are nominal; they are compared with the wire's break load.
	Ultimate Basis = "ultimate"
	// Design values hold safety factors; they are compared with the load at work.
	Design Basis = "design"
)

// Description is what a standard declares of itself.
type Description struct {
	// Contract is the version it was written for.
	Contract int
	// ID names it in a plan ("en-1993-1-8"), Prefix its facts in rules ("en1993").
	ID, Prefix                string
	Title, Edition, Publisher string
	Basis                     Basis
	Tables                    []Table
	Clauses                   []Clause
	// Pack is the pack of rules that judges its facts, file by file.
	Pack []File
}

// Table is what a standard reads and derives of one kind of subject. A kind has one
// table at most in a standard.
type Table struct {
	Kind    string
	Reads   []Read
	Derives []Derive
}

// Read is a fact that a standard reads: one that rules of the kind may read under
// the same name ("hole", "stay.break_load").
type Read struct {
	Name string
	Type Type
	// Unit is the canonical unit the numbers come in (mm, N, MPa, N mm, deg, year);
	// "" for a bare number, a yes or no (1 or 0) and a word.
	Unit string
}

// Type is what a fact is.
type Type string

const (
	Number Type = "number"
	Word   Type = "word"
	YesNo  Type = "yes or no"
)

// Derive is a fact that a standard derives; rules read it as prefix.name.
type Derive struct {
	Name, Unit, Clause, Meaning string
	// From names those of the table's reads that the fact can't do without: where one
	// of them is unknown, so is the fact, and the reader is asked for that reading. It
	// names one at least: a fact that comes from nothing would be known whatever is not.
	From []string
	// Bears tells that the number is the load of the wire, in N, at which the clause's
	// limit is reached: what is said as "1.4 times the wire" and compared with what
	// other standards say.
	Bears bool
}

// Clause is one clause of the standard's text, covered or not; Why says what is
// covered, or why it is left out.
type Clause struct {
	Clause  string
	Covered bool
	Why     string
}

// File is one file of a pack, its path with slashes within the pack.
type File struct {
	Path  string
	Bytes []byte
}

// Column is one fact of many subjects, a row each. Numbers and yes-or-noes stand in
// Numbers; words stand in Words, each once, and Index says which is whose.
type Column struct {
	Name string
	// Numbers has one number a row; what stands where Known has no bit says nothing.
	Numbers []float64
	Known   Bits
	Words   []string
	// Index is 1 for the first of Words, 0 for unknown.
	Index []uint32
}

// Question asks for the derived facts of one kind.
type Question struct {
	Kind string
	Rows int
	// Columns are the table's reads, in its order.
	Columns []Column
}

// Answer holds a table's derived facts in its order. A fact that is unknown although
// all it comes from is known stands among NotCovered with its reason.
type Answer struct {
	Columns    []Column
	NotCovered []NotCovered
}

// NotCovered says why a clause says nothing of a row.
type NotCovered struct {
	Row    int
	Clause string
	Why    string
}

// Asked asks how one fact of one subject came about: Columns are the table's reads
// with a single row.
type Asked struct {
	Kind, Fact string
	Columns    []Column
}

// Table finds the table of a kind.
func (d *Description) Table(kind string) (Table, bool) {
	for _, t := range d.Tables {
		if t.Kind == kind {
			return t, true
		}
	}
	return Table{}, false
}
