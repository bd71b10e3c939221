package plan

import (
	"fmt"
	"runtime"
	"strings"
	"testing"
	"time"

	"chainwale/engine/finding"
)

const (
	// patience is how long a test waits for what must not wait at all.
	patience = time.Minute
	// mostMemory is what may be allocated over one plan, all told.
	mostMemory = 300 << 20
)

// soon fails a test that hangs, and one that takes more memory than a small
// machine has.
func soon(t *testing.T, do func()) {
	t.Helper()
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	done := make(chan struct{})
	go func() {
		defer close(done)
		do()
	}()
	select {
	case <-done:
	case <-time.After(patience):
		t.Fatal("it hangs")
	}
	runtime.ReadMemStats(&after)
	if took := after.TotalAlloc - before.TotalAlloc; took > mostMemory {
		t.Errorf("it took %d MB", took>>20)
	}
}

// hostile are files that were made to do harm, or that nobody thought of, with
// what is said of each first.
func hostile() map[string]struct{ src, want string } {
	const head = "chainwale: 1\nboat: { name: x }\n"
	const plate = head + "fittings:\n  - { id: a, state: new, kind: tang, side: centre, thickness: %s }\n"
	bomb := "a0: &a0 [x, x]\n"
	for i := range 30 {
		bomb += fmt.Sprintf("a%d: &a%d [*a%d, *a%d]\n", i+1, i+1, i, i)
	}
	var keys, many, flow strings.Builder
	for i := range 20_000 {
		fmt.Fprintf(&keys, "k%d: 1\n", i)
		fmt.Fprintf(&many, "stays%d: { id: x }\n", i)
		fmt.Fprintf(&flow, "k%d: 1, ", i)
	}
	mega := func(s string) string { return strings.Repeat(s, 1<<20/len(s)) }
	return map[string]struct{ src, want string }{
		"an alias bomb":          {bomb, "1:5 /a0 | an anchor (&) stands before this value"},
		"twenty thousand keys":   {keys.String(), "20000:1 /k19999 | the file holds more than 20000 values"},
		"as many groups":         {many.String(), "12501:11  | the file holds more than 50000 brackets"},
		"as many in braces":      {"{" + flow.String() + "}", "1:"},
		"anchors by the million": {mega("&a "), "1:"},
		"aliases by the million": {mega("*a "), "1:"},
		"brackets":               {mega("["), "1:33  | lists and keys stand too deep"},
		"braces":                 {mega("{"), "1:33  | lists and keys stand too deep"},
		"dashes":                 {mega("- "), "1:129  | lists and keys stand too deep"},
		"question marks":         {mega("? "), "1:"},
		"quotes":                 {mega(`"`), "1:"},
		"colons":                 {mega("a:\n"), ""},
		"one long word":          {mega("x"), "1:1  | the file does not begin with a key"},
		"one long key":           {mega("x")[9:] + ": 1", "1:"},
		"one long text":          {"chainwale: 1\nboat: { name: x, waters: '" + strings.Repeat("x", 1<<20-100) + "' }\n", "2:26 /boat/waters | "},
		"a remark":               {mega("#"), ""},
		"line ends":              {mega("\n"), "1:1  | the file is empty"},
		"tags":                   {mega("!!a "), "1:"},
		"merge keys":             {mega("<<: {}\n"), ""},
		"a merge":                {"a: {b: c}\n<<: *a\n", "2:5 "},
		"a zero byte":            {head + "stays: \x00", "3:8  | a zero byte stands here"},
		"zero bytes":             {mega("\x00"), "1:1  | a zero byte stands here"},
		"a zero byte by escape":  {"chainwale: 1\nboat: { name: \"a\\0\" }\n", "2:15 /boat/name | this text holds a control character (U+0000)"},
		"no UTF-8":               {head + "# caf\xe9\n", "3:6  | a byte stands here that is not UTF-8 text"},
		"UTF-16":                 {"\xff\xfec\x00h\x00", "1:1  | the file is saved as UTF-16"},
		"two documents":          {head + "---\n" + head, "3:1  | a second document begins here"},
		"an octal number":        {strings.Replace(head, "1", "01", 1), `1:12 /chainwale | "01" is not a whole number as it is written here`},
		"another octal":          {strings.Replace(head, "1", "0o1", 1), `1:12 /chainwale | "0o1" is not a whole number`},
		"a hexadecimal":          {strings.Replace(head, "1", "0x1", 1), `1:12 /chainwale | "0x1" is not a whole number`},
		"underscores":            {strings.Replace(head, "1", "1_0", 1), `1:12 /chainwale | "1_0" is not a whole number`},
		"a plus sign":            {strings.Replace(head, "1", "+1", 1), `1:12 /chainwale | "+1" is not a whole number`},
		"a point":                {strings.Replace(head, "1", "1.0", 1), `1:12 /chainwale | "1.0" is not a whole number`},
		"an exponent":            {strings.Replace(head, "1", "1e0", 1), `1:12 /chainwale | "1e0" is not a whole number`},
		"not a number":           {strings.Replace(head, "1", ".nan", 1), `1:12 /chainwale | ".nan" is not a whole number`},
		"infinite":               {strings.Replace(head, "1", "-.inf", 1), `1:12 /chainwale | "-.inf" is not a whole number`},
		"a number without end":   {strings.Replace(head, "1", strings.Repeat("1", 1000), 1), "1:12 /chainwale | chainwale is 111111"},
		"not a number of mm":     {fmt.Sprintf(plate, ".nan"), "4:63 /fittings/0/thickness | "},
		"NaN mm":                 {fmt.Sprintf(plate, "NaN mm"), "4:63 /fittings/0/thickness | "},
		"infinite mm":            {fmt.Sprintf(plate, "inf mm"), "4:63 /fittings/0/thickness | "},
		"wider than any number":  {fmt.Sprintf(plate, "1e400 mm"), "4:63 /fittings/0/thickness | 1e400 mm is too large to reckon with"},
		"a million digits": {fmt.Sprintf(plate, strings.Repeat("9", 1_000_000)+" mm"),
			"4:63 /fittings/0/thickness | "},
		"1e400 alone":       {fmt.Sprintf(plate, "1e400"), "4:63 /fittings/0/thickness | "},
		"octal mm":          {fmt.Sprintf(plate, "0x10 mm"), "4:63 /fittings/0/thickness | "},
		"underscored mm":    {fmt.Sprintf(plate, "1_000 mm"), "4:63 /fittings/0/thickness | "},
		"readings":          {fmt.Sprintf(plate, "["+strings.Repeat("6 mm, ", 19_000)+"6]"), "4:114064 /fittings/0/thickness/19000 | 6 has no unit"},
		"line ends of old":  {strings.ReplaceAll(fmt.Sprintf(plate, "6"), "\n", "\r\n"), "4:63 /fittings/0/thickness | 6 has no unit"},
		"older line ends":   {strings.ReplaceAll(fmt.Sprintf(plate, "6"), "\n", "\r"), "4:63 /fittings/0/thickness | 6 has no unit"},
		"a byte order mark": {"\ufeff" + strings.Replace(head, "1", "2", 1), "1:12 /chainwale | chainwale is 2"},
		"two of them":       {"\ufeff\ufeff" + head, "1:1  | a control character (U+FEFF) stands here"},
		"other scripts":     {strings.Replace(fmt.Sprintf(plate, "6"), "id: a", "id: 数字éß", 1), `4:11 /fittings/0/id | "数字éß" is not in the form of id`},
		"after other scripts": {strings.Replace(fmt.Sprintf(plate, "6"), "{ id: a", "{ 数字: a", 1),
			"4:5 /fittings/0/id | entry 1 of fittings has no id"},
	}
}

