package reckon

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"chainwale/engine/near"
	"chainwale/engine/quantity"
	"chainwale/engine/standard"
	"chainwale/engine/working"
)

// Clause makes a formula of one clause of a design standard: its inputs are the
// facts that the clause reads, each by the last part of its name where that is
// enough, its results the facts that the clause derives. A clause that the standard
// does not cover is a *Refusal with its reason, and with those that it does.
//
// means says in words what a fact of a kind is.
func Clause(ctx context.Context, s standard.Standard, d standard.Description, clause string, means func(kind, fact string) string) (*Formula, error) {
	table, derives := clauseOf(d, clause)
	if len(derives) == 0 {
		return nil, noClause(d, clause)
	}
	c := &clauseFormula{ctx: ctx, standard: s, description: d, table: table, derives: derives, names: shortNames(table), means: means}
	f := &Formula{
		Name:  "clause " + d.ID + " " + clause,
		Title: d.Title + ", " + clause,
		Holds: why(d, clause),
		run:   c.run,
	}
	for _, r := range table.Reads {
		if c.reads(r.Name) {
			f.Inputs = append(f.Inputs, c.input(r))
		}
	}
	for _, fact := range derives {
		dimension, ok := quantity.DimensionOf(fact.Unit)
		if !ok {
			return nil, fmt.Errorf("standard %s derives %s in %q, which is no canonical unit", d.ID, fact.Name, fact.Unit)
		}
		out := Output{Name: fact.Name, Gives: Amount, Dimension: dimension, Sometimes: true, Means: fact.Meaning}
		if dimension == quantity.Bare {
			out.Gives = Share
		}
		f.Results = append(f.Results, out)
	}
	return f, nil
}

// clauseFormula asks a standard for one row.
type clauseFormula struct {
	ctx         context.Context
	standard    standard.Standard
	description standard.Description
	table       standard.Table
	derives     []standard.Derive
	names       map[string]string
	means       func(kind, fact string) string
}

// clauseOf finds the table and the facts of a clause.
func clauseOf(d standard.Description, clause string) (standard.Table, []standard.Derive) {
	for _, t := range d.Tables {
		var derives []standard.Derive
		for _, f := range t.Derives {
			if alike(f.Clause, clause) {
				derives = append(derives, f)
			}
		}
		if len(derives) > 0 {
			return t, derives
		}
	}
	return standard.Table{}, nil
}

func why(d standard.Description, clause string) string {
	for _, c := range d.Clauses {
		if alike(c.Clause, clause) {
			return c.Why
		}
	}
	return ""
}

// noClause says why a clause can't be asked.
func noClause(d standard.Description, clause string) error {
	var covered []string
	for _, c := range d.Clauses {
		if c.Covered {
			covered = append(covered, c.Clause)
		}
	}
	p := Problem{Why: fmt.Sprintf("%s has no clause %s", d.ID, clip(clause)), Expected: join(covered, "or")}
	if text := why(d, clause); text != "" {
		p.Why = fmt.Sprintf("%s does not cover clause %s: %s", d.ID, clause, text)
	} else if nearest := near.Words(clause, covered, 3); len(nearest) > 0 {
		p.Expected = join(nearest, "or")
	}
	return &Refusal{Problems: []Problem{p}}
}

// shortNames gives each read the last part of its name, or all of it where two
// would be called alike.
func shortNames(t standard.Table) map[string]string {
	short := func(name string) string { return name[strings.LastIndex(name, ".")+1:] }
	times := map[string]int{}
	for _, r := range t.Reads {
		times[plain(short(r.Name))]++
	}
	names := map[string]string{}
	for _, r := range t.Reads {
		names[r.Name] = short(r.Name)
		if times[plain(short(r.Name))] > 1 {
			names[r.Name] = r.Name
		}
	}
	return names
}

// reads tells whether the clause needs a fact. A read that no fact of the table
// says it can't do without may serve any of them.
func (c *clauseFormula) reads(name string) bool {
	anywhere := false
	for _, f := range c.table.Derives {
		if slices.Contains(f.From, name) {
			anywhere = true
			if alike(f.Clause, c.derives[0].Clause) {
				return true
			}
		}
	}
	return !anywhere
}

