package main

import (
	"fmt"
	"io"
	"slices"
	"strings"
)

// table is a table of Markdown. A column that is empty all the way down is left out.
type table struct {
	head []string
	rows [][]string
}

func (t *table) row(cells ...string) { t.rows = append(t.rows, cells) }

func (t *table) write(w io.Writer) {
	dashes := make([]string, len(t.head))
	for i := range dashes {
		dashes[i] = "---"
	}
	for _, row := range slices.Concat([][]string{t.head, dashes}, t.rows) {
		fmt.Fprintf(w, "| %s |\n", strings.Join(t.kept(row), " | "))
	}
	fmt.Fprintln(w)
}

// kept are the cells of a row that stand in columns with something in them.
func (t *table) kept(row []string) []string {
	var cells []string
	for i, cell := range row {
		if slices.ContainsFunc(t.rows, func(r []string) bool { return r[i] != "" }) {
			cells = append(cells, strings.ReplaceAll(cell, "|", `\|`))
		}
	}
	return cells
}
