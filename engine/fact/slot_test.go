package fact

import (
	"fmt"
	"math"
	"sync"
	"testing"
)

// TestSlots holds that each slot of a subject is the fact that its name says, in the row
// and as a value: an own one, or that of the neighbour before its last name.
func TestSlots(t *testing.T) {
	c, err := TheCatalogue()
	if err != nil {
		t.Fatal(err)
	}
	stay, fitting := &Stay{Subject: Subject{ID: "s"}}, &Fitting{Subject: Subject{ID: "f"}}
	stay.BreakLoad.Give(30_000, stay.At)
	fitting.Metal.Yield.Give(205, fitting.At)
	fitting.Width.Refuse("nobody measured it")
	whole := &Landing{Subject: Subject{ID: "l"}, Stay: stay, Fitting: fitting}
	whole.Hole.Give(13, whole.At)
	alone := &Landing{Subject: Subject{ID: "a"}, Fitting: fitting}
	for _, d := range []Described{stay, fitting, whole, alone} {
		if err := c.Seal(d); err != nil {
			t.Fatal(err)
		}
		s := d.Base()
		for i, slot := range s.Kind.Slots {
			v := s.Value(i)
			if v != s.Value(i) || v.Column() != slot.Column {
				t.Errorf("%s: slot %s is %v", s.ID, slot.Name, v.Column())
			}
			if same := v.Float() == s.Row()[i] || math.IsNaN(v.Float()) && math.IsNaN(s.Row()[i]); !same {
				t.Errorf("%s: %s is %g and stands in the row as %g", s.ID, slot.Name, v.Float(), s.Row()[i])
			}
		}
		for _, name := range s.Kind.Neighbours {
			near := s.Neighbour(name)
			if near == nil {
				continue
			}
			for i, slot := range near.Kind.ours() {
				at, ok := s.Kind.SlotOf(name + "." + slot.Name)
				if !ok || s.Value(at) != near.Value(i) {
					t.Errorf("%s: %s.%s is not its neighbour's", s.ID, name, slot.Name)
				}
			}
		}
	}
	if whole.Neighbour("stay") != &stay.Subject || alone.Neighbour("stay") != nil || alone.Neighbour("fitting") != &fitting.Subject || whole.Neighbour("hull") != nil {
		t.Error("the neighbours are others")
	}
	if at, _ := alone.Kind.SlotOf("stay.break_load"); alone.Value(at).Why() != "there is no stay" {
		t.Errorf("a stay that is not there is %q", alone.Value(at).Why())
	}
}

// TestWordsTogether holds that a word keeps its number, whoever asks for it and how many
// come after it.
func TestWordsTogether(t *testing.T) {
	const each, many = 500, 4
	ids := [many][each]float64{}
	var all sync.WaitGroup
	for w := range many {
		all.Go(func() {
			for i := range each {
				ids[w][i] = WordID(fmt.Sprintf("word %d of many", i))
				if text := WordText(ids[w][i]); text != fmt.Sprintf("word %d of many", i) {
					t.Errorf("word %d is %q", i, text)
				}
			}
		})
	}
	all.Wait()
	seen := map[float64]bool{}
	for i := range each {
		for w := range many {
			if ids[w][i] != ids[0][i] || WordID(fmt.Sprintf("word %d of many", i)) != ids[0][i] {
				t.Errorf("word %d has several numbers", i)
			}
		}
		seen[ids[0][i]] = true
	}
	if len(seen) != each || WordText(-1) != "" || WordText(0.5) != "" || WordText(1e9) != "" || WordText(math.NaN()) != "" {
		t.Errorf("%d numbers, and some for nothing", len(seen))
	}
}
