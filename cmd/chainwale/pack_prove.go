package main

import (
	"bytes"
	"fmt"
	"strings"

	"chainwale/engine/render"
	"chainwale/engine/rule"
)

type packProveVerb struct{ packArg }

// Help is what the verb's own help says beyond its arguments.
func (packProveVerb) Help() string {
	return `First every example of every rule is run on the rule itself. Then each rule is changed, one thing at a time: a limit left out, a comparison turned round or its ties changed, each number made a tenth more and a tenth less, each word another. A change that no example notices is a slip of the finger that nobody would be told of; it is shown with an example that would notice it.

Exit status:
  3  the pack does not load: each problem is shown with its line
  1  an example differs from what its rule says, or a change went unnoticed
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
	p := &proof{lines: files.lines()}
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
	if p.differ+unnoticed > 0 {
		return ended(statusFindings)
	}
	return nil
}

// proof is what is said of a pack.
type proof struct {
	out    bytes.Buffer
	lines  render.Lines
	differ int
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
	switch {
	case p.differ > 0:
		fmt.Fprintf(&p.out, "%s; %s. Whether the examples would notice a change is looked at when they all come out.\n", what, counted(p.differ, "example differs", "examples differ"))
	case unnoticed > 0:
		fmt.Fprintf(&p.out, "%s; all come out, and %s no example notices. Not proven.\n", what, counted(unnoticed, "change", "changes"))
	default:
		fmt.Fprintf(&p.out, "%s; all come out, and no change goes unnoticed. Proven.\n", what)
	}
}
