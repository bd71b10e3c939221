package engine

import (
	"fmt"
	"strings"

	"chainwale/engine/fact"
	"chainwale/engine/rule"
)

// reportCautions stand in every report; the first line opens it.
func reportCautions() []string {
	return []string{
		"chainwale advises. It is no survey and no approval: a qualified rigger, surveyor, naval architect and local code decide.",
		"No finding is not the same as safe. What was not seen and not checked is listed.",
		"Strengths assume metal to its specification. Old metal may be cracked where nothing shows, and a calculation does not inspect.",
		"Never take a stay off, go aloft or ease a loaded line on the strength of this report alone: a mast with stays off needs its own plan and a rigger.",
	}
}

// SheetCautions stand on a workings sheet.
func SheetCautions() []string {
	c := reportCautions()
	return []string{c[0], c[2]}
}

// notCovered lists what a pack says it does not judge.
func notCovered(p *rule.Pack) []string {
	if len(p.NotCovered) == 0 {
		return nil
	}
	return []string{fmt.Sprintf("%s does not judge %s", p.ID, strings.Join(p.NotCovered, "; "))}
}

// unseen lists the fittings that no record says anybody has drawn and looked at,
// and those of which nobody can have seen what holds them.
func unseen(facts *fact.Facts) []string {
	list := []string{}
	for _, f := range facts.Fittings {
		switch {
		case f.State.Is("kept") && f.GlassedIn.Yes():
			list = append(list, f.Name+": glassed in, so nobody has seen its bolts or the metal between them")
		case f.State.Is("kept") && !f.Seen:
			list = append(list, f.Name+": no record says that it was drawn and looked at")
		}
	}
	return append(list, unsaid(facts)...)
}

// unsaid lists what the rules that ask for it first could not look at: a plan that says
// nothing of it is not judged on it, and the report says so.
func unsaid(facts *fact.Facts) []string {
	list := []string{}
	ends, elsewhere := 0, 0
	for _, s := range facts.Stays {
		if s.MastTold.Yes() && s.HoldsMast.No() && !s.Role.Is("bobstay") && !s.Role.Is("whisker") {
			elsewhere++
		}
		if s.TurnbuckleTold.No() || s.TerminalsTold.No() {
			ends++
		}
	}
	if ends > 0 {
		list = append(list, fmt.Sprintf("turnbuckles and terminals: the plan says nothing of them, or not of both, on %d of %d stays", ends, len(facts.Stays)))
	}
	if elsewhere > 0 {
		list = append(list, fmt.Sprintf("another mast: %d of %d stays end on it, and neither its wires nor an order of work on it are judged", elsewhere, len(facts.Stays)))
	}
	switch m := facts.Mast; {
	case len(facts.Stays) == 0:
	case m.Told.No():
		list = append(list, "the mast: the plan says nothing of it or of the boat's righting moment, so whether the wires suit the boat was not judged")
	case !m.KnownBy.Known():
		list = append(list, "the righting moment: the plan does not say it, so whether the wires suit the boat was not judged")
	}
	return list
}
