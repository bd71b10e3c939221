package main

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"time"

	"chainwale/engine"
	"chainwale/engine/finding"
	"chainwale/engine/plan"
	"chainwale/engine/quantity"
	"chainwale/engine/render"
)

// planArgs is what every verb that reads a plan takes.
type planArgs struct {
	Plan string `arg:"" help:"The plan file."`
	On   string `help:"The day that ages are judged on, YYYY-MM-DD; today if left out." placeholder:"DAY"`
	Root string `help:"The folder under which the plan's templates must lie; the plan's own if left out." placeholder:"DIR"`
}

type checkVerb struct {
	planArgs
	As         string   `help:"How to print: text or json." enum:"text,json" default:"text"`
	RefuseFrom string   `help:"The mildest grade that refuses the plan (status 1): stop, mend or watch." enum:"stop,mend,watch" default:"mend"`
	Pack       []string `help:"A folder of a rule pack that judges as well; may stand several times." placeholder:"DIR"`
	All        bool     `help:"Print what holds and what does not apply as well."`
}

// Run judges the plan and prints the report.
func (v checkVerb) Run(s streams) error {
	go engine.Prepare() // beside the reading of the plan
	p, on, report, err := v.load(s)
	if err != nil {
		return err
	}
	o := engine.Options{Version: version, On: on, RefuseFrom: finding.Grade(v.RefuseFrom), All: v.All, Packs: v.Pack}
	if p == nil {
		return v.refuse(s, engine.NotJudged(v.Plan, report, o))
	}
	judged, err := engine.Check(context.Background(), p, o)
	if err != nil {
		return err
	}
	if err := v.print(s, judged, systemOf(p)); err != nil {
		return err
	}
	if len(judged.Problems) > 0 {
		return ended(statusFault)
	}
	if judged.Refused() {
		return ended(statusFindings)
	}
	return nil
}

// refuse prints the problems of a plan that could not be judged.
func (v checkVerb) refuse(s streams, r finding.Report) error {
	if v.As == "json" {
		if err := render.JSON(s.out, r); err != nil {
			return err
		}
		return ended(statusInput)
	}
	if err := render.Text(s.err, r, quantity.Metric); err != nil {
		return err
	}
	return ended(statusInput)
}

// print writes the report. A renderer writes line by line, and a system call for
// each would take longer than the judging.
func (v checkVerb) print(s streams, r finding.Report, system quantity.System) error {
	out := bufio.NewWriterSize(s.out, 1<<14)
	if err := v.render(out, r, system); err != nil {
		return err
	}
	return out.Flush()
}

func (v checkVerb) render(out io.Writer, r finding.Report, system quantity.System) error {
	if v.As == "json" {
		return render.JSON(out, r)
	}
	return render.Text(out, r, system)
}

// load reads the plan and the day. A plan with problems is nil and the problems
// are given; a wrong day is a fault of the command line.
func (a planArgs) load(s streams) (*plan.Plan, time.Time, []finding.Problem, error) {
	on, err := day(a.On)
	if err != nil {
		fmt.Fprintf(s.err, "chainwale: %v\n", err)
		return nil, on, nil, ended(statusInput)
	}
	p, problems, err := plan.Load(a.Plan, plan.Options{Root: a.Root})
	if err != nil {
		return nil, on, nil, err
	}
	if len(problems) == 0 && len(p.Stays)+len(p.Fittings)+len(p.Contacts)+len(p.Records) == 0 {
		problems = nothingToJudge(a.Plan)
	}
	if len(problems) > 0 {
		return nil, on, problems, nil
	}
	return p, on, nil, nil
}

// nothingToJudge is the problem of a plan that names no part: judged, it would look
// as clean as a sound boat.
func nothingToJudge(file string) []finding.Problem {
	return []finding.Problem{{At: finding.Place{File: file, Line: 1, Column: 1}, Message: "the plan names no stay and no fitting, so there is nothing to judge", Expected: "stays and fittings; chainwale new writes a plan to start from"}}
}

// day reads --on; today where nothing is given.
func day(text string) (time.Time, error) {
	if text == "" {
		y, m, d := time.Now().Date()
		return time.Date(y, m, d, 0, 0, 0, 0, time.UTC), nil
	}
	on, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return on, fmt.Errorf("--on %s is not a day; write for example --on 2027-05-01", text)
	}
	return on, nil
}

// systemOf is the system of units that the owner wants to read.
func systemOf(p *plan.Plan) quantity.System {
	if p.Boat.Units.Value == "us" {
		return quantity.US
	}
	return quantity.Metric
}
