package engine_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// rooms says which rooms of ours each room may import. A new arrow is a decision:
// it is made here, with its reason in the commit.
var rooms = map[string][]string{
	"schema":                     {},
	"rules":                      {},
	"engine/near":                {},
	"engine/working":             {},
	"engine/quantity":            {"engine/near"},
	"engine/finding":             {"engine/working"},
	"engine/plan/document":       {"engine/finding", "engine/quantity", "engine/near"},
	"engine/table":               {"engine/quantity", "engine/working", "engine/near"},
	"engine/strength":            {"engine/quantity", "engine/working"},
	"engine/sheet":               {"engine/quantity", "engine/working"},
	"engine/drawing":             {"engine/sheet"},
	"engine/corrosion":           {"engine/quantity", "engine/working", "engine/table"},
	"engine/rig":                 {"engine/quantity", "engine/working", "engine/table"},
	"engine/plan":                {"engine/sheet", "engine/quantity", "engine/finding", "engine/near", "engine/plan/document", "schema"},
	"engine/fact":                {"engine/sheet", "engine/plan", "engine/table", "engine/strength", "engine/corrosion", "engine/quantity", "engine/finding", "engine/working", "engine/standard", "engine/rig"},
	"engine/pattern":             {"engine/drawing", "engine/plan", "engine/fact", "engine/sheet", "engine/table", "engine/quantity", "engine/finding", "engine/working"},
	"engine/rule":                {"engine/fact", "engine/finding", "engine/quantity", "engine/working", "engine/near", "engine/plan/document", "schema"},
	"engine/accept":              {"engine/finding", "engine/near", "engine/working"},
	"engine/fleet":               {"engine/finding"},
	"engine/render":              {"engine/standard", "engine/finding", "engine/fact", "engine/quantity", "engine/working", "engine/rig"},
	"engine":                     {"engine/pattern", "engine/accept", "engine/plan", "engine/fact", "engine/rule", "engine/finding", "engine/quantity", "engine/near", "rules", "engine/standard", "engine/working", "engine/rig"},
	"engine/published":           {"engine/strength", "engine/sheet", "engine/corrosion", "engine/table", "engine/quantity", "engine/working", "engine/rig"},
	"engine/reckon":              {"engine/standard", "engine/strength", "engine/sheet", "engine/corrosion", "engine/table", "engine/quantity", "engine/working", "engine/near", "engine/rig"},
	"engine/standard":            {"engine/quantity", "engine/working"},
	"plugins/clauses":            {"engine/standard", "engine/working"},
	"plugins/en1993":             {"engine/standard", "engine/strength", "engine/working", "engine/quantity", "plugins/clauses"},
	"plugins/aisc360":            {"engine/standard", "engine/strength", "engine/working", "engine/quantity", "plugins/clauses"},
	"plugins/bth1":               {"engine/standard", "engine/strength", "engine/working", "engine/quantity", "plugins/clauses"},
	"plugins/airlug":             {"engine/standard", "engine/strength", "engine/working", "engine/quantity", "plugins/clauses"},
	"plugins/iso12215":           {"engine/standard", "engine/working", "engine/quantity", "engine/finding", "engine/plan/document", "plugins/clauses"},
	"plugins":                    {"engine/standard", "engine/working", "plugins/wire"},
	"plugins/wire":               {"engine/standard", "engine/working"},
	"plugins/host":               {"engine/standard", "engine/working", "engine/finding", "engine/plan/document", "plugins", "plugins/wire"},
	"plugins/clauses/clausetest": {"engine/fact", "engine/rule", "engine/standard", "engine/working", "engine/quantity", "engine/finding", "engine/table", "schema"},
	"plugins/wire/generate":      {},
	"engine/rulebook":            {"engine/fact", "engine/rule", "engine/finding"},
	"cmd/chainwale-en1993":       {"plugins", "plugins/en1993"},
	"cmd/chainwale-aisc360":      {"plugins", "plugins/aisc360"},
	"cmd/chainwale-bth1":         {"plugins", "plugins/bth1"},
	"cmd/chainwale-airlug":       {"plugins", "plugins/airlug"},
	"cmd/chainwale-iso12215":     {"plugins", "plugins/iso12215"},
	"cmd/rulebook":               {"engine/fact", "engine/rule", "engine/rulebook", "rules"},
	"cmd/chainwale":              {"*"},
	"testdata/outside":           {"testdata/outside/tool"},
	"testdata/outside/tool":      {},
	"testdata/fleet":             {},
	"testdata/fleet/write":       {"testdata/fleet"},
}

// testsMay says what tests of a room may import beyond what the room may.
var testsMay = []string{"testdata/outside/tool", "rules", "schema", "engine/table", "engine/quantity", "engine/working", "engine/finding", "plugins/clauses/clausetest", "plugins/bth1", "engine/fact"}

// TestHouse holds the import map: every Go file of the project stands in a room,
// and no room reaches for more than its stairs allow.
func TestHouse(t *testing.T) {
	files := 0
	err := filepath.WalkDir("..", func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && strings.HasPrefix(d.Name(), ".") && len(d.Name()) > 2 {
			return fs.SkipDir
		}
		if d.IsDir() && name != ".." && hasModule(name) {
			return fs.SkipDir
		}
		if strings.HasSuffix(name, ".go") {
			files++
			checkFile(t, name)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if files < 20 {
		t.Fatalf("only %d files were looked at", files)
	}
}

// hasModule tells whether a folder is a module of its own, which the map leaves alone.
func hasModule(dir string) bool {
	_, err := os.Stat(filepath.Join(dir, "go.mod"))
	return err == nil
}

func checkFile(t *testing.T, name string) {
	t.Helper()
	parsed, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
	if err != nil {
		t.Errorf("%s: %v", name, err)
		return
	}
	room := strings.TrimPrefix(path.Dir(filepath.ToSlash(name)), "../")
	allowed, known := rooms[room]
	isTest := strings.HasSuffix(name, "_test.go")
	if !known {
		t.Errorf("%s stands in %s, a room that is not on the map", name, room)
		return
	}
	for _, spec := range parsed.Imports {
		imported, _ := strconv.Unquote(spec.Path.Value)
		to, ours := strings.CutPrefix(imported, "chainwale/")
		switch {
		case !ours || to == room || slices.Contains(allowed, to) || slices.Contains(allowed, "*"):
		case isTest && (slices.Contains(testsMay, to) || room == "engine/published"):
		case isTest && room == "engine":
		default:
			t.Errorf("%s: %s may not import %s", name, room, to)
		}
	}
}
