package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"syscall"
	"time"
)

// planSize is how many bytes the plan has that is checked.
const planSize = 20_000

// run is one way to start a program from nothing.
type run struct {
	name string
	args []string

	took, worked []time.Duration
	peak         int64
}

// coldRuns builds the programs and writes the plan: a hello world for what Go and
// the machine take by themselves, chainwale that only starts, and checks.
func coldRuns(root, dir string) ([]*run, error) {
	hello, chainwale, plan := filepath.Join(dir, "hello"), filepath.Join(dir, "chainwale"), filepath.Join(dir, "plan.yaml")
	source := filepath.Join(dir, "hello.go")
	if err := os.WriteFile(source, []byte("package main\n\nimport \"fmt\"\n\nfunc main() { fmt.Println(\"hello\") }\n"), 0o644); err != nil {
		return nil, err
	}
	text, err := writeLarge(root, "testdata/boats/quillfish.yaml", plan)
	if err != nil {
		return nil, err
	}
	sound := filepath.Join(dir, "sound.yaml")
	soundText, err := writeLarge(root, "testdata/boats/quillfish-mended.yaml", sound)
	if err != nil {
		return nil, err
	}
	if err := build(dir, hello, source); err != nil {
		return nil, err
	}
	if err := build(root, chainwale, "./cmd/chainwale"); err != nil {
		return nil, err
	}
	check := []string{chainwale, "check", "--on", "2026-11-25"}
	return []*run{
		{name: "Go hello world", args: []string{hello}},
		{name: "chainwale --version", args: []string{chainwale, "--version"}},
		{name: fmt.Sprintf("check of %d KB, a sound plan", len(soundText)/1000), args: append(slices.Clone(check), sound)},
		{name: fmt.Sprintf("check of %d KB, full of faults", len(text)/1000), args: append(slices.Clone(check), plan)},
		{name: "the same, as JSON", args: append(slices.Clone(check), "--as", "json", plan)},
	}, nil
}

// writeLarge writes a plan that repeats a boat's parts.
func writeLarge(root, boat, to string) ([]byte, error) {
	text, err := largePlan(filepath.Join(root, boat), planSize)
	if err != nil {
		return nil, err
	}
	return text, os.WriteFile(to, text, 0o644)
}

func build(in, out, what string) error {
	cmd := exec.Command("go", "build", "-o", out, what)
	cmd.Dir = in
	if text, err := cmd.CombinedOutput(); err != nil {
		return fmt.Errorf("building %s: %w: %s", what, err, text)
	}
	return nil
}

// once starts the program and waits for its end. A report with findings ends with
// status 1; anything worse, or a word on standard error, is a fault.
func (r *run) once() error {
	cmd := exec.Command(r.args[0], r.args[1:]...)
	var errs bytes.Buffer
	cmd.Stderr = &errs
	begin := time.Now()
	err := cmd.Run()
	took := time.Since(begin)
	if cmd.ProcessState == nil || cmd.ProcessState.ExitCode() > 1 || errs.Len() > 0 {
		return fmt.Errorf("%v: %w: %s", r.args, err, errs.String())
	}
	r.took = append(r.took, took)
	r.worked = append(r.worked, cmd.ProcessState.UserTime()+cmd.ProcessState.SystemTime())
	r.peak = max(r.peak, peakOf(cmd.ProcessState))
	return nil
}

// peakOf is the most memory that a process had, in bytes; 0 where the system does
// not say. Linux counts what the process that started it had in use then.
func peakOf(s *os.ProcessState) int64 {
	usage, ok := s.SysUsage().(*syscall.Rusage)
	switch {
	case !ok:
		return 0
	case runtime.GOOS == "darwin":
		return usage.Maxrss
	}
	return usage.Maxrss * 1024
}

// median is the middle one.
func median(list []time.Duration) time.Duration {
	sorted := slices.Sorted(slices.Values(list))
	return sorted[len(sorted)/2]
}
