package engine_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"chainwale/engine/finding"
	"chainwale/engine/plan"
	"chainwale/engine/plan/document"
)

// TestFieldByFieldOfWork does the same as TestFieldByField with what the plan says of
// the mast, of the boat's stability and of the order of work.
func TestFieldByFieldOfWork(t *testing.T) {
	if testing.Short() {
		t.Skip("hundreds of whole checks")
	}
	dir := t.TempDir()
	for _, name := range []string{"quillfish-order.yaml", "quillfish-mended.yaml"} {
		src, err := os.ReadFile(filepath.Join("../testdata/boats", name))
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, name), src, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	src, _ := os.ReadFile(filepath.Join(dir, "quillfish-order.yaml"))
	root, problems := document.Read("order.yaml", src)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	judgeOrder := func(src []byte) judged {
		name := filepath.Join(dir, "order.json")
		if err := os.WriteFile(name, src, 0o644); err != nil {
			t.Fatal(err)
		}
		return judgeAs(t, func() (*plan.Plan, []finding.Problem, error) { return plan.Load(name, plan.Options{}) })
	}
	good := judgeOrder(emit(root, "", ""))
	if good.problems > 0 {
		t.Fatal("the order of work itself has problems")
	}
	tried := 0
	for _, node := range scalars(root) {
		if !ofWork(node.At.Pointer) {
			continue
		}
		for _, c := range changes[:4] {
			to, ok := c.to(node.Text)
			if !ok {
				continue
			}
			tried++
			bad := judgeOrder(emit(root, node.At.Pointer, to))
			name := fmt.Sprintf("%s %s", node.At.Pointer, c.name)
			if to != removed {
				compareFindings(t, name, good, bad)
				continue
			}
			compare(t, name, node, to, good, bad)
		}
	}
	if tried < 200 {
		t.Errorf("only %d changes were tried", tried)
	}
}

// ofWork tells the values that the other test does not have. Names in a step are left
// out: without one it is another order of work.
func ofWork(pointer string) bool {
	if strings.HasPrefix(pointer, "/standing/steps/") {
		return !strings.Contains(pointer, "/fit/") && !strings.Contains(pointer, "/remove/") && !strings.Contains(pointer, "/replace/")
	}
	for _, under := range []string{"/boat/mast/", "/boat/righting_moment/", "/boat/reefed_main/", "/boat/displacement", "/boat/beam", "/boat/freeboard", "/standing/", "/stays/0/", "/stays/1/tension", "/stays/3/tension"} {
		if strings.HasPrefix(pointer, under) {
			return true
		}
	}
	return false
}

// compareFindings holds that a size of nothing, below nothing or beyond measure is
// refused or leaves no less found.
func compareFindings(t *testing.T, name string, good, bad judged) {
	t.Helper()
	if bad.problems == 0 && bad.found < good.found {
		t.Errorf("%s: %d findings where the good value gave %d", name, bad.found, good.found)
	}
}
