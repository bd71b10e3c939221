package sheet

import (
	"encoding/json"
	"math"
	"os"
	"slices"
	"testing"

	"chainwale/engine/working"
)

// near holds a value to what it should be, within a tolerance.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s is %.9g, want %.9g", what, got, want)
	}
}

// checkWorking holds that every step says what it is, where it comes from and how
// that is known, and that the steps named have the values that the result has.
func checkWorking(t *testing.T, steps []working.Step, want map[string]float64) {
	t.Helper()
	seen := map[string]bool{}
	for _, s := range steps {
		if s.Symbol == "" || s.Formula == "" || s.Meaning == "" || s.Source.Title == "" || !slices.Contains(working.AllHowKnown(), s.Source.As) {
			t.Errorf("step %+v is incomplete", s)
		}
		if v, ok := want[s.Symbol]; ok {
			seen[s.Symbol] = true
			if s.Value != v {
				t.Errorf("step %s says %g, the result %g", s.Symbol, s.Value, v)
			}
		}
	}
	for symbol := range want {
		if !seen[symbol] {
			t.Errorf("no step %s", symbol)
		}
	}
}

// flatPoint is a point of the flat with where it goes when folded.
type flatPoint struct {
	U, W, D float64
	XYZ     [3]float64
}

// vectorFile are values worked out in another language.
type vectorFile struct {
	DINV []struct{ Beta, R, S, K, V float64 } `json:"din_v"`
	Bend []struct {
		Thickness float64 `json:"t"`
		Radius    float64 `json:"R"`
		Phi       float64 `json:"phi"`
		K, BA     float64
		OSSB, BD  float64
	}
	Springback []struct {
		Y, E      float64
		RiOverT   float64 `json:"Ri_over_t"`
		X         float64
		RiOverRf  float64 `json:"Ri_over_Rf"`
		Ks        float64
		FormFor90 float64 `json:"form_for_90"`
		FormFor20 float64 `json:"form_for_20"`
	}
	AirBend []struct {
		V, R, T, Rd, Alpha, D float64
		DegPerMM              float64 `json:"deg_per_mm"`
	} `json:"air_bend_depth"`
	Fold struct {
		T, K  float64
		Legs  []float64 `json:"legs_outside"`
		Bends []struct{ Phi, R, C, BA float64 }
		Flat  float64 `json:"flat_length"`

		Points []flatPoint
	}
	Skew struct {
		T, K   float64
		Bends  []struct{ C, Phi, R, Psi float64 }
		Points []flatPoint
	} `json:"fold_skew"`
}

func vectors(t *testing.T) vectorFile {
	t.Helper()
	src, err := os.ReadFile("testdata/vectors.json")
	if err != nil {
		t.Fatal(err)
	}
	var v vectorFile
	if err := json.Unmarshal(src, &v); err != nil {
		t.Fatal(err)
	}
	return v
}
