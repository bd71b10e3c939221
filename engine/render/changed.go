package render

import "chainwale/engine/finding"

// changed lists what packs have made otherwise in the rules of others: a limit that
// somebody moved must not look like the program's own.
func (t *text) changed(packs []finding.PackUsed) {
	var list []string
	for _, p := range packs {
		list = append(list, p.Changed...)
	}
	t.list("Rules that were changed", list)
}

// standards lists the design standards that judged.
func (t *text) standards(used []finding.StandardUsed) {
	var list []string
	for _, s := range used {
		line := s.ID
		if s.Edition != "" {
			line += ", edition " + s.Edition
		}
		if s.Hash != "" {
			line += ", " + s.Hash[:min(len(s.Hash), len("sha256:")+12)]
		}
		list = append(list, line)
	}
	t.list("Standards that were asked", list)
}
