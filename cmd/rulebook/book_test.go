package main

import (
	"bytes"
	"os"
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
