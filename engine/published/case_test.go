package published

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"go.yaml.in/yaml/v4"

	"chainwale/engine/quantity"
	"chainwale/engine/working"
)

// folder is where the cases are, seen from this package.
const folder = "../../testdata/published"

// publishedCase is one file.
type publishedCase struct {
	ID      string           `yaml:"id"`
	Source  string           `yaml:"source"`
	Edition string           `yaml:"edition"`
	Page    string           `yaml:"page"`
	As      working.HowKnown `yaml:"as"`
	// Internal marks a case of our own making, kept beside the published ones.
	Internal bool           `yaml:"internal"`
	Formula  string         `yaml:"formula"`
	Inputs   map[string]any `yaml:"inputs"`
	Outputs  map[string]any `yaml:"outputs"`
	// Tolerance is a share of the printed value, Because why it is no tighter.
	Tolerance float64 `yaml:"tolerance"`
	Because   string  `yaml:"because"`
	// DoesNotClose is what the source prints and the formula does not give; Note says why.
	DoesNotClose map[string]any `yaml:"does_not_close"`
	Note         string         `yaml:"note"`
}

// results are what a formula gives: a Quantity, a list of them, or a word.
type results map[string]any

// runner runs one formula on the inputs of a case.
type runner func(*inputs) results

// TestPublished runs every case in the folder.
func TestPublished(t *testing.T) {
	files, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	if len(files) < 20 {
		t.Errorf("only %d published cases: some are missing", len(files))
	}
	used := map[string]bool{}
	for _, f := range files {
		t.Run(f.Name(), func(t *testing.T) {
			if f.IsDir() || filepath.Ext(f.Name()) != ".yaml" {
				t.Fatalf("%s is no case: a case is a .yaml file", f.Name())
			}
			c := readCase(t, f.Name())
			c.check(t, f.Name())
			used[c.Formula] = true
			run, ok := runners()[c.Formula]
			if !ok {
				t.Fatalf("no runner knows the formula %q", c.Formula)
			}
			in := &inputs{t: t, values: c.Inputs, read: map[string]bool{}}
			got := run(in)
			in.allRead()
			c.compare(t, got)
		})
	}
	for name := range runners() {
		if !used[name] {
			t.Errorf("no case uses the runner %q", name)
		}
	}
}

func readCase(t *testing.T, name string) publishedCase {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(folder, name))
	if err != nil {
		t.Fatal(err)
	}
	decode := yaml.NewDecoder(bytes.NewReader(data))
	decode.KnownFields(true)
	var c publishedCase
	if err := decode.Decode(&c); err != nil {
		t.Fatal(err)
	}
	return c
}

// check holds that a case says what it must of itself.
func (c publishedCase) check(t *testing.T, name string) {
	t.Helper()
	if c.ID+".yaml" != name {
		t.Errorf("the id %q is not the file's name", c.ID)
	}
	if c.Source == "" || !slices.Contains(working.AllHowKnown(), c.As) {
		t.Errorf("source %q, known as %q", c.Source, c.As)
	}
	if !(c.Tolerance > 0 && c.Tolerance <= 0.05) || c.Because == "" {
		t.Errorf("tolerance %g because %q: it must be above 0, at most 0.05, and say why", c.Tolerance, c.Because)
	}
	if len(c.Outputs)+len(c.DoesNotClose) == 0 {
		t.Error("nothing is expected")
	}
	if len(c.DoesNotClose) > 0 && c.Note == "" {
		t.Error("what does not close has no note that says why")
	}
}

// compare holds the results against what the source prints.
func (c publishedCase) compare(t *testing.T, got results) {
	t.Helper()
	for name, printed := range c.Outputs {
		if why := differs(got[name], printed, c.Tolerance); why != "" {
			t.Errorf("%s: %s", name, why)
		}
	}
	for name, printed := range c.DoesNotClose {
		if got[name] == nil {
			t.Errorf("%s: the formula gives no such result", name)
		} else if differs(got[name], printed, c.Tolerance) == "" {
			t.Errorf("%s closes now: move it to the outputs", name)
		}
	}
}

// differs says how a result differs from a printed value, "" if it does not.
func differs(got, printed any, tolerance float64) string {
	switch g := got.(type) {
	case nil:
		return "the formula gives no such result"
	case string:
		if g != fmt.Sprint(printed) {
			return fmt.Sprintf("got %q, the source prints %q", g, fmt.Sprint(printed))
		}
	case quantity.Quantity:
		want, err := quantity.ParseAs(fmt.Sprint(printed), g.Dimension)
		if err != nil {
			return err.Error()
		}
		if !(math.Abs(g.Value-want.Value) <= tolerance*math.Abs(want.Value)) {
			return fmt.Sprintf("got %.6g %s, the source prints %v (%.6g)", g.Value, g.Dimension.Unit(), printed, want.Value)
		}
	case []quantity.Quantity:
		list, ok := printed.([]any)
		if !ok || len(list) != len(g) {
			return fmt.Sprintf("got %d values, the source prints %v", len(g), printed)
		}
		for i := range g {
			if why := differs(g[i], list[i], tolerance); why != "" {
				return fmt.Sprintf("value %d: %s", i+1, why)
			}
		}
	default:
		return fmt.Sprintf("a runner gave %T", got)
	}
	return ""
}

func of(d quantity.Dimension) func(float64) quantity.Quantity {
	return func(v float64) quantity.Quantity { return quantity.Quantity{Value: v, Dimension: d} }
}

var (
	force  = of(quantity.Force)
	length = of(quantity.Length)
	stress = of(quantity.Stress)
	moment = of(quantity.Moment)
	bare   = of(quantity.Bare)
	angle  = of(quantity.Angle)
	volts  = of(quantity.Potential)
	area   = of(quantity.Area)
)

// runners are all formulas that a case may name; the rooms' own files list theirs.
func runners() map[string]runner {
	all := map[string]runner{}
	for _, room := range []map[string]runner{strengthRunners, sheetRunners, tableRunners, corrosionRunners, rigRunners} {
		for name, run := range room {
			all[name] = run
		}
	}
	return all
}

// TestDiffers holds that the comparison itself can fail.
func TestDiffers(t *testing.T) {
	for _, c := range []struct {
		got, printed any
		same         bool
	}{
		{force(1000), "1 kN", true},
		{force(1011), "1 kN", false},
		{force(math.NaN()), "1 kN", false},
		{force(1000), "1 mm", false},
		{"net", "net", true},
		{"net", "gross", false},
		{nil, "1 kN", false},
		{[]quantity.Quantity{force(1), force(2)}, []any{"1 N", "2 N"}, true},
		{[]quantity.Quantity{force(1), force(2)}, []any{"1 N"}, false},
		{[]quantity.Quantity{force(1), force(2)}, []any{"1 N", "3 N"}, false},
		{3, "3", false},
	} {
		if why := differs(c.got, c.printed, 0.01); (why == "") != c.same {
			t.Errorf("%v against %v: %q", c.got, c.printed, why)
		}
	}
}

// TestCaseFilesAreNamedInWords keeps names readable: small letters, digits, hyphens.
func TestCaseFilesAreNamedInWords(t *testing.T) {
	files, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if strings.Trim(strings.TrimSuffix(f.Name(), ".yaml"), "abcdefghijklmnopqrstuvwxyz0123456789-") != "" {
			t.Errorf("%s: use small letters, digits and hyphens", f.Name())
		}
	}
}
