package main

import (
	"bufio"
	"cmp"
	"context"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	"chainwale/engine"
	"chainwale/engine/finding"
	"chainwale/engine/near"
	"chainwale/engine/quantity"
	"chainwale/engine/render"
	"chainwale/engine/standard"
	"chainwale/plugins"
	"chainwale/plugins/host"
)

type standardVerb struct {
	List    standardList    `cmd:"" help:"List the standards that can be asked: those of the program and those that are trusted."`
	Show    standardShow    `cmd:"" help:"Show what a standard covers, reads and derives, and by which rules it judges."`
	Compare standardCompare `cmd:"" help:"Set what several standards say of each fitting of a plan side by side."`
	Trust   standardTrust   `cmd:"" help:"Show what somebody else's standard declares, and pin its files."`
	Serve   standardServe   `cmd:"" hidden:"" help:"Serve a standard of the program to chainwale itself."`
}

// here is the folder that standards are looked up from where no plan is named.
const here = "plan.yaml"

type standardList struct {
	As      string `help:"How to print: text or json." enum:"text,json" default:"text"`
	Trusted string `help:"The file that says which standards of others may run; trusted.yaml here if left out." placeholder:"FILE"`
}

// Run lists the standards.
func (v standardList) Run(s streams) error {
	ctx := context.Background()
	h := standardArgs{Trusted: v.Trusted}.newHall(here, ".")
	defer h.close()
	var list []render.StandardListed
	for _, b := range builtInStandards {
		list = append(list, listed(ctx, h, b.id, "comes with the program"))
	}
	t, problems := h.trusted()
	if len(problems) > 0 {
		return listProblems(s, problems)
	}
	for _, e := range t.Entries {
		list = append(list, listed(ctx, h, e.ID, "trusted by "+t.Name))
	}
	if v.As == "json" {
		return render.StandardsJSON(s.out, list)
	}
	return render.StandardsText(s.out, list)
}

// listed is one standard of the list; one that can't be asked says why.
func listed(ctx context.Context, h *hall, id, from string) render.StandardListed {
	l := render.StandardListed{ID: id, From: from}
	d, err := describe(ctx, h, id)
	if err != nil {
		l.Fault = standard.Why(err)
		return l
	}
	l.Title, l.Edition, l.Basis, l.Hash = d.Title, d.Edition, string(d.Basis), d.Hash()
	return l
}

func describe(ctx context.Context, h *hall, id string) (standard.Description, error) {
	s, err := h.get(ctx, id)
	if err != nil {
		return standard.Description{}, err
	}
	d, err := s.Describe(ctx)
	if err == nil {
		err = standard.CheckDescription(d)
	}
	return d, err
}

// listProblems says what is wrong with a file of the user's.
func listProblems(s streams, problems []finding.Problem) error {
	for _, p := range problems {
		fmt.Fprintf(s.err, "%s: %s\n", place(p.At), p.Message)
		if p.Expected != "" {
			fmt.Fprintf(s.err, "    %s\n", p.Expected)
		}
	}
	return ended(statusInput)
}

type standardShow struct {
	ID      string `arg:"" help:"The standard's id."`
	Apart   bool   `help:"Run it as a process of its own, even if it comes with the program."`
	Trusted string `help:"The file that says which standards of others may run; trusted.yaml here if left out." placeholder:"FILE"`
	As      string `help:"How to print: text or json." enum:"text,json" default:"text"`
}

// Run shows one standard.
func (v standardShow) Run(s streams) error {
	ctx := context.Background()
	h := standardArgs{Apart: v.Apart, Trusted: v.Trusted}.newHall(here, ".")
	defer h.close()
	if p := h.unknown(v.ID, finding.Place{}); p != nil {
		fmt.Fprintf(s.err, "chainwale: %s; %s\n", p.Message, p.Expected)
		return ended(statusInput)
	}
	d, err := describe(ctx, h, v.ID)
	if err != nil {
		fmt.Fprintf(s.err, "chainwale: the standard %s does not answer rightly: %s\n", v.ID, standard.Why(err))
		return ended(statusFault)
	}
	rules, err := engine.RulesOf(d)
	if err != nil {
		fmt.Fprintf(s.err, "chainwale: the standard %s does not answer rightly: %s\n", v.ID, standard.Why(err))
		return ended(statusFault)
	}
	if v.As == "json" {
		return render.StandardJSON(s.out, d, rules)
	}
	return render.StandardText(s.out, d, rules)
}

type standardCompare struct {
	planArgs
	standardArgs
	As string `help:"How to print: text, json or csv." enum:"text,json,csv" default:"text"`
}

// Run sets the standards side by side: those that are named, or else all that come
// with the program and need no file of the user's.
func (v standardCompare) Run(s streams) error {
	p, on, problems, err := v.load(s)
	if err != nil {
		return err
	}
	if p == nil {
		return refusePlan(s, v.Plan, problems, engine.Options{Version: version, On: on, RefuseFrom: finding.Mend})
	}
	if len(v.Standard)+len(p.Standards)+len(p.MustMeet) == 0 {
		for _, b := range builtInStandards {
			if b.values == "" {
				v.Standard = append(v.Standard, b.id)
			}
		}
	}
	ctx := context.Background()
	h := v.newHall(v.Plan, v.Root)
	defer h.close()
	named, problems := h.named(ctx, p)
	if len(problems) > 0 {
		return refusePlan(s, v.Plan, problems, engine.Options{Version: version, On: on, RefuseFrom: finding.Mend})
	}
	c, err := engine.Compare(ctx, p, named, on)
	if err != nil {
		return err
	}
	if err := v.print(s.out, c, systemOf(p)); err != nil {
		return err
	}
	if slices.ContainsFunc(c.Standards, func(said finding.StandardSaid) bool { return said.Fault != "" }) {
		return ended(statusFault)
	}
	return nil
}

