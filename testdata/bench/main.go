// Command bench measures chainwale against what it is held to, all in one run, and
// prints a table: rules by our back end against the same rules as Go functions, in
// expr's virtual machine and in cel-go; and a check of a plan, started from
// nothing, against a program that only starts. It judges nothing: the machine and
// whoever else is at work on it have their part in every number.
//
// It is a module of its own, so that cel-go never comes near the program's. In
// this folder:
//
//	go run . -date 2026-11-25
package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"runtime"
	"strings"
	"text/tabwriter"
	"time"
)

func main() {
	date := flag.String("date", "", "the day that stands above the table")
	rounds := flag.Int("rounds", 15, "how often each engine judges all rows")
	starts := flag.Int("starts", 31, "how often each program is started")
	flag.Parse()
	if err := measure(*date, *rounds, *starts); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// measure takes the starts first: while little memory is in use here, what the
// system tells of the peak memory of others is their own.
func measure(date string, rounds, starts int) error {
	before := load()
	runs, apart, err := startAll(starts)
	if err != nil {
		return err
	}
	races, err := race(rounds)
	if err != nil {
		return err
	}
	fmt.Printf("%s, %s %s/%s, %d processors, load %s before and %s after\n\n", date, runtime.Version(), runtime.GOOS, runtime.GOARCH, runtime.NumCPU(), before, load())
	printRaces(races, rounds)
	printStarts(runs, starts)
	printApart(apart)
	return nil
}

// load is how many processes wanted to run of late, "unknown" where the system
// does not say.
func load() string {
	text, err := os.ReadFile("/proc/loadavg")
	if err != nil {
		return "unknown"
	}
	one, _, _ := strings.Cut(string(text), " ")
	return one
}

// startAll starts the programs in turn, so that what slows the machine down slows
// all of them.
func startAll(starts int) (runs, apart []*run, err error) {
	dir, err := os.MkdirTemp("", "bench")
	if err != nil {
		return nil, nil, err
	}
	defer os.RemoveAll(dir)
	if runs, err = coldRuns("../..", dir); err != nil {
		return nil, nil, err
	}
	if apart, err = apartRuns(dir); err != nil {
		return nil, nil, err
	}
	return runs, apart, errors.Join(inTurn(runs, starts), inTurn(apart, apartRounds))
}

// inTurn starts programs one after the other, again and again.
func inTurn(runs []*run, rounds int) error {
	for range rounds {
		for _, r := range runs {
			if err := r.once(); err != nil {
				return err
			}
		}
	}
	return nil
}

// result is what one engine took for all rows, and what it allocated.
type result struct {
	engine
	took   []time.Duration
	allocs float64
	holds  int
}

// atLeast is how long an engine is at work in a round: what the one before it left
// in the caches must not count.
const atLeast = 20 * time.Millisecond

// judgements is how many one pass over all rows makes.
const rowCount = 1000

func judgements() float64 { return float64(rowCount * len(trials)) }

// race lets the engines judge all rows in turn.
func race(rounds int) ([]*result, error) {
	all, err := engines(landings(rowCount))
	if err != nil {
		return nil, err
	}
	var results []*result
	for _, e := range all {
		results = append(results, &result{engine: e})
	}
	for range rounds {
		for _, r := range results {
			if err := r.once(); err != nil {
				return nil, err
			}
		}
	}
	return results, nil
}

func (r *result) once() (err error) {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	passes, begin := 0, time.Now()
	for ; err == nil && time.Since(begin) < atLeast; passes++ {
		r.holds, err = r.judge()
	}
	r.took = append(r.took, time.Since(begin)/time.Duration(passes))
	runtime.ReadMemStats(&after)
	r.allocs = float64(after.Mallocs-before.Mallocs) / float64(passes)
	return err
}

func printRaces(results []*result, rounds int) {
	fmt.Printf("%d rules on %d rows, median of %d rounds\n\n", len(trials), rowCount, rounds)
	w := table("engine", "ns a rule", "allocations a rule", "times closures", "hold")
	for _, r := range results {
		took := median(r.took)
		row(w, r.name, fmt.Sprintf("%.1f", float64(took)/judgements()), fmt.Sprintf("%.2f", r.allocs/judgements()),
			ratio(took, median(results[0].took)), fmt.Sprint(r.holds))
	}
	w.Flush()
	fmt.Print("\nwanted of chainwale: at most 8 times the closures, no allocation, faster than both libraries\n\n")
}

func printStarts(runs []*run, starts int) {
	fmt.Printf("Started from nothing, median of %d starts\n\n", starts)
	w := table("program", "ms", "times hello", "times --version", "ms of processor", "peak MB, at most")
	for _, r := range runs {
		took := median(r.took)
		row(w, r.name, ms(took), ratio(took, median(runs[0].took)), ratio(took, median(runs[1].took)), ms(median(r.worked)), fmt.Sprintf("%.0f", float64(r.peak)/(1<<20)))
	}
	w.Flush()
	fmt.Println("\nwanted: --version at most 8 times hello, check at most 2 times --version, peak below 60 MB")
}

func ms(d time.Duration) string { return fmt.Sprintf("%.1f", float64(d)/float64(time.Millisecond)) }

func ratio(a, b time.Duration) string { return fmt.Sprintf("%.2f", float64(a)/float64(b)) }

// table begins a table in the form that a README takes.
func table(heads ...string) *tabwriter.Writer {
	w := tabwriter.NewWriter(os.Stdout, 0, 0, 1, ' ', 0)
	row(w, heads...)
	rule := "| ---"
	for range heads[1:] {
		rule += "\t| ---:"
	}
	fmt.Fprintln(w, rule+"\t|")
	return w
}

func row(w *tabwriter.Writer, cells ...string) {
	fmt.Fprintln(w, "| "+strings.Join(cells, "\t| ")+"\t|")
}
