//go:build unix

package host

import (
	"os/exec"
	"path/filepath"
	"testing"

	"chainwale/plugins/clauses/clausetest"
)

// TestTemplate builds the template for standards in Go, as a stranger would, and
// takes it from its folder to its answers.
func TestTemplate(t *testing.T) {
	if testing.Short() {
		t.Skip("it builds a program")
	}
	t.Parallel()
	file := filepath.Join(t.TempDir(), "mine", "my-standard")
	build := exec.Command("go", "build", "-o", file, ".")
	build.Dir = filepath.Join("..", "template-go")
	if out, err := build.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	d, err := Declare(t.Context(), file, nil, true, patient(Limits{}))
	if err != nil {
		t.Fatal(err)
	}
	r := begun(t, d.Program, Limits{})
	clausetest.Texts(t, r)
	clausetest.Pack(t, r)
	plate := clausetest.Facts{"fitting.width": 40.0, "fitting.thickness": 6.0, "fitting.metal.ultimate": 515.0, "hole": 12.5}
	if got := clausetest.Ask(t, r, "landing", plate).Known["plate_net"]; got != 27.5*3090 {
		t.Errorf("the plate carries %g", got)
	}
	clausetest.AllShown(t, r, "landing", plate)
	if got := clausetest.Ask(t, r, "landing", plate.With(clausetest.Facts{"hole": 40.0})).Refused["1"]; got != "the hole leaves no metal beside it" {
		t.Errorf("a hole as wide as the plate is refused because %q", got)
	}
}
