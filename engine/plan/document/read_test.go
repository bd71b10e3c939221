package document

import (
	"fmt"
	"strings"
	"testing"

	"chainwale/engine/finding"
)

// told writes a problem as one line, as the tables below have it.
func told(p finding.Problem) string {
	return fmt.Sprintf("%d:%d %s | %s | %s", p.At.Line, p.At.Column, p.At.Pointer, p.Message, p.Expected)
}

// expectTold compares problems with lines, each of which may stop before the end.
func expectTold(t *testing.T, problems []finding.Problem, want []string) {
	t.Helper()
	for i, p := range problems {
		if i >= len(want) {
			t.Errorf("one problem too many: %s", told(p))
		} else if !strings.HasPrefix(told(p), want[i]) {
			t.Errorf("problem %d is\n\t%s\nwant\n\t%s", i+1, told(p), want[i])
		}
	}
	for _, w := range want[min(len(problems), len(want)):] {
		t.Errorf("nothing was said of\n\t%s", w)
	}
}

func TestYAMLRefused(t *testing.T) {
	cases := []struct {
		src  string
		want []string
	}{
		{"", []string{"1:1  | the file is empty"}},
		{" \n\n", []string{"1:1  | the file is empty"}},
		{"\n# nothing\n", []string{"1:1  | the file is empty"}},
		{"a\n", []string{"1:1  | the file does not begin with a key"}},
		{"\n- a\n- b\n", []string{"2:1  | the file does not begin with a key"}},
		{"a: 1\nb: 2\na: 3\n", []string{"3:1 /a | the key a stands twice; it is already in line 1"}},
		{"a: {b: 1, b: 2}\nc: 1\nc: 1", []string{"1:11 /a/b | the key b stands twice", "3:1 /c | the key c stands twice; it is already in line 2"}},
		{"a: 1\n---\nb: 2\n", []string{"2:1  | a second document begins here"}},
		{"a: 1\n---\nb: [\n", []string{"2:1  | a second document begins here"}},
		{"a: 1\n...\nb: 2\n", []string{"3:1  | a second document begins here"}},
		{"a: &x 1\n", []string{"1:4 /a | an anchor (&) stands before this value"}},
		{"a: &x 1\nb: *x\n", []string{"1:4 /a | an anchor (&)", "2:4 /b | an alias (*) stands here in place of a value"}},
		{"a: *x\n", []string{"1:4  | an alias (*) stands here in place of a value"}},
		{"&x a: 1\n", []string{"1:1  | an anchor (&) stands before this value"}},
		{"a: !x b\n", []string{"1:4 /a | a tag (!) stands before this value"}},
		{"a: !!str 5\n", []string{"1:4 /a | a tag (!) stands before this value"}},
		{"a: ! b\n", []string{"1:4 /a | a tag (!) stands before this value"}},
		{"é: [ü, ! b]\n", []string{"1:8 /é/1 | a tag (!) stands before this value"}},
		{"!!map {a: b}\n", []string{"1:1  | a tag (!) stands before this value"}},
		{"<<: {a: b}\n", []string{"1:1  | a merge key (<<) stands here"}},
		{"[a]: b\n", []string{"1:1  | a list or a mapping stands here where a key is wanted"}},
		{": b\n", []string{"1:1  | a value stands here without a key"}},
		{"a: b\x00\n", []string{"1:5  | a zero byte stands here, so this is no text file"}},
		{"\x00\x01\x02\x03", []string{"1:1  | a zero byte stands here, so this is no text file"}},
		{"a: é\xff\n", []string{"1:5  | a byte stands here that is not UTF-8 text"}},
		{"\x89PNG\r\n\x1a\n\x00", []string{"1:1  | a byte stands here that is not UTF-8 text"}},
		{"\xff\xfea\x00:\x00", []string{"1:1  | the file is saved as UTF-16"}},
		{"a: b\n\x07c: d", []string{"2:1  | a control character (U+0007) stands here"}},
		{"a: b\u0085c: d", []string{"1:5  | a control character (U+0085) stands here"}},
		{"a: b\u2028c: d", []string{"1:5  | a control character (U+2028) stands here"}},
		{"a: \"\\0\"", []string{"1:4 /a | this text holds a control character (U+0000)"}},
		{"a: \"\\e[2J\"", []string{"1:4 /a | this text holds a control character (U+001B)"}},
		{"\"\\a\": b", []string{"1:1  | this text holds a control character (U+0007)"}},
		{"a: b: c", []string{"1:5  | a colon stands where no key can be | a key, a colon, a space and a value"}},
		{"\ufeffa: b: c", []string{"1:5  | a colon stands where no key can be"}},
		{"é: b\r\nü: c: d\r\n", []string{"2:5  | a colon stands where no key can be"}},
		{"a: 1\n  b: 2\n", []string{"2:4  | a colon stands where no key can be"}},
		{"a: [1, 2\nc: 3\n", []string{"2:2  | the list that opens at line 1, column 4 is not closed before this"}},
		{"a: {b: 1\n", []string{"2:1  | the group of keys that opens at line 1, column 4 is not closed before this"}},
		{"a: [1, 2]]\n", []string{"1:10  | a ] stands here that closes nothing"}},
		{"a: 'b\n", []string{"2:1  | the text in quotes that opens at line 1, column 4 is never closed"}},
		{"a: \"b\n---\nc\"\n", []string{"2:1  | the text in quotes that opens at line 1, column 4 is never closed"}},
		{`a: "C:\q"`, []string{"1:7  | a backslash in double quotes stands before a character it can't go with"}},
		{`a: "\u00zz"`, []string{"1:7  | a backslash in double quotes is not followed by the number of a character"}},
		{`a: "\ud800"`, []string{"1:7  | a backslash in double quotes stands for no character"}},
		{"a: b\nc d\ne: f\n", []string{"2:1  | this line has no colon after its key"}},
		{"a: b\n- c\n", []string{"2:1  | this line does not fit under the keys that begin at line 1, column 1"}},
		{"- a\nb: c\n", []string{"2:1  | this line does not fit under the list that begins at line 1, column 1"}},
		{"a: - b\n", []string{"1:4  | a list begins here where none can"}},
		{"a: ? b\n", []string{"1:4  | a question mark stands where no key can be"}},
		{"a:\n\tb: c\n", []string{"2:1  | a tab stands here | spaces"}},
		{"\ta: b\n", []string{"1:1  | a tab stands here | spaces"}},
		{"a: @b\n", []string{"1:4  | a value can't begin with @ | the text in quotes"}},
		{"a: `b\n", []string{"1:4  | a value can't begin with ` | the text in quotes"}},
		{"a: |b\n", []string{"1:5  | something stands behind the mark that opens a block of text"}},
		{"a: 'b'#c\n", []string{"1:7  | a # stands right behind a value"}},
		{"'a' 'b'\n", []string{"1:5  | something stands here behind the keys of the file"}},
		{"a: [b, - c]\n", []string{"1:8  | a value is missing or misplaced here"}},
		{"a: !<\n", []string{"1:6  | a tag (!) stands before this value"}},
		{"a: &\n", []string{"1:5  | an & stands where a value should begin"}},
		{"# remark\n\n%YAML 1.2\n---\na: b\n", []string{"3:1  | a line that begins with % stands here"}},
		{"a: b\n%FOO\n", []string{"2:5  | a line that begins with % stands here"}},
		{nested(deepest+1, "[", "]"), []string{"1:36  | lists and keys stand too deep within each other here | at most 32 levels"}},
		{blockNested(deepest), []string{"33:65 /a/a/a"}},
		{blockNested(deepest + 9), []string{"33:65 /a/a/a"}},
	}
	for _, c := range cases {
		t.Run(short(c.src), func(t *testing.T) {
			root, problems := Read("plan.yaml", []byte(c.src))
			if root != nil {
				t.Error("there is a tree")
			}
			expectTold(t, problems, c.want)
		})
	}
}

