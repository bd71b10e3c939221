package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"strings"

	"chainwale/engine/fact"
	"chainwale/engine/near"
	"chainwale/engine/rulebook"
)

type packFactsVerb struct {
	Kind string `arg:"" optional:"" help:"The kind of thing: stay, fitting, landing …; without it, all kinds with their own facts."`
	As   string `help:"How to print: text or json." enum:"text,json" default:"text"`
}

// Run prints the reference.
func (v packFactsVerb) Run(s streams) error {
	c, err := packCatalogue()
	if err != nil {
		return err
	}
	kinds := c.Kinds
	if v.Kind != "" {
		k := c.Kind(strings.NewReplacer(" ", "_", "-", "_").Replace(v.Kind))
		if k == nil {
			fmt.Fprintf(s.err, "chainwale: %s\n", noSuchKind(c, v.Kind))
			return ended(statusInput)
		}
		kinds = []*fact.Kind{k}
	}
	if v.As == "json" {
		return factsJSON(s.out, kinds)
	}
	var out bytes.Buffer
	for i, k := range kinds {
		if i > 0 {
			fmt.Fprintln(&out)
		}
		kindText(&out, k, v.Kind != "")
	}
	if v.Kind == "" {
		fmt.Fprintf(&out, "\nWith a kind, as in chainwale pack facts landing, its neighbours' facts are listed as well.\n")
	}
	_, err = s.out.Write(out.Bytes())
	return err
}

// noSuchKind says what kinds there are, the nearest first if one is near.
func noSuchKind(c *fact.Catalogue, kind string) string {
	var names []string
	for _, k := range c.Kinds {
		names = append(names, k.Name)
	}
	if meant := near.Words(kind, names, 1); len(meant) > 0 {
		return fmt.Sprintf("there is no kind %q; did you mean %s?", kind, meant[0])
	}
	return fmt.Sprintf("there is no kind %q; there are %s", kind, strings.Join(names, ", "))
}

// kindText writes a kind with its facts; with those of its neighbours if all is asked.
func kindText(out *bytes.Buffer, k *fact.Kind, all bool) {
	fmt.Fprintf(out, "%s: %s\n", k.Name, k.Means)
	if len(k.Neighbours) > 0 {
		fmt.Fprintf(out, "  reads its neighbours by name: %s\n", strings.Join(neighbourNames(k), ", "))
	}
	for _, s := range k.Slots {
		if all || own(k, s.Name) {
			factText(out, s)
		}
	}
}

// neighbourNames are the names with a dot behind, as they stand before a fact.
func neighbourNames(k *fact.Kind) []string {
	var names []string
	for _, n := range k.Neighbours {
		names = append(names, n+".…")
	}
	return names
}

// own tells whether a name is of the kind itself and not of a neighbour.
func own(k *fact.Kind, name string) bool {
	return !slices.ContainsFunc(k.Neighbours, func(n string) bool { return strings.HasPrefix(name, n+".") })
}

// factText writes one fact: its name, its unit or words, what it means, and where it
// comes from.
func factText(out *bytes.Buffer, s fact.Slot) {
	fmt.Fprintf(out, "  %s (%s)\n      %s\n      %s\n", s.Name, rulebook.Unit(s.Column), s.Means, origin(s))
}

// origin says where a fact comes from: out of the plan, and how it is measured, or
// worked out.
func origin(s fact.Slot) string {
	if s.Standard != "" {
		return "derived by " + s.Standard + ", where the plan names the standard"
	}
	if s.From == "" {
		return "worked out, or looked up"
	}
	text := "from the plan: " + s.From
	if s.Tool != "" {
		text += "; taken with: " + s.Tool
	}
	if s.Where != "" {
		text += "; where: " + s.Where
	}
	return text
}

// kindJSON is a kind for a program.
type kindJSON struct {
	Kind       string     `json:"kind"`
	Means      string     `json:"means"`
	Neighbours []string   `json:"neighbours"`
	Facts      []factJSON `json:"facts"`
}

type factJSON struct {
	Name  string   `json:"name"`
	Own   bool     `json:"own"`
	Sort  string   `json:"sort"`
	Unit  string   `json:"unit"`
	Words []string `json:"words"`
	Means string   `json:"means"`
	From  string   `json:"from"`
	Tool  string   `json:"tool"`
	Where string   `json:"where"`
}

// sorts are the sorts of facts as programs read them.
var sorts = map[fact.Sort]string{fact.IsNumber: "number", fact.IsWord: "word", fact.IsYesNo: "yes or no"}

// factsJSON writes kinds with all that their rules may read.
func factsJSON(w io.Writer, kinds []*fact.Kind) error {
	list := []kindJSON{}
	for _, k := range kinds {
		j := kindJSON{Kind: k.Name, Means: k.Means, Neighbours: append([]string{}, k.Neighbours...), Facts: []factJSON{}}
		for _, s := range k.Slots {
			j.Facts = append(j.Facts, factJSON{
				Name: s.Name, Own: own(k, s.Name), Sort: sorts[s.Sort], Unit: s.Dimension.Unit(), Words: append([]string{}, s.Words...),
				Means: s.Means, From: s.From, Tool: s.Tool, Where: s.Where,
			})
		}
		list = append(list, j)
	}
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	out.SetIndent("", "  ")
	return out.Encode(struct {
		Chainwale string     `json:"chainwale"`
		Kinds     []kindJSON `json:"kinds"`
	}{version, list})
}
