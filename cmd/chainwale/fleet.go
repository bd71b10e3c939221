package main

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"strings"
	"sync"

	"chainwale/engine"
	"chainwale/engine/finding"
	"chainwale/engine/fleet"
	"chainwale/engine/plan"
)

// worstBoats is how many of the worst boats the summary names.
const worstBoats = 10

type fleetVerb struct {
	Plans      []string `arg:"" help:"Plans, and folders of plans."`
	On         string   `help:"The day that ages are judged on, YYYY-MM-DD; today if left out." placeholder:"DAY"`
	Root       string   `help:"The folder under which templates must lie; if left out, the folder that is named, or a plan's own." placeholder:"DIR"`
	As         string   `help:"How to print: text, or json with a line a boat." enum:"text,json" default:"text"`
	RefuseFrom string   `help:"The mildest grade that refuses a plan (status 1): stop, mend or watch." enum:"stop,mend,watch" default:"mend"`
	Part       string   `help:"Judge one part of the fleet only, for example 2/8, the second of eight." placeholder:"I/N"`
	Pack       []string `help:"A folder of a rule pack that judges as well; may stand several times." placeholder:"DIR"`
	standardArgs
}

// Help is what the verb's own help says beyond its flags.
func (fleetVerb) Help() string {
	return `In a folder, every YAML or JSON file with a key chainwale is a plan, except those that other plans build on. What is passed over is said. A template and a rule pack are read once a run, however many boats they are for: what somebody writes into them meanwhile counts in the next. A plan that can't be read does not stop the others; the exit status is the highest of the boats', and 2 if a plan could not be read.`
}

// Run judges a fleet.
func (v fleetVerb) Run(s streams) error {
	on, err := day(v.On)
	if err != nil {
		fmt.Fprintf(s.err, "chainwale: %v\n", err)
		return ended(statusInput)
	}
	found := fleet.Find(v.Plans, v.Root)
	boats, err := v.part(found.Boats)
	if err != nil {
		fmt.Fprintf(s.err, "chainwale: --part %v\n", err)
		return ended(statusInput)
	}
	if len(found.Boats) == 0 && len(found.Problems) == 0 {
		fmt.Fprintf(s.err, "chainwale: there is no plan in %s\n", strings.Join(v.Plans, ", "))
		return ended(statusInput)
	}
	debug.SetMemoryLimit(fleetMemory)
	run := &fleetRun{verb: v, streams: s, roots: map[string]string{}, halls: map[string]*hall{}, byFolder: map[string]*hall{}, out: bufio.NewWriterSize(s.out, 1<<16), adder: fleet.NewAdder(worstBoats), templates: plan.NewTemplates(), names: map[string]string{},
		options: engine.Options{Version: version, On: on, RefuseFrom: finding.Grade(v.RefuseFrom), Packs: v.Pack, Kept: engine.NewKept()}}
	defer run.close()
	return run.all(found, boats)
}

// fleetMemory is what the memory of a run is kept below, garbage and all.
const fleetMemory = 250 << 20

// part are the boats that fall to this run.
func (v fleetVerb) part(boats []fleet.Boat) ([]fleet.Boat, error) {
	if v.Part == "" {
		return boats, nil
	}
	i, n, err := fleet.ReadPart(v.Part)
	if err != nil {
		return nil, err
	}
	var names []string
	of := map[string]fleet.Boat{}
	for _, b := range boats {
		name := filepath.ToSlash(b.File)
		names, of[name] = append(names, name), b
	}
	mine, err := fleet.Part(i, n, names)
	if err != nil {
		return nil, err
	}
	part := []fleet.Boat{}
	for _, name := range mine {
		part = append(part, of[name])
	}
	return part, nil
}

// fleetRun is one run over a fleet.
type fleetRun struct {
	verb    fleetVerb
	streams streams
	options engine.Options
	out     *bufio.Writer
	adder   *fleet.Adder
	roots   map[string]string
	// templates are those that boats build on, each read once.
	templates *plan.Templates
	// names tells which file a boat's name stands in, and again who has another's.
	names map[string]string
	again []string

	mu    sync.Mutex
	halls map[string]*hall
	// byFolder remembers which hall is a folder's.
	byFolder map[string]*hall
}

// judged is what a worker made of a boat.
type judged struct {
	report finding.Report
	class  string
	status int
	fault  error
}

// all judges the boats and sums up.
func (r *fleetRun) all(found fleet.Found, boats []fleet.Boat) error {
	var names []string
	for _, b := range boats {
		names = append(names, b.File)
		r.roots[b.File] = b.Root
	}
	if err := fleet.Each(context.Background(), runtime.GOMAXPROCS(0), names, r.judge, r.tell); err != nil {
		return err
	}
	if err := r.sum(found); err != nil {
		return err
	}
	if err := r.out.Flush(); err != nil {
		return err
	}
	status := r.adder.Summary().Status
	if len(found.Problems) > 0 || len(r.again) > 0 {
		status = max(status, statusInput)
	}
	return ended(status)
}

// judge judges one boat. Whatever goes wrong on the way is that boat's, and the
// others go on.
func (r *fleetRun) judge(ctx context.Context, file string) (j judged) {
	defer func() {
		if e := recover(); e != nil {
			j.fault = fmt.Errorf("%s: the program broke down on this plan: %v", file, e)
		}
	}()
	p, problems, err := plan.Load(file, plan.Options{Root: r.roots[file], Templates: r.templates})
	if err != nil {
		return judged{fault: fmt.Errorf("%s: %w", file, err)}
	}
	if p != nil && len(problems) == 0 && empty(p) {
		problems = nothingToJudge(file)
	}
	o := r.options
	o.Root = r.roots[file]
	if len(problems) == 0 {
		o.Standards, problems = r.hallOf(file).named(ctx, p)
	}
	if len(problems) > 0 {
		return judged{report: engine.NotJudged(file, problems, o), status: statusInput}
	}
	report, err := engine.Check(ctx, p, o)
	if err != nil {
		return judged{fault: fmt.Errorf("%s: %w", file, err)}
	}
	return judged{report: report, class: p.Boat.Class.Value, status: statusOf(report, report.Refused())}
}

