// Package rules holds the rule packs that come with the program: a folder a
// pack, a file a rule. They are embedded as they stand here, so that what a
// surveyor reads is what judges.
package rules

import "embed"

// FS holds the packs, one folder each.
//
//go:embed */*.yaml
var FS embed.FS

// Packs lists the folders, in the order in which they judge.
func Packs() []string {
	return []string{"strength", "edges", "corrosion", "intervals", "fabrication", "mounting"}
}