// needed tells whether each of the clause's facts does without a read.
func (c *clauseFormula) needed(name string) bool {
	return slices.ContainsFunc(c.derives, func(f standard.Derive) bool { return slices.Contains(f.From, name) })
}

// clauseExamples are likely values by unit.
var clauseExamples = map[string]string{"": "1.4", "mm": "12 mm", "N": "42 kN", "MPa": "205 MPa", "deg": "5 deg", "N mm": "90 N m"}

func (c *clauseFormula) input(r standard.Read) Input {
	in := Input{Name: c.names[r.Name], Takes: Named, Example: "stainless", Means: c.means(c.table.Kind, r.Name), Optional: !c.needed(r.Name)}
	switch r.Type {
	case standard.YesNo:
		in.Takes, in.Example = YesNo, "yes"
	case standard.Number:
		in.Dimension, _ = quantity.DimensionOf(r.Unit)
		in.Takes, in.Example = Amount, clauseExamples[r.Unit]
		if in.Example == "" {
			in.Example = "1 " + r.Unit
		}
	}
	return in
}

func (c *clauseFormula) run(in *inputs) (outcome, error) {
	columns := make([]standard.Column, len(c.table.Reads))
	for i, r := range c.table.Reads {
		columns[i] = c.column(in, r)
	}
	q := standard.Question{Kind: c.table.Kind, Rows: 1, Columns: columns}
	answer, err := c.standard.Derive(c.ctx, q)
	if err == nil {
		err = standard.CheckAnswer(c.table, q, answer)
	}
	if err != nil {
		return outcome{}, err
	}
	return c.outcome(q, answer)
}

// column is one read as the inputs give it.
func (c *clauseFormula) column(in *inputs, r standard.Read) standard.Column {
	name := c.names[r.Name]
	given := c.reads(r.Name) && in.has(name)
	if r.Type == standard.Word {
		column := standard.NewWords(r.Name, 1)
		if given {
			column.GiveWord(0, in.word(name))
		}
		return column
	}
	column := standard.NewNumbers(r.Name, 1)
	switch {
	case given && r.Type == standard.YesNo && in.yes(name):
		column.Give(0, 1)
	case given && r.Type == standard.YesNo:
		column.Give(0, 0)
	case given:
		column.Give(0, in.number(name))
	}
	return column
}

// outcome takes the clause's facts out of the answer. Where the clause gives none,
// it does not cover these inputs.
func (c *clauseFormula) outcome(q standard.Question, a standard.Answer) (outcome, error) {
	found := outcome{results: map[string]any{}}
	for i, f := range c.table.Derives {
		if !alike(f.Clause, c.derives[0].Clause) {
			continue
		}
		number, known := a.Columns[i].Number(0)
		if !known {
			continue
		}
		steps, err := c.standard.Working(c.ctx, standard.Asked{Kind: q.Kind, Fact: f.Name, Columns: q.Columns})
		if err != nil {
			return outcome{}, err
		}
		found.results[f.Name] = number
		found.add(steps)
	}
	found.why = c.reasons(a, len(found.results) < len(c.derives))
	if len(found.results) > 0 {
		return found, nil
	}
	return outcome{}, beyond(errors.New(found.why))
}

// reasons are why the clause gives not all of its facts, "" if it does.
func (c *clauseFormula) reasons(a standard.Answer, missing bool) string {
	var reasons []string
	for _, n := range a.NotCovered {
		if alike(n.Clause, c.derives[0].Clause) && !slices.Contains(reasons, n.Why) {
			reasons = append(reasons, n.Why)
		}
	}
	if missing && len(reasons) == 0 {
		return "what it reads is not all given"
	}
	return strings.Join(reasons, "; ")
}

// add notes steps, each once: several facts of a clause share their first ones.
func (o *outcome) add(steps []working.Step) {
	for _, s := range steps {
		if !slices.ContainsFunc(o.working, func(t working.Step) bool { return t.Symbol == s.Symbol && t.Formula == s.Formula && t.Value == s.Value }) {
			o.working = append(o.working, s)
		}
	}
}
