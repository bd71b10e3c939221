package sheet

import (
	"embed"
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
)

//go:embed data/*.csv
var data embed.FS

// csvRow is one row of a table, by the heads of its columns.
type csvRow struct {
	cells map[string]string
	file  string
	err   *error
}

// readTable reads a table; its rows note what can't be read in err.
func readTable(file string, err *error) (heads []string, rows []csvRow) {
	f, openErr := data.Open("data/" + file)
	if openErr != nil {
		*err = openErr
		return nil, nil
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	all, readErr := r.ReadAll()
	if readErr != nil || len(all) < 2 {
		*err = fmt.Errorf("table %s can't be read: %w", file, readErr)
		return nil, nil
	}
	for _, line := range all[1:] {
		row := csvRow{map[string]string{}, file, err}
		for i, head := range all[0] {
			row.cells[head] = line[i]
		}
		rows = append(rows, row)
	}
	return all[0], rows
}

// number is a cell as a number, NaN if it is empty.
func (r csvRow) number(head string) float64 {
	text, ok := r.cells[head]
	if ok && text == "" {
		return math.NaN()
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil && *r.err == nil {
		*r.err = fmt.Errorf("table %s, column %s: %q is no number", r.file, head, text)
	}
	return v
}

// upTo is a cell that ends a range; an empty one has no end.
func (r csvRow) upTo(head string) float64 {
	if v := r.number(head); !math.IsNaN(v) {
		return v
	}
	return math.Inf(1)
}
