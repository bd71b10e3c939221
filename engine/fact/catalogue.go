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
	// Standard is the standard, with its clause, that derives the fact; "" for ours.
	Standard string

	index []int
}

// Slot is one name that the rules of a kind may read: an own fact, or a
// neighbour's with the neighbour's name before it ("stay.break_load").
type Slot struct {
	Name string
	*Column
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

	near []neighbour
	slot map[string]int
	// listed tells that the kind's struct lists its facts in the order of the columns.
	listed bool
	typ    reflect.Type
	// further are facts that standards derive, whose slots stand after all others;
	// plain is the kind without them.
	further []Column
	plain   *Kind
}

// neighbour is a field of a kind's struct that points at another subject.
type neighbour struct {
	name  string
	field int
	kind  *Kind
	// first is the slot of the first of its facts.
	first int
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
		k := &Kind{Name: name, Means: means, typ: reflect.TypeOf(p).Elem(), slot: map[string]int{}}
		columns, err := readColumns(k.typ, nil, "")
		if err != nil {
			return nil, fmt.Errorf("kind %s: %w", name, err)
		}
		k.Columns, k.listed = columns, listsRightly(p, columns)
		c.Kinds = append(c.Kinds, k)
		c.byTyp[k.typ] = k
	}
	for _, k := range c.Kinds {
		if err := c.fillSlots(k, 0); err != nil {
			return nil, fmt.Errorf("kind %s: %w", k.Name, err)
		}
	}
	return c, nil
}

// lister is a subject that lists its facts in the order of its struct.
type lister interface {
	facts(to []*Value) []*Value
}

// listsRightly tells whether a subject lists just the facts that its columns name. A list
// that was forgotten when a fact was added is not used: it would mix the facts up.
func listsRightly(d Described, columns []Column) bool {
	l, ok := d.(lister)
	if !ok {
		return false
	}
	facts := l.facts(nil)
	v := reflect.ValueOf(d).Elem()
	for i := range columns {
		if i >= len(facts) || facts[i] != valueIn(v, columns[i].index) {
			return false
		}
	}
	return len(facts) == len(columns)
}

