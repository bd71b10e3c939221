package host

import (
	"bufio"
	"fmt"
	"os"
	"os/exec"
	"testing"
)

// TestHostIsKilled: when we are killed, without a chance to close anything, the
// program ends as well. The folder of its socket stays, as the package says; the test
// removes it.
func TestHostIsKilled(t *testing.T) {
	t.Parallel()
	p := started(t, "host")
	cmd := exec.Command(p.Path, p.Args...)
	cmd.Env = append(os.Environ(), "TMPDIR="+os.Getenv("TMPDIR"))
	cmd.Stderr = os.Stderr
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	var pid int
	var folder string
	line, err := bufio.NewReader(out).ReadString('\n')
	if err == nil {
		_, err = fmt.Sscan(line, &pid, &folder)
	}
	if err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(fmt.Sprintf("/proc/%d", pid)); err != nil {
		t.Fatalf("the program is not there: %v", err)
	}
	_ = cmd.Process.Kill()
	_ = cmd.Wait()
	// That the program is gone, noneLeft sees.
	if _, err := os.Stat(folder); err != nil {
		t.Errorf("the package says that the folder stays: %v", err)
	}
	if err := os.RemoveAll(folder); err != nil {
		t.Error(err)
	}
}
