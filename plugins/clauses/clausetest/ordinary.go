package clausetest

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"
)

// OrdinaryPlate is one of the nine ordinary plates of testdata/ordinary, as facts of
// its landing, with the wire's break load in N.
type OrdinaryPlate struct {
	ID    string
	Facts Facts
	Break float64
}

// OrdinaryPlates are all nine, the wire in line with the plate. Their pins are of
// annealed 316.
func OrdinaryPlates(t testing.TB) []OrdinaryPlate {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "ordinary", "plates.json"))
	if err != nil {
		t.Fatal(err)
	}
	var file struct {
		Plates []struct {
			ID    string             `json:"id"`
			Plate map[string]float64 `json:"plate"`
			Break float64            `json:"break_load_kN"`
			Fork  float64            `json:"fork_mm"`
			Cheek float64            `json:"cheek_mm"`
		}
	}
	if err := json.Unmarshal(data, &file); err != nil {
		t.Fatal(err)
	}
	if len(file.Plates) != 9 {
		t.Fatalf("%d ordinary plates", len(file.Plates))
	}
	var list []OrdinaryPlate
	for _, p := range file.Plates {
		list = append(list, OrdinaryPlate{ID: p.ID, Break: p.Break * 1000, Facts: Facts{
			"hole": p.Plate["hole_mm"], "end": p.Plate["end_mm"], "across": 0.0, "pin_diameter": p.Plate["pin_mm"], "lean_in": 0.0, "lean_out": 0.0,
			"fitting.thickness": p.Plate["thickness_mm"], "fitting.width": p.Plate["width_mm"], "fitting.metal.name": "316L", "fitting.metal.family": "stainless",
			"fitting.metal.yield": p.Plate["yield_MPa"], "fitting.metal.ultimate": p.Plate["ultimate_MPa"],
			"fork_opening": p.Fork, "fork_cheek": p.Cheek, "pin_yield": 205.0, "pin_ultimate": 515.0,
		}})
	}
	return list
}

// Only are those facts that one of a standard's tables reads.
func (f Facts) Only(t testing.TB, names ...string) Facts {
	t.Helper()
	some := Facts{}
	for _, name := range names {
		v, ok := f[name]
		if !ok {
			t.Fatalf("there is no fact %s", name)
		}
		some[name] = v
	}
	return some
}
