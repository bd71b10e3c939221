package reckon

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"testing"
)

// members turns a JSON object into inputs; ok is false if the text is none.
func members(text []byte) (list []Member, ok bool) {
	d := json.NewDecoder(bytes.NewReader(text))
	d.UseNumber()
	var object map[string]any
	if err := d.Decode(&object); err != nil || object == nil {
		return nil, false
	}
	return jsonValue(object).Members, true
}

func jsonValue(v any) Value {
	switch v := v.(type) {
	case nil:
		return Value{Kind: Nothing}
	case []any:
		list := Value{Kind: List}
		for _, item := range v {
			list.Items = append(list.Items, jsonValue(item))
		}
		return list
	case map[string]any:
		group := Value{Kind: Group}
		var names []string
		for name := range v {
			names = append(names, name)
		}
		slices.Sort(names)
		for _, name := range names {
			group.Members = append(group.Members, Member{Name: name, Value: jsonValue(v[name])})
		}
		return group
	}
	return Value{Text: fmt.Sprint(v)}
}

// mustMembers is members of a text that a test wrote.
func mustMembers(t *testing.T, text string) []Member {
	t.Helper()
	list, ok := members([]byte(text))
	if !ok {
		t.Fatalf("%s is no JSON object", text)
	}
	return list
}

// with gives the inputs of a formula's example with some of them changed; nil
// leaves one out.
func with(t *testing.T, f *Formula, changes map[string]any) []Member {
	t.Helper()
	list := mustMembers(t, f.ExampleJSON())
	for name, v := range changes {
		list = slices.DeleteFunc(list, func(m Member) bool { return m.Name == name })
		if v != nil {
			list = append(list, Member{Name: name, Value: jsonValue(v)})
		}
	}
	return list
}
