package quantity

// Row is a row of the table of units, for tests from outside.
type Row struct {
	Name      string
	Dimension Dimension
	Source    string
}

// Rows are all rows of the table of units.
func Rows() []Row {
	var rows []Row
	for i := range units {
		rows = append(rows, Row{units[i].name(), units[i].dimension, units[i].source})
	}
	return rows
}

// Named are all dimensions that have a name.
func Named() []Dimension {
	var all []Dimension
	for _, n := range named {
		all = append(all, n.dimension)
	}
	return all
}
