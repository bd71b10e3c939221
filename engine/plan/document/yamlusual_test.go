package document

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// checkUsualYAML holds that what usualYAML reads is read by readYAML without a problem
// and to the same tree, and tells whether it was read.
func checkUsualYAML(t *testing.T, src string) bool {
	t.Helper()
	if readable("p.yaml", []byte(src)) != nil {
		return false
	}
	quick := usualYAML("p.yaml", []byte(src))
	if quick == nil {
		return false
	}
	slow, problems := readYAML("p.yaml", []byte(src))
	if len(problems) > 0 {
		t.Fatalf("read with no word, and with %v\n%s", problems, src)
	}
	if d := alike(quick, slow); d != "" {
		t.Fatalf("the trees differ in %s\n%s", d, src)
	}
	return true
}

// yamlPieces are what YAML is made of, usual and not.
var yamlPieces = []string{"a: b", "a:", ":", ": ", "- ", "-", "\n", "\n  ", "\n\n", "# x", " # x", "#", "{", "}", "[", "]", ", ", ",", `"a"`, `'a'`, "''", `"\n"`, `"`, "'", "a", "é", "å: ü", "6 mm",
	"-5 mm", ".5", "1:30", "a:b", "a#b", "? ", "?", "&a ", "*a", "!t ", "!", "|", ">", "|-\n", "%", "@", "`", "---", "--- ", "...", "~", "null", "\t", " ", "  ", "\\", "<<: a", "=", "\r\n", "\r", "(x)", "/a", "+1", "{a: b}", "[a, b]", "- - a", "{a}", "[a: b]", "a : b", "\u00a0", "\u3000a"}

// block makes a mapping or a list by chance, its lines beginning at a column, sound but
// for a slip now and then.
func block(r *rand.Rand, column, depth int, out *strings.Builder) {
	pad := strings.Repeat(" ", column)
	list := r.IntN(3) == 0 && depth > 0
	for i := range 1 + r.IntN(4) {
		switch r.IntN(14) {
		case 0:
			out.WriteString("\n")
		case 1:
			fmt.Fprintf(out, "%s# a remark: it's \"one\" \t - {[\n", strings.Repeat(" ", r.IntN(9)))
		case 2:
			out.WriteString("   \n")
		}
		out.WriteString(pad)
		if list {
			out.WriteString("-" + strings.Repeat(" ", 1+r.IntN(2)*r.IntN(3)))
		} else {
			fmt.Fprintf(out, "%s:%s", []string{"a", "b-c", "D_e", "null", "y", "x2"}[(i+r.IntN(2))%6], strings.Repeat(" ", 1+r.IntN(2)*r.IntN(3)))
		}
		if r.IntN(40) == 0 {
			out.WriteString(yamlPieces[r.IntN(len(yamlPieces))])
		}
		if depth < 4 && r.IntN(3) == 0 {
			inner := column + 2
			if list {
				var below strings.Builder
				block(r, inner, depth+1, &below)
				out.WriteString(strings.TrimLeft(below.String(), " "))
				continue
			}
			out.WriteString([]string{"\n", "   # below\n"}[r.IntN(2)])
			block(r, inner+r.IntN(2)*r.IntN(4)-r.IntN(20)/19*2, depth+1, out)
			continue
		}
		one(r, 0, out)
		out.WriteString([]string{"\n", "\n", "\n", "  \n", " # so\n"}[r.IntN(5)])
	}
}

// one makes a value that stands on one line.
func one(r *rand.Rand, depth int, out *strings.Builder) {
	if r.IntN(80) == 0 {
		out.WriteString(yamlPieces[r.IntN(len(yamlPieces))])
	}
	kind := r.IntN(6)
	if depth > 3 {
		kind = 0
	}
	ends := []string{"", " ", "  "}
	switch kind {
	case 1:
		out.WriteString("{" + ends[r.IntN(3)])
		for i := range r.IntN(4) {
			if i > 0 {
				out.WriteString("," + ends[r.IntN(3)])
			}
			out.WriteString([]string{"a", "b-c", "D_e", "k", "x2"}[(i+r.IntN(2))%5] + ": ")
			one(r, depth+1, out)
		}
		out.WriteString(ends[r.IntN(3)] + "}")
	case 2:
		out.WriteString("[" + ends[r.IntN(3)])
		for i := range r.IntN(4) {
			if i > 0 {
				out.WriteString("," + ends[r.IntN(3)])
			}
			one(r, depth+1, out)
		}
		out.WriteString(ends[r.IntN(3)] + "]")
	default:
		out.WriteString([]string{"6 mm", "17-4PH H1025", "yes", "-0.5 m", ".5", "1:30", "a#b", "none seen", `"6 mm"`, `'it is'`, `""`, "''", "Møwe", `"å, {b}: # x"`, "(a)", "1/4 in", "2024-05-01", "null", "1_000", "0x10", "012", "+5", "a  b", "é", "x?", "../a/b.yaml", "..."}[r.IntN(27)])
	}
}

