package engine

import (
	"cmp"
	"context"
	"fmt"
	"io/fs"
	"sync"
	"testing/fstest"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/rule"
	"chainwale/engine/standard"
	"chainwale/engine/working"
)

// Named is a design standard that judges a plan, as the plan or the command line
// names it.
type Named struct {
	// ID is what it is called by, At where it is named.
	ID string
	At finding.Place
	// Must tells that what it finds weighs as its rules say; else it is to be watched.
	Must bool
	// Standard is nil where it could not be had, and then Fault says why.
	Standard standard.Standard
	Fault    error
}

// asked is a standard in the course of one check.
type asked struct {
	Named
	description standard.Description
	// fits tells that its facts stand in the catalogue, so that its pack can be read.
	fits  bool
	pack  *rule.Pack
	fault error
	// kept has the packs that were loaded for other plans.
	kept *Kept
}

// describeAll asks the standards, side by side, what they are. One that does not
// say, or whose facts would be called as those of one before it, is at fault.
func describeAll(ctx context.Context, named []Named) []*asked {
	list := make([]*asked, len(named))
	var all sync.WaitGroup
	for i, n := range named {
		list[i] = &asked{Named: n, fault: n.Fault}
		if n.Fault == nil {
			all.Go(func() { list[i].describe(ctx) })
		}
	}
	all.Wait()
	return list
}

func (a *asked) describe(ctx context.Context) {
	d, err := a.Standard.Describe(ctx)
	if err == nil {
		err = standard.CheckDescription(d)
	}
	if err == nil && d.ID != a.ID {
		err = fmt.Errorf("it calls itself %s: name it so, or change the standard", d.ID)
	}
	a.description, a.fault = d, err
}

// widen extends the catalogue by the facts of the standards. One that does not fit
// is at fault, and the others go on without it.
func widen(c *fact.Catalogue, list []*asked) *fact.Catalogue {
	var good []standard.Description
	wide := c
	for _, a := range list {
		if a.fault != nil {
			continue
		}
		wider, err := c.Extend(append(good, a.description))
		if err != nil {
			a.fault = err
			continue
		}
		wide, good, a.fits = wider, append(good, a.description), true
	}
	return wide
}

// answerAll asks the standards for their facts, one after the other, since each
// writes into the rows of the same subjects.
func answerAll(ctx context.Context, facts *fact.Facts, list []*asked) {
	for _, a := range list {
		if a.fault == nil {
			a.fault = facts.Ask(ctx, a.Standard, a.description)
		}
	}
}

// loadPack loads the pack that a standard declares. A standard that did not answer
// still judges: its rules then can't tell, and say so.
func (a *asked) loadPack(c *fact.Catalogue) {
	if !a.fits || len(a.description.Pack) == 0 {
		return
	}
	l := a.kept.pack(packKey{c, a.description.Hash()}, func() loaded {
		pack, problems := rule.Load(packOf(a.description), ".", a.description.Prefix+":rules", c, rule.LoadOptions{})
		return loaded{pack, problems}
	})
	if len(l.problems) > 0 {
		p := l.problems[0]
		if a.fault == nil {
			a.fault = fmt.Errorf("its pack can't be used: %s:%d:%d: %s: change the standard", p.At.File, p.At.Line, p.At.Column, p.Message)
		}
		return
	}
	a.pack = l.pack
}

// standardJudges are the packs of the standards. One with a rule that another pack
// has is at fault: nobody could say which of the two judged.
func standardJudges(c *fact.Catalogue, list []*asked, others []*rule.Pack) []judging {
	if len(list) == 0 {
		return nil
	}
	from := map[string]string{}
	claim := func(p *rule.Pack) error {
		for _, r := range p.Rules {
			if other, taken := from[r.ID]; taken {
				return fmt.Errorf("its rule %s stands in the pack %s already: change the standard", r.ID, other)
			}
			from[r.ID] = p.ID
		}
		return nil
	}
	for _, p := range others {
		_ = claim(p) // two of these were refused before
	}
	var judges []judging
	for _, a := range list {
		if a.loadPack(c); a.pack == nil {
			continue
		}
		if err := claim(a.pack); err != nil {
			a.fault = cmp.Or(a.fault, err)
			continue
		}
		judges = append(judges, judging{Pack: a.pack, atMost: a.atMost()})
	}
	return judges
}

// tellStandards lists the standards in the report, and a finding for each that is
// at fault.
func tellStandards(r *finding.Report, list []*asked, judged map[string]finding.Counts) {
	for _, a := range list {
		used := finding.StandardUsed{ID: a.ID, Edition: a.description.Edition}
		if a.description.ID != "" {
			used.Hash = a.description.Hash()
		}
		r.Standards = append(r.Standards, used)
		switch {
		case a.fault != nil:
			r.Fault = true
			r.Counts.CannotTell++
			r.Findings = append(r.Findings, a.finding())
		case a.pack != nil && saidNothing(judged[a.pack.ID]):
			r.Counts.CannotTell++
			r.Findings = append(r.Findings, a.idle())
		}
	}
}

