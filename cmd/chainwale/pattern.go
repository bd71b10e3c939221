package main

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"strings"

	"chainwale/engine"
	"chainwale/engine/drawing"
	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/pattern"
)

type patternVerb struct {
	planArgs
	Out    string  `help:"The folder that the drawings go into; what a person changed there is left alone." required:"" placeholder:"DIR"`
	Paper  string  `help:"The paper of drawings and templates: a4 or letter." enum:"a4,letter" default:"a4"`
	ScaleX float64 `name:"scale-x" help:"Stretch templates across the paper, to undo what a printer does: 150 over what its 150 mm ruler measures." default:"1"`
	ScaleY float64 `name:"scale-y" help:"The same along the paper." default:"1"`
}

// Run draws the patterns of a plan.
func (v patternVerb) Run(s streams) error {
	p, on, problems, err := v.load(s)
	if err != nil {
		return err
	}
	if p == nil {
		return refusePlan(s, v.Plan, problems, engine.Options{Version: version, On: on, RefuseFrom: finding.Mend})
	}
	catalogue, err := fact.TheCatalogue()
	if err != nil {
		return err
	}
	facts, err := fact.Build(catalogue, p, on)
	if err != nil {
		return err
	}
	parts, gaps := pattern.Of(p, facts)
	files, err := v.draw(parts, p.File)
	if err != nil {
		fmt.Fprintf(s.err, "chainwale: %v; nothing was written\n", err)
		return ended(statusInput)
	}
	beside, err := v.write(s, files)
	if err != nil {
		return err
	}
	fmt.Fprintf(s.out, "%s of %s, made %s; check the plan and the first part before the rest is cut.\n",
		counted(len(parts), "pattern", "patterns"), p.Boat.Name.Value, counted(copies(parts), "time", "times"))
	fmt.Fprintln(s.out, "Cut edges are sharp, and a press does not stop for a hand: eyes, gloves off moving tools, and the shop's own rules. chainwale advises; a qualified rigger, naval architect and local code decide.")
	if len(gaps) > 0 {
		return listProblems(s, gaps)
	}
	if beside {
		return ended(statusFindings)
	}
	return nil
}

func copies(parts []pattern.Part) (n int) {
	for _, p := range parts {
		n += p.Quantity()
	}
	return n
}

// drawn is one file before it is written.
type drawn struct {
	name    string
	content []byte
}

// draw makes all files before any is written, so that one part that can't be drawn
// leaves nothing half done.
func (v patternVerb) draw(parts []pattern.Part, plan string) ([]drawn, error) {
	paper, err := drawing.PaperNamed(v.Paper)
	if err != nil {
		return nil, err
	}
	var files []drawn
	for _, part := range parts {
		d := partToDraw(part, plan)
		sheets := []struct {
			name  string
			write func(io.Writer) error
		}{
			{".dxf", func(w io.Writer) error { return drawing.DXF(w, d, drawing.DXFOptions{Version: drawing.R2000}) }},
			{"-r12.dxf", func(w io.Writer) error { return drawing.DXF(w, d, drawing.DXFOptions{Version: drawing.R12}) }},
			{"-cut.dxf", func(w io.Writer) error {
				return drawing.DXF(w, d, drawing.DXFOptions{Version: drawing.R12, CutOnly: true})
			}},
			{".svg", func(w io.Writer) error { return drawing.SVG(w, d) }},
			{"-folded.svg", func(w io.Writer) error { return drawing.FoldedSVG(w, d) }},
			{"-drawing.pdf", func(w io.Writer) error { return drawing.DrawingPDF(w, d, drawing.PDFOptions{Paper: paper}) }},
			{"-template.pdf", func(w io.Writer) error {
				return drawing.TemplatePDF(w, d, drawing.TemplateOptions{Paper: paper, ScaleX: v.ScaleX, ScaleY: v.ScaleY})
			}},
		}
		for _, f := range sheets {
			var content bytes.Buffer
			if err := f.write(&content); err != nil {
				return nil, fmt.Errorf("%s: %w", place(part.At), err)
			}
			files = append(files, drawn{fileName(part.Name) + f.name, content.Bytes()})
		}
	}
	return files, nil
}

