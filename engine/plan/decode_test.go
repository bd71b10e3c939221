package plan

import (
	"os"
	"path/filepath"
	"reflect"
	"strconv"
	"testing"

	"chainwale/engine/finding"
	"chainwale/engine/plan/document"
)

// plainDecoder decodes by the letter: it looks each field up by its name and writes each
// place down. It knows the plan's own file. What is missing would be written there, even
// into a part that a template describes: what is read off one boat is not known of
// her sisters.
type plainDecoder struct{ own string }

// fill decodes the value at a node, which is nil where nothing stands. home is
// where the value's key would stand in the plan's own file: the nearest key above
// that is there, with the pointer at which the value would be.
func (d plainDecoder) fill(v reflect.Value, n *document.Node, home finding.Place) {
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
func (d plainDecoder) fillGroup(v reflect.Value, n *document.Node, home finding.Place) {
	for i := range v.NumField() {
		if key, ok := keyOf(v.Type().Field(i)); ok {
			d.fill(v.Field(i), memberOf(n, key), document.Missing(home, key))
		}
	}
}

// fillList decodes a list. An entry with an id that the plan's own file lacks would
// be a new one there, for which a JSON Pointer has a dash.
func (d plainDecoder) fillList(v reflect.Value, n *document.Node, home finding.Place) {
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

// TestDecode holds that plans come out as they do by the letter, those of parts and those
// over their templates as well.
func TestDecode(t *testing.T) {
	s, err := compiled()
	if err != nil {
		t.Fatal(err)
	}
	var trees []*document.Node
	for _, pattern := range []string{"../../testdata/boats/*", "../../testdata/dangerous/*.yaml", "../../testdata/classes/*.yaml", "testdata/*.yaml"} {
		files, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		for _, file := range files {
			src, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if root, problems := document.Read(file, src); len(problems) == 0 {
				trees = append(trees, root)
			}
		}
	}
	alone := len(trees)
	for _, under := range trees[:alone] {
		trees = append(trees, s.Merge(under, trees[0], paper), s.Merge(trees[0], under, paper))
	}
	if alone < 15 {
		t.Fatalf("only %d files were read", alone)
	}
	for _, root := range trees {
		if _, err := s.Check(root); err != nil {
			t.Fatal(err)
		}
		want := &Plan{}
		plainDecoder{root.At.File}.fill(reflect.ValueOf(want).Elem(), root, root.KeyAt)
		if got := decode(root); !reflect.DeepEqual(got, want) {
			t.Errorf("%s is decoded otherwise", root.At.File)
		}
	}
}
