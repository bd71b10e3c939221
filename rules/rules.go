// Package rules holds the rule packs that come with the program: a folder a
// pack, a file a rule. They are embedded as they stand here, so that what a
// surveyor reads is what judges.
package rules

import (
	"embed"

	"go.yaml.in/yaml/v4"
)

// FS holds the packs, one folder each.
//
//go:embed */*.yaml
var FS embed.FS

// Packs lists the folders, in the order in which they judge.
func Packs() []string {
	return []string{"strength", "edges", "corrosion", "intervals", "fabrication", "match", "mounting", "rig", "standing"}
}

// tree is what YAML makes of a file, without the examples.
type tree struct {
	path string
	root *yaml.Node
}

// Tree gives the nodes of one of the files, nil if there is none. They lie in the
// program as they are: nothing is read at start. They must not be changed.
func Tree(path string) *yaml.Node {
	for i := range trees {
		if trees[i].path == path {
			return trees[i].root
		}
	}
	return nil
}
