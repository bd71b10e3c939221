package clauses

import "chainwale/engine/standard"

// Row is one subject as a clause reads it.
type Row struct {
	columns []standard.Column
	row     int
}

func (r Row) column(name string) *standard.Column {
	for i := range r.columns {
		if r.columns[i].Name == name {
			return &r.columns[i]
		}
	}
	return &standard.Column{}
}

// Known tells whether a read is known in this row.
func (r Row) Known(name string) bool {
	c := r.column(name)
	_, number := c.Number(r.row)
	_, word := c.Word(r.row)
	return number || word
}

func (r Row) knows(names []string) bool {
	for _, name := range names {
		if !r.Known(name) {
			return false
		}
	}
	return true
}

// Number is a number that is known, 0 if it is not: name it in From, or ask Known first.
func (r Row) Number(name string) float64 {
	n, _ := r.column(name).Number(r.row)
	return n
}

// Word is a word that is known, "" if it is not.
func (r Row) Word(name string) string {
	w, _ := r.column(name).Word(r.row)
	return w
}

// Yes tells whether a yes or no is known to be a yes.
func (r Row) Yes(name string) bool {
	n, known := r.column(name).Number(r.row)
	return known && n == 1
}
