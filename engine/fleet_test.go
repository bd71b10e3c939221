package engine_test

import (
	"bytes"
	"context"
	"io"
	"strings"
	"testing"
	"time"

	"chainwale/engine"
	"chainwale/engine/finding"
	"chainwale/engine/plan"
	"chainwale/testdata/fleet"
)

// TestFleet holds that the boats of the invented fleet are what they are meant to be:
// the same for the same seed, sound unless they are spoilt, and then told of.
func TestFleet(t *testing.T) {
	for _, form := range []fleet.Form{fleet.YAML, fleet.JSON} {
		for _, templates := range []float64{0, 1} {
			sound := fleet.Options{Seed: 3, Form: form, Templates: templates}
			for i := range 6 {
				if problems, counts := judgeBoat(t, fleet.Boat(i, sound), sound); len(problems) > 0 || counts.Stop+counts.Mend > 0 || counts.Holds < 400 {
					t.Errorf("a sound boat in %s has %v and %+v", form, problems, counts)
				}
			}
			told := 0
			spoilt := sound
			spoilt.Faulty = 1
			for i := range 12 {
				if problems, counts := judgeBoat(t, fleet.Boat(i, spoilt), spoilt); len(problems)+counts.Fails+counts.CannotTell > 0 {
					told++
				}
			}
			if told < 9 {
				t.Errorf("%d of 12 spoilt boats in %s have anything wrong", told, form)
			}
			unreadable := sound
			unreadable.Unreadable = 1
			for i := range 6 {
				if problems, _ := judgeBoat(t, fleet.Boat(i, unreadable), unreadable); len(problems) == 0 {
					t.Errorf("an unreadable plan in %s is read", form)
				}
			}
		}
	}
}

// TestFleetIsItself holds that a fleet is the same each time, and another by another seed.
func TestFleetIsItself(t *testing.T) {
	o := fleet.Usual(5, fleet.Mixed)
	other := fleet.Usual(6, fleet.Mixed)
	names := map[string]bool{}
	forms := map[bool]int{}
	for i := range 30 {
		a, b := fleet.Boat(i, o), fleet.Boat(i, o)
		if a.Name != b.Name || !bytes.Equal(a.Bytes, b.Bytes) {
			t.Errorf("boat %d is not the same twice", i)
		}
		if bytes.Equal(a.Bytes, fleet.Boat(i, other).Bytes) {
			t.Errorf("boat %d is the same by another seed", i)
		}
		names[a.Name] = true
		forms[strings.HasSuffix(a.Name, ".json")]++
	}
	if len(names) != 30 || forms[true] < 3 || forms[false] < 3 {
		t.Errorf("%d names, %v", len(names), forms)
	}
}

// judgeBoat loads and judges a boat of the fleet.
func judgeBoat(t *testing.T, f fleet.File, o fleet.Options) ([]finding.Problem, finding.Counts) {
	t.Helper()
	files := map[string][]byte{f.Name: f.Bytes}
	for _, class := range fleet.Classes(o) {
		files[class.Name] = class.Bytes
	}
	open := func(name string) (io.ReadCloser, error) { return io.NopCloser(bytes.NewReader(files[name])), nil }
	p, problems, err := plan.Load(f.Name, plan.Options{Open: open, Root: "."})
	if err != nil {
		t.Fatal(err)
	}
	if p == nil {
		return problems, finding.Counts{}
	}
	on := time.Date(2026, 11, 1, 0, 0, 0, 0, time.UTC)
	report, err := engine.Check(context.Background(), p, engine.Options{On: on, RefuseFrom: finding.Mend})
	if err != nil {
		t.Fatal(err)
	}
	return report.Problems, report.Counts
}
