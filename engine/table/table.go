// Package table holds the reference data of the trade: metals, the galvanic
// series, wire, bolts and clevis pins.
//
// The data are CSV files under data/, embedded in the program. Every row names
// the source behind it and how far that source is known; a test holds that no
// row lacks them. Look-ups go by the plain name an owner would write: capitals,
// spaces, hyphens and underscores make no difference. A name that isn't there
// comes back as an *UnknownName with the nearest ones, never as a guess.
//
// Values are in canonical units: mm, mm2, N, MPa, V, kg/m3, % for elongation
// and chemistry. A value that the specification doesn't give is NaN.
package table

import (
	"embed"
	"encoding/csv"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"

	"chainwale/engine/working"
)

//go:embed data/*.csv
var files embed.FS

// sheet is one CSV file: a header, then rows.
type sheet struct {
	name   string
	column map[string]int
	rows   [][]string
}

// readSheet reads an embedded file. A fault in it is ours and is an error.
func readSheet(name string) (*sheet, error) {
	f, err := files.Open("data/" + name)
	if err != nil {
		return nil, fmt.Errorf("table %s: %w", name, err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	all, err := r.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("table %s: %w", name, err)
	}
	if len(all) < 2 {
		return nil, fmt.Errorf("table %s is empty", name)
	}
	s := &sheet{name: name, column: map[string]int{}, rows: all[1:]}
	for i, head := range all[0] {
		s.column[head] = i
	}
	return s, nil
}

// row reads the cells of one row by their heads and keeps the first fault.
type row struct {
	sheet *sheet
	cells []string
	err   error
}

func (r *row) fail(head, why string) {
	if r.err == nil {
		r.err = fmt.Errorf("table %s, row %s, column %s: %s", r.sheet.name, r.cells[0], head, why)
	}
}

// text is the cell as it stands.
func (r *row) text(head string) string {
	i, ok := r.sheet.column[head]
	if !ok {
		r.fail(head, "there is no such column")
		return ""
	}
	return r.cells[i]
}

// number is the cell as a number, NaN if it is empty.
func (r *row) number(head string) float64 {
	text := r.text(head)
	if text == "" {
		return math.NaN()
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		r.fail(head, fmt.Sprintf("%q is no number", text))
	}
	return v
}

// needed is the cell as a number that the row can't do without.
func (r *row) needed(head string) float64 {
	v := r.number(head)
	if math.IsNaN(v) || math.IsInf(v, 0) {
		r.fail(head, "the number is missing")
	}
	return v
}

// list is a cell of names parted by semicolons.
func (r *row) list(head string) []string {
	text := r.text(head)
	if text == "" {
		return nil
	}
	return strings.Split(text, ";")
}

// known is the cell as a word of the how-known vocabulary.
func (r *row) known(head string) working.HowKnown {
	as := working.HowKnown(r.text(head))
	if !slices.Contains(working.AllHowKnown(), as) {
		r.fail(head, fmt.Sprintf("%q does not say how the value is known", as))
	}
	return as
}

// source joins the source that the row names with how the value is known. what
// says which part of the row it stands behind.
func (r *row) source(sourceHead, knownHead, what string) working.Source {
	all, err := sources()
	if err != nil {
		r.err = err
		return working.Source{}
	}
	src, ok := all[r.text(sourceHead)]
	if !ok {
		r.fail(sourceHead, fmt.Sprintf("%q is not in sources.csv", r.text(sourceHead)))
	}
	src.As, src.For = r.known(knownHead), what
	return src
}

// sources are the titles behind the rows, by key.
var sources = sync.OnceValues(func() (map[string]working.Source, error) {
	s, err := readSheet("sources.csv")
	if err != nil {
		return nil, err
	}
	all := map[string]working.Source{}
	for _, cells := range s.rows {
		r := &row{sheet: s, cells: cells}
		all[r.text("key")] = working.Source{Title: r.text("title"), Edition: r.text("edition"), Clause: r.text("clause")}
		if r.err != nil {
			return nil, r.err
		}
	}
	return all, nil
})

// readRows reads each row of a file into a value.
func readRows[T any](name string, read func(*row) T) ([]T, error) {
	s, err := readSheet(name)
	if err != nil {
		return nil, err
	}
	all := make([]T, 0, len(s.rows))
	for _, cells := range s.rows {
		r := &row{sheet: s, cells: cells}
		v := read(r)
		if r.err != nil {
			return nil, r.err
		}
		all = append(all, v)
	}
	return all, nil
}
