package render

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"chainwale/engine/finding"
	"chainwale/engine/quantity"
)

// What is held, and the gust that it bears, are never printed as more than they are.
func TestNeverRoundedUp(t *testing.T) {
	for n, want := range map[float64]string{2.9999: "2.99 times", 0.9999: "0.999 times", 1: "once", 3: "3 times", 12.69: "12.6 times", 100: "100 times", 0: "0 times", 0.07: "0.07 times"} {
		if got := atLeast(n); got != want {
			t.Errorf("%g is held %s, not %s", n, got, want)
		}
	}
	for v, want := range map[float64]string{14.99: "14 kn", 15: "15 kn", 14.9999999: "15 kn", 0.4: "0 kn", 400: "above 200 kn"} {
		if got := knAtLeast(v); got != want {
			t.Errorf("%g kn is %s, not %s", v, got, want)
		}
	}
}

func bare() finding.Held {
	return finding.Held{Off: []string{"backstay"}, Holding: []finding.Holding{}, Uncounted: []finding.Holding{}, Weakest: "any way: nothing holds it", Gust: 15, Wanted: 3, WantedAfterLoss: 1}
}

// Where nothing holds, the sheet says so in a whole sentence and the picture shows no
// wind from one way.
func TestNothingHolds(t *testing.T) {
	h := bare()
	if got := falls(&h); got != "it falls any way: nothing holds it; no stay and no stand-in pulls against that" {
		t.Error(got)
	}
	p := &stepPicture{}
	p.weakest(&h, 1)
	if p.b.Len() > 0 {
		t.Errorf("the picture shows %s", p.b.String())
	}
	h.Holding = []finding.Holding{{Name: "forestay"}}
	if p.weakest(&h, 1); p.b.Len() == 0 {
		t.Error("the picture shows no arrow where something holds")
	}
}

// Where a step holds alike while it is on and after it, the stay that is off is shown off.
func TestTheWorkIsShown(t *testing.T) {
	during, after := bare(), bare()
	during.Margin, after.Margin, after.Off = 4, 4-1e-9, nil
	step := finding.StandingStep{ID: "out", During: &during, After: &after}
	if worse(&step) != &during {
		t.Error("the state after the step is shown")
	}
	after.Margin = 3.9
	if worse(&step) != &after {
		t.Error("the weaker state after the step is not shown")
	}
}

// The arrow of the picture points from where the wind comes, and the mast falls with it.
func TestArrowIsTheWind(t *testing.T) {
	h := bare()
	h.Holding, h.Falls = []finding.Holding{{Name: "starboard"}}, 90 // it falls to port, in a wind from starboard
	p := &stepPicture{}
	p.weakest(&h, 1)
	var x1, y1, x2, y2 float64
	if _, err := fmt.Sscanf(p.b.String(), `<path d="M%f %fL%f %f"`, &x1, &y1, &x2, &y2); err != nil {
		t.Fatal(err)
	}
	if !(x1 > x2 && x2 > roseX) {
		t.Errorf("the arrow leads from %g to %g, and starboard is to the right of %g", x1, x2, roseX)
	}
}

// A sheet of which nothing can be told says why.
func TestCantTellIsSaid(t *testing.T) {
	s := finding.Standing{CantTell: "the stays are wrong", Cautions: []string{"a", "b"}, StepCautions: []string{"c", "d"}, Steps: []finding.StandingStep{{ID: "one"}}}
	var out bytes.Buffer
	if err := StandingText(&out, s, quantity.Metric); err != nil {
		t.Fatal(err)
	}
	if text := out.String(); !strings.Contains(text, "so it is not begun: the stays are wrong") || strings.Contains(text, "what to measure") {
		t.Error(text)
	}
}
