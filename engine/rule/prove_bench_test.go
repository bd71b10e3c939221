package rule

import (
	"testing"

	"chainwale/engine/fact"
	"chainwale/rules"
)

// BenchmarkProve proves the packs that come with the program, as `pack prove` does:
// they are loaded with the schema, every example is run, and every change is tried.
func BenchmarkProve(b *testing.B) {
	c, err := fact.TheCatalogue()
	if err != nil {
		b.Fatal(err)
	}
	changes := 0
	for b.Loop() {
		changes = 0
		for _, name := range rules.Packs() {
			p, problems := Load(rules.FS, name, name, c, LoadOptions{})
			if p == nil {
				b.Fatal(problems)
			}
			p.Prove()
			for _, r := range p.Rules {
				changes += len(r.mutations())
			}
			for _, m := range p.Unnoticed() {
				m.Noticing()
			}
		}
	}
	b.ReportMetric(float64(changes), "changes")
}
