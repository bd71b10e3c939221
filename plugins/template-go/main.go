// My-standard is a design standard for chainwale as a program of its own: a template
// for one in Go. Copy the folder, change the line replace in go.mod to where chainwale
// lies, and write what your standard says into standard.go and clause1.go.
package main

import (
	"fmt"
	"os"

	"chainwale/plugins"
)

func main() {
	s, err := book.Standard()
	if err != nil {
		fmt.Fprintln(os.Stderr, "the book is at fault:", err)
		os.Exit(1)
	}
	plugins.Serve(s)
}
