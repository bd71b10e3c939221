package document

import (
	"strings"
	"testing"
	"time"
)

const small = `{
  "$schema": "https://json-schema.org/draft/2020-12/schema",
  "$id": "urn:chainwale:test",
  "type": "object",
  "additionalProperties": false,
  "required": ["one", "name"],
  "properties": {
    "one": { "type": "integer", "const": 1 },
    "count": { "type": "integer" },
    "share": { "type": "number" },
    "name": { "$ref": "#/$defs/text", "examples": ["Grey Wagtail"] },
    "word": { "type": "string", "enum": ["kept", "remade", "new"] },
    "id": { "type": "string", "pattern": "^[a-z]+$", "expected": "small letters" },
    "yes": { "enum": ["yes", "no", true, false] },
    "day": { "type": ["string", "integer"], "format": "day" },
    "size": { "type": "string", "quantity": { "of": "length", "above": "0 mm" } },
    "sizes": { "type": ["string", "array"], "quantity": { "of": "length" }, "minItems": 1, "items": { "type": "string", "quantity": { "of": "length" } } },
    "lean": { "type": "string", "quantity": { "of": "angle", "from": "-90 deg", "to": "90 deg" } },
    "two": { "type": "array", "minItems": 2, "maxItems": 2, "items": { "$ref": "#/$defs/text" } },
    "load": { "type": "string" },
    "paper": { "$ref": "#/$defs/text" },
    "tree": { "$ref": "#/$defs/tree" },
    "a/b~c": { "type": "object", "additionalProperties": false, "properties": { "d%e": { "type": "integer" } } }
  },
  "dependentRequired": { "load": ["paper"] },
  "if": { "required": ["word"], "properties": { "word": { "const": "new" } } },
  "then": { "properties": { "day": { "not": {}, "expected": "no day for what is new" } } },
  "$defs": {
    "text": { "type": ["string", "number"], "pattern": "\\S" },
    "tree": { "type": "object", "additionalProperties": { "$ref": "#/$defs/tree" }, "properties": { "leaf": { "type": "integer" } } }
  }
}`

