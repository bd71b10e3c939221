package render

import (
	"fmt"
	"slices"
	"strings"

	"chainwale/engine/finding"
)

// part is a fitting, stay or contact with its findings. Two parts with the same
// findings at the same places (a plate to port and its twin to starboard) are one.
type part struct {
	names    []string
	findings []*finding.Finding
}

// heading names the part; of twins it names both and says whose words follow.
func (p part) heading() string {
	if len(p.names) == 1 {
		return p.names[0]
	}
	last := len(p.names) - 1
	return fmt.Sprintf("%s and %s (alike; said of %s)", strings.Join(p.names[:last], ", "), p.names[last], p.names[0])
}

// byPart gathers findings by part. The report has them the worst first, so the
// parts come in the order of their worst finding.
func byPart(findings []finding.Finding) []part {
	var parts []part
	number := map[string]int{}
	for i := range findings {
		f := &findings[i]
		n, known := number[f.Part]
		if !known {
			n = len(parts)
			number[f.Part] = n
			parts = append(parts, part{names: []string{f.Part}})
		}
		parts[n].findings = append(parts[n].findings, f)
	}
	return joinTwins(parts)
}

func joinTwins(parts []part) []part {
	var joined []part
	for _, p := range parts {
		i := slices.IndexFunc(joined, func(q part) bool { return slices.EqualFunc(p.findings, q.findings, alike) })
		if i < 0 {
			joined = append(joined, p)
			continue
		}
		joined[i].names = append(joined[i].names, p.names...)
	}
	return joined
}

// alike tells whether two findings say the same of two parts that the plan
// describes in one place.
func alike(f, g *finding.Finding) bool {
	return f.Rule == g.Rule && f.Pack == g.Pack && f.At == g.At && f.Outcome == g.Outcome && f.Grade == g.Grade && sameAmount(f.Have, g.Have) && sameAmount(f.Need, g.Need) &&
		sameAcceptance(f.Accepted, g.Accepted)
}

func sameAmount(a, b *finding.Amount) bool {
	if a == nil || b == nil {
		return a == b
	}
	return *a == *b
}
