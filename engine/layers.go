package engine

import (
	"fmt"
	"strings"

	"chainwale/engine/fact"
	"chainwale/engine/finding"
	"chainwale/engine/near"
)

// layer lets packs change rules of the packs before and after them, as each says
// for a reason. What does not fit is a problem, and that rule judges unchanged.
func layer(c *fact.Catalogue, judges []judging) (problems []finding.Problem) {
	done := map[string]string{}
	for _, by := range judges {
		for _, change := range by.Changes {
			owner := ownerOf(judges, change.Rule)
			switch {
			case owner < 0:
				problems = append(problems, finding.Problem{At: change.At, Message: fmt.Sprintf("no pack that judges has a rule %q", change.Rule), Expected: nearRules(judges, change.Rule)})
				continue
			case judges[owner].ID == by.ID:
				problems = append(problems, finding.Problem{At: change.At, Message: fmt.Sprintf("the rule %s is the pack's own", change.Rule), Expected: "change it in its own file"})
				continue
			case done[change.Rule] != "" && done[change.Rule] != by.ID:
				problems = append(problems, finding.Problem{At: change.At, Message: fmt.Sprintf("the rule %s is changed by the pack %s already", change.Rule, done[change.Rule]), Expected: "one pack that changes a rule"})
				continue
			}
			pack, told, wrong := judges[owner].Changed(change, c)
			if len(wrong) > 0 {
				problems = append(problems, wrong...)
				continue
			}
			done[change.Rule] = by.ID
			judges[owner].Pack = pack
			judges[owner].changed = append(judges[owner].changed, told)
		}
	}
	return problems
}

func ownerOf(judges []judging, rule string) int {
	for i, j := range judges {
		for _, r := range j.Rules {
			if r.ID == rule {
				return i
			}
		}
	}
	return -1
}

func nearRules(judges []judging, rule string) string {
	var ids []string
	for _, j := range judges {
		for _, r := range j.Rules {
			ids = append(ids, r.ID)
		}
	}
	names := near.Words(rule, ids, 3)
	if len(names) == 0 {
		return "the id of a rule, as a finding or chainwale pack print gives it"
	}
	return "did you mean " + strings.Join(names, " or ") + "?"
}
