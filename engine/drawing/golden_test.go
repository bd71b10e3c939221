package drawing

import (
	"bytes"
	"os"
	"testing"
)

// TestGolden compares the files of one part with those of testdata, which are there to
// be opened and looked at: a change of a byte is a decision.
func TestGolden(t *testing.T) {
	for _, w := range writers {
		var b bytes.Buffer
		if err := w.write(&b, chainplate(t)); err != nil {
			t.Fatal(err)
		}
		name := "testdata/cp-01" + w.ending
		if os.Getenv("UPDATE") != "" {
			if err := os.WriteFile(name, b.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(b.Bytes(), want) {
			t.Errorf("%s differs from what is written now; look at both, and if that is meant, UPDATE=1 takes the new one", name)
		}
	}
}
