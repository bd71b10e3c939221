package host

import (
	"os"
	"runtime"
	"testing"
	"time"
)

// TestNothingLeaks starts and ends programs, good and bad, and counts what is open.
func TestNothingLeaks(t *testing.T) {
	if testing.Short() {
		t.Skip("it starts many programs")
	}
	round := func() {
		for _, name := range []string{"sound", "crash at start", "dead socket", "socket elsewhere"} {
			if r, err := Start(t.Context(), started(t, name), patient(Limits{})); err == nil {
				_ = r.Close()
			}
		}
		_, _ = Start(t.Context(), Program{Path: "/nothing", Unpinned: true}, Limits{})
	}
	round()
	files, routines := open(t), runtime.NumGoroutine()
	for range 3 {
		round()
	}
	for range 40 {
		if open(t) <= files && runtime.NumGoroutine() <= routines {
			return
		}
		time.Sleep(50 * time.Millisecond)
	}
	stacks := make([]byte, 1<<16)
	stacks = stacks[:runtime.Stack(stacks, true)]
	t.Errorf("%d files were open and %d are; %d goroutines ran and %d do\n%s", files, open(t), routines, runtime.NumGoroutine(), stacks)
}

// open counts the files that this process has open.
func open(t *testing.T) int {
	t.Helper()
	list, err := os.ReadDir("/proc/self/fd")
	if err != nil {
		t.Fatal(err)
	}
	return len(list)
}
