package main

import (
	"bufio"
	"bytes"
	"context"
	"fmt"
	"slices"

	"chainwale/engine"
	"chainwale/engine/finding"
	"chainwale/engine/plan"
	"chainwale/engine/render"
)

type standingVerb struct {
	planArgs
	standardArgs
	As         string   `help:"How to print: text or json." enum:"text,json" default:"text"`
	RefuseFrom string   `help:"The mildest grade of a finding of the steps that gives status 1: stop, mend or watch." enum:"stop,mend,watch" default:"mend"`
	Suggest    bool     `help:"Look for an order of the work, and the fewest stand-ins, that keep every step above its margins."`
	Pack       []string `help:"A folder of a rule pack that judges as well; may stand several times." placeholder:"DIR"`
	Out        string   `help:"A folder that a picture of each step goes into (SVG), and a state sheet to fill in; what a person changed there is left alone." placeholder:"DIR"`
}

// Help is what the verb's own help says beyond its flags.
func (standingVerb) Help() string {
	return `Step by step, what is held while stays are off: how many times the push of gust and roll, from which direction it is least, what gives first there, at which gust it is used up, and what one more loss does. The margins rest on the assumptions that are printed. None of them says that a mast is safe; a qualified rigger decides.`
}

// Run prints the steps of the plan's order of work.
func (v standingVerb) Run(s streams) error {
	p, on, problems, err := v.load(s)
	if err != nil {
		return err
	}
	ctx := context.Background()
	h := v.newHall(v.Plan, v.Root)
	defer h.close()
	o := engine.Options{Version: version, On: on, RefuseFrom: finding.Grade(v.RefuseFrom), Root: v.Root, Packs: v.Pack}
	if p != nil {
		o.Standards, problems = h.named(ctx, p)
		if len(problems) == 0 && !engine.HasStanding(p) {
			problems = engine.NoStanding(p)
		}
	}
	if len(problems) > 0 {
		return refusePlan(s, v.Plan, problems, o)
	}
	sheet, report, err := engine.Standing(ctx, p, o, v.Suggest)
	if err != nil {
		return err
	}
	if err := v.print(s, sheet, p); err != nil {
		return err
	}
	beside, err := v.write(s, sheet, p)
	if err != nil {
		return err
	}
	return v.settle(s, sheet, report, beside)
}

func (v standingVerb) print(s streams, sheet finding.Standing, p *plan.Plan) error {
	out := bufio.NewWriter(s.out)
	var err error
	if v.As == "json" {
		err = render.StandingJSON(out, sheet)
	} else {
		err = render.StandingText(out, sheet, systemOf(p))
	}
	if err != nil {
		return err
	}
	return out.Flush()
}

// write writes the pictures and the state sheet, where a folder is named.
func (v standingVerb) write(s streams, sheet finding.Standing, p *plan.Plan) (beside bool, err error) {
	if v.Out == "" {
		return false, nil
	}
	files, err := pictures(sheet, p)
	if err != nil {
		return false, err
	}
	for _, f := range files {
		made, err := writeOut(v.Out, f.name, f.content)
		if err != nil {
			return beside, err
		}
		if made.beside {
			beside = true
			fmt.Fprintf(s.err, "%s was changed by hand and is left alone; the new one is %s\n", made.wanted, made.name)
			continue
		}
		fmt.Fprintf(s.err, "%s\n", made.name)
	}
	return beside, nil
}

// pictures makes all files before any is written.
func pictures(sheet finding.Standing, p *plan.Plan) ([]drawn, error) {
	var files []drawn
	add := func(name string, steps []finding.StandingStep) error {
		for i := range steps {
			var content bytes.Buffer
			if err := render.StandingSVG(&content, sheet, &steps[i], i+1, len(steps)); err != nil {
				return err
			}
			files = append(files, drawn{fmt.Sprintf("%s%02d-%s.svg", name, i+1, fileName(steps[i].ID)), content.Bytes()})
		}
		return nil
	}
	if err := add("", sheet.Steps); err != nil {
		return nil, err
	}
	if sheet.Suggested != nil {
		if err := add("suggested-", sheet.Suggested.Steps); err != nil {
			return nil, err
		}
	}
	var state bytes.Buffer
	if err := render.StateSheet(&state, sheet, systemOf(p)); err != nil {
		return nil, err
	}
	return append(files, drawn{"state-sheet.txt", state.Bytes()}), nil
}

// settle gives the status: findings of the steps, and a suggestion that found none.
func (v standingVerb) settle(s streams, sheet finding.Standing, report finding.Report, beside bool) error {
	refused := beside || sheet.Suggested != nil && !sheet.Suggested.Found
	findings := sheet.Findings
	if sheet.Suggested != nil {
		findings = append(slices.Clone(findings), sheet.Suggested.Findings...)
	}
	for _, f := range findings {
		refused = refused || f.Refuses(report.RefuseAt)
	}
	if c := report.Counts; v.As == "text" && c.Stop+c.Mend > 0 {
		fmt.Fprintf(s.err, "The whole plan has %d stop and %d mend: chainwale check says which.\n", c.Stop, c.Mend)
	}
	switch {
	case len(report.Problems) > 0 || report.Fault:
		listProblems(s, report.Problems)
		return ended(statusFault)
	case refused:
		return ended(statusFindings)
	}
	return nil
}
