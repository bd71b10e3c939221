package main

import (
	"iter"
	"math/rand/v2"
	"reflect"
)

// landing is a row of facts as a programmer would write it down: what the closures
// read, and by value the environment of expr's virtual machine. The tags name the
// facts as rules do, with the units that examples are written in.
type landing struct {
	Hole          float64 `expr:"hole" unit:"mm"`
	End           float64 `expr:"end" unit:"mm"`
	PinDiameter   float64 `expr:"pin_diameter" unit:"mm"`
	ForkOpening   float64 `expr:"fork_opening" unit:"mm"`
	ForkCheek     float64 `expr:"fork_cheek" unit:"mm"`
	PlateUltimate float64 `expr:"plate_ultimate" unit:"N"`
	PlateBearing  float64 `expr:"plate_bearing" unit:"N"`
	PinShear      float64 `expr:"pin_shear" unit:"N"`
	PinBending    float64 `expr:"pin_bending" unit:"N"`
	Stay          stay    `expr:"stay"`
	Fitting       fitting `expr:"fitting"`
}

type stay struct {
	BreakLoad   float64 `expr:"break_load" unit:"N"`
	WorkingLoad float64 `expr:"working_load" unit:"N"`
}

type fitting struct {
	Thickness float64 `expr:"thickness" unit:"mm"`
	Width     float64 `expr:"width" unit:"mm"`
	Age       float64 `expr:"age" unit:"year"`
	Life      float64 `expr:"life" unit:"year"`
	Metal     metal   `expr:"metal"`
}

type metal struct {
	Yield float64 `expr:"yield" unit:"MPa"`
	PREN  float64 `expr:"pren" unit:""`
}

// landings makes rows about what a boat of ten metres has, the same ones each time.
func landings(n int) []landing {
	random := rand.New(rand.NewPCG(1, 2))
	around := func(v float64) float64 { return v * (0.75 + random.Float64()/2) }
	rows := make([]landing, n)
	for i := range rows {
		rows[i] = landing{
			Hole: around(13), End: around(21), PinDiameter: around(12), ForkOpening: around(11), ForkCheek: around(4),
			PlateUltimate: around(52000), PlateBearing: around(20000), PinShear: around(45000), PinBending: around(32000),
			Stay:    stay{BreakLoad: around(33000), WorkingLoad: around(13200)},
			Fitting: fitting{Thickness: around(7), Width: around(38), Age: around(14), Life: around(15), Metal: metal{Yield: around(205), PREN: around(24)}},
		}
	}
	return rows
}

// fact is one number of a row.
type fact struct {
	name, unit string
	value      float64
}

// facts are the numbers of a row by the names that rules use.
func (l landing) facts() iter.Seq[fact] {
	return func(yield func(fact) bool) { each(reflect.ValueOf(l), "", yield) }
}

func each(v reflect.Value, prefix string, yield func(fact) bool) bool {
	for i := range v.NumField() {
		tag := v.Type().Field(i).Tag
		name := prefix + tag.Get("expr")
		ok := false
		if v.Field(i).Kind() == reflect.Struct {
			ok = each(v.Field(i), name+".", yield)
		} else {
			ok = yield(fact{name, tag.Get("unit"), v.Field(i).Float()})
		}
		if !ok {
			return false
		}
	}
	return true
}
