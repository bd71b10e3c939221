package table

import (
	"fmt"
	"math"
	"slices"
	"sync"

	"chainwale/engine/working"
)

// SparRow is an extruded alloy that masts are made of: MPa, kg/m3.
type SparRow struct {
	Alloy string
	// Over and UpTo bound the wall in mm.
	Over, UpTo                      float64
	Yield, Welded, Modulus, Density float64
	Source, WeldSource              working.Source
}

// PermissibleRow is the part of a characteristic strength that a society lets a rig
// use in each case; NaN where it gives none.
type PermissibleRow struct {
	What                                string
	Sailing, Survival, Handling, People float64
	Source                              working.Source
}

// DragRow is the drag coefficient of a round across the wind in a band of Reynolds numbers.
type DragRow struct {
	Shape      string
	Over, UpTo float64
	// Least and Most are what is published, Use is what to count with.
	Least, Most, Use float64
	Note             string
	Source           working.Source
}

type sparTable struct {
	rows  []SparRow
	alloy *index[string]
}

var spars = sync.OnceValues(func() (*sparTable, error) {
	t := &sparTable{alloy: newIndex[string]("spar alloy")}
	var err error
	t.rows, err = readRows("spars.csv", func(r *row) SparRow {
		s := SparRow{Alloy: r.text("alloy"), Over: r.needed("over"), UpTo: r.needed("upto"), Yield: r.needed("yield"), Welded: r.needed("welded"),
			Modulus: r.needed("modulus"), Density: r.needed("density"), Source: r.source("source", "known", "least 0.2 % proof strength"),
			WeldSource: r.source("weld_source", "weld_known", "what is left beside a weld")}
		for _, name := range append([]string{s.Alloy}, r.list("names")...) {
			if known, err := t.alloy.find(name); err == nil && known == s.Alloy {
				continue
			}
			if err := t.alloy.add(name, s.Alloy); err != nil {
				r.fail("names", err.Error())
			}
		}
		return s
	})
	return t, err
})

// SparAlloy gives an extruded alloy by name and wall in mm. An alloy given without
// its temper counts as T6.
func SparAlloy(name string, wall float64) (SparRow, error) {
	t, err := spars()
	if err != nil {
		return SparRow{}, err
	}
	alloy, err := t.alloy.find(name)
	if err != nil {
		return SparRow{}, err
	}
	for _, s := range t.rows {
		if s.Alloy == alloy && wall > s.Over && wall <= s.UpTo {
			return s, nil
		}
	}
	return SparRow{}, fmt.Errorf("the table has no %s extrusion with a wall of %g mm", alloy, wall)
}

// SparAlloys are all rows, in the order of the file.
func SparAlloys() ([]SparRow, error) {
	t, err := spars()
	if err != nil {
		return nil, err
	}
	return slices.Clone(t.rows), nil
}

var drags = sync.OnceValues(func() ([]DragRow, error) {
	return readRows("drag.csv", func(r *row) DragRow {
		return DragRow{Shape: r.text("shape"), Over: r.needed("over"), UpTo: r.needed("upto"), Least: r.needed("least"), Most: r.needed("most"),
			Use: r.needed("use"), Note: r.text("note"), Source: r.source("source", "known", "drag coefficient")}
	})
})

// Drag gives the drag coefficient of a shape at a Reynolds number.
func Drag(shape string, reynolds float64) (DragRow, error) {
	all, err := drags()
	if err != nil {
		return DragRow{}, err
	}
	var shapes []string
	for _, d := range all {
		if plain(d.Shape) == plain(shape) && reynolds > d.Over && reynolds <= d.UpTo {
			return d, nil
		}
		if !slices.Contains(shapes, d.Shape) {
			shapes = append(shapes, d.Shape)
		}
	}
	if !slices.ContainsFunc(shapes, func(s string) bool { return plain(s) == plain(shape) }) {
		return DragRow{}, &UnknownName{What: "shape", Name: shape, Near: shapes}
	}
	return DragRow{}, fmt.Errorf("the table has no drag of a %s at a Reynolds number of %.3g", shape, reynolds)
}

// Drags are all rows, in the order of the file.
func Drags() ([]DragRow, error) {
	all, err := drags()
	return slices.Clone(all), err
}

var permissibles = sync.OnceValues(func() ([]PermissibleRow, error) {
	return readRows("permissible.csv", func(r *row) PermissibleRow {
		return PermissibleRow{What: r.text("what"), Sailing: r.number("sailing"), Survival: r.number("survival"), Handling: r.number("handling"),
			People: r.number("people"), Source: r.source("source", "known", "permissible part of the characteristic strength")}
	})
})

// Permissible gives the part of its strength that a society lets a member of a rig use.
func Permissible(what string) (PermissibleRow, error) {
	all, err := permissibles()
	if err != nil {
		return PermissibleRow{}, err
	}
	var names []string
	for _, p := range all {
		if plain(p.What) == plain(what) {
			return p, nil
		}
		names = append(names, p.What)
	}
	return PermissibleRow{Sailing: math.NaN(), Survival: math.NaN(), Handling: math.NaN(), People: math.NaN()}, &UnknownName{What: "member of a rig", Name: what, Near: names}
}

// Permissibles are all rows, in the order of the file.
func Permissibles() ([]PermissibleRow, error) {
	all, err := permissibles()
	return slices.Clone(all), err
}
