package rule

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strings"
	"testing"
	"testing/fstest"
)

// TestBadFolders is what can be wrong with a pack as a whole.
func TestBadFolders(t *testing.T) {
	head := func(s string) *fstest.MapFile { return &fstest.MapFile{Data: []byte(s)} }
	without := func(s, old string) string { return strings.Replace(s, old, "", 1) }
	tests := []struct {
		name  string
		files fstest.MapFS
		want  string
	}{
		{"no folder", fstest.MapFS{}, "my:1:1: the folder can't be read: file does not exist"},
		{"no pack.yaml", fstest.MapFS{"p/a.yaml": head(goodRule)},
			"my/pack.yaml:1:1: the pack has no pack.yaml | a file pack.yaml with id, edition and title"},
		{"no rules", fstest.MapFS{"p/pack.yaml": head(goodHead), "p/README.md": head("#")},
			"my/pack.yaml:1:1: the pack has no rules | a YAML file for each rule beside it, or changes to rules of other packs"},
		{"a rule further down", packOf(goodRule, "more/b.yaml", goodRule),
			"my/more/b.yaml:1:1: a rule in a folder of its own is not read | put it beside pack.yaml"},
		{"the same id twice", packOf(goodRule, "b.yml", "# a comment\n"+goodRule),
			"my/b.yml:2:5: the rule a-rule stands in my/a.yaml already | an id of its own for each rule"},
		{"keys of pack.yaml", packOf(goodRule, "pack.yaml", "id: Try\nedition:\nauthr: me\nnot_covered: boats\n"),
			"my/pack.yaml:1:1: pack.yaml lacks the key title | title: what the pack judges, in a few words\n" +
				"my/pack.yaml:1:5: \"Try\" is no name for pack.yaml | small letters and digits with hyphens between, as in plate-outlasts-wire\n" +
				"my/pack.yaml:2:9: edition is empty\n" +
				"my/pack.yaml:3:1: pack.yaml has no key \"authr\" | did you mean author?\n" +
				"my/pack.yaml:4:14: not_covered holds a text | a list, each entry after a hyphen or all of them in [ ]"},
		{"all at once", packOf(strings.Replace(without(goodRule, "title: The plate is thick\n"), "0.5 * hole", "0.5 * hol + stay.brek_load", 1),
			"b.yaml", strings.Replace(goodRule, "id: a-rule", "id: b", 1)+"colour: red\n", "c.yaml", "x: [\n", "pack.yaml", "id: try\n"),
			"my/a.yaml:1:1: a rule lacks the key title | title: what is so when the rule holds, as a sentence: The plate is stronger than the wire it holds\n" +
				"my/a.yaml:8:21: there is no fact \"hol\" on a landing | did you mean hole?\n" +
				"my/a.yaml:8:27: there is no fact \"stay.brek_load\" on a landing | did you mean stay.break_load?\n" +
				"my/b.yaml:24:1: a rule has no key \"colour\" | one of id, title, on, applies_if, have, bands, at_least, at_most, above, below, true_that, else, if_unknown, holds_up, says, because, vary, known, decides, examples\n" +
				"my/c.yaml:2:1: not YAML: did not find expected node content\n" +
				"my/pack.yaml:1:1: pack.yaml lacks the key edition | edition: the edition of the pack: a year, a date or a number. It changes whenever a limit does\n" +
				"my/pack.yaml:1:1: pack.yaml lacks the key title | title: what the pack judges, in a few words"},
	}
	for _, test := range tests {
		p, problems := loadAll(t, test.files)
		if got := lines(problems); got != test.want || p != nil {
			t.Errorf("%s:\n%s\nwant\n%s", test.name, got, test.want)
		}
	}
}

// TestFolderItself: a pack may be the root of its file system, as one is that a
// user names by its folder. Hidden folders, an editor's or a version control's,
// are no part of it.
func TestFolderItself(t *testing.T) {
	files := fstest.MapFS{"pack.yaml": {Data: []byte(goodHead)}, "a.yaml": {Data: []byte(goodRule)}, ".git/b.yaml": {Data: []byte("x")}}
	here, problems := Load(files, ".", "my", catalogue(t), LoadOptions{})
	if here == nil {
		t.Fatal(lines(problems))
	}
	there, _ := loadAll(t, packOf(goodRule))
	if here.Hash != there.Hash || here.Rules[0].At != there.Rules[0].At {
		t.Errorf("%s at %v, %s at %v", here.Hash, here.Rules[0].At, there.Hash, there.Rules[0].At)
	}
	if p, problems := Load(packOf(goodRule), "./p/", "my", catalogue(t), LoadOptions{}); p == nil {
		t.Error(lines(problems))
	}
}

func TestPlacesWithoutALabel(t *testing.T) {
	_, problems := Load(packOf("x: 1\n"), "p", "", catalogue(t), LoadOptions{})
	if len(problems) == 0 || problems[0].At.File != "a.yaml" {
		t.Errorf("%+v", problems)
	}
}

// TestWindowsLinesAndAMark: line ends of two characters and a byte order mark
// change no place.
func TestWindowsLinesAndAMark(t *testing.T) {
	bad := strings.Replace(goodRule, "0.5 * hole", "|\n      0.5\n      * holee", 1)
	_, plain := loadAll(t, packOf(bad))
	_, windows := loadAll(t, packOf("\ufeff"+strings.ReplaceAll(bad, "\n", "\r\n")))
	if len(plain) != 1 || lines(plain) != lines(windows) || plain[0].At.Line != 11 || plain[0].At.Column != 9 {
		t.Errorf("%s\n%s", lines(plain), lines(windows))
	}
}

// TestHashIsOverPathLengthAndBytes spells the recipe out.
func TestHashIsOverPathLengthAndBytes(t *testing.T) {
	p, problems := loadAll(t, packOf(goodRule, "notes.txt", "not part of it"))
	if p == nil {
		t.Fatal(lines(problems))
	}
	var all string
	for _, f := range []struct{ path, data string }{{"a.yaml", goodRule}, {"pack.yaml", goodHead}} {
		all += fmt.Sprintf("%s\x00%d\x00%s", f.path, len(f.data), f.data)
	}
	sum := sha256.Sum256([]byte(all))
	if want := "sha256:" + hex.EncodeToString(sum[:]); p.Hash != want {
		t.Errorf("hash %s, want %s", p.Hash, want)
	}
	other, _ := loadAll(t, packOf(goodRule+"# changed\n"))
	if other == nil || other.Hash == p.Hash {
		t.Error("a changed byte does not change the hash")
	}
}

func TestSchemaIsNotNeededToRefuse(t *testing.T) {
	bad := strings.Replace(goodRule, "because:", "why:", 1)
	_, with := Load(packOf(bad), "p", "my", catalogue(t), LoadOptions{})
	_, without := Load(packOf(bad), "p", "my", catalogue(t), LoadOptions{SkipSchema: true})
	if len(with) == 0 || lines(with) != lines(without) {
		t.Errorf("with:\n%s\nwithout:\n%s", lines(with), lines(without))
	}
}
