package fact

import "chainwale/engine/table"

// Prepare reads the tables that facts are looked up in, for whoever has something
// else to do meanwhile: they are read once, when first asked for, and that is a
// good part of a short run. A fault in a table is told by whoever asks for a row.
func Prepare() {
	_, _ = table.Metals()
	_, _ = table.Wires()
	_, _ = table.Threads()
	_, _ = table.BoltGrades()
	_, _ = table.ClevisPins()
	_, _ = table.GalvanicSeries()
}
