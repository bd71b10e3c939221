//go:build unix

package engine_test

import (
	"bytes"
	"context"
	"encoding/json"
	"io"
	"io/fs"
	"path"
	"runtime"
	"runtime/debug"
	"syscall"
	"testing"
	"time"

	"chainwale/engine"
	"chainwale/engine/finding"
	"chainwale/engine/plan"
	"chainwale/testdata/fleet"

	"go.yaml.in/yaml/v4"
)

// BenchmarkFleet takes a fleet through the stages of a check, one stage after the
// other in every round, and reports the time of each for one plan, and its ratio to
// what a library takes to read the same bytes and to know nothing of boats. Times are
// those of the processor, so that a busy machine does not show.
func BenchmarkFleet(b *testing.B) {
	b.Run("json", func(b *testing.B) { benchmarkFleet(b, fleet.JSON, 0) })
	b.Run("yaml", func(b *testing.B) { benchmarkFleet(b, fleet.YAML, 0) })
	b.Run("json-over-classes", func(b *testing.B) { benchmarkFleet(b, fleet.JSON, 1) })
	b.Run("yaml-over-classes", func(b *testing.B) { benchmarkFleet(b, fleet.YAML, 1) })
}

// boatsInBench is how many plans a round takes.
const boatsInBench = 40

func benchmarkFleet(b *testing.B, form fleet.Form, templates float64) {
	defer debug.SetGCPercent(debug.SetGCPercent(400))
	y := newYard(form, templates)
	if err := y.whole(); err != nil { // what is made once is made here
		b.Fatal(err)
	}
	stages := []struct {
		name string
		do   func() error
	}{{"library", y.library}, {"load", y.load}, {"check", y.check}, {"whole", y.whole}}
	took := make([]time.Duration, len(stages))
	for b.Loop() {
		for i, s := range stages {
			y.templates = plan.NewTemplates()
			begin := processorTime()
			if err := s.do(); err != nil {
				b.Fatal(err)
			}
			took[i] += processorTime() - begin
		}
	}
	for i, s := range stages {
		each := float64(took[i]) / float64(b.N*len(y.boats))
		b.ReportMetric(each/float64(time.Microsecond), "us/"+s.name)
		if i > 0 {
			b.ReportMetric(float64(took[i])/float64(took[0]), s.name+"/library")
		}
	}
	b.ReportMetric(float64(y.bytes)/float64(len(y.boats)), "bytes/plan")
	b.ReportMetric(0, "ns/op")
}

// processorTime is what this program has used of the processors so far.
func processorTime() time.Duration {
	var used syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &used); err != nil {
		panic(err)
	}
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}

// yard is a fleet in memory.
type yard struct {
	form  fleet.Form
	files map[string][]byte
	boats []string
	// reads are the files that each boat's plan is read from.
	reads map[string][]string
	bytes int
	plans []*plan.Plan
	// templates are those of a run, as which each round of a stage counts.
	templates *plan.Templates
}

func newYard(form fleet.Form, templates float64) *yard {
	o := fleet.Options{Seed: 7, Form: form, Faulty: 0.15, Templates: templates}
	y := &yard{form: form, files: map[string][]byte{}, reads: map[string][]string{}}
	for _, f := range fleet.Classes(o) {
		y.files[f.Name] = f.Bytes
	}
	for i := range boatsInBench {
		f := fleet.Boat(i, o)
		y.files[f.Name] = f.Bytes
		y.boats = append(y.boats, f.Name)
		p, _, _ := y.read(f.Name)
		y.plans = append(y.plans, p)
		y.reads[f.Name] = []string{f.Name}
		if template := fleet.Template(f); template != "" {
			y.reads[f.Name] = append(y.reads[f.Name], path.Join("boats", template))
		}
		for _, name := range y.reads[f.Name] {
			y.bytes += len(y.files[name])
		}
	}
	return y
}

func (y *yard) open(name string) (io.ReadCloser, error) {
	return opened{bytes.NewReader(y.files[name])}, nil
}

// opened is a file that tells how long it is, as one on a disk does.
type opened struct{ *bytes.Reader }

func (opened) Close() error                 { return nil }
func (o opened) Stat() (fs.FileInfo, error) { return o, nil }
func (opened) Name() string                 { return "" }
func (opened) Mode() fs.FileMode            { return 0 }
func (opened) ModTime() time.Time           { return time.Time{} }
func (opened) IsDir() bool                  { return false }
func (opened) Sys() any                     { return nil }

func (y *yard) read(name string) (*plan.Plan, []finding.Problem, error) {
	return plan.Load(name, plan.Options{Open: y.open, Root: ".", Templates: y.templates})
}

// library reads the bytes of all plans as the library does that knows the form.
func (y *yard) library() error {
	for _, boat := range y.boats {
		for _, name := range y.reads[boat] {
			if err := y.decode(y.files[name]); err != nil {
				return err
			}
		}
	}
	return nil
}

func (y *yard) decode(src []byte) error {
	if y.form == fleet.JSON {
		var v any
		return json.Unmarshal(src, &v)
	}
	loader, err := yaml.NewLoader(bytes.NewReader(src))
	if err != nil {
		return err
	}
	var root yaml.Node
	return loader.Load(&root)
}

func (y *yard) load() error {
	for _, boat := range y.boats {
		if _, _, err := y.read(boat); err != nil {
			return err
		}
	}
	return nil
}

func (y *yard) check() error {
	for _, p := range y.plans {
		if p == nil {
			continue
		}
		if _, err := engine.Check(context.Background(), p, fleetOptions); err != nil {
			return err
		}
	}
	return nil
}

var fleetOptions = engine.Options{Version: "bench", On: time.Date(2026, 11, 1, 0, 0, 0, 0, time.UTC), RefuseFrom: finding.Mend}

// whole reads and judges all plans and writes a line for each.
func (y *yard) whole() error {
	for _, boat := range y.boats {
		p, problems, err := y.read(boat)
		report := engine.NotJudged(boat, problems, fleetOptions)
		if p != nil {
			report, err = engine.Check(context.Background(), p, fleetOptions)
		}
		if err != nil {
			return err
		}
		if err := writeLine(io.Discard, report); err != nil {
			return err
		}
	}
	return nil
}

// writeLine writes what a list of boats says of one of them.
func writeLine(w io.Writer, r finding.Report) error {
	return json.NewEncoder(w).Encode(struct {
		File, Boat, Hash string
		Problems         int
		Counts           finding.Counts
	}{r.Plan.File, r.Boat, r.Plan.Hash, len(r.Problems), r.Counts})
}

// BenchmarkManyBoats judges a thousand boats, each as its plan is written, and
// reports what the program holds at the end and at its fullest.
func BenchmarkManyBoats(b *testing.B) {
	defer debug.SetGCPercent(debug.SetGCPercent(400))
	const boats = 1000
	o := fleet.Usual(7, fleet.Mixed)
	y := &yard{files: map[string][]byte{}, templates: plan.NewTemplates()}
	for _, f := range fleet.Classes(o) {
		y.files[f.Name] = f.Bytes
	}
	next := 0
	fullest := uint64(0)
	for b.Loop() {
		for range boats {
			f := fleet.Boat(next, o)
			next++
			y.boats = []string{f.Name}
			y.files[f.Name] = f.Bytes
			if err := y.whole(); err != nil {
				b.Fatal(err)
			}
			delete(y.files, f.Name)
		}
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		fullest = max(fullest, m.Sys)
	}
	b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(next), "us/boat")
	b.ReportMetric(float64(fullest)/(1<<20), "MB")
}
