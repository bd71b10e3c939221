package plan

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"chainwale/engine/finding"
)

// wagtail is the plan that the tests change, one place at a time.
const wagtail = "testdata/grey-wagtail.yaml"

func readWagtail(t testing.TB) string {
	t.Helper()
	src, err := os.ReadFile(wagtail)
	if err != nil {
		t.Fatal(err)
	}
	return string(src)
}

// told writes a problem as one line, as the tables below have it.
func told(p finding.Problem) string {
	return fmt.Sprintf("%s:%d:%d %s | %s | %s", p.At.File, p.At.Line, p.At.Column, p.At.Pointer, p.Message, p.Expected)
}

// expectTold compares problems with lines, each of which may stop before the end.
func expectTold(t *testing.T, problems []finding.Problem, want []string) {
	t.Helper()
	for i, p := range problems {
		if i >= len(want) {
			t.Errorf("one problem too many: %s", told(p))
		} else if !strings.HasPrefix(told(p), want[i]) {
			t.Errorf("problem %d is\n\t%s\nwant\n\t%s", i+1, told(p), want[i])
		}
	}
	for _, w := range want[min(len(problems), len(want)):] {
		t.Errorf("nothing was said of\n\t%s", w)
	}
}

func TestLoad(t *testing.T) {
	p, problems, err := Load(wagtail, Options{})
	if err != nil || len(problems) > 0 {
		t.Fatal(problems, err)
	}
	shroud, plate := p.Stays[0], p.Fittings[0]
	for what, same := range map[string]bool{
		"file":           p.File == wagtail,
		"version":        p.Chainwale.Value == 1,
		"name":           p.Boat.Name.Value == "Grey Wagtail",
		"counts":         len(p.Stays) == 2 && len(p.Fittings) == 3 && len(plate.Holes) == 3 && len(p.Contacts) == 1 && len(p.Records) == 1 && len(p.Packs) == 1,
		"metal as text":  shroud.Wire.Metal == Text{true, "316", finding.Place{File: wagtail, Line: 15, Column: 40, Pointer: "/stays/0/wire/metal"}},
		"paper as text":  shroud.Wire.Certificate.Value == "20411",
		"metres":         shroud.Upper.Z.Value == 13000 && shroud.Upper.Z.Readings == 1,
		"inches":         p.Stays[1].Wire.Diameter.Value == 7.9375,
		"force":          shroud.Wire.BreakLoad.Value == 47200,
		"readings":       plate.Thickness.Readings == 2 && closeTo(plate.Thickness.Value, 6.325) && closeTo(plate.Thickness.Spread, 0.05),
		"yes":            shroud.Toggle.Given && shroud.Toggle.Value,
		"no":             p.Stays[1].Toggle.Given && !p.Stays[1].Toggle.Value,
		"year":           plate.Installed.Text == "1984" && plate.Installed.First.Format("2006-01-02") == "1984-01-01" && plate.Installed.Last.Format("2006-01-02") == "1984-12-31",
		"month":          p.Stays[1].Installed.Last.Format("2006-01-02") == "2012-05-31",
		"day":            plate.NextLook.First.Equal(plate.NextLook.Last) && plate.NextLook.Text == "2027-05-01",
		"list of ids":    len(p.Fittings[1].Serves) == 2 && p.Fittings[1].Serves[1].Value == "cap-shroud-starboard",
		"stay's place":   shroud.At == finding.Place{File: wagtail, Line: 12, Column: 5, Pointer: "/stays/0"},
		"group's place":  plate.Mounting.At == finding.Place{File: wagtail, Line: 50, Column: 5, Pointer: "/fittings/0/mounting"},
		"nothing given":  !p.Stays[1].Pin.Diameter.Given && p.Stays[1].Pin.Diameter.Readings == 0,
		"missing value":  p.Stays[1].Wire.BreakLoad.At == finding.Place{File: wagtail, Line: 27, Column: 5, Pointer: "/stays/1/wire/break_load"},
		"missing group":  p.Stays[1].Pin.At == finding.Place{File: wagtail, Line: 24, Column: 5, Pointer: "/stays/1/pin"},
		"missing inside": p.Stays[1].Pin.Measured.At == finding.Place{File: wagtail, Line: 24, Column: 5, Pointer: "/stays/1/pin/measured"},
		"missing day":    !p.Fittings[2].Installed.Given && p.Fittings[2].Installed.At.Pointer == "/fittings/2/installed",
	} {
		if !same {
			t.Errorf("%s is not as it stands in the file", what)
		}
	}
}

func closeTo(a, b float64) bool { return a-b < 1e-9 && b-a < 1e-9 }

// Line ends and a byte order mark change the hash and nothing else.
func TestLineEnds(t *testing.T) {
	src := readWagtail(t)
	plain, _, _ := Parse("p.yaml", []byte(src))
	other, problems, err := Parse("p.yaml", []byte("\ufeff"+strings.ReplaceAll(src, "\n", "\r\n")))
	if err != nil || len(problems) > 0 {
		t.Fatal(problems, err)
	}
	if plain.Hash == other.Hash {
		t.Error("two files have one hash")
	}
	plain.Hash, other.Hash = "", ""
	if a, b := fmt.Sprintf("%+v", plain), fmt.Sprintf("%+v", other); a != b {
		t.Errorf("%s\n%s", a, b)
	}
}