// fileName is a part's name as a file can have it.
func fileName(name string) string {
	return strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>|`, r) || r < ' ' {
			return '-'
		}
		return r
	}, strings.TrimLeft(name, "."))
}

// write writes the files and says where each is; beside tells that one stands beside a
// file that a person changed.
func (v patternVerb) write(s streams, files []drawn) (beside bool, err error) {
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
		fmt.Fprintln(s.out, made.name)
	}
	return beside, nil
}

// partToDraw is a pattern in the words of a drawing.
func partToDraw(p pattern.Part, plan string) drawing.Part {
	d := drawing.Part{
		Name: p.Name, Title: strings.TrimSpace(p.State + " " + p.Kind), Plan: plan, Flat: p.Flat,
		Metal: metalWords(p), Certificate: certificateWords(p), Finish: p.Finish,
		Edges:      "break all edges, no burr; no scratch or stamp across the strip",
		Tolerances: []string{"cut contour within 0.5 mm, hole to hole within 0.2 mm", "folds within 1 deg of the angle, at the line within 0.5 mm"},
		Notes:      []string{"first part only: hold the rest until it is released", "made for: " + copyWords(p)},
		Warnings:   p.Warnings, Press: pressSteps(p),
	}
	hands(&d, p)
	for _, h := range p.Holes {
		use := drawing.HoleUse{Role: h.Role + " hole", Fastener: h.Fastener}
		switch {
		case h.Made == pattern.Cut:
			if h.Role == "pin" && d.Datum == 0 {
				d.Datum = len(d.Holes)
			}
			d.Holes = append(d.Holes, use)
		case h.Made == pattern.AfterFolding && h.Placed:
			d.Later = append(d.Later, drawing.LaterHole{Hole: h.Hole, HoleUse: use})
		default:
			d.Notes = append(d.Notes, strings.TrimSpace("drilled at the boat: "+use.Role+" "+h.Name))
		}
	}
	return d
}

func metalWords(p pattern.Part) string {
	words := []string{p.Metal.Name, p.Metal.Condition}
	if p.Grain != "" {
		words = append(words, "fold lines "+p.Grain+" the rolling")
	}
	return strings.Join(nonEmpty(words), ", ")
}

func certificateWords(p pattern.Part) string {
	if p.Metal.Certificate == "" {
		return "a mill certificate with heat number goes with the part"
	}
	return p.Metal.Certificate
}

func nonEmpty(words []string) (kept []string) {
	for _, w := range words {
		if w != "" {
			kept = append(kept, w)
		}
	}
	return kept
}

func copyWords(p pattern.Part) string {
	var words []string
	for _, c := range p.Copies {
		words = append(words, strings.TrimSpace(c.Boat+" "+c.Fitting)+" ("+string(c.Hand)+")")
	}
	return strings.Join(words, ", ")
}

// hands counts what is made as drawn and what with every fold the other way.
func hands(d *drawing.Part, p pattern.Part) {
	for _, c := range p.Copies {
		if c.Hand == pattern.OtherHand {
			d.OtherHand++
			d.OppositeHand = c.Side
			continue
		}
		d.Quantity++
		if c.Hand == pattern.AsDrawn {
			d.Hand = c.Side
		}
	}
}

// pressSteps are the folds in the order in which they are pressed; as they stand where
// no order is known.
func pressSteps(p pattern.Part) []drawing.Press {
	var steps []drawing.Press
	add := func(fold int) {
		step := drawing.Press{Fold: fold}
		if a := p.Folds[fold-1].Press; a != nil && !math.IsNaN(a.Least) {
			step.From, step.To = a.Least, a.Most
		}
		steps = append(steps, step)
	}
	if len(p.Orders) > 0 {
		for _, s := range p.Orders[0].Steps {
			add(s.Fold)
		}
		return steps
	}
	for i := range p.Folds {
		add(i + 1)
	}
	return steps
}
