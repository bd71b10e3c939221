// Outside lists the programs that tests check against and no one here wrote:
// each with its version, or that the tests did without it. Under CI a missing
// one is a failure. With -missing it prints the Debian packages that would bring
// those which are not here, and nothing else.
package main

import (
	"fmt"
	"os"
	"slices"
	"strings"

	"chainwale/testdata/outside/tool"
)

func main() {
	if slices.Contains(os.Args[1:], "-missing") {
		printMissing()
		return
	}
	missing := 0
	for _, t := range tool.All() {
		if !t.Here() {
			missing++
			fmt.Printf("%-8s did without; it checks %s (Debian package %s)\n", t.Name, t.For, t.Package)
			continue
		}
		said, err := t.Said()
		if err != nil {
			said = fmt.Sprintf("is here but does not run: %v", err)
			missing++
		}
		fmt.Printf("%-8s %s; it checks %s\n", t.Name, said, t.For)
	}
	if missing > 0 && os.Getenv("CI") != "" {
		os.Exit(1)
	}
}

// printMissing prints what would have to be installed, a package a line.
func printMissing() {
	for _, t := range tool.All() {
		if !t.Here() {
			fmt.Println(strings.ReplaceAll(t.Package, ", ", "\n"))
		}
	}
}
