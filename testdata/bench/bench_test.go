package main

import (
	"testing"
	"time"

	facts "chainwale/engine/fact"
	"chainwale/engine/plan"
)

// TestEnginesAgree: what is measured is the same work.
func TestEnginesAgree(t *testing.T) {
	if _, err := engines(landings(200)); err != nil {
		t.Fatal(err)
	}
}

// TestTrialsAreProven: our rules do on their examples what the functions do.
func TestTrialsAreProven(t *testing.T) {
	c, err := facts.TheCatalogue()
	if err != nil {
		t.Fatal(err)
	}
	p, err := pack(c, landings(200))
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range p.Prove() {
		if !r.Proven {
			t.Error(r)
		}
	}
}

// TestLargePlanIsSound: a plan with faults would be refused before it is judged.
func TestLargePlanIsSound(t *testing.T) {
	text, err := largePlan("../boats/quillfish.yaml", planSize)
	if err != nil {
		t.Fatal(err)
	}
	if len(text) < planSize || len(text) > planSize*3/2 {
		t.Errorf("the plan has %d bytes", len(text))
	}
	_, problems, err := plan.Parse("plan.yaml", text)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range problems {
		t.Errorf("%d:%d: %s", p.At.Line, p.At.Column, p.Message)
	}
}

// BenchmarkRules judges the rows by each engine, one engine after the other in
// every round, and reports times a rule and ratios to the closures.
func BenchmarkRules(b *testing.B) {
	all, err := engines(landings(rowCount))
	if err != nil {
		b.Fatal(err)
	}
	units := []string{"hand", "ours", "expr", "cel"}
	took := make([]time.Duration, len(all))
	for b.Loop() {
		for i, e := range all {
			begin := time.Now()
			if _, err := e.judge(); err != nil {
				b.Fatal(err)
			}
			took[i] += time.Since(begin)
		}
	}
	for i, unit := range units {
		b.ReportMetric(float64(took[i])/judgements()/float64(b.N), "ns/"+unit)
		b.ReportMetric(float64(took[i])/float64(took[0]), unit+"/hand")
	}
}

// BenchmarkEngine measures each engine alone, with its allocations.
func BenchmarkEngine(b *testing.B) {
	all, err := engines(landings(rowCount))
	if err != nil {
		b.Fatal(err)
	}
	for _, e := range all {
		b.Run(e.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := e.judge(); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(b.Elapsed())/judgements()/float64(b.N), "ns/rule")
		})
	}
}

// BenchmarkCold starts the built programs in turn and reports milliseconds and
// ratios.
func BenchmarkCold(b *testing.B) {
	runs, err := coldRuns("../..", b.TempDir())
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		for _, r := range runs {
			if err := r.once(); err != nil {
				b.Fatal(err)
			}
		}
	}
	hello, start, check := median(runs[0].took), median(runs[1].took), median(runs[2].took)
	b.ReportMetric(float64(start)/float64(time.Millisecond), "ms/start")
	b.ReportMetric(float64(check)/float64(time.Millisecond), "ms/check")
	b.ReportMetric(float64(start)/float64(hello), "start/hello")
	b.ReportMetric(float64(check)/float64(start), "check/start")
}
