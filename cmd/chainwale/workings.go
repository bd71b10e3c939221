package main

import (
	"context"
	"fmt"
	"strings"
	"time"

	"chainwale/engine"
	"chainwale/engine/finding"
	"chainwale/engine/render"
)

type workingsVerb struct {
	planArgs
	Fitting string `arg:"" help:"The id of a fitting; of two alike, port and starboard, both are printed."`
	As      string `help:"How to print: text or json." enum:"text,json" default:"text"`
	standardArgs
}

// Run prints the sheet behind one fitting.
func (v workingsVerb) Run(s streams) error {
	p, on, problems, err := v.load(s)
	if err != nil {
		return err
	}
	ctx := context.Background()
	h := v.newHall(v.Plan, v.Root)
	defer h.close()
	var standards []engine.Named
	if p != nil {
		standards, problems = h.named(ctx, p)
	}
	if len(problems) > 0 {
		return refusePlan(s, v.Plan, problems, engine.Options{Version: version, On: on, RefuseFrom: finding.Mend})
	}
	subjects, near, faults, err := engine.Behind(ctx, p, v.Fitting, on, standards)
	if err != nil {
		return err
	}
	if len(subjects) == 0 {
		fmt.Fprintf(s.err, "chainwale: no fitting of %s is called %s; near: %s\n", v.Plan, v.Fitting, strings.Join(near, ", "))
		return ended(statusInput)
	}
	sheet := render.NewSheet(v.Fitting, subjects)
	sheet.Chainwale, sheet.Plan, sheet.On, sheet.Cautions = version, v.Plan, on.Format(time.DateOnly), engine.SheetCautions()
	write := func() error { return sheet.Text(s.out, systemOf(p)) }
	if v.As == "json" {
		write = func() error { return sheet.JSON(s.out) }
	}
	if err := write(); err != nil {
		return err
	}
	for _, fault := range faults {
		fmt.Fprintf(s.err, "chainwale: %s\n", fault)
	}
	if len(faults) > 0 {
		return ended(statusFault)
	}
	return nil
}
