package rule

import "testing"

func TestTrialPackIsProven(t *testing.T) {
	p := trial(t, catalogue(t))
	if len(p.Rules) != 13 {
		t.Errorf("%d rules", len(p.Rules))
	}
	results := p.Prove()
	if len(results) < 3*len(p.Rules) {
		t.Errorf("only %d examples ran", len(results))
	}
	for _, r := range results {
		if !r.Proven {
			t.Errorf("%s:%d: %s", r.At.File, r.At.Line, r)
		}
	}
	for _, c := range p.Unnoticed() {
		t.Error(c)
	}
}
