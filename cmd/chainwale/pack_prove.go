package main

import (
	"bytes"
	"context"
	"fmt"
	"strings"

	"chainwale/engine"
	"chainwale/engine/render"
	"chainwale/engine/rule"
)

type packProveVerb struct {
	packArg
	Pack []string `help:"A folder of a rule pack whose rules this one changes; may stand several times. Those of the program and its standards are there." placeholder:"DIR"`
}

// Help is what the verb's own help says beyond its arguments.
func (packProveVerb) Help() string {
	return `First every example of every rule is run on the rule itself. Then each rule is changed, one thing at a time: a limit left out, a comparison turned round or its ties changed, each number made a tenth more and a tenth less, each word another. A change that no example notices is a slip of the finger that nobody would be told of; it is shown with an example that would notice it.

What the pack changes in the rules of others is tried on these rules: each change has to fit its rule, and to make a difference to some case.

Exit status:
  3  the pack does not load, or a change does not fit the rule that it is for: each problem is shown with its line
  1  an example differs from what its rule says, a change went unnoticed, or what is changed in another's rule makes no difference
  0  proven`
}

// mostShown is how many unnoticed changes are shown in full.
const mostShown = 50

// Run proves the pack.
func (v packProveVerb) Run(s streams) error {
	pack, files, err := v.load(s)
	if err != nil {
		return err
	}
	tried, err := v.tryChanges(s, pack, files)
	if err != nil {
		return err
	}
	p := &proof{lines: files.lines()}
	p.changes(tried)
	results := pack.Prove()
	for _, r := range results {
		p.example(r)
	}
	unnoticed := 0
	if p.differ == 0 {
		list := pack.Unnoticed()
		unnoticed = len(list)
		p.unnoticed(list)
	}
	p.summary(pack, len(results), unnoticed)
	if _, err := s.out.Write(p.out.Bytes()); err != nil {
		return err
	}
	if p.differ+unnoticed+p.idle > 0 {
		return ended(statusFindings)
	}
	return nil
}

// proof is what is said of a pack.
type proof struct {
	out    bytes.Buffer
	lines  render.Lines
	differ int
	// idle are the changes to others' rules that make no difference.
	idle int
}

// tryChanges tries what the pack changes in others. What does not fit is printed with
// its lines, and the status says so.
func (v packProveVerb) tryChanges(s streams, pack *rule.Pack, files *packFiles) ([]engine.Tried, error) {
	c, err := packCatalogue()
	if err != nil {
		return nil, err
	}
	tried, problems, err := engine.TryChanges(context.Background(), pack, c, namedStandards(), v.Pack)
	if err != nil {
		return nil, err
	}
	for _, t := range tried {
		problems = append(problems, t.Problems...)
	}
	if len(problems) > 0 {
		return nil, refusePack(s, problems, files.lines())
	}
	return tried, nil
}

// changes says which changes to others' rules make no difference.
func (p *proof) changes(tried []engine.Tried) {
	for _, t := range tried {
		if !t.Idle {
			continue
		}
		p.idle++
		fmt.Fprintf(&p.out, "%s: this change makes no difference to %s: %s\n%s", place(t.At), t.Rule, t.Says(), render.Spot(t.At, p.lines))
		fmt.Fprintf(&p.out, "    no case was found that is judged otherwise by it: perhaps it is so already, or another limit always decides before this one\n")
	}
}

// example says how an example differs from its rule.
func (p *proof) example(r rule.ExampleResult) {
	if r.Proven {
		return
	}
	p.differ++
	fmt.Fprintf(&p.out, "%s: %s\n%s", place(r.At), r, render.Spot(r.At, p.lines))
	if r.Why != "" {
		fmt.Fprintf(&p.out, "    %s\n", r.Why)
	}
	fmt.Fprintf(&p.out, "    correct the rule if the example is right, or the example if the rule is\n")
}

// unnoticed says which changes no example noticed. An example that is proposed for one
// often notices the next as well.
func (p *proof) unnoticed(list []rule.Mutation) {
	var proposed []rule.Sample
	for i, m := range list {
		if i == mostShown {
			fmt.Fprintf(&p.out, "… and %d more.\n", len(list)-i)
			return
		}
		fmt.Fprintf(&p.out, "%s: %s\n%s", place(m.At), m, render.Spot(m.At, p.lines))
		if noticed(m, proposed) {
			fmt.Fprintf(&p.out, "    an example above would notice this too\n")
			continue
		}
		sample, ok := m.Noticing()
		if !ok {
			fmt.Fprintf(&p.out, "    no example was found that would: perhaps another limit always decides before this one\n")
			continue
		}
		proposed = append(proposed, sample)
		fmt.Fprintf(&p.out, "    this example would, if the outcome is what you mean:\n      %s\n", strings.ReplaceAll(sample.String(), "\n", "\n      "))
	}
}

func noticed(m rule.Mutation, proposed []rule.Sample) bool {
	for _, s := range proposed {
		if m.NoticedBy(s) {
			return true
		}
	}
	return false
}

// summary closes with what was found.
func (p *proof) summary(pack *rule.Pack, examples, unnoticed int) {
	what := fmt.Sprintf("%s, edition %s: %s, %s", pack.ID, pack.Edition, counted(len(pack.Rules), "rule", "rules"), counted(examples, "example", "examples"))
	if n := len(pack.Changes); n > 0 {
		what += fmt.Sprintf(", %s to rules of others", counted(n, "change", "changes"))
	}
	switch {
	case p.differ > 0:
		fmt.Fprintf(&p.out, "%s; %s. Whether the examples would notice a change is looked at when they all come out.\n", what, counted(p.differ, "example differs", "examples differ"))
	case unnoticed > 0:
		fmt.Fprintf(&p.out, "%s; all come out, and %s no example notices. Not proven.\n", what, counted(unnoticed, "change", "changes"))
	case p.idle > 0:
		fmt.Fprintf(&p.out, "%s; %s no difference. Not proven.\n", what, counted(p.idle, "of these changes makes", "of these changes make"))
	case len(pack.Changes) > 0 && len(pack.Rules) == 0:
		fmt.Fprintf(&p.out, "%s; each makes a difference. Proven.\n", what)
	case len(pack.Changes) > 0:
		fmt.Fprintf(&p.out, "%s; all examples come out, no slip goes unnoticed, and each of these changes makes a difference. Proven.\n", what)
	default:
		fmt.Fprintf(&p.out, "%s; all come out, and no change goes unnoticed. Proven.\n", what)
	}
}
