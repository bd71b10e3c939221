// Write writes the plans of an invented fleet under a folder:
//
//	go run ./testdata/fleet/write -boats 1000 -form mixed DIR
package main

import (
	"flag"
	"fmt"
	"os"

	"chainwale/testdata/fleet"
)

func main() {
	boats := flag.Int("boats", 1000, "how many plans are written")
	seed := flag.Uint64("seed", 1, "what the fleet is drawn by; the same seed writes the same bytes")
	form := flag.String("form", string(fleet.Mixed), "yaml, json or mixed")
	faulty := flag.Float64("faulty", 0.15, "the share of boats with faults")
	unreadable := flag.Float64("unreadable", 0, "the share of files that are no plan")
	templates := flag.Float64("templates", 0.3, "the share of plans that build on their class")
	flag.Parse()
	if flag.NArg() != 1 {
		fmt.Fprintln(os.Stderr, "write: one folder is wanted")
		os.Exit(2)
	}
	o := fleet.Options{Seed: *seed, Form: fleet.Form(*form), Faulty: *faulty, Unreadable: *unreadable, Templates: *templates}
	if err := fleet.Write(flag.Arg(0), *boats, o); err != nil {
		fmt.Fprintln(os.Stderr, "write:", err)
		os.Exit(1)
	}
}
