package main

import (
	"context"
	"strings"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/reckon"
	"chainwale/engine/standard"
)

// clauseFormula makes a formula of a clause of a standard, named by the standard's id
// and the clause.
func clauseFormula(words []string) (*reckon.Formula, func(), error) {
	nothing := func() {}
	if len(words) < 2 {
		return nil, nothing, badInput("a standard and one of its clauses are wanted", "reckon clause STANDARD CLAUSE, for example reckon clause asme-bth-1 3-3.3.4")
	}
	ctx := context.Background()
	h := standardArgs{}.newHall(here, ".")
	if p := h.unknown(words[0], finding.Place{}); p != nil {
		return nil, nothing, badInput(p.Message, p.Expected)
	}
	s, err := h.get(ctx, words[0])
	var d standard.Description
	if err == nil {
		d, err = describe(ctx, h, words[0])
	}
	if err != nil {
		h.close()
		return nil, nothing, err
	}
	f, err := reckon.Clause(ctx, s, d, strings.Join(words[1:], " "), means)
	if err != nil {
		h.close()
		return nil, nothing, err
	}
	return f, h.close, nil
}

// means is what a fact of a kind is, in words.
func means(kind, name string) string {
	c, err := fact.TheCatalogue()
	if err != nil {
		return name
	}
	if k := c.Kind(kind); k != nil {
		if slot, ok := k.SlotOf(name); ok {
			return k.Slots[slot].Means
		}
	}
	return name
}