// Whatever stands in a file, it is answered soon, with little memory and with a
// place, be it a plan or a plan's template.
func TestHostileFiles(t *testing.T) {
	if testing.Short() {
		t.Skip("files of a megabyte")
	}
	for name, c := range hostile() {
		t.Run(name, func(t *testing.T) {
			files := map[string]string{"p.yaml": c.src, "q.yaml": "chainwale: 1\ntemplate: p.yaml\nboat: { name: x }\n"}
			for _, load := range []string{"p.yaml", "q.yaml"} {
				var p *Plan
				var problems []finding.Problem
				var err error
				soon(t, func() { p, problems, err = Load(load, Options{Open: shelf(files)}) })
				if p != nil || err != nil || len(problems) == 0 {
					t.Fatalf("%s: %v, %d problems, %v", load, p != nil, len(problems), err)
				}
				if first := told(problems[0]); !strings.HasPrefix(first, "p.yaml:"+c.want) {
					t.Errorf("%s: %.300s, want p.yaml:%s", load, first, c.want)
				}
				for _, p := range problems {
					if p.At.Line < 1 || p.At.Column < 1 || p.Message == "" || len(p.Message)+len(p.Expected) > 2000 {
						t.Fatalf("%s: %.300s", load, told(p))
					}
				}
			}
		})
	}
}

