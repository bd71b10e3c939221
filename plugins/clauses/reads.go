package clauses

import "chainwale/engine/standard"

// Number declares a read that is a number in a canonical unit, "" for a bare one.
func Number(name, unit string) standard.Read {
	return standard.Read{Name: name, Type: standard.Number, Unit: unit}
}

// Word declares a read that is a word.
func Word(name string) standard.Read { return standard.Read{Name: name, Type: standard.Word} }

// YesNo declares a read that is a yes or no.
func YesNo(name string) standard.Read { return standard.Read{Name: name, Type: standard.YesNo} }

// Names are the names of reads, for a fact that can't do without any of them.
func Names(reads []standard.Read) []string {
	names := make([]string, len(reads))
	for i, r := range reads {
		names[i] = r.Name
	}
	return names
}
