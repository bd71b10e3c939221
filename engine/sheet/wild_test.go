package sheet

import (
	"maps"
	"math"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// allFinite tells whether every exported number in a value is one.
func allFinite(v reflect.Value) bool {
	switch v.Kind() {
	case reflect.Float64:
		return !math.IsNaN(v.Float()) && !math.IsInf(v.Float(), 0)
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() && !allFinite(v.Field(i)) {
				return false
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			if !allFinite(v.Index(i)) {
				return false
			}
		}
	case reflect.Pointer:
		return v.IsNil() || allFinite(v.Elem())
	}
	return true
}

// TestWildNumbers: whatever numbers come, a formula gives finite results or an error.
func TestWildNumbers(t *testing.T) {
	number := rapid.SampledFrom([]float64{0, -1, 1e-9, 1e-6, 0.1, 0.4, 1, 2, 5.5, 6, 8, 12, 16, 20, 40, 63, 90, 120, 179, 179.99, 180, 600, 1000, 193000, 1e6, 1e9, -1e9, 1e300, math.NaN(), math.Inf(1), math.Inf(-1), math.SmallestNonzeroFloat64})
	rapid.Check(t, func(t *rapid.T) {
		n := func() float64 { return number.Draw(t, "n") }
		fold := func() Fold { return Fold{n(), n(), n(), n(), n()} }
		reading := func() Reading { return Read(n(), n(), n()) }
		end := func() End {
			return End{rapid.SampledFrom([]EndShape{"", SquareEnd, RoundedEnd, TaperedEnd}).Draw(t, "end"), n(), n(), n(), n()}
		}
		flat := Flat{Thickness: n(), Outline: Contour{{n(), n(), n()}, {n(), n(), n()}, {n(), n(), n()}}, Holes: []Hole{{At: Point{n(), n()}, Diameter: n(), Square: true, Turn: n()}}, Folds: []Fold{fold()}}
		formulas := map[string]func() (any, error){
			"bend":       func() (any, error) { return Bend{Thickness: n(), Radius: n(), Angle: n()}.Reckon() },
			"given":      func() (any, error) { return Bend{n(), n(), n(), AsGiven, n()}.Reckon() },
			"arc":        func() (any, error) { return NeutralArc(n(), n(), n(), n()) },
			"strain":     func() (any, error) { return FoldStrain{n(), n(), n()}.Reckon() },
			"springback": func() (any, error) { return Springback{n(), n(), n(), n(), n()}.Reckon() },
			"hardened":   func() (any, error) { return HardenedSpringback{n(), n(), n(), n(), n(), n(), true}.Reckon() },
			"force":      func() (any, error) { return PressForce{n(), n(), n(), n(), GreaterForce}.Reckon() },
			"die":        func() (any, error) { return Die{n(), n(), n()}.Reckon() },
			"travel":     func() (any, error) { return RamTravel{n(), n(), n(), n(), n()}.Reckon() },
			"radius":     func() (any, error) { return MinRadius{"316", n(), AlongGrain, n()}.Reckon() },
			"hole":       func() (any, error) { return HoleToFold{n(), n(), n(), n()}.Reckon() },
			"fit":        func() (any, error) { return Fit{n(), 11, 12}.Reckon() },
			"cut":        func() (any, error) { return CutTolerance(1, n(), n()) },
			"strip":      func() (any, error) { return Strip{n(), n(), end(), end()}.Contour() },
			"develop":    func() (any, error) { return OutsideLegs{n(), n(), []float64{n(), n()}, []Fold{fold()}}.Develop() },
			"folding": func() (any, error) {
				f, err := NewFolding(FoldedStrip{n(), n(), n(), []Fold{fold()}})
				if err != nil {
					return nil, err
				}
				return f.Fold(Point{1, 1}, 1), nil
			},
			"measured": func() (any, error) {
				return Measured{Thickness: reading(), Width: reading(), Legs: []Reading{reading(), reading()}, Folds: []MeasuredFold{{Angle: reading(), Radius: reading()}},
					Holes: []MeasuredHole{{Leg: 2, Along: reading(), Across: reading()}}}.Develop()
			},
			"match": func() (any, error) {
				return HoleMatch{Holes: []MatchedHole{{New: Point{n(), n()}, Measured: Point{n(), n()}, Hole: n(), Bolt: n()}, {New: Point{n(), n()}, Measured: Point{n(), n()}, Hole: n(), Bolt: n(), Within: n()}}}.Reckon()
			},
			"flat":    func() (any, error) { return nil, flat.Check() },
			"alike":   func() (any, error) { return Congruent(flat, flat, LikeMeasured) },
			"drawing": func() (any, error) { return flat.Drawing(0.1) },
			"between": func() (any, error) {
				a, s, err := FoldBetween(Point3{n(), n(), n()}, Point3{n(), n(), n()}, Point3{n(), n(), n()})
				return []float64{a, s}, err
			},
			"orders": func() (any, error) {
				return PressOrders(FoldedStrip{6, 40, 266, []Fold{{At: 120, Angle: n(), Radius: n()}}}, PressTools{n(), n(), n(), n(), n()})
			},
			"bumping": func() (any, error) { return Bumping{n(), n(), n(), n(), n(), n(), n()}.Next([]Bumped{{n(), n()}}) },
			"sheet":   func() (any, error) { return Bumping{63, 5, 8, 16, n(), n(), n()}.Sheet(n()) },
		}
		for _, what := range slices.Sorted(maps.Keys(formulas)) {
			result, err := formulas[what]()
			if err == nil && result != nil && !allFinite(reflect.ValueOf(result)) {
				t.Fatalf("%s gave %+v", what, result)
			}
		}
	})
}
