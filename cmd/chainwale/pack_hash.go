package main

import "fmt"

type packHashVerb struct{ packArg }

// Run prints the hash of the pack and the pack's name, as reports have them.
func (v packHashVerb) Run(s streams) error {
	pack, _, err := v.load(s)
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(s.out, "%s  %s, edition %s\n", pack.Hash, pack.ID, pack.Edition)
	return err
}
