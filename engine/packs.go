package engine

import (
	"cmp"
	"fmt"
	"path/filepath"
	"slices"
	"sync"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/plan"
	"chainwale/engine/rule"
	"chainwale/rules"
)

// Prepare makes ready what every check needs whatever the plan says: the facts
// that there are and the packs that come with the program. Check does so itself;
// whoever still has a plan to read starts Prepare beside it and gains the time.
func Prepare() {
	fact.Prepare()   // first: facts are made before anything is judged
	_, _ = builtIn() // whoever asks for the packs is told of a fault
}

// builtIn are the packs that come with the program, loaded once.
var builtIn = sync.OnceValues(loadBuiltIn)

// loadBuiltIn loads the packs that come with the program. They were proven by the
// tests, so a fault in one is ours.
func loadBuiltIn() ([]*rule.Pack, error) {
	c, err := fact.TheCatalogue()
	if err != nil {
		return nil, err
	}
	var packs []*rule.Pack
	for _, name := range rules.Packs() {
		pack, problems := rule.Load(rules.FS, name, "rules/"+name, c, rule.LoadOptions{SkipSchema: true, SkipExamples: true, Tree: rules.Tree, Later: seldom})
		if len(problems) > 0 {
			p := problems[0]
			return nil, fmt.Errorf("%s:%d:%d: %s", p.At.File, p.At.Line, p.At.Column, p.Message)
		}
		packs = append(packs, pack)
	}
	return packs, nil
}

// seldom tells the kinds of subjects that most plans have none of.
func seldom(kind string) bool {
	return kind == "bend" || kind == "match" || kind == "step" || kind == "stand_in"
}

// packsFor gives the packs that judge a plan: those of the program, those the
// plan names, and those of the options. A pack that can't be loaded is left out
// and said; the rest still judge.
func packsFor(c *fact.Catalogue, p *plan.Plan, o Options) ([]*rule.Pack, []finding.Problem, error) {
	packs, err := builtIn()
	if err != nil {
		return nil, nil, err
	}
	if len(p.Packs)+len(o.Packs) == 0 {
		return packs, nil, nil
	}
	l := packLoader{catalogue: c, packs: slices.Clone(packs), from: map[string]string{}, kept: o.Kept}
	for _, pack := range packs {
		l.claim(pack)
	}
	for _, named := range p.Packs {
		dir := filepath.Join(filepath.Dir(named.At.File), filepath.FromSlash(named.Value))
		if filepath.IsAbs(filepath.FromSlash(named.Value)) || !under(cmp.Or(o.Root, filepath.Dir(p.File)), dir) {
			l.problems = append(l.problems, finding.Problem{At: named.At, Message: "the pack " + named.Value + " lies outside the plan's root", Expected: "a folder under it; --root DIR sets a folder further up"})
			continue
		}
		l.load(dir)
	}
	for _, dir := range o.Packs {
		l.load(dir)
	}
	return l.packs, l.problems, nil
}

// under tells whether a folder lies under another once links are followed. One that
// is not there does if its name says so; whoever opens it says that it is not there.
func under(root, dir string) bool {
	top, err := filepath.EvalSymlinks(root)
	if err != nil {
		top = root
	}
	real, err := filepath.EvalSymlinks(dir)
	if err != nil {
		real = dir
	}
	top, err = filepath.Abs(top)
	if err != nil {
		return false
	}
	real, err = filepath.Abs(real)
	if err != nil {
		return false
	}
	rel, err := filepath.Rel(top, real)
	return err == nil && filepath.IsLocal(rel)
}

// packLoader gathers packs and holds that no rule stands in two of them.
type packLoader struct {
	catalogue *fact.Catalogue
	packs     []*rule.Pack
	problems  []finding.Problem
	// from says which pack a rule stands in.
	from map[string]string
	// kept has the packs that were loaded for other plans.
	kept *Kept
}

func (l *packLoader) load(dir string) {
	got := l.kept.pack(packKey{l.catalogue, dir}, func() loaded { return loadFolder(dir, l.catalogue) })
	if len(got.problems) > 0 {
		l.problems = append(l.problems, got.problems...)
		return
	}
	if twice := l.claim(got.pack); len(twice) > 0 {
		l.problems = append(l.problems, twice...)
		return
	}
	l.packs = append(l.packs, got.pack)
}

// loadFolder loads the pack in a folder.
func loadFolder(dir string, c *fact.Catalogue) loaded {
	folder, err := rule.OpenFolder(dir)
	if err != nil {
		return loaded{problems: []finding.Problem{{At: finding.Place{File: dir, Line: 1, Column: 1}, Message: err.Error(), Expected: "the folder of a rule pack"}}}
	}
	defer folder.Close()
	pack, problems := rule.Load(folder, ".", dir, c, rule.LoadOptions{})
	return loaded{pack, problems}
}

// claim notes whose rules are whose. One rule in two packs is a problem: nobody
// could say which of them judged.
func (l *packLoader) claim(pack *rule.Pack) (problems []finding.Problem) {
	for _, r := range pack.Rules {
		if other, taken := l.from[r.ID]; taken {
			problems = append(problems, finding.Problem{At: r.At, Message: fmt.Sprintf("the rule %s stands in the pack %s already", r.ID, other), Expected: "an id that no other rule has"})
			continue
		}
		l.from[r.ID] = pack.ID
	}
	return problems
}
