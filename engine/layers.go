package engine

import (
	"context"
	"fmt"
	"strings"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/near"
	"chainwale/engine/rule"
	"chainwale/rules"
)

// layer lets packs change rules of the packs before and after them, as each says
// for a reason. What does not fit is a problem, and that rule judges unchanged.
func layer(c *fact.Catalogue, judges []judging) (problems []finding.Problem) {
	l := layering{c, judges, map[string]string{}}
	for _, by := range judges {
		for _, change := range by.Changes {
			_, wrong := l.change(by.ID, change)
			problems = append(problems, wrong...)
		}
	}
	return problems
}

// layering is packs in the course of being changed by each other.
type layering struct {
	catalogue *fact.Catalogue
	judges    []judging
	// done says by whom a rule is changed.
	done map[string]string
}

// change makes one change of a pack, and gives the sentence that tells of it.
func (l *layering) change(by string, change rule.Change) (told string, problems []finding.Problem) {
	owner := ownerOf(l.judges, change.Rule)
	refuse := func(expected, message string, args ...any) (string, []finding.Problem) {
		return "", []finding.Problem{{At: change.At, Message: fmt.Sprintf(message, args...), Expected: expected}}
	}
	switch {
	case owner < 0:
		return refuse(nearRules(l.judges, change.Rule), "no pack that judges has a rule %q", change.Rule)
	case l.judges[owner].ID == by:
		return refuse("change it in its own file", "the rule %s is the pack's own", change.Rule)
	case l.done[change.Rule] != "" && l.done[change.Rule] != by:
		return refuse("one pack that changes a rule", "the rule %s is changed by the pack %s already", change.Rule, l.done[change.Rule])
	}
	pack, told, wrong := l.judges[owner].Changed(change, l.catalogue)
	if len(wrong) > 0 {
		return "", wrong
	}
	l.done[change.Rule] = by
	l.judges[owner].Pack = pack
	l.judges[owner].changed = append(l.judges[owner].changed, told)
	return told, nil
}

// ruleCalled is the rule of an id as it judges now, nil if there is none.
func (l *layering) ruleCalled(id string) *rule.Rule {
	owner := ownerOf(l.judges, id)
	if owner < 0 {
		return nil
	}
	for _, r := range l.judges[owner].Rules {
		if r.ID == id {
			return r
		}
	}
	return nil
}

// Tried is a change that a pack makes in a rule of another, as it was tried out.
type Tried struct {
	rule.Change
	// Told is the change in a sentence, as reports have it; "" where it does not fit.
	Told string
	// Problems say why it does not fit.
	Problems []finding.Problem
	// Idle tells that no facts were found on which the rule comes to another end by it.
	Idle bool
}

// TryChanges makes the changes of a pack, one after the other, in the rules of the
// program, of standards, and of the packs in other folders, and tells what comes of
// each. The catalogue has the facts of the standards. Problems are those of the packs
// in the folders; an error is a fault of the program or of a standard.
func TryChanges(ctx context.Context, pack *rule.Pack, c *fact.Catalogue, named []Named, dirs []string) (tried []Tried, problems []finding.Problem, err error) {
	if len(pack.Changes) == 0 {
		return nil, nil, nil
	}
	beside, problems, err := besides(ctx, pack, c, named, dirs)
	if err != nil || len(problems) > 0 {
		return nil, problems, err
	}
	l := layering{c, judgesOf(beside), map[string]string{}}
	for _, change := range pack.Changes {
		t := Tried{Change: change}
		was := l.ruleCalled(change.Rule)
		t.Told, t.Problems = l.change(pack.ID, change)
		if is := l.ruleCalled(change.Rule); len(t.Problems) == 0 && is != nil {
			_, differs := was.Differing(is)
			t.Idle = !differs
		}
		tried = append(tried, t)
	}
	return tried, nil, nil
}

// besides are the packs that a pack may change rules of, and itself, each with its
// examples.
func besides(ctx context.Context, pack *rule.Pack, c *fact.Catalogue, named []Named, dirs []string) ([]*rule.Pack, []finding.Problem, error) {
	l := packLoader{catalogue: c, packs: []*rule.Pack{pack}, from: map[string]string{}}
	for _, name := range rules.Packs() {
		ours, problems := rule.Load(rules.FS, name, "rules/"+name, c, rule.LoadOptions{SkipSchema: true})
		if len(problems) > 0 {
			return nil, nil, fmt.Errorf("the pack %s of the program: %s", name, problems[0].Message)
		}
		if ours.ID != pack.ID {
			l.packs = append(l.packs, ours)
		}
	}
	for _, a := range describeAll(ctx, named) {
		a.fits = a.fault == nil
		if a.loadPack(c); a.fault != nil {
			return nil, nil, fmt.Errorf("the standard %s does not answer rightly: %s", a.ID, a.why())
		}
		if a.pack != nil && a.pack.ID != pack.ID {
			l.packs = append(l.packs, a.pack)
		}
	}
	for _, dir := range dirs {
		l.load(dir)
	}
	return l.packs, l.problems, nil
}

func ownerOf(judges []judging, rule string) int {
	for i, j := range judges {
		for _, r := range j.Rules {
			if r.ID == rule {
				return i
			}
		}
	}
	return -1
}

func nearRules(judges []judging, rule string) string {
	var ids []string
	for _, j := range judges {
		for _, r := range j.Rules {
			ids = append(ids, r.ID)
		}
	}
	names := near.Words(rule, ids, 3)
	if len(names) == 0 {
		return "the id of a rule, as a finding or chainwale pack print gives it"
	}
	return "did you mean " + strings.Join(names, " or ") + "?"
}
