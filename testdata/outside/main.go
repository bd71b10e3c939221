// Outside lists the programs that tests check against and no one here wrote:
// each with its version, or that the tests did without it. Under CI a missing
// one is a failure.
package main

import (
	"fmt"
	"os"

	"chainwale/testdata/outside/tool"
)

func main() {
	missing := 0
	for _, t := range tool.All() {
		if t.Path() == "" {
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