// TestUsualYAML holds that the quick reader and the library agree, on texts made by
// chance and on plans that are spoilt byte by byte.
func TestUsualYAML(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	read, all := 0, 8_000
	for range all {
		var out strings.Builder
		block(r, 0, 0, &out)
		if checkUsualYAML(t, out.String()) {
			read++
		}
	}
	if read < all/4 || read == all {
		t.Errorf("%d of %d were read quickly", read, all)
	}
	files, err := filepath.Glob(filepath.Join("..", "..", "..", "testdata", "boats", "*.yaml"))
	if err != nil || len(files) == 0 {
		t.Fatal(files, err)
	}
	for _, file := range files {
		plan, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if !checkUsualYAML(t, string(plan)) {
			t.Errorf("%s is not read quickly", file)
		}
		for range 200 {
			at, piece := r.IntN(len(plan)), yamlPieces[r.IntN(len(yamlPieces))]
			checkUsualYAML(t, string(plan[:at])+piece+string(plan[at+r.IntN(min(8, len(plan)-at)):]))
		}
	}
}

// TestUsualYAMLLimits holds that files made to be endless, deep or full of one key are
// left to the library, and so is all that it reads otherwise than it looks.
func TestUsualYAMLLimits(t *testing.T) {
	nested := func(depth int) string {
		return "a: " + strings.Repeat("[", depth) + strings.Repeat("]", depth)
	}
	steps := func(depth int) string {
		var out strings.Builder
		for i := range depth {
			out.WriteString(strings.Repeat(" ", i) + "a:\n")
		}
		return out.String() + strings.Repeat(" ", depth) + "a: b\n"
	}
	for src, want := range map[string]bool{
		nested(deepest - 1): true,
		nested(deepest):     false,
		nested(100_000):     false,
		steps(deepest - 1):  true,
		steps(deepest):      false,
		"a: [" + strings.Repeat("1, ", 19_996) + "1]": true,
		"a: [" + strings.Repeat("1, ", 19_999) + "1]": false,
		"a:\n" + strings.Repeat("  - x: 1\n", 9_998):  true,
		"a:\n" + strings.Repeat("  - x: 1\n", 10_000): false,
		"a: " + strings.Repeat("[x, ", mostMarks):     false,
		"a: 1\na: 2\n":                 false,
		"a: b: c\n":                    false,
		"a: b\n  c\n":                  false,
		"a: b\n # x\n  c\n":            false,
		"a:\n":                         false,
		"a:\n- b\n":                    false,
		" a: b\n":                      false,
		"a: b\n---\n":                  false,
		"a: b\n...\n":                  false,
		"a: |\n  b\n":                  false,
		"a: \"b\n  c\"\n":              false,
		"a: 'it''s'\n":                 false,
		"a: {b: c, b: d}\n":            false,
		"a: {b: c,}\n":                 false,
		"a: {b: c\n}\n":                false,
		"a: *b\n":                      false,
		"- a\n":                        false,
		"a: b\r\n":                     false,
		"a:\tb\n":                      false,
		"":                             false,
		"a: b":                         true,
		"\n# x\n\na: b # c\n\n  # d":   true,
		"a:\n    - b: c\n      d: e\n": true,
		"a:\n  b:\n    c: d\ne: f\n":   true,
		"a:\n  b:\n    c: d\n e: f\n":  false,
	} {
		if got := checkUsualYAML(t, src); got != want {
			t.Errorf("%.40q: read quickly: %v", src, got)
		}
	}
}

func FuzzUsualYAML(f *testing.F) {
	for _, src := range []string{"a: b\n", "a:\n  - { b: [c, 'd'], e: \"f\" } # g\n  - h: -1 mm\n    i: é\n", "a: {}\nb: []\n"} {
		f.Add(src)
	}
	f.Fuzz(func(t *testing.T, src string) { checkUsualYAML(t, src) })
}
