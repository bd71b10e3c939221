package sheet

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"chainwale/engine/working"
)

// saysHowKnown tells whether a text has one of the words for how a number is known.
func saysHowKnown(text string) bool {
	flat := strings.Join(strings.Fields(text), " ")
	return slices.ContainsFunc(working.AllHowKnown(), func(how working.HowKnown) bool { return strings.Contains(flat, string(how)) })
}

// TestConstantsSayHowKnown: the numbers that the press is reckoned with say how they are
// known, each for itself or a group together.
func TestConstantsSayHowKnown(t *testing.T) {
	found := 0
	for _, name := range []string{"profile.go", "bump.go"} {
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range file.Decls {
			group, ok := d.(*ast.GenDecl)
			if !ok || group.Tok != token.CONST {
				continue
			}
			said := group.Doc.Text()
			for _, s := range group.Specs {
				spec := s.(*ast.ValueSpec)
				if spec.Doc != nil { // what stands below has the comment above, until the next
					said = group.Doc.Text() + spec.Doc.Text()
				}
				found++
				if !saysHowKnown(said) {
					t.Errorf("%s: nobody says how %s is known", name, spec.Names[0].Name)
				}
			}
		}
	}
	if found < 10 {
		t.Errorf("%d constants were found", found)
	}
}

// TestTablesSaySource: each table says above its numbers after what they are, in which
// edition, and how that is known.
func TestTablesSaySource(t *testing.T) {
	edition := regexp.MustCompile(`after ISO [0-9-]+, (19|20)\d\d\b`)
	for _, name := range []string{"cut.csv", "general.csv", "it.csv"} {
		text, err := os.ReadFile("data/" + name)
		if err != nil {
			t.Fatal(err)
		}
		var said strings.Builder
		for line := range strings.Lines(string(text)) {
			if rest, comment := strings.CutPrefix(line, "#"); comment {
				said.WriteString(rest)
			}
		}
		if !edition.MatchString(said.String()) || !saysHowKnown(said.String()) {
			t.Errorf("%s says %q: an edition and how it is known are wanted", name, said.String())
		}
	}
	if isoFit.Edition == "" || !strings.HasPrefix(isoFit.Title, "after ") {
		t.Errorf("fits are shown after %s", isoFit)
	}
}
