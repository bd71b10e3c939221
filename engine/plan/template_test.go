package plan

import (
	"bytes"
	"fmt"
	"io"
	"io/fs"
	"path"
	"reflect"
	"strings"
	"testing"

	"chainwale/engine/finding"
)

// shelf opens files that stand in memory.
func shelf(files map[string]string) func(string) (io.ReadCloser, error) {
	return func(name string) (io.ReadCloser, error) {
		src, ok := files[name]
		if !ok {
			return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
		}
		return io.NopCloser(strings.NewReader(src)), nil
	}
}

// class is a template that a plan can't do without and that is no plan itself.
const class = `chainwale: 1
boat: { class: Warbler 24, mast_step: keel-stepped }
stays:
  - id: forestay
    role: forestay
    side: centre
    wire: { construction: 1x19, metal: 316, diameter: 6 mm }
    pin: { diameter: 11 mm, metal: 316 }
  - id: backstay
    role: backstay
    side: centre
fittings:
  - id: stem
    kind: stemhead
    side: centre
    serves: [forestay]
    metal: { name: 316L, yield: 205 MPa, ultimate: 515 MPa, certificate: heat 4711 }
    holes:
      - { role: pin, diameter: 11.5 mm }
      - { role: bolt, diameter: 8 mm }
packs: [chainplates]
`

// boat builds on the class, which lies in another folder.
const boat = `chainwale: 1
template: ../classes/warbler.yaml
boat: { name: Sedge }
stays:
  - id: forestay
    wire: { diameter: 7 mm }
    pin: { measured: 10.9 mm }
  - id: babystay
    role: inner forestay
    side: centre
fittings:
  - id: stem
    state: kept
    holes: [{ role: pin, diameter: 12 mm }]
`

func sedge() map[string]string {
	return map[string]string{"boats/sedge.yaml": boat, "classes/warbler.yaml": class}
}

// loadSedge loads the boat with other texts in some of the files.
func loadSedge(t *testing.T, files map[string]string) (*Plan, []finding.Problem) {
	t.Helper()
	p, problems, err := Load("boats/sedge.yaml", Options{Open: shelf(files), Root: "."})
	if err != nil {
		t.Fatal(err)
	}
	if (p == nil) == (len(problems) == 0) {
		t.Errorf("plan %v beside problems %v", p, problems)
	}
	return p, problems
}

func TestTemplate(t *testing.T) {
	p, problems := loadSedge(t, sedge())
	expectTold(t, problems, nil)
	if len(p.Stays) != 3 || len(p.Fittings) != 1 {
		t.Fatalf("%d stays, %d fittings", len(p.Stays), len(p.Fittings))
	}
	at := func(file string, line, column int, pointer string) finding.Place {
		return finding.Place{File: file, Line: line, Column: column, Pointer: pointer}
	}
	const own, of = "boats/sedge.yaml", "classes/warbler.yaml"
	fore, back, stem := p.Stays[0], p.Stays[1], p.Fittings[0]
	for what, same := range map[string]bool{
		"the plan's file":             p.File == own,
		"the template":                p.Template == Text{true, "../classes/warbler.yaml", at(own, 2, 11, "/template")},
		"a key of the plan":           p.Boat.Name == Text{true, "Sedge", at(own, 3, 15, "/boat/name")},
		"a key of the template":       p.Boat.Class == Text{true, "Warbler 24", at(of, 2, 16, "/boat/class")},
		"a key of both":               fore.Wire.Diameter.Value == 7 && fore.Wire.Diameter.At == at(own, 6, 23, "/stays/0/wire/diameter"),
		"a key beside it":             fore.Wire.Metal == Text{true, "316", at(of, 7, 40, "/stays/0/wire/metal")},
		"a group of both":             fore.At == at(own, 5, 5, "/stays/0") && fore.Wire.At == at(own, 6, 5, "/stays/0/wire"),
		"two levels down":             fore.Pin.Measured.Given && fore.Pin.Diameter.At == at(of, 8, 22, "/stays/0/pin/diameter"),
		"an entry of the template":    back.ID.Value == "backstay" && back.At == at(of, 9, 5, "/stays/1"),
		"a new entry last":            p.Stays[2].ID.Value == "babystay" && p.Stays[2].At == at(own, 8, 5, "/stays/1"),
		"a list as a whole":           len(stem.Holes) == 1 && stem.Holes[0].Diameter.Value == 12,
		"a list of the template":      len(stem.Serves) == 1 && stem.Serves[0].At.File == of && len(p.Packs) == 1,
		"a required key":              stem.State.Value == "kept" && stem.Kind.Value == "stemhead",
		"a group untouched":           stem.Metal.Yield.Value == 205 && stem.Metal.Certificate.Given,
		"missing in a group of both":  fore.Fork.Cheek.At == at(own, 5, 5, "/stays/0/fork/cheek"),
		"missing in an untouched one": stem.Metal.Condition.At == at(own, 12, 5, "/fittings/0/metal/condition"),
		"missing in an entry":         back.Pin.Measured.At == at(own, 4, 1, "/stays/-/pin/measured"),
		"missing in the boat":         p.Boat.Units.At == at(own, 3, 1, "/boat/units"),
	} {
		if !same {
			t.Errorf("%s is not as it should be: %+v", what, p)
		}
	}
	want := []Source{{own, finding.Place{}}, {of, p.Template.At}}
	if !reflect.DeepEqual(p.Sources(), want) {
		t.Errorf("%+v", p.Sources())
	}
}

