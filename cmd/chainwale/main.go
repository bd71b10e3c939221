// Command chainwale reads a sailboat's refit plan and says, before metal is cut,
// what fails, what can't be told and what would mend it.
package main

import (
	"os"
	"runtime/debug"
)

// gcPercent lets the heap grow to five times what is in use before memory is
// collected. A run lasts a twentieth of a second and takes ten megabytes: the
// default would collect twice in it for nothing.
const gcPercent = 400

func main() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(gcPercent)
	}
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}
