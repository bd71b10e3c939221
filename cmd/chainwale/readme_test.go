package main

import (
	"bytes"
	"os"
	"strings"
	"testing"
)

// elided stands in the README for lines of the output that it leaves out.
const elided = "[…]"

// TestReadme runs the commands that the README shows and holds it to their
// output: what stands under a command must come out of it, line by line.
func TestReadme(t *testing.T) {
	t.Chdir("../..")
	readme, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	shown := 0
	for _, block := range strings.Split(string(readme), "```console\n")[1:] {
		block, _, closed := strings.Cut(block, "\n```")
		command, output, _ := strings.Cut(block, "\n")
		args, ours := strings.CutPrefix(command, "$ go run ./cmd/chainwale ")
		if !closed || !ours {
			t.Errorf("the block %q is not a command of ours with its output", command)
			continue
		}
		shown++
		var out, errs bytes.Buffer
		run(strings.Fields(args), nil, &out, &errs)
		checkShown(t, command, output, out.String()+errs.String())
	}
	if shown == 0 {
		t.Error("the README shows no command")
	}
}

func checkShown(t *testing.T, command, shown, printed string) {
	t.Helper()
	rest := printed
	for _, piece := range strings.Split(shown+"\n", "\n"+elided+"\n") {
		_, after, found := strings.Cut(rest, piece)
		if !found {
			t.Errorf("%s\ndoes not print, in this order:\n%s\nit prints:\n%s", command, piece, printed)
			return
		}
		rest = after
	}
}

// TestReadmeOrdinary holds the summary of the ordinary boats to the table that the
// judgement's own test writes.
func TestReadmeOrdinary(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	table, err := os.ReadFile("../../testdata/ordinary/table.txt")
	if err != nil {
		t.Fatal(err)
	}
	summary, _, _ := strings.Cut(string(table), "\n\n")
	if !strings.Contains(string(readme), summary) {
		t.Errorf("the README does not show this summary:\n%s", summary)
	}
}
