package plan

import (
	"reflect"
	"strconv"
	"strings"
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
	decoder{root.At.File}.fill(reflect.ValueOf(p).Elem(), root, root.KeyAt)
	return p
}

// decoder knows the plan's own file. What is missing would be written there, even
// into a part that a template describes: what is read off one boat is not known of
// her sisters.
type decoder struct{ own string }

// fill decodes the value at a node, which is nil where nothing stands. home is
// where the value's key would stand in the plan's own file: the nearest key above
// that is there, with the pointer at which the value would be.
func (d decoder) fill(v reflect.Value, n *document.Node, home finding.Place) {
	at, valueAt := home, home
	if n != nil {
		if at, valueAt = n.KeyAt, n.At; n.At.File == d.own {
			home = at
		}
		if n.Empty() {
			n, valueAt = nil, at
		}
	}
	if v.Kind() == reflect.Slice {
		d.fillList(v, n, home)
		return
	}
	switch leaf := v.Addr().Interface().(type) {
	case *Text:
		*leaf = textOf(n, valueAt)
	case *Amount:
		*leaf = amountOf(n, valueAt)
	case *YesNo:
		*leaf = yesNoOf(n, valueAt)
	case *Whole:
		*leaf = wholeOf(n, valueAt)
	case *Day:
		*leaf = dayOf(n, valueAt)
	default:
		if place := v.FieldByName("At"); place.IsValid() {
			place.Set(reflect.ValueOf(at))
		}
		d.fillGroup(v, n, home)
	}
}

// fillGroup decodes a mapping into a struct. What isn't a value of the file (its
// name, its hash) is no struct and no list, and is left alone.
func (d decoder) fillGroup(v reflect.Value, n *document.Node, home finding.Place) {
	for i := range v.NumField() {
		if key, ok := keyOf(v.Type().Field(i)); ok {
			d.fill(v.Field(i), memberOf(n, key), document.Missing(home, key))
		}
	}
}

func memberOf(n *document.Node, key string) *document.Node {
	if n == nil {
		return nil
	}
	return n.Member(key)
}

// fillList decodes a list. An entry with an id that the plan's own file lacks would
// be a new one there, for which a JSON Pointer has a dash.
func (d decoder) fillList(v reflect.Value, n *document.Node, home finding.Place) {
	if n == nil || n.Kind != document.List {
		return
	}
	v.Set(reflect.MakeSlice(v.Type(), len(n.Items), len(n.Items)))
	for i, item := range n.Items {
		place := strconv.Itoa(i)
		if item.Member("id") != nil {
			place = "-"
		}
		d.fill(v.Index(i), item, document.Missing(home, place))
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
	return Amount{Given: true, Value: r.Mean(), Spread: r.Spread(), Readings: r.N(), At: at}
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
