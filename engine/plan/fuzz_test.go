package plan

import (
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// FuzzLoad feeds files that nobody wrote on purpose. Whatever stands in one, it is
// answered: by a plan or by problems, each with a place and a message.
func FuzzLoad(f *testing.F) {
	seeds, err := filepath.Glob("testdata/*.yaml")
	if err != nil || len(seeds) == 0 {
		f.Fatal("no seeds", err)
	}
	for _, name := range seeds {
		src, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(src, false)
		f.Add([]byte(strings.ReplaceAll(string(src), "\n", "\r\n")), false)
	}
	for _, src := range []string{"", "a", "chainwale: 1\nboat: {name: x}", "a: &x [*x]", "? - a\n: - b", "a: \"\\x00\"", "\xef\xbb\xbfa: b", "--- a\n---", "a: |\n b\n c"} {
		f.Add([]byte(src), false)
	}
	for _, src := range []string{`{"chainwale":1,"boat":{"name":"x"}}`, `{"a":[1,{"b":null}],"a":2}`, `{"stays":[{"id":"a","side":"both"}]}`, `[`} {
		f.Add([]byte(src), true)
	}
	f.Fuzz(func(t *testing.T, src []byte, json bool) {
		name := "p.yaml"
		if json {
			name = "p.json"
		}
		p, problems, err := Parse(name, src)
		if err != nil {
			t.Fatalf("a fault of the program: %v", err)
		}
		if (p == nil) == (len(problems) == 0) {
			t.Fatalf("plan %v beside problems %v", p, problems)
		}
		lines := 1 + strings.Count(string(src), "\n") + strings.Count(string(src), "\r")
		for _, bad := range problems {
			if bad.At.File != name || bad.At.Line < 1 || bad.At.Line > lines+1 || bad.At.Column < 1 || bad.Message == "" {
				t.Errorf("%+v", bad)
			}
		}
	})
}

// FuzzTemplate feeds three files that may build on each other. Whatever they say,
// reading ends, what is read lies under the root, and the answer is a plan or
// problems in one of the files.
func FuzzTemplate(f *testing.F) {
	own, of := []byte(boat), []byte(class)
	f.Add(own, of, []byte("chainwale: 1\n"))
	f.Add(own, []byte("template: other.json\n"+class), []byte(`{"boat": {"waters": "ocean"}, "stays": [{"id": "forestay", "pin": null}]}`))
	f.Add(own, []byte("template: ../boats/sedge.yaml\n"), []byte{})
	f.Add([]byte("template: ../../secret.yaml"), of, []byte{})
	f.Add([]byte("template: ../classes/other.json\nstays: {}\n"), of, []byte(`{"template": "warbler.yaml"}`))
	f.Add([]byte("template: ../classes/warbler.yaml\nstays: [{id: a}, {id: a}]\n"), []byte("stays: [{id: a, wire: {break_load: 3 kN}}]\n"), []byte{})
	f.Fuzz(func(t *testing.T, own, of, other []byte) {
		files := map[string]string{"root/boats/sedge.yaml": string(own), "root/classes/warbler.yaml": string(of), "root/classes/other.json": string(other)}
		open := func(name string) (io.ReadCloser, error) {
			if name != "root" && !strings.HasPrefix(name, "root/") {
				t.Errorf("%s was opened", name)
			}
			return shelf(files)(name)
		}
		p, problems, err := Load("root/boats/sedge.yaml", Options{Open: open, Root: "root"})
		if err != nil {
			t.Fatalf("a fault of the program: %v", err)
		}
		if (p == nil) == (len(problems) == 0) {
			t.Fatalf("plan %v beside problems %v", p, problems)
		}
		for _, bad := range problems {
			src, known := files[bad.At.File]
			if lines := 1 + strings.Count(src, "\n") + strings.Count(src, "\r"); !known || bad.At.Line < 1 || bad.At.Line > lines+1 || bad.At.Column < 1 || bad.Message == "" {
				t.Errorf("%+v", bad)
			}
		}
	})
}
