package main

import (
	"fmt"
	"strings"
	"testing/fstest"

	facts "chainwale/engine/fact"
	"chainwale/engine/rule"
)

// pack writes the trials as a rule pack and loads it, as a surveyor's own pack is
// loaded. A rule has to be seen to hold, to fail and to be at a loss, so each takes
// its examples out of the rows, by what the function written by hand says.
func pack(c *facts.Catalogue, rows []landing) (*rule.Pack, error) {
	files := fstest.MapFS{"pack.yaml": {Data: []byte("id: trials\nedition: \"1\"\ntitle: Rules for measuring\n")}}
	for _, t := range trials {
		text, err := t.file(rows)
		if err != nil {
			return nil, err
		}
		files[t.id+".yaml"] = &fstest.MapFile{Data: []byte(text)}
	}
	p, problems := rule.Load(files, ".", "trials", c, rule.LoadOptions{})
	if len(problems) > 0 {
		first := problems[0]
		return nil, fmt.Errorf("%s:%d:%d: %s; %s", first.At.File, first.At.Line, first.At.Column, first.Message, first.Expected)
	}
	return p, nil
}

// file is the rule as a file of a pack.
func (t trial) file(rows []landing) (string, error) {
	limit := fmt.Sprintf("have: %s\n%s: %s\n", t.have, t.verb, t.limit)
	if t.condition != "" {
		limit = fmt.Sprintf("true_that: %s\n", t.condition)
	}
	holds, fails := t.example(rows, true), t.example(rows, false)
	if holds == "" || fails == "" {
		return "", fmt.Errorf("%s does the same on all rows", t.id)
	}
	return fmt.Sprintf(`id: %s
title: %[1]s
on: landing
%selse: watch
says: it does not
because: it is measured
known: [{ source: this benchmark, as: judgement }]
decides: [rigger]
examples:
  - { with: { %s }, outcome: holds }
  - { with: { %s }, outcome: fails }
  - { with: {}, outcome: cannot tell }
`, t.id, limit, holds, fails), nil
}

// example writes the first row on which the rule holds or doesn't, "" if none is so.
func (t trial) example(rows []landing, holds bool) string {
	for i := range rows {
		if t.byHand(&rows[i]) != holds {
			continue
		}
		var with []string
		for f := range rows[i].facts() {
			with = append(with, strings.TrimSpace(fmt.Sprintf("%s: %v %s", f.name, f.value, f.unit)))
		}
		return strings.Join(with, ", ")
	}
	return ""
}
