package fact

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"chainwale/engine/finding"
	"chainwale/engine/quantity"
)

// Sort is what a fact is: a number with a dimension, a word, or a yes or no.
type Sort int

const (
	IsNumber Sort = iota
	IsWord
	IsYesNo
)

// String is the sort in words, for messages.
func (s Sort) String() string {
	return [...]string{"a number", "a word", "a yes or no"}[s]
}

// Column describes one fact of a kind of subject. It is read off the tags of the
// kind's Go struct, the single source for the rules' environment, the dimension
// check, the printed reference and the workings sheet.
type Column struct {
	// Name is the fact's name in rules, without the neighbour's name before it.
	Name      string
	Sort      Sort
	Dimension quantity.Dimension
	// Means is one line of meaning.
	Means string
	// Words lists what a word may be; empty if any word may stand.
	Words []string
	// From is the plan value an owner would change, "" if the fact is derived or looked up.
	From string
	// Tool and Where say how a missing reading is taken.
	Tool, Where string

	index []int
}

// Slot is one name that the rules of a kind may read: an own fact, or a
// neighbour's with the neighbour's name before it ("stay.break_load").
type Slot struct {
	Name string
	*Column

	path []int
}

// Kind is a kind of subject that rules judge.
type Kind struct {
	Name  string
	Means string
	// Columns are the kind's own facts, Slots all that its rules may read.
	Columns []Column
	Slots   []Slot
	// Neighbours are the names under which its rules reach other subjects.
	Neighbours []string

	neighbours map[string]int
	slot       map[string]int
	typ        reflect.Type
}

// SlotOf finds a name among the slots.
func (k *Kind) SlotOf(name string) (int, bool) {
	i, ok := k.slot[name]
	return i, ok
}

// Catalogue is all kinds of subjects with their facts.
type Catalogue struct {
	Kinds []*Kind
	byTyp map[reflect.Type]*Kind
}

// Kind finds a kind by name, nil if there is none.
func (c *Catalogue) Kind(name string) *Kind {
	for _, k := range c.Kinds {
		if k.Name == name {
			return k
		}
	}
	return nil
}

// Described is what every subject's struct tells of itself, by embedding Subject
// and having this method.
type Described interface {
	Base() *Subject
	// Describe gives the kind's name in rules and one line of meaning.
	Describe() (name, means string)
}

var (
	numberType  = reflect.TypeFor[Number]()
	wordType    = reflect.TypeFor[Word]()
	yesNoType   = reflect.TypeFor[YesNo]()
	subjectType = reflect.TypeFor[Subject]()
)

// NewCatalogue reads the kinds off pointers to their structs. A fault in a tag
// is ours, so it is an error and never a guess.
func NewCatalogue(prototypes ...Described) (*Catalogue, error) {
	c := &Catalogue{byTyp: map[reflect.Type]*Kind{}}
	for _, p := range prototypes {
		name, means := p.Describe()
		k := &Kind{Name: name, Means: means, typ: reflect.TypeOf(p).Elem(), neighbours: map[string]int{}, slot: map[string]int{}}
		columns, err := readColumns(k.typ, nil, "")
		if err != nil {
			return nil, fmt.Errorf("kind %s: %w", name, err)
		}
		k.Columns = columns
		c.Kinds = append(c.Kinds, k)
		c.byTyp[k.typ] = k
	}
	for _, k := range c.Kinds {
		if err := c.fillSlots(k, k.typ, nil, "", 0); err != nil {
			return nil, fmt.Errorf("kind %s: %w", k.Name, err)
		}
		for i, s := range k.Slots {
			if _, twice := k.slot[s.Name]; twice {
				return nil, fmt.Errorf("kind %s: two facts are named %s", k.Name, s.Name)
			}
			k.slot[s.Name] = i
		}
	}
	return c, nil
}

// readColumns lists the facts of a struct; a plain struct within it groups facts
// under a name ("metal.pren").
func readColumns(t reflect.Type, index []int, prefix string) ([]Column, error) {
	var columns []Column
	for i := range t.NumField() {
		f := t.Field(i)
		name := f.Tag.Get("fact")
		at := append(slices.Clone(index), i)
		switch {
		case f.Type == subjectType || name == "" || f.Type.Kind() == reflect.Pointer:
			continue
		case f.Type == numberType || f.Type == wordType || f.Type == yesNoType:
			col, err := readColumn(f, prefix+name)
			if err != nil {
				return nil, err
			}
			col.index = at
			columns = append(columns, col)
		case f.Type.Kind() == reflect.Struct:
			group, err := readColumns(f.Type, at, prefix+name+".")
			if err != nil {
				return nil, err
			}
			columns = append(columns, group...)
		default:
			return nil, fmt.Errorf("field %s can't be a fact", f.Name)
		}
	}
	return columns, nil
}

