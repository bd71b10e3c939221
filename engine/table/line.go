package table

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"

	"chainwale/engine/working"
)

// LineRow is a sort of rope.
type LineRow struct {
	Kind string
	// Least and Mean give break loads, coefficient * d^2 N of d in mm. Least is the one to count.
	Least, Mean float64
	// StiffLeast and StiffMost bound the stiffness EA, in break loads.
	StiffLeast, StiffMost float64
	// Sustained and Short are the parts of the break load it may carry for months and for days.
	Sustained, Short         float64
	Note                     string
	Source, Stiffness, Creep working.Source
}

// BreakLoad is the least break load in N of a diameter in mm.
func (l LineRow) BreakLoad(diameter float64) float64 { return l.Least * diameter * diameter }

// Fibre is what it is made of: "HMPE" or "polyester".
func (l LineRow) Fibre() string { return strings.Fields(l.Kind)[0] }

// LineEnd is what a splice or knot leaves of a line.
type LineEnd struct {
	End string
	// Of is the fibre it holds for, "any" or one.
	Of     string
	Factor float64
	Note   string
	Source working.Source
}

// LineBend is what a bend leaves of a line; Ratio is that of the round's diameter to the line's.
type LineBend struct {
	Ratio, Factor float64
	Source        working.Source
}

type lineTable struct {
	rows   []LineRow
	kind   *index[int]
	ends   []LineEnd
	end    *index[string]
	bends  []LineBend
	fibres []string
}

var lines = sync.OnceValues(loadLines)

// Line gives a sort of rope by name.
func Line(kind string) (LineRow, error) {
	t, err := lines()
	if err != nil {
		return LineRow{}, err
	}
	i, err := t.kind.find(kind)
	if err != nil {
		return LineRow{}, err
	}
	return t.rows[i], nil
}

// LineEndOf gives what a splice or knot leaves in a fibre. Where the fibre is not
// known the least of them counts.
func LineEndOf(end, fibre string) (LineEnd, error) {
	t, err := lines()
	if err != nil {
		return LineEnd{}, err
	}
	name, err := t.end.find(end)
	if err != nil {
		return LineEnd{}, err
	}
	var least LineEnd
	for _, e := range t.ends {
		fits := e.Of == "any" || fibre == "" || plain(e.Of) == plain(fibre)
		if e.End == name && fits && (least.End == "" || e.Factor < least.Factor) {
			least = e
		}
	}
	if least.End == "" {
		return LineEnd{}, &UnknownName{What: "fibre", Name: fibre, Near: t.fibres}
	}
	return least, nil
}

// LineBendAt gives what a bend over a round of a number of line diameters leaves.
// It counts the row at or below the ratio: nothing is read in between.
func LineBendAt(ratio float64) (LineBend, error) {
	t, err := lines()
	if err != nil {
		return LineBend{}, err
	}
	if math.IsNaN(ratio) || math.IsInf(ratio, 0) || ratio <= 0 {
		return LineBend{}, fmt.Errorf("a round can't be %g times as thick as the line", ratio)
	}
	for _, b := range t.bends {
		if ratio >= b.Ratio {
			return b, nil
		}
	}
	return LineBend{}, fmt.Errorf("the line bends over a round thinner than itself (%.2g of its diameter), and such an edge is not covered: put a bush or a thimble in", ratio)
}

// Lines, LineEnds and LineBends are all rows, in the order of their files.
func Lines() ([]LineRow, error) {
	t, err := lines()
	if err != nil {
		return nil, err
	}
	return slices.Clone(t.rows), nil
}

// LineEnds are all splices and knots.
func LineEnds() ([]LineEnd, error) {
	t, err := lines()
	if err != nil {
		return nil, err
	}
	return slices.Clone(t.ends), nil
}

// LineBends are all bends.
func LineBends() ([]LineBend, error) {
	t, err := lines()
	if err != nil {
		return nil, err
	}
	return slices.Clone(t.bends), nil
}

func loadLines() (*lineTable, error) {
	t := &lineTable{kind: newIndex[int]("line"), end: newIndex[string]("splice or knot")}
	for _, load := range []func(*lineTable) error{loadLineRows, loadLineEnds, loadLineBends} {
		if err := load(t); err != nil {
			return nil, err
		}
	}
	return t, nil
}

func loadLineRows(t *lineTable) (err error) {
	var names [][]string
	t.rows, err = readRows("lines.csv", func(r *row) LineRow {
		names = append(names, append([]string{r.text("kind")}, r.list("names")...))
		return LineRow{Kind: r.text("kind"), Least: 1000 * r.needed("least"), Mean: 1000 * r.needed("mean"),
			StiffLeast: r.needed("stiff_least"), StiffMost: r.needed("stiff_most"), Sustained: r.needed("sustained"), Short: r.needed("short"), Note: r.text("note"),
			Source:    r.source("source", "known", "break load over the square of the diameter"),
			Stiffness: r.source("stiffness_source", "stiffness_known", "stiffness in break loads"),
			Creep:     r.source("creep_source", "creep_known", "part of the break load that it may carry on and on")}
	})
	for i, all := range names {
		for _, name := range all {
			if err == nil {
				err = t.kind.add(name, i)
			}
		}
	}
	return err
}

func loadLineEnds(t *lineTable) (err error) {
	t.ends, err = readRows("line_ends.csv", func(r *row) LineEnd {
		e := LineEnd{End: r.text("end"), Of: r.text("of"), Factor: r.needed("factor"), Note: r.text("note"), Source: r.source("source", "known", "what the end leaves of the line")}
		for _, name := range append([]string{e.End}, r.list("names")...) {
			if known, err := t.end.find(name); err == nil && known == e.End {
				continue
			}
			if err := t.end.add(name, e.End); err != nil {
				r.fail("names", err.Error())
			}
		}
		if e.Of != "any" && !slices.Contains(t.fibres, e.Of) {
			t.fibres = append(t.fibres, e.Of)
		}
		return e
	})
	return err
}

func loadLineBends(t *lineTable) (err error) {
	t.bends, err = readRows("line_bends.csv", func(r *row) LineBend {
		return LineBend{Ratio: r.needed("ratio"), Factor: r.needed("factor"), Source: r.source("source", "known", "what the bend leaves of the line")}
	})
	return err
}
