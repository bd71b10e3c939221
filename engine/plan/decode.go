package plan

import (
	"reflect"
	"strconv"
	"strings"
	"sync"
	"unicode"

	"chainwale/engine/finding"
	"chainwale/engine/plan/document"
)

// decode fills a Plan from a checked tree. The names of the fields are the keys of
// the file, so what a field is called is all that has to be known of it; a test
// holds that schema and fields agree. A value that the check refused is left as
// not given: the check has told of it.
func decode(root *document.Node) *Plan {
	p := &Plan{}
	d := decoder{own: root.At.File}
	d.group(reflect.ValueOf(p).Elem(), planLayout(), root, &root.KeyAt)
	return p
}

// layout is how a struct of the plan stands in the file, read off its type once.
type layout struct {
	// at is the field that holds the group's own place, -1 if there is none.
	at     int
	fields []field
}

// field is one key of a group. What isn't a value of the file (the plan's name, its
// hash) is no struct and no list, and has no key.
type field struct {
	index int
	key   string
	// items tells that it is a list, of what the rest says.
	items bool
	// within is the layout of a group, nil for a single value.
	within *layout
}

var planLayout = sync.OnceValue(func() *layout { return layoutOf(reflect.TypeFor[Plan]()) })

func layoutOf(t reflect.Type) *layout {
	l := &layout{at: -1}
	if at, ok := t.FieldByName("At"); ok {
		l.at = at.Index[0]
	}
	for i := range t.NumField() {
		key, ok := keyOf(t.Field(i))
		if !ok {
			continue
		}
		f := field{index: i, key: key}
		of := t.Field(i).Type
		if f.items = of.Kind() == reflect.Slice; f.items {
			of = of.Elem()
		}
		if !isLeaf(of) {
			f.within = layoutOf(of)
		}
		l.fields = append(l.fields, f)
	}
	return l
}

// isLeaf tells the types of single values.
func isLeaf(t reflect.Type) bool {
	switch reflect.Zero(t).Interface().(type) {
	case Text, Amount, YesNo, Whole, Day:
		return true
	}
	return false
}

// decoder knows the plan's own file. What is missing would be written there, even
// into a part that a template describes: what is read off one boat is not known of
// her sisters.
type decoder struct {
	own      string
	pointers document.Pointers
}

// missing is the place of a value that would stand under key in the mapping at parent.
func (d *decoder) missing(parent *finding.Place, key string) finding.Place {
	at := *parent
	at.Pointer = d.pointers.Under(parent.Pointer, key)
	return at
}

// home is where the key of a value would stand in the plan's own file: where it
// does, or else under the nearest key above that is there, with the pointer at which
// the value would be.
func (d *decoder) home(n *document.Node, parent *finding.Place, key string) finding.Place {
	if n != nil && n.At.File == d.own {
		return n.KeyAt
	}
	return d.missing(parent, key)
}

// group decodes a mapping, which is nil where nothing stands. home is where its key
// would stand in the plan's own file.
func (d *decoder) group(v reflect.Value, l *layout, n *document.Node, home *finding.Place) {
	if l.at >= 0 {
		at := v.Field(l.at).Addr().Interface().(*finding.Place)
		if *at = *home; n != nil {
			*at = n.KeyAt
		}
	}
	if n != nil && n.Empty() {
		n = nil
	}
	for i := range l.fields {
		f := &l.fields[i]
		member := memberOf(n, f.key)
		switch {
		case f.items:
			d.list(v.Field(f.index), f, member, home)
		case f.within != nil:
			below := d.home(member, home, f.key)
			d.group(v.Field(f.index), f.within, member, &below)
		default:
			d.leaf(v.Field(f.index), member, home, f.key)
		}
	}
}

func memberOf(n *document.Node, key string) *document.Node {
	if n == nil {
		return nil
	}
	return n.Member(key)
}

// list decodes a list. An entry with an id that the plan's own file lacks would
// be a new one there, for which a JSON Pointer has a dash.
func (d *decoder) list(v reflect.Value, f *field, n *document.Node, parent *finding.Place) {
	if n == nil || n.Kind != document.List {
		return
	}
	home := d.home(n, parent, f.key)
	v.Set(reflect.MakeSlice(v.Type(), len(n.Items), len(n.Items)))
	for i, item := range n.Items {
		if f.within == nil {
			d.leaf(v.Index(i), item, &home, "-")
			continue
		}
		place := "-"
		if item.Member("id") == nil {
			place = strconv.Itoa(i)
		}
		below := d.home(item, &home, place)
		d.group(v.Index(i), f.within, item, &below)
	}
}

// leaf decodes a single value.
func (d *decoder) leaf(v reflect.Value, n *document.Node, parent *finding.Place, key string) {
	var at finding.Place
	switch {
	case n == nil:
		at = d.missing(parent, key)
	case n.Empty():
		at, n = n.KeyAt, nil
	default:
		at = n.At
	}
	switch leaf := v.Addr().Interface().(type) {
	case *Text:
		*leaf = textOf(n, at)
	case *Amount:
		*leaf = amountOf(n, at)
	case *YesNo:
		*leaf = yesNoOf(n, at)
	case *Whole:
		*leaf = wholeOf(n, at)
	case *Day:
		*leaf = dayOf(n, at)
	}
}

// keyOf is the key under which a field stands in the file; ok is false for what
// is not of the file.
func keyOf(f reflect.StructField) (key string, ok bool) {
	if f.Name == "At" || !f.IsExported() || f.Type.Kind() != reflect.Struct && f.Type.Kind() != reflect.Slice {
		return "", false
	}
	return snake(f.Name), true
}

// snake writes a Go name as a key: InPlane becomes in_plane, ID becomes id.
func snake(name string) string {
	var b strings.Builder
	runes := []rune(name)
	for i, r := range runes {
		if unicode.IsUpper(r) && i > 0 && unicode.IsLower(runes[i-1]) {
			b.WriteByte('_')
		}
		b.WriteRune(unicode.ToLower(r))
	}
	return b.String()
}

func isText(n *document.Node) bool { return n != nil && n.Kind == document.Scalar }

func textOf(n *document.Node, at finding.Place) Text {
	if !isText(n) {
		return Text{At: at}
	}
	return Text{Given: true, Value: n.Text, At: at}
}

func amountOf(n *document.Node, at finding.Place) Amount {
	if n == nil || n.Amount == nil {
		return Amount{At: at}
	}
	r := n.Amount
	a := Amount{Given: true, Value: r.Mean(), Spread: r.Spread(), Readings: r.N(), At: at}
	if a.Readings > 1 {
		a.Each.of = r // laid by with the plan's other readings, so nothing is made for it
	}
	return a
}

func yesNoOf(n *document.Node, at finding.Place) YesNo {
	if !isText(n) {
		return YesNo{At: at}
	}
	switch n.Text {
	case "yes", "true":
		return YesNo{Given: true, Value: true, At: at}
	case "no", "false":
		return YesNo{Given: true, At: at}
	}
	return YesNo{At: at}
}

func wholeOf(n *document.Node, at finding.Place) Whole {
	if !isText(n) {
		return Whole{At: at}
	}
	value, err := strconv.Atoi(n.Text)
	return Whole{Given: err == nil, Value: value, At: at}
}

func dayOf(n *document.Node, at finding.Place) Day {
	if !isText(n) {
		return Day{At: at}
	}
	first, last, err := document.ParseDay(n.Text)
	if err != nil {
		return Day{At: at}
	}
	return Day{Given: true, Text: n.Text, First: first, Last: last, At: at}
}
