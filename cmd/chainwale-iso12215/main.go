// Command chainwale-iso12215 serves the standard of plugins/iso12215 as a process of
// its own. Its one argument is the user's file of licensed values.
package main

import (
	"fmt"
	"os"

	"chainwale/plugins"
	"chainwale/plugins/iso12215"
)

func main() {
	values := ""
	if len(os.Args) > 1 {
		values = os.Args[1]
	}
	s, err := iso12215.Standard(values)
	if err != nil {
		fmt.Fprintf(os.Stderr, "chainwale-iso12215: %v\n", err)
		os.Exit(1)
	}
	plugins.Serve(s)
}