func (v standardCompare) print(w io.Writer, c finding.SideBySide, system quantity.System) error {
	switch v.As {
	case "json":
		return render.SideBySideJSON(w, c)
	case "csv":
		return render.SideBySideCSV(w, c)
	}
	return render.SideBySideText(w, c, system)
}

// refusePlan prints the problems of a plan that nothing was made of.
func refusePlan(s streams, file string, problems []finding.Problem, o engine.Options) error {
	if err := render.Text(s.err, engine.NotJudged(file, problems, o), quantity.Metric); err != nil {
		return err
	}
	return ended(statusInput)
}

type standardTrust struct {
	File    string   `arg:"" help:"The program that serves the standard."`
	Arg     []string `help:"An argument that the program is started with; may stand several times." placeholder:"WORD"`
	TLS     bool     `help:"Both sides show certificates; the program must know how."`
	Trusted string   `help:"The file that is written; trusted.yaml here if left out." placeholder:"FILE"`
	Sum     string   `help:"Pin without asking, if the program's files have this sum." placeholder:"sha256:…"`
}

// Help is what the verb's own help says beyond its flags.
func (standardTrust) Help() string {
	return `The program is run once, in an empty folder and with a clean environment. What it declares is shown, with the sums of all files of its folder; nothing is pinned until somebody answers yes at a terminal, or names the sum by --sum. A program that is trusted can do all that you can: look at it first.`
}

// Run shows what a program declares and pins it.
func (v standardTrust) Run(s streams) error {
	declared, err := host.Declare(context.Background(), v.File, v.Arg, v.TLS, host.Limits{})
	if err != nil {
		fmt.Fprintf(s.err, "chainwale: %v\n", err)
		return ended(statusFault)
	}
	if _, ours := builtInCalled(declared.Description.ID); ours {
		fmt.Fprintf(s.err, "chainwale: the program calls itself %s, as a standard of chainwale's own is called: change the standard\n", declared.Description.ID)
		return ended(statusFault)
	}
	rules, err := engine.RulesOf(declared.Description)
	if err != nil {
		fmt.Fprintf(s.err, "chainwale: the standard %s does not answer rightly: %s\n", declared.Description.ID, standard.Why(err))
		return ended(statusFault)
	}
	if err := v.show(s.out, declared, rules); err != nil {
		return err
	}
	agreed, err := v.agreed(s, declared.Sum)
	if err != nil || !agreed {
		return cmp.Or(err, error(ended(statusFindings)))
	}
	file := cmp.Or(v.Trusted, host.TrustedName)
	if err := host.Pin(file, declared.Program); err != nil {
		return err
	}
	fmt.Fprintf(s.out, "%s is trusted, in %s.\n", declared.Description.ID, file)
	return nil
}

func (v standardTrust) show(w io.Writer, d host.Declared, rules []finding.Ruled) error {
	if err := render.StandardText(w, d.Description, rules); err != nil {
		return err
	}
	fmt.Fprintf(w, "\nFiles of its folder\n")
	for _, name := range slices.Sorted(maps.Keys(d.Program.Files)) {
		fmt.Fprintf(w, "  %s  %s\n", name, d.Program.Files[name])
	}
	_, err := fmt.Fprintf(w, "\nSum of all: %s\n", d.Sum)
	return err
}

// agreed tells whether somebody wants the program pinned.
func (v standardTrust) agreed(s streams, sum string) (bool, error) {
	switch {
	case v.Sum == sum:
		return true, nil
	case v.Sum != "":
		fmt.Fprintf(s.err, "chainwale: the sum is %s, not %s; nothing was pinned\n", sum, v.Sum)
		return false, ended(statusInput)
	case !isTerminal(s.in):
		fmt.Fprintf(s.err, "chainwale: nothing was pinned; to pin it, give --sum %s or answer at a terminal\n", sum)
		return false, nil
	}
	fmt.Fprintf(s.err, "Pin it? A pinned program runs as you. Type yes: ")
	answer, err := bufio.NewReader(s.in).ReadString('\n')
	if err != nil && err != io.EOF {
		return false, err
	}
	return strings.TrimSpace(answer) == "yes", nil
}

type standardServe struct {
	ID     string `arg:""`
	Values string `arg:"" optional:""`
}

// Run serves a standard that comes with the program, until chainwale ends it.
func (v standardServe) Run(s streams) error {
	b, ok := builtInCalled(v.ID)
	if !ok {
		var ids []string
		for _, b := range builtInStandards {
			ids = append(ids, b.id)
		}
		fmt.Fprintf(s.err, "chainwale: no standard of the program is called %s; near: %s\n", v.ID, strings.Join(near.Words(v.ID, ids, 3), ", "))
		return ended(statusInput)
	}
	made, err := b.make(v.Values)
	if err != nil {
		return err
	}
	plugins.Serve(made)
	return nil
}
