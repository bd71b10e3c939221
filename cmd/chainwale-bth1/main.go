// Command chainwale-bth1 serves the standard of plugins/bth1 as a process of its own.
package main

import (
	"fmt"
	"os"

	"chainwale/plugins"
	"chainwale/plugins/bth1"
)

func main() {
	s, err := bth1.Standard()
	if err != nil {
		fmt.Fprintf(os.Stderr, "chainwale-bth1: %v\n", err)
		os.Exit(1)
	}
	plugins.Serve(s)
}
