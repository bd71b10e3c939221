package document

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// alike tells the first way in which two trees differ, "" if in none.
func alike(a, b *Node) string {
	switch {
	case a.Kind != b.Kind || a.Text != b.Text || a.Plain != b.Plain || a.Key != b.Key || a.index != b.index:
		return "at " + a.At.Pointer + ": " + a.Text + " and " + b.Text
	case a.At != b.At || a.KeyAt != b.KeyAt:
		return "the places at " + a.At.Pointer
	case len(a.Members) != len(b.Members) || len(a.Items) != len(b.Items):
		return "how many stand under " + a.At.Pointer
	}
	for i := range a.Members {
		if a.Members[i].parent != a || b.Members[i].parent != b {
			return "the parents under " + a.At.Pointer
		}
		if d := alike(a.Members[i], b.Members[i]); d != "" {
			return d
		}
	}
	for i := range a.Items {
		if a.Items[i].parent != a || b.Items[i].parent != b {
			return "the parents under " + a.At.Pointer
		}
		if d := alike(a.Items[i], b.Items[i]); d != "" {
			return d
		}
	}
	return ""
}

// checkUsual holds that what usualJSON reads is read by readJSON without a problem and
// to the same tree, and tells whether it was read.
func checkUsual(t *testing.T, src []byte) bool {
	t.Helper()
	if readable("p.json", src) != nil {
		return false
	}
	quick := usualJSON("p.json", src)
	if quick == nil {
		return false
	}
	slow, problems := readJSON("p.json", src)
	if len(problems) > 0 {
		t.Fatalf("read with no word, and with %v\n%s", problems, src)
	}
	if d := alike(quick, slow); d != "" {
		t.Fatalf("the trees differ in %s\n%s", d, src)
	}
	return true
}

