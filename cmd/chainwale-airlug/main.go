// Command chainwale-airlug serves the standard of plugins/airlug as a process of its own.
package main

import (
	"fmt"
	"os"

	"chainwale/plugins"
	"chainwale/plugins/airlug"
)

func main() {
	s, err := airlug.Standard()
	if err != nil {
		fmt.Fprintf(os.Stderr, "chainwale-airlug: %v\n", err)
		os.Exit(1)
	}
	plugins.Serve(s)
}