func TestSchemaWords(t *testing.T) {
	s, err := Compile([]byte(small))
	if err != nil {
		t.Fatal(err)
	}
	cases := []struct {
		src  string // below "one: 1" and "name: x", in lines 1 and 2
		want []string
	}{
		{"", nil},
		{"nmae: y", []string{"3:1 /nmae | nmae is not a key here | did you mean name? keys here: a/b~c, count, day"}},
		{"zzz: y", []string{"3:1 /zzz | zzz is not a key here | keys here: a/b~c"}},
		{"word: kep", []string{`3:7 /word | "kep" can't stand under word | did you mean kept? one of: kept, remade, new`}},
		{"word: 5", []string{`3:7 /word | "5" can't stand under word | one of: kept, remade, new`}},
		{"word: [kept]", []string{"3:7 /word | word is a list where one value belongs | one of: kept, remade, new"}},
		{"word: {kept: kept}", []string{"3:7 /word | word holds keys where one value belongs"}},
		{"word:", []string{"3:1 /word | word has no value | one of: kept, remade, new, or leave the key out"}},
		{"word: ~", []string{"3:1 /word | word has no value"}},
		{"word: \"\"", []string{`3:7 /word | "" can't stand under word`}},
		{"id: AB", []string{`3:5 /id | "AB" is not in the form of id | small letters`}},
		{"id: ''", []string{"3:5 /id | id is empty | small letters, or leave the key out"}},
		{"yes: true", nil},
		{"yes: no", nil},
		{"yes: Yes", []string{`3:6 /yes | "Yes" can't stand under yes | did you mean yes? yes or no`}},
		{"yes: on", []string{`3:6 /yes | "on" can't stand under yes | yes or no`}},
		{"yes: [yes]", []string{"3:6 /yes | yes is a list where one value belongs | yes or no"}},
		{"yes: null", []string{"3:1 /yes | yes has no value | yes or no, or leave the key out"}},
		{"day: 1984", nil},
		{"day: 2027-05-01", nil},
		{"day: '2027-05'", nil},
		{"day: 2027-5-1", []string{`3:6 /day | "2027-5-1" is not a day in a form that is known here | a day such as 2021-04-10`}},
		{"day: 2021-02-30", []string{`3:6 /day | "2021-02-30" is no day, since February 2021 has no day 30`}},
		{"day: 1984\nword: new", []string{"3:1 /day | day can't stand here | no day for what is new"}},
		{"count: 10", nil},
		{"count: -3", nil},
		{"count: 010", []string{`3:8 /count | "010" is not a whole number as it is written here | digits alone`}},
		{"count: 0x10", []string{`3:8 /count | "0x10" is not a whole number`}},
		{"count: 1_000", []string{`3:8 /count | "1_000" is not a whole number`}},
		{"count: 1e3", []string{`3:8 /count | "1e3" is not a whole number`}},
		{"count: 2.0", []string{`3:8 /count | "2.0" is not a whole number`}},
		{"count: '10'", []string{`3:8 /count | "10" is a text and not a number, since it stands in quotes | digits alone`}},
		{"share: 0.25", nil},
		{"share: .5", []string{`3:8 /share | ".5" is not what belongs under share`}},
		{"paper: 316", nil},
		{"paper: 3.160", nil},
		{"paper: no", nil},
		{"paper: 2027-05-01", nil},
		{"paper: \" \"", []string{"3:8 /paper | paper is empty | a text, or leave the key out"}},
		{"size: 6 mm", nil},
		{"size: '1/4 in'", nil},
		{"size: 6", []string{`3:7 /size | 6 has no unit | for example "6 mm"`}},
		{"size: 6 N", []string{"3:7 /size | 6 N is a force where a length belongs"}},
		{"size: 0 mm", []string{"3:7 /size | 0 mm is not more than 0 mm | more than 0 mm"}},
		{"size: -6 mm", []string{"3:7 /size | -6 mm is not more than 0 mm"}},
		{"size: .nan", []string{"3:7 /size | .nan is no finite number"}},
		{"size: [6 mm]", []string{"3:7 /size | size is a list where one value belongs"}},
		{"sizes: [6 mm, 0 mm, -1/4 in]", nil},
		{"sizes: [6 mm, 6, [6 mm], x]", []string{"3:15 /sizes/1 | 6 has no unit", "3:18 /sizes/2 | entry 3 of sizes is a list where one value belongs", "3:26 /sizes/3 | x does not begin with a number"}},
		{"sizes: []", []string{"3:8 /sizes | sizes is an empty list | for example \"6 mm\" or \"1/2 in\", or leave the key out"}},
		{"sizes: [-1e308 mm, 1e308 mm]", []string{"3:8 /sizes | the readings are too far apart to reckon with"}},
		{"lean: 90 deg", nil},
		{"lean: 91 deg", []string{"3:7 /lean | 91 deg is more than 90 deg | 90 deg or less"}},
		{"lean: -91 deg", []string{"3:7 /lean | -91 deg is less than -90 deg | -90 deg or more"}},
		{"two: [a]", []string{"3:6 /two | two lists 1, and 2 belong there"}},
		{"two: [a, b, c]", []string{"3:6 /two | two lists 3, and 2 belong there"}},
		{"two: a", []string{"3:6 /two | two is a single value where a list belongs | entries that begin with a dash"}},
		{"two: {a: b}", []string{"3:6 /two | two holds keys where a list belongs"}},
		{"two: [a, ]", []string{"3:6 /two | two lists 1"}},
		{"two:\n- a\n-", []string{"5:2 /two/1 | entry 2 of two has no value | a text"}},
		{"load: x", []string{"1:1 /paper | load stands without paper | the key paper"}},
		{"tree: {a: {b: {leaf: 1}}}", nil},
		{"tree: {a: {b: {leaf: x}}}", []string{`3:22 /tree/a/b/leaf | "x" is not a whole number`}},
		{"tree: x", []string{"3:7 /tree | tree is a single value where keys with values belong | keys here: leaf"}},
		{"a/b~c: {d%e: x}", []string{`3:14 /a~1b~0c/d%e | "x" is not a whole number`}},
		{"a/b~c: {f%g/h: x}", []string{"3:9 /a~1b~0c/f%g~1h | f%g/h is not a key here | keys here: d%e"}},
		{"zzz: 1\ncount: x\nsize: 6\nword: kep", []string{"3:1 /zzz", "4:8 /count", "5:7 /size", "6:7 /word"}},
	}
	for _, c := range cases {
		t.Run(c.src, func(t *testing.T) {
			root, problems := Read("p.yaml", []byte("one: 1\nname: x\n"+c.src))
			expectTold(t, problems, nil)
			if root == nil {
				return
			}
			problems, err := s.Check(root)
			if err != nil {
				t.Fatal(err)
			}
			expectTold(t, problems, c.want)
		})
	}
}

func TestMissingKeys(t *testing.T) {
	s, err := Compile([]byte(small))
	if err != nil {
		t.Fatal(err)
	}
	for src, want := range map[string][]string{
		"\n count: 1":       {"2:2 /name | the file has no name | the key name, for example Grey Wagtail", "2:2 /one | the file has no one | one: 1"},
		"one: 1\nname:":     {"2:1 /name | name has no value | for example Grey Wagtail"},
		"one: 2\nname: ' '": {"1:6 /one | one is 2, and only 1 is taken | 1", "2:7 /name | name is empty | for example Grey Wagtail"},
		// A misspelt key is one fault and not two.
		"one: 1\nnaem: x": {"2:1 /naem | naem is not a key here | did you mean name?"},
	} {
		root, problems := Read("p.yaml", []byte(src))
		expectTold(t, problems, nil)
		problems, err := s.Check(root)
		if err != nil {
			t.Fatal(err)
		}
		expectTold(t, problems, want)
	}
}