// hallOf is where the standards of a plan are got from. Folders for which the same
// files count share one, so that no standard runs twice.
func (r *fleetRun) hallOf(file string) *hall {
	r.mu.Lock()
	defer r.mu.Unlock()
	folder := filepath.Dir(file)
	if h := r.byFolder[folder]; h != nil {
		return h
	}
	h := r.verb.newHall(file, r.roots[file])
	key := h.files()
	if same := r.halls[key]; same != nil {
		h = same
	}
	r.halls[key], r.byFolder[folder] = h, h
	return h
}

func (r *fleetRun) close() {
	for _, h := range r.halls {
		h.close()
	}
}

// fleetFinding is a finding as the line of a boat has it.
type fleetFinding struct {
	Rule        string          `json:"rule"`
	Outcome     finding.Outcome `json:"outcome"`
	Grade       finding.Grade   `json:"grade"`
	Subject     string          `json:"subject"`
	At          finding.Place   `json:"at"`
	Message     string          `json:"message"`
	Accepted    bool            `json:"accepted"`
	Fingerprint string          `json:"fingerprint"`
}

// tell prints a boat's line as soon as all before it are printed.
func (r *fleetRun) tell(file string, j judged) error {
	if j.fault != nil {
		j.report = engine.NotJudged(file, []finding.Problem{{At: finding.Place{File: file, Line: 1, Column: 1}, Message: j.fault.Error(), Expected: "tell whoever keeps chainwale"}}, r.options)
		j.status = statusFault
	}
	line := r.adder.Add(j.report, j.class, j.status)
	r.note(file, j.report)
	if r.verb.As != "json" {
		if _, err := fmt.Fprintln(r.out, line.Text()); err != nil {
			return err
		}
		if err := r.reasons(j.report); err != nil {
			return err
		}
		return r.out.Flush()
	}
	told := struct {
		fleet.Line
		Findings []fleetFinding `json:"findings"`
	}{line, []fleetFinding{}}
	for i := range j.report.Findings {
		f := &j.report.Findings[i]
		told.Findings = append(told.Findings, fleetFinding{f.Rule, f.Outcome, f.Grade, f.Subject, f.At, f.Message, f.Accepted != nil, f.Fingerprint})
	}
	if err := r.line(told); err != nil {
		return err
	}
	return r.out.Flush() // as it goes: whoever waits for the line gets it
}

// fewReasons is how many of the findings that refuse a boat are printed below its line.
const fewReasons = 3

// reasons prints the worst of what refuses a boat, each with its place; chainwale
// check has them all.
func (r *fleetRun) reasons(report finding.Report) error {
	var refusing []*finding.Finding
	for i := range report.Findings {
		if f := &report.Findings[i]; f.Refuses(report.RefuseAt) {
			refusing = append(refusing, f)
		}
	}
	for _, f := range refusing[:min(len(refusing), fewReasons)] {
		if _, err := fmt.Fprintf(r.out, "    %s: %s, %s: %s [%s]\n", place(f.At), f.Grade, f.Outcome, f.Message, f.Rule); err != nil {
			return err
		}
	}
	if more := len(refusing) - fewReasons; more > 0 {
		_, err := fmt.Fprintf(r.out, "    and %d more\n", more)
		return err
	}
	return nil
}

// note remembers a boat's name, and says so where another boat has it.
func (r *fleetRun) note(file string, report finding.Report) {
	if !report.Judged() || report.Boat == "" {
		return
	}
	if first, taken := r.names[report.Boat]; taken {
		r.again = append(r.again, fmt.Sprintf("%s:1:1: the boat is called %s, as that in %s is; a name of its own, or one file too many", file, report.Boat, first))
		return
	}
	r.names[strings.Clone(report.Boat)] = file // the name alone: it is a piece of the plan's whole text
}

func (r *fleetRun) line(v any) error {
	enc := json.NewEncoder(r.out)
	enc.SetEscapeHTML(false)
	return enc.Encode(v)
}

// sum prints what the fleet adds up to, and what was not looked at.
func (r *fleetRun) sum(found fleet.Found) error {
	for _, p := range found.Problems {
		fmt.Fprintf(r.streams.err, "%s: %s; %s\n", place(p.At), p.Message, p.Expected)
	}
	for _, again := range r.again {
		fmt.Fprintln(r.streams.err, again)
	}
	if len(found.Templates) > 0 {
		fmt.Fprintf(r.streams.err, "Judged only with the boats that build on them: %s\n", some(found.Templates))
	}
	if len(found.PassedOver) > 0 {
		fmt.Fprintf(r.streams.err, "Passed over, for want of a key chainwale: %s\n", some(found.PassedOver))
	}
	summary := r.adder.Summary()
	if r.verb.As == "json" {
		return r.line(struct {
			Summary fleet.Summary `json:"summary"`
		}{summary})
	}
	if _, err := fmt.Fprintln(r.out); err != nil {
		return err
	}
	return summary.WriteText(r.out)
}

// some lists a few names, and how many there are beyond.
func some(names []string) string {
	const few = 5
	if len(names) <= few {
		return strings.Join(names, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(names[:few], ", "), len(names)-few)
}
