package rule

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestFolderKeepsInside: no file is read that lies outside of a pack's folder, and
// nothing is waited for.
func TestFolderKeepsInside(t *testing.T) {
	dir := t.TempDir()
	pack := filepath.Join(dir, "pack")
	write := func(name, text string) {
		t.Helper()
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	link := func(to, name string) {
		t.Helper()
		if err := os.Symlink(to, filepath.Join(pack, name)); err != nil {
			t.Skip("no links here: ", err)
		}
	}
	if err := os.Mkdir(pack, 0o755); err != nil {
		t.Fatal(err)
	}
	write("secret.yaml", "secret: words\n")
	write("pack/pack.yaml", goodHead)
	write("pack/a.yaml", goodRule)
	link("a.yaml", "b.yaml")
	link("../secret.yaml", "c.yaml")
	link("nothing.yaml", "d.yaml")
	link("/dev/zero", "e.yaml")
	f, err := OpenFolder(pack)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	_, problems := Load(f, ".", "my", catalogue(t), LoadOptions{})
	const want = `my/b.yaml:1:5: the rule a-rule stands in my/a.yaml already | an id of its own for each rule
my/c.yaml:1:1: can't be read: this is a link that leads out of the pack's folder
my/d.yaml:1:1: can't be read: this is a link that leads nowhere
my/e.yaml:1:1: can't be read: this is a link that leads out of the pack's folder`
	if got := lines(problems); got != want {
		t.Errorf("%s", got)
	}
	for name, want := range map[string]string{"nowhere": "there is no folder of this name", "secret.yaml": "this is no folder"} {
		if _, err := OpenFolder(filepath.Join(dir, name)); err == nil || err.Error() != want {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// TestFolderIsNotReadWithoutEnd: a folder of large files is not read to its end.
func TestFolderIsNotReadWithoutEnd(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "pack.yaml"), []byte(goodHead), 0o644); err != nil {
		t.Fatal(err)
	}
	f, err := OpenFolder(dir)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	f.left = 10
	_, problems := Load(f, ".", "my", catalogue(t), LoadOptions{})
	if got := lines(problems); !strings.Contains(got, "my/pack.yaml:1:1: can't be read: the pack holds more than 64 MB") {
		t.Error(got)
	}
}
