package rulebook

import (
	"fmt"
	"io"
	"slices"
	"strings"
)

// cell is a cell of a table: words, and after them code. One that links leads to the
// rule of that name.
type cell struct {
	Words, Code string
	link        bool
}

func words(text string) cell      { return cell{Words: oneLine(text)} }
func code(expression string) cell { return cell{Code: oneLine(expression)} }

// Link tells whether the cell leads to a rule.
func (c cell) Link() bool { return c.link }

func (c cell) empty() bool { return c.Words == "" && c.Code == "" }

// markdown is the cell as Markdown. A bar would end the cell, even within code.
func (c cell) markdown() string {
	text := prose(c.Words)
	if c.Code != "" {
		span := codeSpan(c.Code)
		if c.link {
			span = "[" + span + "](#" + c.Code + ")"
		}
		text = strings.TrimLeft(text+" "+span, " ")
	}
	return strings.ReplaceAll(text, "|", `\|`)
}

// table is a table. A column that is empty all the way down is left out.
type table struct {
	Caption string
	Head    []string
	rows    [][]cell
}

func (t *table) row(cells ...cell) { t.rows = append(t.rows, cells) }

// Columns are the heads of the columns that have something in them.
func (t table) Columns() []string { return kept(t, t.Head) }

// Rows are the rows without the columns that have nothing in them.
func (t table) Rows() [][]cell {
	var rows [][]cell
	for _, r := range t.rows {
		rows = append(rows, kept(t, r))
	}
	return rows
}

func kept[C any](t table, row []C) []C {
	var cells []C
	for i, c := range row {
		if slices.ContainsFunc(t.rows, func(r []cell) bool { return !r[i].empty() }) {
			cells = append(cells, c)
		}
	}
	return cells
}

// markdown writes the table as Markdown.
func (t table) markdown(w io.Writer) {
	columns := t.Columns()
	fmt.Fprintf(w, "| %s |\n|%s\n", strings.Join(columns, " | "), strings.Repeat(" --- |", len(columns)))
	for _, row := range t.Rows() {
		var cells []string
		for _, c := range row {
			cells = append(cells, c.markdown())
		}
		fmt.Fprintf(w, "| %s |\n", strings.Join(cells, " | "))
	}
	fmt.Fprintln(w)
}