// The same in JSON.
func TestHostileJSON(t *testing.T) {
	const head = `{"chainwale": 1, "boat": {"name": "x"}`
	mega := func(s string) string { return strings.Repeat(s, 1<<20/len(s)) }
	var keys strings.Builder
	for i := range 20_000 {
		fmt.Fprintf(&keys, `, "k%d": 1`, i)
	}
	for name, c := range map[string]struct{ src, want string }{
		"brackets":             {mega("["), "1:33 "},
		"braces with keys":     {mega(`{"a":`), "1:161 "},
		"twenty thousand keys": {head + keys.String() + "}", "1:"},
		"a key twice":          {head + `, "boat": {}}`, "1:41 /boat | the key boat stands twice"},
		"two values":           {head + "}\n{}", "2:1  | something stands here behind"},
		"a comma too many":     {head + ",}", "1:"},
		"cut off":              {head, "1:39  | the file ends before its JSON is complete"},
		"a zero byte":          {head + "\x00}", "1:39  | a zero byte"},
		"an octal":             {strings.Replace(head, "1", "01", 1) + "}", "1:16  | the file can't be read as JSON"},
		"NaN":                  {strings.Replace(head, "1", "NaN", 1) + "}", "1:15  | the file can't be read as JSON"},
		"an exponent":          {strings.Replace(head, "1", "1e400", 1) + "}", `1:15 /chainwale | "1e400" is not a whole number`},
		"a remark":             {"// x\n" + head + "}", "1:1  | the file can't be read as JSON"},
		"a byte order mark":    {"\ufeff" + strings.Replace(head, "1", "2", 1) + "}", "1:15 /chainwale | chainwale is 2"},
		"other line ends":      {"{\r\n\"chainwale\": 2, \"boat\":\r\n{\"name\": \"é\"}}", "2:14 /chainwale | chainwale is 2"},
		"one long text":        {`{"chainwale": 2, "boat": {"name": "` + strings.Repeat("x", 1<<20-100) + `"}}`, "1:15 /chainwale | chainwale is 2"},
	} {
		t.Run(name, func(t *testing.T) {
			var p *Plan
			var problems []finding.Problem
			var err error
			soon(t, func() { p, problems, err = Parse("p.json", []byte(c.src)) })
			if p != nil || err != nil || len(problems) == 0 {
				t.Fatalf("%v, %d problems, %v", p != nil, len(problems), err)
			}
			if first := told(problems[0]); !strings.HasPrefix(first, "p.json:"+c.want) {
				t.Errorf("%.300s, want p.json:%s", first, c.want)
			}
		})
	}
}
