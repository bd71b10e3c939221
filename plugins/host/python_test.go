//go:build unix

package host

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"chainwale/engine/standard"
	"chainwale/plugins/clauses/clausetest"
	"chainwale/testdata/outside/tool"
)

// copied puts a folder of the project into one of the test's own, as a stranger would.
func copied(t *testing.T, from string) (home, folder string) {
	t.Helper()
	home = t.TempDir()
	folder = filepath.Join(home, "rule")
	if err := os.CopyFS(folder, os.DirFS(from)); err != nil {
		t.Fatal(err)
	}
	return home, folder
}

// python is the standard in Python, trusted and running.
func python(t *testing.T) *Running {
	t.Helper()
	tool.Need(t, "/usr/bin/python3")
	home, folder := copied(t, filepath.Join("..", "example-python"))
	file := filepath.Join(folder, "standard.py")
	d, err := Declare(t.Context(), file, nil, false, patient(Limits{}))
	if err != nil {
		t.Fatal(err)
	}
	trusted := filepath.Join(home, TrustedName)
	if err := Pin(trusted, d.Program); err != nil {
		t.Fatal(err)
	}
	list, problems, err := ReadTrusted(trusted)
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	p, _ := list.Program("stonechat-plates")
	return begun(t, p, Limits{})
}

// TestPython takes the standard in Python from its folder to its answers: declared,
// pinned, started, asked and shown, its pack proven.
func TestPython(t *testing.T) {
	t.Parallel()
	r := python(t)
	clausetest.Texts(t, r)
	clausetest.Pack(t, r)
	plate := clausetest.Facts{
		"fitting.kind": "chainplate", "fitting.width": 40.0, "fitting.thickness": 6.0, "fitting.metal.ultimate": 515.0, "hole": 12.5, "across": 1.0,
	}
	// (40 − 2·1 − 12.5) mm · 6 mm · 515 N/mm2 = 25.5 · 3090 N
	if got := clausetest.Ask(t, r, "landing", plate).Known["plate_net"]; got != 25.5*3090 {
		t.Errorf("the plate carries %g", got)
	}
	clausetest.AllShown(t, r, "landing", plate)
	for name := range plate {
		if got := clausetest.Ask(t, r, "landing", plate.With(clausetest.Facts{name: nil})); len(got.Known) > 0 {
			t.Errorf("without %s it says %v", name, got.Known)
		}
	}
	for why, change := range map[string]clausetest.Facts{
		"a u-bolt has no plate at its pin":   {"fitting.kind": "u-bolt"},
		"the hole leaves no metal beside it": {"hole": 38.0},
	} {
		if got := clausetest.Ask(t, r, "landing", plate.With(change)).Refused["1"]; got != why {
			t.Errorf("with %v it refuses because %q", change, got)
		}
	}
}

// TestPythonBatch asks for many rows at once, words and unknowns among them.
func TestPythonBatch(t *testing.T) {
	if testing.Short() {
		t.Skip("it starts the program twice more")
	}
	t.Parallel()
	r := python(t)
	table, _ := r.declared.Table("landing")
	q := standard.Question{Kind: "landing", Rows: 1001}
	for _, read := range table.Reads {
		c := standard.NewNumbers(read.Name, q.Rows)
		if read.Type == standard.Word {
			c = standard.NewWords(read.Name, q.Rows)
		}
		for row := range q.Rows {
			switch {
			case row%7 == 3:
			case read.Type == standard.Word:
				c.GiveWord(row, []string{"chainplate", "tie rod"}[row%2])
			default:
				c.Give(row, 10+float64(len(read.Name)))
			}
		}
		q.Columns = append(q.Columns, c)
	}
	if a, err := r.Derive(t.Context(), q); err != nil || len(a.NotCovered) == 0 {
		t.Errorf("%d rows not covered, %v", len(a.NotCovered), err)
	}
}

// TestPythonByHand: started by hand it says what it is, and waits for nobody.
func TestPythonByHand(t *testing.T) {
	t.Parallel()
	tool.Need(t, "/usr/bin/python3")
	cmd := exec.Command("/usr/bin/python3", filepath.Join("..", "example-python", "standard.py"))
	cmd.Env = []string{"PYTHONDONTWRITEBYTECODE=1"}
	out, err := cmd.CombinedOutput()
	if err == nil || !strings.Contains(string(out), "a design standard for chainwale") {
		t.Errorf("%v: %s", err, out)
	}
}

// TestPythonMessagesAreCurrent: what protoc made for the example is of the contract
// as it is now. Releases of protoc differ in the lines around it.
func TestPythonMessagesAreCurrent(t *testing.T) {
	t.Parallel()
	protoc := tool.Need(t, "protoc")
	dir := t.TempDir()
	if out, err := exec.Command(protoc, "--proto_path=..", "--python_out="+dir, "contract.proto").CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	if made, have := descriptor(t, filepath.Join(dir, "contract_pb2.py")), descriptor(t, "../example-python/contract_pb2.py"); made != have {
		t.Error("make it anew: cd plugins/example-python && protoc --proto_path=.. --python_out=. contract.proto")
	}
}

// descriptor is the line that holds the contract itself.
func descriptor(t *testing.T, name string) string {
	t.Helper()
	src, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(string(src), "\n") {
		if strings.Contains(line, "AddSerializedFile(") {
			return line
		}
	}
	t.Fatalf("%s holds no descriptor", name)
	return ""
}
