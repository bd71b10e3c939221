// Command chainwale reads a sailboat's refit plan and says, before metal is cut,
// what fails, what can't be told and what would mend it.
package main

import "os"

func main() {
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}