// Messages are for people who never saw the schema.
func TestNoJargon(t *testing.T) {
	s, err := Compile([]byte(small))
	if err != nil {
		t.Fatal(err)
	}
	values := []string{"", "5", "x", "''", "[]", "[x]", "{}", "{x: y}", "true", "2021-13", "6 N", "010"}
	for key := range s.root.(map[string]any)["properties"].(map[string]any) {
		for _, value := range values {
			root, _ := Read("p.yaml", []byte("'"+key+"': "+value+"\n"))
			problems, err := s.Check(root)
			if err != nil {
				t.Fatal(err)
			}
			for _, p := range problems {
				text := " " + p.Message + " " + p.Expected + " "
				for _, word := range []string{"valid", "schema", "enum", "const ", "pattern", "propert", "type", "object", "array", "string", "integer", "items", "$", "%!", "nil", "null"} {
					if strings.Contains(text, word) {
						t.Errorf("%s: %s says %q: %s", key, value, word, told(p))
					}
				}
				if p.Message == "" || p.Expected == "" {
					t.Errorf("%s: %s leaves something unsaid: %s", key, value, told(p))
				}
			}
		}
	}
}

func TestAmounts(t *testing.T) {
	s, err := Compile([]byte(small))
	if err != nil {
		t.Fatal(err)
	}
	root, _ := Read("p.yaml", []byte("one: 1\nname: 6 mm\nsize: 1/4 in\nsizes: [6 mm, 7 mm]\nlean: 4 deg"))
	if problems, err := s.Check(root); err != nil || len(problems) > 0 {
		t.Fatal(problems, err)
	}
	if n := root.Member("name"); n.Amount != nil {
		t.Error("a text is taken for a quantity")
	}
	if a := root.Member("size").Amount; a == nil || a.Mean() != 6.35 || a.N() != 1 {
		t.Errorf("size is %+v", a)
	}
	if a := root.Member("sizes").Amount; a == nil || a.Mean() != 6.5 || a.Spread() != 1 || a.N() != 2 {
		t.Errorf("sizes is %+v", a)
	}
}

// What is wrong in a schema is said when it is compiled and not by guessing later.
func TestFaultySchemas(t *testing.T) {
	for change, old := range map[string]string{
		`"of": "lenght"`:                     `"of": "length"`,
		`"of": "length", "below": "1 mm"`:    `"of": "length", "above": "0 mm"`,
		`"of": "length", "above": "0 N"`:     `"of": "length", "above": "0 mm"`,
		`"of": "length", "above": 0`:         `"of": "length", "above": "0 mm"`,
		`"pattern": "["`:                     `"pattern": "\\S"`,
		`"$ref": "#/$defs/nothing"`:          `"$ref": "#/$defs/tree"`,
		`"$ref": "https://example.org/s"`:    `"$ref": "#/$defs/tree"`,
		`"maximum": 5, "type": "number"`:     `"type": "number"`,
		`"type": "numbre"`:                   `"type": "number"`,
		`"$id": ""`:                          `"$id": "urn:chainwale:test"`,
		`"quantity": "length"`:               `"quantity": { "of": "length" }`,
		`"additionalProperties": false,,`:    `"additionalProperties": false,`,
		`"text": { "$ref": "#/$defs/text" }`: `"text": { "type": ["string", "number"], "pattern": "\\S" }`,
	} {
		if !strings.Contains(small, old) {
			t.Fatalf("%s is not in the schema", old)
		}
		if _, err := Compile([]byte(strings.Replace(small, old, change, 1))); err == nil {
			t.Errorf("a schema with %s compiles", change)
		}
	}
}

func TestParseDay(t *testing.T) {
	day := func(text string) time.Time {
		d, err := time.Parse(time.DateOnly, text)
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	for text, want := range map[string][2]string{
		"1984":       {"1984-01-01", "1984-12-31"},
		"2024-02":    {"2024-02-01", "2024-02-29"},
		"2023-02":    {"2023-02-01", "2023-02-28"},
		"2021-12":    {"2021-12-01", "2021-12-31"},
		"2024-02-29": {"2024-02-29", "2024-02-29"},
	} {
		first, last, err := ParseDay(text)
		if err != nil || !first.Equal(day(want[0])) || !last.Equal(day(want[1])) {
			t.Errorf("%s is from %v to %v, %v", text, first, last, err)
		}
	}
	for text, why := range map[string]string{
		"": "form", "84": "form", "01984": "form", "1984-5": "form", "1984-05-1": "form", "1984-05-01T00:00": "form", "5/1/1984": "form", "1984 ": "form", "１９８４": "form",
		"0000": "outside the years", "1799": "outside the years", "2201-01-01": "outside the years",
		"1984-00": "no month 00", "1984-13": "no month 13", "2023-02-29": "February 2023 has no day 29", "2023-01-00": "has no day 00",
	} {
		if _, _, err := ParseDay(text); err == nil || !strings.Contains(err.Error(), why) {
			t.Errorf("%q: %v, want %s", text, err, why)
		}
	}
}