// What vouches and what is vouched for come from the template together or not at
// all: the paper was not written for what the plan changes.
func TestTemplateCertificates(t *testing.T) {
	const wire, loaded = "diameter: 6 mm }", "diameter: 6 mm, break_load: 30 kN, certificate: 12 }"
	for name, c := range map[string]struct {
		under, over string
		want        string
	}{
		"untouched":        {loaded, "wire: {}", "30000 12"},
		"another diameter": {loaded, "wire: { diameter: 7 mm }", "0 "},
		"its own":          {loaded, "wire: { break_load: 40 kN, certificate: 13 }", "40000 13"},
		"another paper":    {loaded, "wire: { certificate: 13 }", "0 13"},
		"none at all":      {wire, "wire: { diameter: 7 mm }", "0 "},
	} {
		files := sedge()
		files["classes/warbler.yaml"] = strings.Replace(class, wire, c.under, 1)
		files["boats/sedge.yaml"] = strings.Replace(boat, "wire: { diameter: 7 mm }", c.over, 1)
		p, problems := loadSedge(t, files)
		expectTold(t, problems, nil)
		w := p.Stays[0].Wire
		if got := fmt.Sprintf("%v %v", w.BreakLoad.Value, w.Certificate.Value); got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}

// A chain of files: the nearest counts, and each value keeps its file. A plan in
// YAML may build on one in JSON.
func TestTemplateOfTemplate(t *testing.T) {
	files := sedge()
	files["classes/warbler.yaml"] = "template: builder/warbler.json\n" + class
	files["classes/builder/warbler.json"] = `{"chainwale": 1, "boat": {"class": "Bird", "waters": "ocean", "name": "none"}}`
	p, problems := loadSedge(t, files)
	expectTold(t, problems, nil)
	if p.Boat.Waters.At.File != "classes/builder/warbler.json" || p.Boat.Class.Value != "Warbler 24" || p.Boat.Name.Value != "Sedge" || len(p.Sources()) != 3 {
		t.Errorf("%+v", p)
	}
}

// A plan that only names another says the same as that one, value by value.
func TestTemplateAlone(t *testing.T) {
	src := readWagtail(t)
	direct, _, _ := Parse("classes/wagtail.yaml", []byte(src))
	files := map[string]string{"boats/sedge.yaml": "template: ../classes/wagtail.yaml\n", "classes/wagtail.yaml": src}
	p, problems := loadSedge(t, files)
	expectTold(t, problems, nil)
	direct.File, direct.Hash, direct.sources = p.File, p.Hash, p.sources
	p.Template = direct.Template
	clearMissing(reflect.ValueOf(p).Elem())
	clearMissing(reflect.ValueOf(direct).Elem())
	if !reflect.DeepEqual(p, direct) {
		t.Errorf("%+v\n%+v", p, direct)
	}
}

// clearMissing takes the places off what is not given: those are the plan's own.
func clearMissing(v reflect.Value) {
	switch v.Kind() {
	case reflect.Slice:
		for i := range v.Len() {
			clearMissing(v.Index(i))
		}
	case reflect.Struct:
		at, given := v.FieldByName("At"), v.FieldByName("Given")
		if at.IsValid() && (!given.IsValid() || !given.Bool()) {
			at.SetZero()
		}
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				clearMissing(v.Field(i))
			}
		}
	}
}

