package accept

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"

	"chainwale/engine/finding"
)

// Comparison is what a report says that an earlier one did not, and the other way
// round. Findings are known again by their fingerprints, so moved lines change
// nothing. What holds and what does not apply is left alone.
type Comparison struct {
	// On is the day of the earlier report.
	On string
	// New are findings that the earlier report did not have.
	New []finding.Finding
	// Changed are findings that both have, with another grade or outcome, or with
	// an acceptance that is over.
	Changed []Change
	// Gone are findings of the earlier report that the rules do not make any more.
	Gone []finding.Finding
	// NotJudged are findings of the earlier report by packs that did not judge now:
	// whether they are gone is not known.
	NotJudged []finding.Finding
	// Same counts the findings that are as they were.
	Same int
}

// Change is a finding that changed from the one report to the other.
type Change struct {
	How      finding.How
	Now, Was finding.Finding
}

// Earlier reads a report to compare with, as a check wrote it in JSON. A file that
// is none, of another version or of another boat is an error in plain words, and so
// is one of a plan that was not judged: against it everything would be new.
func Earlier(src []byte, boat string) (finding.Report, error) {
	r, err := finding.Read(src)
	switch {
	case err != nil:
		return r, err
	case !r.Judged():
		return r, errors.New("the earlier report judged nothing, so there is nothing to compare with")
	case r.Boat != boat:
		return r, fmt.Errorf("the earlier report is of the boat %q, and this plan of %q", r.Boat, boat)
	}
	return r, nil
}

// Against compares a report with an earlier one of the same boat.
func Against(now, earlier finding.Report) Comparison {
	c := Comparison{On: earlier.On}
	before := map[string]finding.Finding{}
	for _, f := range earlier.Findings {
		if told(f) {
			before[f.Fingerprint] = f
		}
	}
	still := map[string]bool{}
	for _, f := range now.Findings {
		if told(f) {
			was, known := before[f.Fingerprint]
			still[f.Fingerprint] = true
			c.add(f, was, known)
		}
	}
	judging := judging(now)
	for _, f := range earlier.Findings {
		switch {
		case !told(f) || still[f.Fingerprint]:
		case judging[f.Pack]:
			c.Gone = append(c.Gone, f)
		default:
			c.NotJudged = append(c.NotJudged, f)
		}
	}
	return c
}

// add sorts in a finding of the later report.
func (c *Comparison) add(f, was finding.Finding, known bool) {
	if !known {
		c.New = append(c.New, f)
		return
	}
	if how := change(f, was); how != "" {
		c.Changed = append(c.Changed, Change{how, f, was})
		return
	}
	c.Same++
}

// change is how a finding changed, "" if it did not. An outcome that turned counts
// before a grade that got milder: what can't be told any more has not got better.
func change(now, was finding.Finding) finding.How {
	switch {
	case now.Grade.WorseThan(was.Grade):
		return finding.Worse
	case now.Outcome != was.Outcome:
		return finding.Turned
	case was.Accepted != nil && now.Accepted == nil:
		return finding.Returned
	case was.Grade.WorseThan(now.Grade):
		return finding.Milder
	}
	return ""
}

// judging are the packs that judged, and the program's own.
func judging(r finding.Report) map[string]bool {
	packs := map[string]bool{Pack: true}
	for _, p := range r.Packs {
		packs[p.ID] = true
	}
	return packs
}

// Refused tells whether there is news of that grade or worse that nobody took on:
// a new finding, or an old one that got worse, turned to another outcome, or came
// back from being accepted. What was known before and is as it was does not count.
func (c Comparison) Refused(from finding.Grade) bool {
	refuses := func(f finding.Finding) bool { return f.Accepted == nil && f.Grade.AtLeast(from) }
	for _, f := range c.New {
		if refuses(f) {
			return true
		}
	}
	for _, change := range c.Changed {
		if change.How != finding.Milder && refuses(change.Now) {
			return true
		}
	}
	return false
}

// ForReport is the comparison as a report carries it. file is the earlier report as
// it was named, and src its bytes.
func (c Comparison) ForReport(file string, src []byte) *finding.Against {
	sum := sha256.Sum256(src)
	a := &finding.Against{
		File: file, Hash: "sha256:" + hex.EncodeToString(sum[:]), On: c.On, Same: c.Same,
		New: []string{}, Changed: []finding.Changed{}, Gone: past(c.Gone), NotJudged: past(c.NotJudged),
	}
	for _, f := range c.New {
		a.New = append(a.New, f.Fingerprint)
	}
	for _, change := range c.Changed {
		a.Changed = append(a.Changed, finding.Changed{Fingerprint: change.Now.Fingerprint, How: change.How, Was: pastOf(change.Was)})
	}
	return a
}

func past(list []finding.Finding) []finding.Past {
	all := []finding.Past{}
	for _, f := range list {
		all = append(all, pastOf(f))
	}
	return all
}

func pastOf(f finding.Finding) finding.Past {
	return finding.Past{Rule: f.Rule, Subject: f.Subject, Outcome: f.Outcome, Grade: f.Grade, Message: f.Message, Fingerprint: f.Fingerprint}
}
