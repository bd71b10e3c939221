package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// BenchmarkCold runs the built program from outside: a check of a plan of 20 KB
// against the same program that only starts and prints its version. It reports
// milliseconds and their ratio, all from one run.
func BenchmarkCold(b *testing.B) {
	dir := b.TempDir()
	program := filepath.Join(dir, "chainwale")
	if out, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput(); err != nil {
		b.Fatalf("%v: %s", err, out)
	}
	plan := filepath.Join(dir, "plan.yaml")
	if err := os.WriteFile(plan, largePlan(b, 20_000), 0o644); err != nil {
		b.Fatal(err)
	}
	var start, check time.Duration
	for b.Loop() {
		start += once(b, program, "--version")
		check += once(b, program, "check", "--as", "json", "--on", "2026-11-25", plan)
	}
	b.ReportMetric(float64(start.Milliseconds())/float64(b.N), "ms/start")
	b.ReportMetric(float64(check.Milliseconds())/float64(b.N), "ms/check")
	b.ReportMetric(float64(check)/float64(start), "check/start")
}

func once(b *testing.B, program string, args ...string) time.Duration {
	cmd := exec.Command(program, args...)
	var errs bytes.Buffer
	cmd.Stderr = &errs
	begin := time.Now()
	err := cmd.Run()
	took := time.Since(begin)
	if errs.Len() > 0 {
		b.Fatalf("%v: %v: %s", args, err, errs.String())
	}
	return took
}

// largePlan repeats stays and fittings of the demo under new ids until the plan
// has as many bytes as asked for.
func largePlan(b *testing.B, size int) []byte {
	b.Helper()
	src, err := os.ReadFile("../../testdata/boats/quillfish.yaml")
	if err != nil {
		b.Fatal(err)
	}
	head, rest, ok1 := strings.Cut(string(src), "\nstays:\n")
	stays, rest, ok2 := strings.Cut(rest, "\nfittings:\n")
	fittings, _, ok3 := strings.Cut(rest, "\ncontacts:\n")
	if !ok1 || !ok2 || !ok3 {
		b.Fatal("the demo has other parts than this benchmark thinks")
	}
	var allStays, allFittings strings.Builder
	for i := 0; allStays.Len()+allFittings.Len()+len(head) < size; i++ {
		rename := strings.NewReplacer("cap-", fmt.Sprintf("cap-%d-", i), "fore-lower", fmt.Sprintf("fore-lower-%d", i), "aft-lower", fmt.Sprintf("aft-lower-%d", i), "backstay-plate", fmt.Sprintf("backstay-plate-%d", i), "id: backstay\n", fmt.Sprintf("id: backstay-%d\n", i), "[backstay]", fmt.Sprintf("[backstay-%d]", i))
		allStays.WriteString(rename.Replace(stays) + "\n")
		allFittings.WriteString(rename.Replace(fittings) + "\n")
	}
	return []byte(head + "\nstays:\n" + allStays.String() + "fittings:\n" + allFittings.String())
}