// nested is a key with brackets so many deep.
func nested(depth int, open, closed string) string {
	return "a: " + strings.Repeat(open, depth) + strings.Repeat(closed, depth) + "\n"
}

// blockNested is keys below keys, so many deep.
func blockNested(depth int) string {
	var b strings.Builder
	for i := range depth {
		b.WriteString(strings.Repeat("  ", i) + "a:\n")
	}
	return b.String() + strings.Repeat("  ", depth) + "b: c\n"
}

func TestDeepestNestingIsRead(t *testing.T) {
	// The keys of the top are one level, so one fewer bracket may follow.
	for _, src := range []string{nested(deepest-1, "[", "]"), blockNested(deepest - 1)} {
		if _, problems := Read("plan.yaml", []byte(src)); len(problems) > 0 {
			t.Errorf("%d levels: %s", deepest, told(problems[0]))
		}
	}
}

func TestYAMLAccepted(t *testing.T) {
	const want = "a=1|b/0=x y|b/1='316'|c/d=|e/é=no|f='l1\nl2\n'|"
	for name, src := range map[string]string{
		"plain":           "a: 1\nb: [x y, '316']\nc: {d: }\ne:\n  é: no\nf: |\n  l1\n  l2\n",
		"byte order mark": "\ufeffa: 1\nb: [x y, '316']\nc: {d: }\ne:\n  é: no\nf: |\n  l1\n  l2\n",
		"CR LF":           "a: 1\r\nb:\r\n- x y\r\n- \"316\"\r\nc: {d: }\r\ne: {é: no}\r\nf: |\r\n  l1\r\n  l2\r\n",
		"document start":  "# remark\n---\n# remark\na: 1\nb: [x y, '316']\nc: {d: }\ne: {é: no}\nf: |\n  l1\n  l2\n...\n",
	} {
		root, problems := Read("plan.yaml", []byte(src))
		if len(problems) > 0 {
			t.Errorf("%s: %s", name, told(problems[0]))
			continue
		}
		if got := flat(root, ""); got != want {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
}

// flat writes a tree on one line, texts in quotes as such.
func flat(n *Node, path string) string {
	if n.Kind == Scalar {
		if n.Plain {
			return path + "=" + n.Text + "|"
		}
		return path + "='" + n.Text + "'|"
	}
	var b strings.Builder
	for _, m := range n.Members {
		b.WriteString(flat(m, strings.TrimPrefix(path+"/"+m.Key, "/")))
	}
	for i, item := range n.Items {
		b.WriteString(flat(item, fmt.Sprintf("%s/%d", path, i)))
	}
	return b.String()
}

func TestPlaces(t *testing.T) {
	yaml := "a: 1\né/~:\n  - {ü: x, v: y}\n  -\n    - z\n"
	json := "{\"a\": 1,\n \"é/~\": [\n  {\"ü\": \"x\", \"v\": \"y\"},\r\n  [ \"z\" ]]}"
	cases := []struct{ pointer, key, inYAML, inJSON, keyInYAML, keyInJSON string }{
		{"/a", "a", "1:4", "1:7", "1:1", "1:2"},
		{"/é~1~0/0", "", "3:5", "3:3", "3:5", "3:3"},
		{"/é~1~0/0/ü", "ü", "3:9", "3:9", "3:6", "3:4"},
		{"/é~1~0/0/v", "v", "3:15", "3:19", "3:12", "3:14"},
		{"/é~1~0/1/0", "", "5:7", "4:5", "5:7", "4:5"},
	}
	inYAML, problems := Read("p.yaml", []byte(yaml))
	expectTold(t, problems, nil)
	inJSON, problems := Read("p.json", []byte(json))
	expectTold(t, problems, nil)
	if t.Failed() {
		return
	}
	for _, c := range cases {
		for _, file := range []struct {
			root             *Node
			name, value, key string
		}{{inYAML, "p.yaml", c.inYAML, c.keyInYAML}, {inJSON, "p.json", c.inJSON, c.keyInJSON}} {
			n := file.root.Find(c.pointer)
			if n == nil {
				t.Fatalf("%s: nothing at %s", file.name, c.pointer)
			}
			if n.Key != c.key || n.At.File != file.name || n.At.Pointer != c.pointer || n.KeyAt.Pointer != c.pointer {
				t.Errorf("%s: %s is key %q at %+v", file.name, c.pointer, n.Key, n.At)
			}
			if got := fmt.Sprintf("%d:%d", n.At.Line, n.At.Column); got != file.value {
				t.Errorf("%s: the value of %s stands at %s, want %s", file.name, c.pointer, got, file.value)
			}
			if got := fmt.Sprintf("%d:%d", n.KeyAt.Line, n.KeyAt.Column); got != file.key {
				t.Errorf("%s: the key of %s stands at %s, want %s", file.name, c.pointer, got, file.key)
			}
		}
	}
	for _, pointer := range []string{"/b", "/a/b", "/é~1~0/2", "/é~1~0/-1", "/é~1~0/x"} {
		if n := inYAML.Find(pointer); n != nil {
			t.Errorf("something stands at %s: %+v", pointer, n)
		}
	}
	if at := inYAML.Find("/é~1~0/0").MissingAt("w/"); at.Line != 3 || at.Column != 5 || at.Pointer != "/é~1~0/0/w~1" {
		t.Errorf("a missing key would stand at %+v", at)
	}
}

func TestJSONRefused(t *testing.T) {
	cases := []struct {
		src  string
		want []string
	}{
		{"", []string{"1:1  | the file is empty"}},
		{"\n\n", []string{"1:1  | the file is empty"}},
		{"{", []string{"1:2  | the file ends before its JSON is complete"}},
		{"{\"a\": [1,\n 2", []string{"2:3  | the file ends before its JSON is complete"}},
		{"[1]", []string{"1:1  | the file does not begin with a key"}},
		{"7", []string{"1:1  | the file does not begin with a key"}},
		{`{"a":1,}`, []string{"1:8  | the file can't be read as JSON: invalid character '}'"}},
		{`{"a":[1,]}`, []string{"1:9  | the file can't be read as JSON: invalid character ']'"}},
		{`{"a":[1,,2]}`, []string{"1:9  | the file can't be read as JSON: invalid character ','"}},
		{`{"é" 1}`, []string{"1:6  | the file can't be read as JSON: invalid character '1' after object key"}},
		{"{\n \"a\": 1,\n \"b\": nope\n}", []string{"3:8  | the file can't be read as JSON: invalid character 'o'"}},
		{`{a: 1}`, []string{"1:2  | the file can't be read as JSON: invalid character 'a'"}},
		{`{"a":01}`, []string{"1:7  | the file can't be read as JSON: invalid character '1'"}},
		{`{"a":1} x`, []string{"1:9  | something stands here behind the keys of the file"}},
		{"{\"a\":1}\n{\"b\":2}", []string{"2:1  | something stands here behind the keys of the file"}},
		{`{"a":1,"b":{"c":1,"c":2},"a":3}`, []string{"1:19 /b/c | the key c stands twice", "1:26 /a | the key a stands twice"}},
		{`{"a":"\u0000"}`, []string{"1:6 /a | this text holds a control character (U+0000)"}},
		{`{"\u0007":1}`, []string{"1:2 /\a | this text holds a control character (U+0007)"}},
		{`{"":1}`, []string{"1:2 / | a value stands here without a key"}},
		{`{"a":` + strings.Repeat("[", deepest) + strings.Repeat("]", deepest) + "}", []string{"1:37  | lists and keys stand too deep within each other here"}},
		{"{\"a\":\"\xff\"}", []string{"1:7  | a byte stands here that is not UTF-8 text"}},
	}
	for _, c := range cases {
		t.Run(short(c.src), func(t *testing.T) {
			root, problems := Read("plan.json", []byte(c.src))
			if root != nil {
				t.Error("there is a tree")
			}
			expectTold(t, problems, c.want)
		})
	}
}

// The two forms of one file make the same tree, but for quotes.
func TestJSONAndYAMLMakeOneTree(t *testing.T) {
	json := `{"a": 1, "b": ["x y", "316"], "c": {"d": null}, "e": {"é": true}}`
	yaml := "a: 1\nb: ['x y', '316']\nc: {d: null}\ne: {é: true}\n"
	inJSON, problems := Read("p.json", []byte(json))
	expectTold(t, problems, nil)
	inYAML, problems := Read("p.yaml", []byte(yaml))
	expectTold(t, problems, nil)
	noEnding, problems := Read("-", []byte("\n "+json))
	expectTold(t, problems, nil)
	if t.Failed() {
		return
	}
	if a, b, c := flat(inJSON, ""), flat(inYAML, ""), flat(noEnding, ""); a != b || a != c {
		t.Errorf("JSON %q\nYAML %q\nno ending %q", a, b, c)
	}
}

// A megabyte made to keep a reader busy is answered like any other file. How
// quickly is not measured here; a reader that went astray would not come back.
func TestHostileFiles(t *testing.T) {
	for name, units := range map[string][]string{
		"p.yaml": {"[", "{", "&a ", "- ", "a: ", "\"", "[]", "[\n]", "*x ", "!x ", "? ", "{a: b, ", "a: [\n", "|\n", "a\n"},
		"p.json": {"[", "{", "{\"a\":", "[1,", "\"", "1"},
	} {
		for _, unit := range units {
			src := []byte(strings.Repeat(unit, MostBytes/len(unit)))
			root, problems := Read(name, src)
			if root != nil || len(problems) == 0 || problems[0].At.Line < 1 || problems[0].At.Column < 1 {
				t.Errorf("%s of %q: %v", name, unit, problems)
			}
		}
	}
}

func TestTooManyMarks(t *testing.T) {
	src := "a: [" + strings.Repeat("b,\n", mostMarks) + "]\n"
	_, problems := Read("p.yaml", []byte(src))
	// The colon and the bracket are the first two marks, so line n holds mark n+2.
	expectTold(t, problems, []string{fmt.Sprintf("%d:2  | the file holds more than 50000 brackets, commas, colons and quotes", mostMarks-1)})
}

func TestTooManyMarksOnLinesOfTheirOwn(t *testing.T) {
	var b strings.Builder
	for i := range mostMarks + 5 {
		fmt.Fprintf(&b, "k%d: 1\n", i)
	}
	_, problems := Read("p.yaml", []byte(b.String()))
	expectTold(t, problems, []string{fmt.Sprintf("%d:7  | the file holds more than 50000 brackets", mostMarks+1)})
}

func TestTooManyValues(t *testing.T) {
	// The top and the list are values too.
	_, problems := Read("p.yaml", []byte("a:\n"+strings.Repeat("- b\n", mostValues)))
	expectTold(t, problems, []string{fmt.Sprintf("%d:3 /a/%d | the file holds more than 20000 values", mostValues, mostValues-2)})
	_, problems = Read("p.yaml", []byte("a:\n"+strings.Repeat("- b\n", mostValues-2)))
	expectTold(t, problems, nil)
	_, problems = Read("p.json", []byte(`{"a":[`+strings.Repeat("1,\n", mostValues)+`1]}`))
	expectTold(t, problems, []string{fmt.Sprintf("%d:1  | the file holds more than 20000 values", mostValues-1)})
}

func TestTooLarge(t *testing.T) {
	_, problems := Read("p.yaml", make([]byte, MostBytes+1))
	expectTold(t, problems, []string{"1:1  | the file is larger than 1 MB, so it is not read"})
	src := "a: b\n" + strings.Repeat("# remark\n", (MostBytes-5)/9)
	if _, problems = Read("p.yaml", []byte(src)); len(problems) > 0 {
		t.Errorf("a file of %d bytes: %s", len(src), told(problems[0]))
	}
}
