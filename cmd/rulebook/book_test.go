package main

import (
	"bytes"
	"os"
	"strings"
	"testing"
)

// TestBook holds that the rule book says what the packs say. UPDATE=1 writes it
// anew, as `go run ./cmd/rulebook` does.
func TestBook(t *testing.T) {
	t.Chdir("../..")
	want, err := write()
	if err != nil {
		t.Fatal(err)
	}
	if os.Getenv("UPDATE") != "" {
		if err := save(want); err != nil {
			t.Fatal(err)
		}
	}
	got, err := os.ReadFile(bookFile)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("%s is not what the packs say; go run ./cmd/rulebook writes it anew", bookFile)
	}
}

// TestBookIsWhole holds that no rule and nothing that a reader needs of one is left
// out of the book.
func TestBookIsWhole(t *testing.T) {
	book, err := write()
	if err != nil {
		t.Fatal(err)
	}
	packs, err := load()
	if err != nil {
		t.Fatal(err)
	}
	pages := strings.Split(string(book), "<a id=\"")
	for _, p := range packs {
		for _, r := range p.Rules {
			page := pageOf(pages, r.ID)
			parts := []string{r.Title, r.Says, oneLine(r.Because), "| if not known |", "Decides: ", "Proven by "}
			for _, b := range r.Bands {
				parts = append(parts, verbs[b.Verb]+" `"+strings.ReplaceAll(b.Limit, "|", `\|`)+"`", "| "+string(b.Else)+" |", b.AppliesIf, b.Says)
			}
			for _, k := range r.Known {
				parts = append(parts, k.Title, string(k.As), k.For)
			}
			for _, name := range r.Reads {
				parts = append(parts, "| `"+name+"` |")
			}
			for _, part := range parts {
				if !strings.Contains(page, part) {
					t.Errorf("the page of %s lacks %q", r.ID, part)
				}
			}
		}
		for _, n := range append(p.NotCovered, p.Scope, p.Author) {
			if !strings.Contains(string(book), n) {
				t.Errorf("the page of the pack %s lacks %q", p.ID, n)
			}
		}
	}
}

// pageOf is the piece of the book from a rule's anchor to the next.
func pageOf(pages []string, id string) string {
	for _, page := range pages {
		if strings.HasPrefix(page, id+"\"") {
			return page
		}
	}
	return ""
}