func TestJSON(t *testing.T) {
	const src = `{
 "chainwale": 1,
 "boat": {"name": "Grey Wagtail", "units": "us"},
 "stays": [{"id": "forestay", "role": "forestay", "wire": {"metal": 316, "diameter": "8 mm"}, "toggle": true, "installed": 2012, "side": "centre"}],
 "fittings": [{"id": "stem", "state": "kept", "kind": "stemhead", "serves": ["forestay"], "thickness": ["6 mm", "6.1 mm"], "mounting": {"through_deck": "no"}, "side": "centre"}]
}`
	p, problems, err := Parse("p.json", []byte(src))
	if err != nil || len(problems) > 0 {
		t.Fatal(problems, err)
	}
	stay, stem := p.Stays[0], p.Fittings[0]
	if stay.Wire.Metal.Value != "316" || stay.Wire.Diameter.Value != 8 || !stay.Toggle.Value || stay.Installed.Text != "2012" ||
		stem.Thickness.Readings != 2 || !stem.Mounting.ThroughDeck.Given || stem.Mounting.ThroughDeck.Value {
		t.Errorf("%+v", p)
	}
	if at := stem.Thickness.At; at.Line != 5 || at.Column != 104 || at.Pointer != "/fittings/0/thickness" {
		t.Errorf("thickness stands at %+v", at)
	}
	_, problems, _ = Parse("p.json", []byte(strings.Replace(src, `"8 mm"`, `8`, 1)))
	expectTold(t, problems, []string{"p.json:4:86 /stays/0/wire/diameter | 8 has no unit"})
}

func TestFilesThatCannotBeRead(t *testing.T) {
	dir := t.TempDir()
	none, large := filepath.Join(dir, "none.yaml"), filepath.Join(dir, "large.yaml")
	if err := os.WriteFile(large, bytes.Repeat([]byte("# remark\n"), 1<<20/9+1), 0o600); err != nil {
		t.Fatal(err)
	}
	refused := func(err error) Options {
		return Options{Open: func(string) (io.ReadCloser, error) { return nil, err }}
	}
	for _, c := range []struct {
		path string
		o    Options
		want string
	}{
		{none, Options{}, "there is no such file"},
		{dir, Options{}, "this is a folder"},
		{large, Options{}, "the file is larger than 1 MB, so it is not read"},
		{"p", refused(&fs.PathError{Op: "open", Path: "p", Err: fs.ErrPermission}), "the file may not be read"},
		{"p", refused(&fs.PathError{Op: "open", Path: "p", Err: errors.New("the disk is on fire")}), "the file can't be read: the disk is on fire"},
		{"p", Options{Open: func(string) (io.ReadCloser, error) { return io.NopCloser(broken{}), nil }}, "the file can't be read: cut off"},
	} {
		p, problems, err := Load(c.path, c.o)
		if p != nil || err != nil {
			t.Errorf("%s: %v, %v", c.path, p, err)
		}
		expectTold(t, problems, []string{c.path + ":1:1  | " + c.want})
	}
}

type broken struct{}

func (broken) Read([]byte) (int, error) { return 0, errors.New("cut off") }

// endless would fill the memory of a reader that does not stop.
type endless struct{ read int }

func (e *endless) Read(b []byte) (int, error) {
	e.read += len(b)
	return copy(b, bytes.Repeat([]byte("#"), len(b))), nil
}

func TestReadingStopsAtTheLimit(t *testing.T) {
	e := &endless{}
	_, problems, err := Load("p", Options{Open: func(string) (io.ReadCloser, error) { return io.NopCloser(e), nil }})
	if err != nil || len(problems) != 1 || e.read > 2<<20 {
		t.Errorf("%d bytes were read: %v, %v", e.read, problems, err)
	}
}

// The hash is that of the file, wherever it lies: path, length and bytes.
func TestHash(t *testing.T) {
	src := []byte(readWagtail(t))
	load := func(name string, src []byte) string {
		p, problems, err := Parse(name, src)
		if err != nil || len(problems) > 0 {
			t.Fatal(problems, err)
		}
		return p.Hash
	}
	here := load("a/p.yaml", src)
	if !strings.HasPrefix(here, "sha256:") || len(here) != len("sha256:")+64 {
		t.Errorf("the hash is %s", here)
	}
	if here != load("b/p.yaml", src) {
		t.Error("the hash changes with the folder")
	}
	if here == load("a/q.yaml", src) || here == load("a/p.yaml", append(bytes.Clone(src), '\n')) {
		t.Error("the hash does not change with the file")
	}
	two := map[string][]byte{"a": []byte("bc"), "d": nil}
	if hash(two) == hash(map[string][]byte{"a": []byte("b"), "cd": nil}) || hash(two) != hash(map[string][]byte{"d": nil, "a": []byte("bc")}) {
		t.Error("the hash mixes files up")
	}
}

func TestSidedIDs(t *testing.T) {
	for side, want := range map[string]string{Both: "a-port,a-starboard", Port: "a", Starboard: "a", Centre: "a", "": "a"} {
		if got := strings.Join(SidedIDs("a", side), ","); got != want {
			t.Errorf("side %q: %s, want %s", side, got, want)
		}
	}
}