func readColumn(f reflect.StructField, name string) (Column, error) {
	col := Column{Name: name, Means: f.Tag.Get("means"), From: f.Tag.Get("from"), Tool: f.Tag.Get("tool"), Where: f.Tag.Get("where")}
	if col.Means == "" {
		return col, fmt.Errorf("fact %s has no meaning", name)
	}
	unit, hasUnit := f.Tag.Lookup("unit")
	switch f.Type {
	case numberType:
		d, ok := quantity.DimensionOf(unit)
		if !hasUnit || !ok {
			return col, fmt.Errorf("fact %s: %q is no canonical unit", name, unit)
		}
		col.Dimension = d
	case wordType:
		col.Sort = IsWord
		if w := f.Tag.Get("words"); w != "" {
			col.Words = strings.Split(w, ",")
		}
	default:
		col.Sort = IsYesNo
	}
	if col.Sort != IsNumber && hasUnit {
		return col, fmt.Errorf("fact %s is %s and can't have a unit", name, col.Sort)
	}
	return col, nil
}

// fillSlots lists own facts and then, by name, the neighbours' and theirs.
// Neighbours may not form a cycle: a chain deeper than the number of kinds is one.
func (c *Catalogue) fillSlots(k *Kind, t reflect.Type, path []int, prefix string, depth int) error {
	if depth > len(c.Kinds) {
		return fmt.Errorf("neighbours form a cycle at %s", prefix)
	}
	of := c.byTyp[t]
	for i := range of.Columns {
		k.Slots = append(k.Slots, Slot{Name: prefix + of.Columns[i].Name, Column: &of.Columns[i], path: slices.Clone(path)})
	}
	for i := range t.NumField() {
		f := t.Field(i)
		name := f.Tag.Get("fact")
		if name == "" || f.Type.Kind() != reflect.Pointer {
			continue
		}
		to, ok := c.byTyp[f.Type.Elem()]
		if !ok {
			return fmt.Errorf("neighbour %s is of no kind in the catalogue", name)
		}
		if depth == 0 {
			k.neighbours[name] = i
		}
		k.Neighbours = append(k.Neighbours, prefix+name)
		if err := c.fillSlots(k, to.typ, append(slices.Clone(path), i), prefix+name+".", depth+1); err != nil {
			return err
		}
	}
	return nil
}

// Subject is what a rule judges: a stay, a fitting, a landing. The struct of each
// kind embeds it.
type Subject struct {
	Kind *Kind
	// ID is unique among the subjects of the kind; Name is how a sentence calls it.
	ID, Name string
	At       finding.Place

	row    []float64
	values []*Value
	near   map[string]*Subject
}

// Base gives the subject itself, for structs that embed it.
func (s *Subject) Base() *Subject { return s }

// Ref is "kind:id", the subject's name in a report.
func (s *Subject) Ref() string { return s.Kind.Name + ":" + s.ID }

// Row holds one number for each slot of the kind; NaN where it is unknown. It
// must not be changed.
func (s *Subject) Row() []float64 { return s.row }

// Value is the fact in slot i.
func (s *Subject) Value(i int) *Value { return s.values[i] }

// Neighbour is the subject reached by a name ("fitting", "bolts.fitting"), nil
// if there is none.
func (s *Subject) Neighbour(name string) *Subject { return s.near[name] }

// Seal fixes the facts of a subject: it labels each value with its owner and
// lays the row that rules read. Neighbours must be complete before it is called.
func (c *Catalogue) Seal(d Described) error {
	v := reflect.ValueOf(d).Elem()
	k, ok := c.byTyp[v.Type()]
	if !ok {
		return fmt.Errorf("%s is of no kind in the catalogue", v.Type())
	}
	s := d.Base()
	s.Kind = k
	s.row = make([]float64, len(k.Slots))
	s.values = make([]*Value, len(k.Slots))
	s.near = map[string]*Subject{}
	for i, slot := range k.Slots {
		value, owner := reach(v, slot)
		value.subject, value.column = owner, slot.Column
		if owner == nil {
			value.subject, value.at = s, s.At
		}
		value.adopt()
		s.values[i], s.row[i] = value, value.Float()
	}
	c.link(s, s, v, "")
	return nil
}

// link names the neighbours, near and far.
func (c *Catalogue) link(s, of *Subject, v reflect.Value, prefix string) {
	t := v.Type()
	for i := range t.NumField() {
		name := t.Field(i).Tag.Get("fact")
		if name == "" || t.Field(i).Type.Kind() != reflect.Pointer || v.Field(i).IsNil() {
			continue
		}
		near := v.Field(i).Interface().(Described).Base()
		s.near[prefix+name] = near
		c.link(s, near, v.Field(i).Elem(), prefix+name+".")
	}
}

// reach follows a slot's path to the value and its owner. A neighbour that is
// not there gives an unknown value without an owner.
func reach(v reflect.Value, slot Slot) (*Value, *Subject) {
	for _, i := range slot.path {
		if v.Field(i).IsNil() {
			return &Value{why: "there is no " + slot.Name[:max(0, len(slot.Name)-len(slot.Column.Name)-1)]}, nil
		}
		v = v.Field(i).Elem()
	}
	owner := v.Addr().Interface().(Described).Base()
	f := v.FieldByIndex(slot.Column.index)
	return f.FieldByName("Value").Addr().Interface().(*Value), owner
}
