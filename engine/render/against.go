package render

import (
	"fmt"
	"strings"

	"chainwale/engine/finding"
)

// against says, before the findings, what is new since an earlier report, what
// changed and what is gone.
func (t *text) against(r finding.Report) {
	a := r.Against
	if a == nil {
		return
	}
	t.prose("", fmt.Sprintf("Against %s, judged as of %s: %d new, %d changed, %d gone, %d as before.", a.File, a.On, len(a.New), len(a.Changed), len(a.Gone), a.Same))
	byPrint := map[string]*finding.Finding{}
	for i := range r.Findings {
		byPrint[r.Findings[i].Fingerprint] = &r.Findings[i]
	}
	for _, print := range a.New {
		if f := byPrint[print]; f != nil {
			t.bullet(fmt.Sprintf("new: %s  %s", news(f), where(f.At)))
		}
	}
	for _, c := range a.Changed {
		if f := byPrint[c.Fingerprint]; f != nil {
			t.bullet(fmt.Sprintf("%s: %s; it was %s  %s", c.How, news(f), weight(c.Was.Outcome, c.Was.Grade), where(f.At)))
		}
	}
	t.past("gone", a.Gone)
	if len(a.NotJudged) > 0 {
		t.prose("", "These were found by packs that did not judge this time; whether they are gone is not known:")
		t.past("not judged", a.NotJudged)
	}
	t.line("")
}

func (t *text) past(how string, list []finding.Past) {
	for _, p := range list {
		t.bullet(fmt.Sprintf("%s: %s, %s [%s]", how, weight(p.Outcome, p.Grade), p.Subject, p.Rule))
	}
}

// news names a finding in one line; what it says stands below, under its part.
func news(f *finding.Finding) string {
	return fmt.Sprintf("%s%s, %s [%s]", weight(f.Outcome, f.Grade), acceptedMark(f), f.Subject, f.Rule)
}

// weight is a grade, and that it could not be told where it could not.
func weight(o finding.Outcome, g finding.Grade) string {
	if o == finding.CannotTell {
		return string(g) + " (cannot tell)"
	}
	return string(g)
}

// bullet writes one item of a list.
func (t *text) bullet(item string) {
	lines := wrap(item, width-4)
	if len(lines) > 0 {
		t.line("  - %s", strings.Join(lines, "\n    "))
	}
}