// saidNothing tells whether no rule of a pack had anything to judge.
func saidNothing(c finding.Counts) bool { return c.Holds+c.Fails+c.CannotTell == 0 }

// idle is the finding of a standard that had nothing of the plan to judge: a plan that
// must meet it has not met it by that.
func (a *asked) idle() finding.Finding {
	f := a.finding()
	f.Rule, f.Title = idle, "Every standard that the plan names judges something of it"
	f.Grade, f.HoldsUp = finding.Watch, ""
	if a.Must {
		f.Grade = finding.Mend
	}
	f.Message = fmt.Sprintf("The standard %s had nothing of this plan to judge.", a.ID)
	f.Because = "None of its rules applies to any part, so that it finds nothing says nothing."
	f.Decides = []string{"surveyor"}
	f.Fingerprint = rule.Fingerprint(idle, f.Subject)
	return f
}

// packOf is the declared pack as files.
func packOf(d standard.Description) fs.FS {
	files := fstest.MapFS{}
	for _, f := range d.Pack {
		files[f.Path] = &fstest.MapFile{Data: f.Bytes, Mode: 0o444}
	}
	return files
}

// atMost is the worst grade that the standard's findings get.
func (a *asked) atMost() finding.Grade {
	if a.Must {
		return ""
	}
	return finding.Watch
}

// silent is the rule of a standard that does not answer.
const silent = "standard-answers"

// idle is the rule of a standard that has nothing to judge.
const idle = "standard-judges-something"

// standardSubject stands before the id of a standard that a finding is about.
const standardSubject = "standard:"

// fault is the finding of a standard that could not be asked or lied.
func (a *asked) finding() finding.Finding {
	subject := standardSubject + a.ID
	return finding.Finding{
		Rule: silent, Title: "Every standard that the plan names answers", Part: a.ID, Pack: "chainwale",
		Outcome: finding.CannotTell, Grade: finding.Stop, HoldsUp: "cutting", Subject: subject, At: a.At, Related: []finding.Place{},
		Unknown: []string{}, Shown: []finding.Shown{},
		Message:     fmt.Sprintf("The standard %s does not answer rightly: %s", a.ID, a.why()),
		Because:     "What a standard was asked and did not answer is unknown, and an unknown never passes. Mend the standard or take it out of the plan.",
		Decides:     []string{"whoever keeps the standard"},
		Known:       []working.Source{},
		Fingerprint: rule.Fingerprint(silent, subject),
	}
}

// RulesOf are the rules of the pack that a standard declares, for whoever wants to
// read them. An error says what is wrong with the standard.
func RulesOf(d standard.Description) ([]finding.Ruled, error) {
	c, err := fact.TheCatalogue()
	if err != nil {
		return nil, err
	}
	a := &asked{description: d}
	if c = widen(c, []*asked{a}); a.fault != nil {
		return nil, a.fault
	}
	if a.loadPack(c); a.fault != nil {
		return nil, a.fault
	}
	rules := []finding.Ruled{}
	if a.pack == nil {
		return rules, nil
	}
	for _, r := range a.pack.Rules {
		rules = append(rules, ruled(r))
	}
	return rules, nil
}

// ruled is a rule as somebody reads it.
func ruled(r *rule.Rule) finding.Ruled {
	told := finding.Ruled{ID: r.ID, Title: r.Title, On: r.Kind.Name, Have: r.Have, Applies: r.AppliesIf, Bands: []finding.RuledBand{},
		IfUnknown: r.IfUnknown, HoldsUp: r.HoldsUp, Because: r.Because, Known: r.Known, Decides: r.Decides}
	for _, b := range r.Bands {
		told.Bands = append(told.Bands, finding.RuledBand{Verb: string(b.Verb), Limit: b.Limit, Else: b.Else, Applies: b.AppliesIf})
	}
	return told
}

// CatalogueWith is the catalogue of all facts that rules may read, with those that
// the standards derive.
func CatalogueWith(ctx context.Context, named []Named) (*fact.Catalogue, error) {
	c, err := fact.TheCatalogue()
	if err != nil {
		return nil, err
	}
	list := describeAll(ctx, named)
	c = widen(c, list)
	for _, a := range list {
		if a.fault != nil {
			return nil, fmt.Errorf("the standard %s does not answer rightly: %s", a.ID, a.why())
		}
	}
	return c, nil
}

// why is what is wrong with the standard, "" if nothing is.
func (a *asked) why() string {
	if a.fault == nil {
		return ""
	}
	return standard.Why(a.fault)
}
