package table

import (
	"slices"
	"sync"

	"chainwale/engine/working"
)

// GalvanicRow is one metal of the galvanic series in one state.
type GalvanicRow struct {
	// Name is the metal, State "passive", "active" or "" for a metal that has but one.
	Name, State string
	// Low and High bound the potential in V; Low is the most negative.
	Low, High float64
	// Other is what a further list gives, NaN if it gives nothing.
	Other  float64
	Note   string
	Source working.Source
}

// Mean is the middle of the range, V.
func (g GalvanicRow) Mean() float64 { return (g.Low + g.High) / 2 }

// String is the metal and its state: "316 (active)".
func (g GalvanicRow) String() string {
	if g.State == "" {
		return g.Name
	}
	return g.Name + " (" + g.State + ")"
}

type galvanicTable struct {
	rows  []GalvanicRow
	names *index[[]int]
}

var galvanic = sync.OnceValues(loadGalvanic)

func loadGalvanic() (*galvanicTable, error) {
	t := &galvanicTable{names: newIndex[[]int]("metal of the galvanic series")}
	var ids []string
	rows, err := readRows("galvanic.csv", func(r *row) GalvanicRow {
		ids = append(ids, r.text("id"))
		return GalvanicRow{Name: r.text("name"), State: r.text("state"), Low: r.needed("low"), High: r.needed("high"),
			Other: r.number("other"), Note: r.text("note"), Source: r.source("source", "known", "potential")}
	})
	if err != nil {
		return nil, err
	}
	t.rows = rows
	byName := map[string][]int{}
	var order []string
	for i, g := range rows {
		if byName[g.Name] == nil {
			order = append(order, g.Name)
		}
		byName[g.Name] = append(byName[g.Name], i)
	}
	for _, name := range order {
		if err := t.names.add(name, byName[name]); err != nil {
			return nil, err
		}
	}
	for i, id := range ids {
		if err := t.nameState(id, i); err != nil {
			return nil, err
		}
	}
	return t, addOtherNames("galvanic_names.csv", t.names)
}

// nameState lets one state of a metal be asked for: "316 active", "active 316", "ss316_active".
func (t *galvanicTable) nameState(id string, i int) error {
	names := []string{id}
	if g := t.rows[i]; g.State != "" {
		names = append(names, g.Name+" "+g.State, g.State+" "+g.Name)
	}
	for _, name := range names {
		if t.names.has(name) {
			continue
		}
		if err := t.names.add(name, []int{i}); err != nil {
			return err
		}
	}
	return nil
}

// Galvanic gives the rows of the series that a metal's name may mean: for a
// stainless both states, the passive one being that of a clean, open surface; for
// a name like "bronze" each alloy it may be.
func Galvanic(name string) ([]GalvanicRow, error) {
	t, err := galvanic()
	if err != nil {
		return nil, err
	}
	found, err := t.names.find(name)
	if err != nil {
		return nil, err
	}
	rows := make([]GalvanicRow, len(found))
	for i, at := range found {
		rows[i] = t.rows[at]
	}
	return rows, nil
}

// GalvanicSeries is the whole series, in the order of the file.
func GalvanicSeries() ([]GalvanicRow, error) {
	t, err := galvanic()
	if err != nil {
		return nil, err
	}
	return slices.Clone(t.rows), nil
}
