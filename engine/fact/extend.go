package fact

import (
	"fmt"
	"reflect"
	"slices"

	"chainwale/engine/quantity"
	"chainwale/engine/standard"
)

// Extend makes a catalogue in which the facts that standards derive stand beside
// ours, each under its standard's prefix ("en1993.plate_net"). They stand after all
// other facts of their kind, so that rules compiled without them still read their
// own. The catalogue it is made of is not changed.
//
// A description that does not fit ours, by a kind, a fact, a sort or a unit, is an
// error that says which side to change; so is a prefix that is taken.
func (c *Catalogue) Extend(ds []standard.Description) (*Catalogue, error) {
	wide := c.copy()
	for i := range ds {
		if slices.ContainsFunc(ds[:i], func(o standard.Description) bool { return o.Prefix == ds[i].Prefix }) {
			return nil, fmt.Errorf("the facts of %s are called %s.…, as those of another standard are, so only one of the two can be asked: take one out of the plan, or change the standard", ds[i].ID, ds[i].Prefix)
		}
		for _, t := range ds[i].Tables {
			if err := wide.widen(ds[i], t); err != nil {
				return nil, err
			}
		}
	}
	return wide, nil
}

// copy makes a catalogue of the same kinds, to which facts can be added.
func (c *Catalogue) copy() *Catalogue {
	wide := &Catalogue{byTyp: make(map[reflect.Type]*Kind, len(c.byTyp))}
	of := map[*Kind]*Kind{}
	for _, k := range c.Kinds {
		w := *k
		w.plain = k
		w.Slots = slices.Clip(k.Slots)
		w.slot = make(map[string]int, len(k.slot))
		for name, i := range k.slot {
			w.slot[name] = i
		}
		of[k] = &w
		wide.Kinds = append(wide.Kinds, &w)
		wide.byTyp[k.typ] = &w
	}
	for _, w := range wide.Kinds {
		w.near = slices.Clone(w.near)
		for i := range w.near {
			w.near[i].kind = of[w.near[i].kind]
		}
	}
	return wide
}

// widen adds the facts of one table.
func (c *Catalogue) widen(of standard.Description, t standard.Table) error {
	prefix := of.Prefix
	k := c.Kind(t.Kind)
	if k == nil {
		return fmt.Errorf("it has a table of the kind %q, which this program does not know: change the standard, or use a newer chainwale", t.Kind)
	}
	if _, taken := k.slot[prefix]; taken || slices.Contains(k.Neighbours, prefix) {
		return fmt.Errorf("its facts are called %s.…, but on a %s that is a name of ours: change the standard's prefix", prefix, k.Name)
	}
	for _, r := range t.Reads {
		if err := k.canGive(r); err != nil {
			return err
		}
	}
	// The columns are laid down whole before slots point at them.
	first := len(k.further)
	for _, d := range t.Derives {
		dimension, ok := quantity.DimensionOf(d.Unit)
		if !ok {
			return fmt.Errorf("it derives %s in %q, which is no canonical unit: change the standard", d.Name, d.Unit)
		}
		k.further = append(k.further, Column{Name: prefix + "." + d.Name, Dimension: dimension, Means: d.Meaning, Standard: of.ID + ", " + d.Clause})
	}
	k.Slots = k.Slots[:len(k.Slots)-first]
	for i := range k.further {
		k.slot[k.further[i].Name] = len(k.Slots)
		k.Slots = append(k.Slots, Slot{Name: k.further[i].Name, Column: &k.further[i]})
	}
	return nil
}

// canGive tells whether a fact that a standard reads is one of ours, of that type
// and in that unit.
func (k *Kind) canGive(r standard.Read) error {
	i, ok := k.slot[r.Name]
	if !ok || i >= len(k.ours()) {
		return fmt.Errorf("it reads %s of a %s, which this program does not have: change the standard, or use a newer chainwale", r.Name, k.Name)
	}
	column := k.Slots[i].Column
	if have := typeOf(column.Sort); have != r.Type {
		return fmt.Errorf("it reads %s of a %s as a %s, but here it is a %s: change the standard", r.Name, k.Name, r.Type, have)
	}
	if column.Sort == IsNumber && column.Dimension.Unit() != r.Unit {
		return fmt.Errorf("it reads %s of a %s in %q, but here it is in %q: change the standard", r.Name, k.Name, r.Unit, column.Dimension.Unit())
	}
	return nil
}

func typeOf(s Sort) standard.Type {
	return [...]standard.Type{standard.Number, standard.Word, standard.YesNo}[s]
}

// ours are the slots of our own facts.
func (k *Kind) ours() []Slot { return k.Slots[:len(k.Slots)-len(k.further)] }

// Further are the facts that standards derive of the kind.
func (k *Kind) Further() []Column { return k.further }

// Is tells whether k is the other kind, or the other with more facts behind it:
// then what was compiled for the other reads k's rows rightly.
func (k *Kind) Is(other *Kind) bool { return k == other || k.plain == other }

// unsaid is why what standards derive is unknown until they are asked. It is never
// changed: what else is said of a value stands in a gap of its own.
var unsaid = &gap{why: "no standard has said it"}

// addFurther makes room for what standards derive, unknown until they are asked.
func (s *Subject) addFurther() {
	more := make([]Value, len(s.Kind.further))
	for i := range more {
		more[i] = Value{gap: unsaid, subject: s, column: &s.Kind.further[i], at: s.At}
		s.values = append(s.values, &more[i])
		s.row[len(s.Kind.ours())+i] = more[i].Float()
	}
}