// The hash is over all files, by their way from the plan's folder: it is the same
// wherever they lie, and another once any of them changes.
func TestTemplateHash(t *testing.T) {
	load := func(dir, plan, class string) string {
		files := map[string]string{path.Join(dir, "boats/sedge.yaml"): plan, path.Join(dir, "classes/warbler.yaml"): class}
		p, problems, err := Load(path.Join(dir, "boats/sedge.yaml"), Options{Open: shelf(files), Root: path.Join(dir, ".")})
		if err != nil || len(problems) > 0 {
			t.Fatal(problems, err)
		}
		return p.Hash
	}
	here := load("", boat, class)
	if load("elsewhere/kept", boat, class) != here {
		t.Error("the hash depends on where the files lie")
	}
	if load("", boat+"#", class) == here || load("", boat, class+"#") == here {
		t.Error("two sets of files have one hash")
	}
}

// What is wrong with a template, each where it stands.
func TestTemplateProblems(t *testing.T) {
	const own, of, cant = "boats/sedge.yaml:2:11 /template | ", "classes/warbler.yaml:", "the template classes/warbler.yaml can't be used: "
	long := strings.Repeat("x", 500)
	for name, c := range map[string]struct {
		// file is changed, by putting new in place of old; without old it is new.
		file, old, new string
		want           []string
	}{
		"none there":                {"boats/sedge.yaml", "warbler.yaml", "warble.yaml", []string{own + "the template classes/warble.yaml can't be used: there is no such file | the name of a file that is there"}},
		"outside the root":          {"boats/sedge.yaml", "../classes", "../../classes", []string{own + "the template ../classes/warbler.yaml can't be used: it lies outside the folder . | a file under that folder; --root DIR sets a folder further up"}},
		"a full path":               {"boats/sedge.yaml", "../classes", "/classes", []string{own + "the template's name does not begin at this file's folder"}},
		"a backslash":               {"boats/sedge.yaml", "../classes/", `..\classes\`, []string{own + "the template's name holds a backslash | the way from this file's folder"}},
		"itself":                    {"boats/sedge.yaml", "../classes/warbler.yaml", "./sedge.yaml", []string{own + "the template boats/sedge.yaml can't be used: it leads in a circle, back to boats/sedge.yaml"}},
		"a circle":                  {"classes/warbler.yaml", "boat:", "template: ../boats/sedge.yaml\nboat:", []string{of + "2:11 /template | the template boats/sedge.yaml can't be used: it leads in a circle, back to boats/sedge.yaml"}},
		"nothing behind the key":    {"boats/sedge.yaml", "../classes/warbler.yaml", "", []string{"boats/sedge.yaml:2:1 /template | template has no value | for example ../classes/sandling-33.yaml, or leave the key out"}},
		"a blank":                   {"boats/sedge.yaml", "../classes/warbler.yaml", "' '", []string{own + "template is empty"}},
		"a list":                    {"boats/sedge.yaml", "../classes/warbler.yaml", "[a]", []string{own + "template is a list where one value belongs"}},
		"a long name":               {"boats/sedge.yaml", "../classes/warbler.yaml", long, []string{own + "the template boats/" + long[:94] + "… can't be used: there is no such file"}},
		"too long a name":           {"boats/sedge.yaml", "../classes/warbler.yaml", long + long + "x", []string{own + "the template's name is longer than 1000 bytes"}},
		"empty":                     {"classes/warbler.yaml", "", "", []string{of + "1:1  | the file is empty"}},
		"too large":                 {"classes/warbler.yaml", "", strings.Repeat("#", 1<<20+1), []string{own + cant + "the file is larger than 1 MB, so it is not read"}},
		"broken":                    {"classes/warbler.yaml", "stays:", "stays: [", []string{of + "4:"}},
		"an unknown key":            {"classes/warbler.yaml", "construction:", "laid:", []string{of + "7:13 /stays/0/wire/laid | laid is not a key here"}},
		"a fault the plan replaces": {"classes/warbler.yaml", "diameter: 6 mm", "diameter: 6", []string{of + "7:55 /stays/0/wire/diameter | 6 has no unit"}},
		"another version":           {"classes/warbler.yaml", "chainwale: 1", "chainwale: 2", []string{of + "1:12 /chainwale | chainwale is 2, and only 1 is taken"}},
		"a key that both lack":      {"boats/sedge.yaml", "    state: kept\n", "", []string{"boats/sedge.yaml:12:5 /fittings/0/state | stem has no state"}},
		"an entry that lacks a key": {"classes/warbler.yaml", "    role: backstay\n", "", []string{of + "9:5 /stays/1/role | backstay has no role"}},
		"an id twice in one":        {"classes/warbler.yaml", "  - id: backstay", "  - { id: forestay, role: bobstay, side: centre }\n  - id: backstay", []string{of + "9:11 /stays/1/id | the id forestay stands twice; it is already in line 5 of boats/sedge.yaml"}},
		"one of two in another":     {"boats/sedge.yaml", "fittings:", "  - { id: backstay-port, role: backstay, side: port }\n  - { id: backstay, side: both }\nfittings:", []string{"boats/sedge.yaml:11:11 /stays/2/id | the id backstay-port is taken: backstay in line 12 has side: both"}},
		"two plates for one stay":   {"boats/sedge.yaml", "fittings:\n", "fittings:\n  - { id: crane, state: kept, kind: chainplate, side: centre, serves: [forestay] }\n", []string{"boats/sedge.yaml:12:72 /fittings/0/serves/0 | the lower end of forestay is already held by stem in line 13"}},
		"a stay gone from serves":   {"classes/warbler.yaml", "serves: [forestay]", "serves: [forstay]", []string{of + "16:14 /fittings/0/serves/0 | no stay has the id forstay | did you mean forestay?"}},
		"both at fault":             {"classes/warbler.yaml", "diameter: 11 mm", "diameter: 11 N", []string{of + "8:22 /stays/0/pin/diameter | 11 N is a force"}},
	} {
		t.Run(name, func(t *testing.T) {
			files := sedge()
			if c.old == "" {
				files[c.file] = c.new
			} else if files[c.file] = strings.Replace(files[c.file], c.old, c.new, 1); files[c.file] == sedge()[c.file] {
				t.Fatalf("%q does not stand in %s", c.old, c.file)
			}
			_, problems := loadSedge(t, files)
			expectTold(t, problems, c.want)
		})
	}
}

// All that is wrong is said at once, with the plan's own faults beside a template
// that can't be read.
func TestTemplateProblemsTogether(t *testing.T) {
	files := sedge()
	files["boats/sedge.yaml"] = strings.Replace(boat, "7 mm", "7 N", 1)
	files["classes/warbler.yaml"] = strings.Replace(class, "8 mm", "8", 1)
	_, problems := loadSedge(t, files)
	expectTold(t, problems, []string{"boats/sedge.yaml:6:23 /stays/0/wire/diameter | 7 N is a force", "classes/warbler.yaml:20:33 /fittings/0/holes/1/diameter | 8 has no unit"})
	files["classes/warbler.yaml"] = "a: [\n"
	_, problems = loadSedge(t, files)
	expectTold(t, problems, []string{"boats/sedge.yaml:6:23 /stays/0/wire/diameter | 7 N is a force", "classes/warbler.yaml:2:1  | "})
	delete(files, "classes/warbler.yaml")
	_, problems = loadSedge(t, files)
	expectTold(t, problems, []string{"boats/sedge.yaml:2:11 /template | the template", "boats/sedge.yaml:6:23 /stays/0/wire/diameter | 7 N is a force"})
}

// However many files build on each other, reading ends.
func TestTemplatesWithoutEnd(t *testing.T) {
	files := map[string]string{}
	for i := range 20 {
		files[fmt.Sprintf("boats/%d.yaml", i)] = fmt.Sprintf("chainwale: 1\ntemplate: %d.yaml\nboat: {name: x}\n", i+1)
	}
	_, problems, err := Load("boats/0.yaml", Options{Open: shelf(files)})
	if err != nil {
		t.Fatal(err)
	}
	expectTold(t, problems, []string{"boats/7.yaml:2:11 /template | the template boats/8.yaml can't be used: 8 files build on each other already | fewer templates of templates"})

	var many bytes.Buffer
	for i := range 12_000 {
		fmt.Fprintf(&many, "k%d: 1\n", i)
	}
	files = map[string]string{"p.yaml": "template: q.yaml\n" + many.String(), "q.yaml": many.String()}
	_, problems, err = Load("p.yaml", Options{Open: shelf(files)})
	if err != nil || len(problems) < 24_000 {
		t.Fatal(len(problems), err)
	}
	if want := "p.yaml:1:11 /template | with the template q.yaml the plan holds more than 20000 values"; !strings.HasPrefix(told(problems[0]), want) {
		t.Errorf("%s, want %s", told(problems[0]), want)
	}
}

// Bytes alone have no folder in which a template could be looked for.
func TestParseTakesNoTemplate(t *testing.T) {
	p, problems, err := Parse("p.yaml", []byte("chainwale: 1\ntemplate: q.yaml\nboat: { name: x }\n"))
	if p != nil || err != nil {
		t.Error(p, err)
	}
	expectTold(t, problems, []string{"p.yaml:2:11 /template | a template can't be used where a plan is read without its folder"})
}
