// Command chainwale-en1993 serves the standard of plugins/en1993 as a process of its own.
package main

import (
	"fmt"
	"os"

	"chainwale/plugins"
	"chainwale/plugins/en1993"
)

func main() {
	s, err := en1993.Standard()
	if err != nil {
		fmt.Fprintf(os.Stderr, "chainwale-en1993: %v\n", err)
		os.Exit(1)
	}
	plugins.Serve(s)
}
