// Command chainwale-aisc360 serves the standard of plugins/aisc360 as a process of its own.
package main

import (
	"fmt"
	"os"

	"chainwale/plugins"
	"chainwale/plugins/aisc360"
)

func main() {
	s, err := aisc360.Standard()
	if err != nil {
		fmt.Fprintf(os.Stderr, "chainwale-aisc360: %v\n", err)
		os.Exit(1)
	}
	plugins.Serve(s)
}