// pieces are what JSON is made of, and what it isn't.
var pieces = []string{`{`, `}`, `[`, `]`, `,`, `:`, `"a"`, `"b"`, `"å/~"`, `"x\u00e9\n"`, `"\ud83d\ude00"`, `"\u0007"`, `"\x"`, `""`, `1`, `-0.5`, `01`, `1e5`, `1.`, `-`, `+1`, `true`, `false`, `null`, `nul`, "\n", "\r\n", "\r", " ", "\t", `"`, `\`, `'a'`, "é", "//"}

// written makes JSON by chance, sound but for a slip now and then.
func chance(r *rand.Rand, depth int, out *strings.Builder) {
	blank := func() {
		for r.IntN(4) == 0 {
			out.WriteString([]string{" ", "\n", "\r\n", "\r", "\t"}[r.IntN(5)])
		}
	}
	blank()
	if r.IntN(60) == 0 {
		out.WriteString(pieces[r.IntN(len(pieces))])
	}
	kind := r.IntN(3)
	if depth > 5 {
		kind = 0
	}
	switch kind {
	case 0:
		out.WriteString([]string{`"text"`, `"Møwe"`, `"a \"b\" \\ \u00fc\ud83d\ude00"`, `12`, `-0.25`, `3e-4`, `true`, `false`, `null`, `""`, `"\t"`}[r.IntN(11)])
	case 1:
		out.WriteByte('[')
		for i := range r.IntN(4) {
			if i > 0 {
				out.WriteByte(',')
			}
			chance(r, depth+1, out)
		}
		blank()
		out.WriteByte(']')
	default:
		out.WriteByte('{')
		for i := range r.IntN(5) {
			if i > 0 {
				out.WriteByte(',')
			}
			blank()
			out.WriteString([]string{`"a"`, `"b"`, `"c/d"`, `"e~"`, `"ü"`, `"\u0041"`, `"g"`, `"h"`}[(i+r.IntN(3))%8])
			blank()
			out.WriteByte(':')
			chance(r, depth+1, out)
		}
		blank()
		out.WriteByte('}')
	}
	blank()
}

// TestUsualJSON holds that the quick reader and the careful one agree, on texts made by
// chance and on a plan that is spoilt byte by byte.
func TestUsualJSON(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	read, all := 0, 8_000
	for range all {
		var out strings.Builder
		chance(r, 0, &out)
		src := out.String()
		if !strings.HasPrefix(strings.TrimSpace(src), "{") {
			src = `{"a":` + src + "}"
		}
		if checkUsual(t, []byte(src)) {
			read++
		}
	}
	if read < all/4 || read == all {
		t.Errorf("%d of %d were read quickly", read, all)
	}
	plan, err := os.ReadFile(filepath.Join("..", "..", "..", "testdata", "boats", "quillfish.json"))
	if err != nil {
		t.Fatal(err)
	}
	if !checkUsual(t, plan) {
		t.Error("a plan is not read quickly")
	}
	for range 600 {
		at, piece := r.IntN(len(plan)), pieces[r.IntN(len(pieces))]
		checkUsual(t, []byte(string(plan[:at])+piece+string(plan[at+r.IntN(min(8, len(plan)-at)):])))
	}
}

// Files that are made to be endless, deep or full of one key are left to the careful
// reader, and a file that is at its limits is not.
func TestUsualJSONLimits(t *testing.T) {
	nested := func(depth int) string {
		return `{"a":` + strings.Repeat("[", depth) + strings.Repeat("]", depth) + `}`
	}
	for src, want := range map[string]bool{
		nested(deepest - 1): true,
		nested(deepest):     false,
		nested(100_000):     false,
		`{"a":[` + strings.Repeat("1,", 19_996) + `1]}`: true,
		`{"a":[` + strings.Repeat("1,", 19_999) + `1]}`: false,
		`{"a":1,"a":2}`:      false,
		`{"":1}`:             false,
		`[1]`:                false,
		`{"a":1} x`:          false,
		`{"a":1,}`:           false,
		`{"a":"\u0000"}`:     false,
		"\n {\"a\":1}\r\n\n": true,
	} {
		if got := checkUsual(t, []byte(src)); got != want {
			t.Errorf("%.40s: read quickly: %v", src, got)
		}
	}
}

func FuzzUsualJSON(f *testing.F) {
	for _, src := range []string{`{}`, `{"a":[1,{"b":null}],"c":"\u00e9"}`, "{\"a\"\r:\n-0.5e+3}", `{"a/~":"é"}`} {
		f.Add([]byte(src))
	}
	f.Fuzz(func(t *testing.T, src []byte) { checkUsual(t, src) })
}

// What is looked for by hand is what the pattern says.
func TestByHand(t *testing.T) {
	day := regexp.MustCompile(`^(\d{4})(?:-(\d{2})(?:-(\d{2}))?)?$`)
	whole, decimal := regexp.MustCompile(`^-?(0|[1-9][0-9]*)$`), regexp.MustCompile(`^-?(0|[1-9][0-9]*)(\.[0-9]+)?$`)
	r := rand.New(rand.NewPCG(3, 4))
	shapes := map[string]*regexp.Regexp{}
	for _, pattern := range []string{`\S`, `^[a-z][a-z0-9]*(-[a-z0-9]+)*$`, `^[a-z0-9]+(-[a-z0-9]+)*$`} {
		shapes[pattern] = regexp.MustCompile(pattern)
	}
	matched := map[string]int{}
	agree := func(what, text string, got, want bool) {
		t.Helper()
		if got != want {
			t.Errorf("%s: %q is %v, and should be %v", what, text, got, want)
		}
		if want {
			matched[what]++
		}
	}
	for range 40_000 {
		letters := []string{"ab0-9", "0123-", "01.-", " \t\n\f\r\v\u00a0a", "a-1", "aZ-_9é"}[r.IntN(6)]
		runes := []rune(letters)
		text := ""
		for range r.IntN(11) {
			text += string(runes[r.IntN(len(runes))])
		}
		for pattern, re := range shapes {
			agree(pattern, text, Matcher(pattern)(text), re.MatchString(text))
		}
		agree("whole", text, isWhole(text), whole.MatchString(text))
		agree("decimal", text, isDecimal(text), decimal.MatchString(text))
		parts, ok := dayParts(text)
		want := day.FindStringSubmatch(text)
		agree("day", text, ok, want != nil)
		if ok && [3]string(want[1:]) != parts {
			t.Errorf("%q is taken apart as %v", text, parts)
		}
	}
	for _, what := range []string{`\S`, "whole", "decimal", "day"} {
		if matched[what] < 100 {
			t.Errorf("%s was met %d times", what, matched[what])
		}
	}
}

// Pointers that share memory are those that would stand alone.
func TestPointers(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	var p Pointers
	var got, want []string
	got, want = append(got, ""), append(want, "")
	for range 5000 {
		parent := r.IntN(len(got))
		if len(want[parent]) > 3000 {
			continue
		}
		if index := r.IntN(40); index < 20 {
			got, want = append(got, p.Numbered(got[parent], index)), append(want, want[parent]+"/"+pointerEscapes.Replace(string(rune('0'+index/10))+string(rune('0'+index%10))))
			if index < 10 {
				want[len(want)-1] = want[parent] + "/" + string(rune('0'+index))
			}
			continue
		}
		key := []string{"a", "a/b", "~", "lange Schlüssel", strings.Repeat("x", 900)}[r.IntN(5)]
		got, want = append(got, p.Under(got[parent], key)), append(want, want[parent]+"/"+pointerEscapes.Replace(key))
	}
	for i := range got {
		if got[i] != want[i] {
			t.Fatalf("%q for %q", got[i], want[i])
		}
	}
}
