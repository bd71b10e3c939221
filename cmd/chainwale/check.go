package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"time"

	"chainwale/engine"
	"chainwale/engine/accept"
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
	As         string   `help:"How to print: text, json, sarif or junit." enum:"text,json,sarif,junit" default:"text"`
	RefuseFrom string   `help:"The mildest grade that refuses the plan (status 1): stop, mend or watch." enum:"stop,mend,watch" default:"mend"`
	Pack       []string `help:"A folder of a rule pack that judges as well; may stand several times." placeholder:"DIR"`
	All        bool     `help:"Print what holds and what does not apply as well."`
	Against    string   `help:"An earlier report of the same boat, as --as json wrote it: say what is new, changed and gone since." placeholder:"FILE"`
	News       bool     `help:"With --against, refuse the plan for what is new or worse alone."`
	standardArgs
}

// Run judges the plan and prints the report.
func (v checkVerb) Run(s streams) error {
	if v.News && v.Against == "" {
		fmt.Fprintln(s.err, "chainwale: --news needs an earlier report: --against FILE")
		return ended(statusInput)
	}
	go engine.Prepare() // beside the reading of the plan
	ctx := context.Background()
	h := v.newHall(v.Plan, v.Root)
	defer h.close()
	h.warm(ctx, v.Plan)
	p, on, problems, err := v.load(s)
	if err != nil {
		return err
	}
	o := engine.Options{Version: version, On: on, RefuseFrom: finding.Grade(v.RefuseFrom), All: v.All, Root: v.Root, Packs: v.Pack}
	if p != nil {
		o.Standards, problems = h.named(ctx, p)
	}
	if len(problems) > 0 {
		return v.refuse(s, engine.NotJudged(v.Plan, problems, o))
	}
	judged, err := engine.Check(ctx, p, o)
	if err != nil {
		return err
	}
	refused, err := v.compare(&judged)
	if err != nil {
		fmt.Fprintf(s.err, "chainwale: %s: %v\n", v.Against, err)
		return ended(statusInput)
	}
	status := statusOf(judged, refused)
	if err := v.print(s, judged, systemOf(p), status); err != nil {
		return err
	}
	return ended(status)
}

// statusOf is the exit status of a report.
func statusOf(r finding.Report, refused bool) int {
	switch {
	case len(r.Problems) > 0 || r.Fault:
		return statusFault
	case refused:
		return statusFindings
	}
	return statusDone
}

// compare lays an earlier report beside this one, where one is named, and tells
// whether the plan is refused. An error is a fault of that file.
func (v checkVerb) compare(r *finding.Report) (refused bool, err error) {
	if v.Against == "" {
		return r.Refused(), nil
	}
	src, err := readEarlier(v.Against)
	if err != nil {
		return false, err
	}
	earlier, err := accept.Earlier(src, r.Boat)
	if err != nil {
		return false, err
	}
	c := accept.Against(*r, earlier)
	r.Against = c.ForReport(v.Against, src)
	if v.News {
		return c.Refused(r.RefuseAt), nil
	}
	return r.Refused(), nil
}

// mostReport is more than a report takes.
const mostReport = 64 << 20

// readEarlier reads an earlier report. What is no ordinary file is not read: a pipe
// would make us wait.
func readEarlier(name string) ([]byte, error) {
	info, err := os.Stat(name)
	switch {
	case err != nil:
		return nil, plainError(err)
	case !info.Mode().IsRegular():
		return nil, fmt.Errorf("this is no ordinary file; a report in JSON is wanted")
	case info.Size() > mostReport:
		return nil, fmt.Errorf("the file is larger than any report")
	}
	return os.ReadFile(name)
}

// refuse prints the problems of a plan that could not be judged.
func (v checkVerb) refuse(s streams, r finding.Report) error {
	if v.As == "text" {
		if err := render.Text(s.err, r, quantity.Metric); err != nil {
			return err
		}
		return ended(statusInput)
	}
	if err := v.print(s, r, quantity.Metric, statusInput); err != nil {
		return err
	}
	return ended(statusInput)
}

// print writes the report. A renderer writes line by line, and a system call for
// each would take longer than the judging.
func (v checkVerb) print(s streams, r finding.Report, system quantity.System, status int) error {
	out := bufio.NewWriterSize(s.out, 1<<14)
	if err := v.render(out, r, system, status); err != nil {
		return err
	}
	return out.Flush()
}

func (v checkVerb) render(out io.Writer, r finding.Report, system quantity.System, status int) error {
	switch v.As {
	case "json":
		return render.JSON(out, r)
	case "sarif":
		return render.SARIF(out, r, status)
	case "junit":
		return render.JUnit(out, r)
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
	if len(problems) == 0 && empty(p) {
		problems = nothingToJudge(a.Plan)
	}
	if len(problems) > 0 {
		return nil, on, problems, nil
	}
	return p, on, nil, nil
}

// empty tells whether a plan names no part at all.
func empty(p *plan.Plan) bool {
	return len(p.Stays)+len(p.Fittings)+len(p.Contacts)+len(p.Records) == 0
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

// plainError is an error of the file system without the name, which stands before it.
func plainError(err error) error {
	var detail *fs.PathError
	if errors.As(err, &detail) {
		return detail.Err
	}
	return err
}