// factsOf are a subject's own facts, in the order of its kind's columns.
func (k *Kind) factsOf(d Described, v reflect.Value, to []*Value) []*Value {
	if k.listed {
		return d.(lister).facts(to)
	}
	for i := range k.Columns {
		to = append(to, valueIn(v, k.Columns[i].index))
	}
	return to
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

// fillSlots lists a kind's own facts and then, by name, its neighbours' and theirs,
// in the order of the struct. Neighbours may not form a cycle: a chain longer than
// there are kinds is one.
func (c *Catalogue) fillSlots(k *Kind, depth int) error {
	if k.Slots != nil {
		return nil
	}
	if depth > len(c.Kinds) {
		return fmt.Errorf("its neighbours form a cycle")
	}
	var slots []Slot
	for i := range k.Columns {
		slots = append(slots, Slot{Name: k.Columns[i].Name, Column: &k.Columns[i]})
	}
	for i := range k.typ.NumField() {
		f := k.typ.Field(i)
		name := f.Tag.Get("fact")
		if name == "" || f.Type.Kind() != reflect.Pointer {
			continue
		}
		to, ok := c.byTyp[f.Type.Elem()]
		if !ok {
			return fmt.Errorf("neighbour %s is of no kind in the catalogue", name)
		}
		if err := c.fillSlots(to, depth+1); err != nil {
			return err
		}
		k.near = append(k.near, neighbour{name, i, to, len(slots)})
		k.Neighbours = append(k.Neighbours, name)
		for _, further := range to.Neighbours {
			k.Neighbours = append(k.Neighbours, name+"."+further)
		}
		for _, slot := range to.Slots {
			slots = append(slots, Slot{Name: name + "." + slot.Name, Column: slot.Column})
		}
	}
	for i, s := range slots {
		if _, twice := k.slot[s.Name]; twice {
			return fmt.Errorf("two facts are named %s", s.Name)
		}
		k.slot[s.Name] = i
	}
	k.Slots = slots
	return nil
}

// Subject is what a rule judges: a stay, a fitting, a landing. The struct of each
// kind embeds it.
type Subject struct {
	Kind *Kind
	// ID is unique among the subjects of the kind; Name is how a sentence calls it.
	ID, Name string
	At       finding.Place

	row []float64
	// values are the subject's own facts, and behind them those that standards derive.
	values []*Value
	// near are the subjects that the kind's Neighbours name, in their order; nil for
	// one that is not there.
	near []*Subject
	// absent are the facts of neighbours that are not there, nil if all of them are.
	absent []*Value
	// shower shows how those facts came about that are said to be shown.
	shower shower
}

// Base gives the subject itself, for structs that embed it.
func (s *Subject) Base() *Subject { return s }

// Ref is "kind:id", the subject's name in a report.
func (s *Subject) Ref() string { return s.Kind.Name + ":" + s.ID }

// Row holds one number for each slot of the kind; NaN where it is unknown. It
// must not be changed.
func (s *Subject) Row() []float64 { return s.row }

// Value is the fact in slot i: an own one, a neighbour's, or one that a standard derives.
func (s *Subject) Value(i int) *Value {
	own := len(s.Kind.Columns)
	if i < own {
		return s.values[i]
	}
	if ours := len(s.Kind.ours()); i >= ours {
		return s.values[own+i-ours]
	}
	near := 0
	for _, n := range s.Kind.near {
		if at := i - n.first; at < len(n.kind.ours()) {
			if other := s.near[near]; other != nil {
				return other.Value(at)
			}
			return s.absent[n.first-own+at]
		}
		near += 1 + len(n.kind.Neighbours)
	}
	return nil
}

// Neighbour is the subject reached by a name ("fitting", "bolts.fitting"), nil
// if there is none.
func (s *Subject) Neighbour(name string) *Subject {
	for i, near := range s.near {
		if s.Kind.Neighbours[i] == name {
			return near
		}
	}
	return nil
}

// Seal fixes the facts of a subject: it labels each value with its owner and
// lays the row that rules read. Neighbours must be sealed before.
func (c *Catalogue) Seal(d Described) error { return (&sealer{catalogue: c}).seal(d) }

// sealer seals subjects. Of those that are expected, values, rows and neighbours stand in
// one piece of memory each.
type sealer struct {
	catalogue *Catalogue
	values    []*Value
	rows      []float64
	near      []*Subject
}

// expect makes room for subjects, all at once.
func (l *sealer) expect(subjects []Described) {
	values, slots, near := 0, 0, 0
	for _, d := range subjects {
		if k := l.catalogue.byTyp[reflect.TypeOf(d).Elem()]; k != nil {
			values += len(k.Columns) + len(k.further)
			slots += len(k.Slots)
			near += len(k.Neighbours)
		}
	}
	l.values, l.rows, l.near = make([]*Value, values), make([]float64, slots), make([]*Subject, near)
}

func (l *sealer) seal(d Described) error {
	v := reflect.ValueOf(d).Elem()
	k, ok := l.catalogue.byTyp[v.Type()]
	if !ok {
		return fmt.Errorf("%s is of no kind in the catalogue", v.Type())
	}
	s := d.Base()
	s.Kind = k
	l.room(s)
	s.values = k.factsOf(d, v, s.values)
	for i, value := range s.values {
		value.subject, value.column = s, &k.Columns[i]
		value.adopt()
		s.row[i] = value.Float()
	}
	for _, n := range k.near {
		if err := s.link(n, v.Field(n.field)); err != nil {
			return err
		}
	}
	s.addFurther()
	return nil
}

// room gives a subject room for its values, its row and its neighbours.
func (l *sealer) room(s *Subject) {
	slots, values, near := len(s.Kind.Slots), len(s.Kind.Columns)+len(s.Kind.further), len(s.Kind.Neighbours)
	if len(l.values) < values {
		l.values = make([]*Value, values)
	}
	if len(l.rows) < slots {
		l.rows = make([]float64, slots)
	}
	s.values, l.values = l.values[:0:values], l.values[values:]
	s.row, l.rows = l.rows[:slots:slots], l.rows[slots:]
	if len(l.near) < near {
		l.near = make([]*Subject, near)
	}
	s.near, l.near = l.near[:0:near], l.near[near:]
}

// valueIn is the value in a fact of a kind's struct.
func valueIn(v reflect.Value, index []int) *Value {
	for _, i := range index {
		v = v.Field(i)
	}
	switch fact := v.Addr().Interface().(type) {
	case *Number:
		return &fact.Value
	case *Word:
		return &fact.Value
	case *YesNo:
		return &fact.Value
	}
	return v.Field(0).Addr().Interface().(*Value) // readColumns lets no other in
}

// link lays a neighbour's facts into the row beside the subject's own. The facts of
// one that is not there are unknown.
func (s *Subject) link(n neighbour, field reflect.Value) error {
	slots := n.kind.ours()
	if field.IsNil() {
		s.lack(n, slots)
		return nil
	}
	other := field.Interface().(Described).Base()
	if other.row == nil {
		return fmt.Errorf("%s is not sealed before %s", n.name, s.ID)
	}
	copy(s.row[n.first:], other.row[:len(slots)])
	s.near = append(append(s.near, other), other.near...)
	return nil
}

// lack notes a neighbour that is not there.
func (s *Subject) lack(n neighbour, slots []Slot) {
	own := len(s.Kind.Columns)
	if s.absent == nil {
		s.absent = make([]*Value, len(s.Kind.ours())-own)
	}
	none := &gap{why: "there is no " + n.name}
	for i, slot := range slots {
		v := &Value{gap: none, subject: s, column: slot.Column, at: s.At}
		s.absent[n.first-own+i], s.row[n.first+i] = v, v.Float()
	}
	for range 1 + len(n.kind.Neighbours) {
		s.near = append(s.near, nil)
	}
}
