package rule

import (
	"fmt"
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"

	"chainwale/engine/finding"
)

const goodHead = "id: try\nedition: 1\ntitle: A pack\n"

const goodRule = `id: a-rule
title: The plate is thick
on: landing
applies_if: fitting.state != "kept"
have: fitting.thickness
bands:
  - at_least: 4 mm
    else: stop
  - at_least: 0.5 * hole
    applies_if: stay.toggle
    else: mend
holds_up: cutting
says: "{fitting} has {have}"
because: It matters.
vary: [fitting.thickness]
known:
  - source: a book
    as: judgement
decides: [rigger]
examples:
  - { with: { fitting.state: new, fitting.thickness: 6 mm, stay.toggle: no }, outcome: holds }
  - { with: { fitting.state: new, fitting.thickness: 3 mm }, outcome: fails, grade: stop }
  - { with: { fitting.state: new }, outcome: cannot tell }
`

// pack makes a folder of files: pack.yaml and a.yaml, and what is given besides.
func packOf(rule string, more ...string) fstest.MapFS {
	files := fstest.MapFS{"p/pack.yaml": {Data: []byte(goodHead)}, "p/a.yaml": {Data: []byte(rule)}}
	for i := 0; i+1 < len(more); i += 2 {
		files["p/"+more[i]] = &fstest.MapFile{Data: []byte(more[i+1])}
	}
	return files
}

func loadAll(t testing.TB, files fs.FS) (*Pack, []finding.Problem) {
	t.Helper()
	return Load(files, "p", "my", catalogue(t), LoadOptions{})
}

// lines prints problems as a user reads them.
func lines(problems []finding.Problem) string {
	var out []string
	for _, p := range problems {
		line := fmt.Sprintf("%s:%d:%d: %s", p.At.File, p.At.Line, p.At.Column, p.Message)
		if p.Expected != "" {
			line += " | " + p.Expected
		}
		out = append(out, line)
	}
	return strings.Join(out, "\n")
}

func TestGoodRuleLoads(t *testing.T) {
	p, problems := loadAll(t, packOf(goodRule))
	if len(problems) > 0 {
		t.Fatal(lines(problems))
	}
	r := p.Rules[0]
	if r.IfUnknown != finding.Mend || p.ID != "try" || r.Pack != "try" || r.At.Line != 1 || r.At.Column != 5 {
		t.Errorf("%+v", r)
	}
	if got := strings.Join(r.Reads, " "); got != "fitting.state fitting.thickness stay.toggle hole" {
		t.Errorf("reads %s", got)
	}
}

// TestBadRules changes one thing of a good rule and expects exactly what is said
// about it.
func TestBadRules(t *testing.T) {
	const bands = "bands:\n  - at_least: 4 mm\n    else: stop\n  - at_least: 0.5 * hole\n    applies_if: stay.toggle\n    else: mend\n"
	tests := []struct{ name, old, new, want string }{
		{"force and stress", "  - at_least: 4 mm", "  - true_that: stay.break_load >= fitting.metal.yield",
			"my/a.yaml:7:35: the left side, stay.break_load (7:16), is in N; the right side, fitting.metal.yield (7:35), is in MPa | two of one dimension: both a force or both a stress"},
		{"have and limit", "at_least: 4 mm", "at_least: 2 * stay.break_load",
			"my/a.yaml:7:15: the left side, fitting.thickness (5:7), is in mm; the right side, 2 * stay.break_load (7:15), is in N | two of one dimension: both a length or both a force"},
		{"length added to force", "0.5 * hole", "hole + 0.5 * stay.break_load",
			"my/a.yaml:9:22: the left side of +, hole (9:15), is in mm; the right side, 0.5 * stay.break_load (9:22), is in N | two of one dimension: both a length or both a force"},
		{"bare number beside a length", "at_least: 4 mm", "at_least: 4",
			"my/a.yaml:7:15: the left side, fitting.thickness (5:7), is in mm; the right side, 4 (7:15), is a bare number | a quantity in quotes, as in '4 mm'"},
		{"second line of a block", "at_least: 0.5 * hole", "at_least: |\n      stay.toggle\n        ? hole\n        : stay.break_load",
			"my/a.yaml:12:11: the value if it is so, hole (11:11), is in mm; the value if not, stay.break_load (12:11), is in N | two of one dimension: both a length or both a force"},
		{"misspelt fact", "have: fitting.thickness", "have: fitting.thicknes",
			"my/a.yaml:5:7: there is no fact \"fitting.thicknes\" on a landing | did you mean fitting.thickness or fitting.hidden?"},
		{"misspelt fact in single quotes", "have: fitting.thickness", "have: 'min(hole, fitting.thicknes)'",
			"my/a.yaml:5:18: there is no fact \"fitting.thicknes\" on a landing | did you mean fitting.thickness or fitting.hidden?"},
		{"escapes before the place", `applies_if: fitting.state != "kept"`, `applies_if: "fitting.state != \"new\" and holee > '3 mm'"`,
			"my/a.yaml:4:43: there is no fact \"holee\" on a landing | did you mean hole?"},
		{"neighbour as a fact", "have: fitting.thickness", "have: fitting",
			"my/a.yaml:5:7: fitting is a neighbour and no fact | one of its facts, as in fitting.state"},
		{"group as a fact", "have: fitting.thickness", "have: fitting.metal",
			"my/a.yaml:5:7: there is no fact \"fitting.metal\" on a landing | one of its facts, as in fitting.metal.name"},
		{"unknown key", "because:", "why:",
			"my/a.yaml:1:1: a rule lacks the key because | because: why it matters, for a reader who is no engineer\nmy/a.yaml:14:1: a rule has no key \"why\" | one of id, title, on, applies_if, have, bands, at_least, at_most, above, below, true_that, else, if_unknown, holds_up, says, because, vary, known, decides, examples"},
		{"dropped not", `applies_if: fitting.state != "kept"`, "applies_if: ! stay.toggle",
			"my/a.yaml:4:13: YAML takes the `!` for a tag and drops it | `not` in an expression; in a text, put it in quotes"},
		{"dropped not without blank", `applies_if: fitting.state != "kept"`, "applies_if: !stay.toggle",
			"my/a.yaml:4:13: YAML takes the `!` for a tag and drops it | `not` in an expression; in a text, put it in quotes"},
		{"not as a sign", `applies_if: fitting.state != "kept"`, "applies_if: hole > '3 mm' and !stay.toggle",
			"my/a.yaml:4:31: \"!\" has no place in an expression | write `not`"},
		{"band in braces", "  - at_least: 4 mm\n    else: stop\n", "  - { at_least: max(2 * hole, end), else: stop }\n",
			"my/a.yaml:7:5: bands can't stand in braces or brackets, where a comma cuts an expression in two | a line for each key, the first after a hyphen"},
		{"grades worsening", "    else: mend\n", "    else: stop\n  - at_least: 0.4 * hole\n    else: mend\n  - at_least: 0.3 * hole\n    else: stop\n",
			"my/a.yaml:15:11: the grade gets worse down the list: stop after mend | the worst band first"},
		{"no holds_up", "holds_up: cutting\n", "",
			"my/a.yaml:1:1: a rule that can stop the work lacks the key holds_up | holds_up: cutting, sailing, this step or going aloft"},
		{"bad holds_up", "holds_up: cutting\n", "holds_up: dinner\n",
			"my/a.yaml:12:11: holds_up can't be \"dinner\" | one of cutting, sailing, this step, going aloft"},
		{"no failing example", "  - { with: { fitting.state: new, fitting.thickness: 3 mm }, outcome: fails, grade: stop }\n", "",
			"my/a.yaml:20:1: no example has the outcome \"fails\" | at least one example each that holds, fails and cannot tell"},
		{"no example that cannot tell, nor one that holds", "outcome: holds }\n", "outcome: does not apply }\n",
			"my/a.yaml:20:1: no example has the outcome \"holds\" | at least one example each that holds, fails and cannot tell"},
		{"infinite number", "0.5 * hole", "1e400 * hole",
			"my/a.yaml:9:15: \"1e400\" is beyond what can be reckoned with | a number that the trade would write"},
		{"number that vanishes", "0.5 * hole", "1e-400 * hole",
			"my/a.yaml:9:15: \"1e-400\" is beyond what can be reckoned with | a number that the trade would write"},
		{"odd number", "0.5 * hole", "010 * hole",
			"my/a.yaml:9:15: \"010\" is no plain number | a number such as 0.5, 12 or 1.5e3"},
		{"quantity without quotes within", "0.5 * hole", "max(12 mm, hole)",
			"my/a.yaml:9:19: the quantity 12 mm stands among other things without quotes | '12 mm'"},
		{"quantity run together within", "0.5 * hole", "max(12mm, hole)",
			"my/a.yaml:9:21: \"12m\" is no number | a number; a quantity stands in quotes, as in '12 mm'"},
		{"bad quantity", "at_least: 4 mm", "at_least: 4 mmm",
			"my/a.yaml:7:15: mmm is not a unit known here | write \"4 N mm\", \"4 mm\" or \"4 mm2\""},
		{"bad quantity in quotes", "0.5 * hole", "max('12 mn', hole)",
			"my/a.yaml:9:19: mn is not a unit known here: capital letters matter | write \"12 MN\""},
		{"quantity of another sort", "at_least: 4 mm", "at_least: 4 kN",
			"my/a.yaml:7:15: the left side, fitting.thickness (5:7), is in mm; the right side, 4 kN (7:15), is in N | two of one dimension: both a length or both a force"},
		{"word that never is", `!= "kept"`, `!= "keptt"`,
			"my/a.yaml:4:30: fitting.state is never \"keptt\" | did you mean kept?"},
		{"word of a list that never is", `!= "kept"`, `in ["new", "remode"]`,
			"my/a.yaml:4:38: fitting.state is never \"remode\" | did you mean remade?"},
		{"number compared with ==", "applies_if: stay.toggle", "applies_if: hole == end",
			"my/a.yaml:10:17: hole is a number, where a word is wanted | numbers are compared with < <= > >=, as in thickness >= '6 mm'\nmy/a.yaml:10:25: end is a number, where a word is wanted | numbers are compared with < <= > >=, as in thickness >= '6 mm'"},
		{"quantity compared with ==", "applies_if: stay.toggle", "applies_if: hole == '12 mm'",
			"my/a.yaml:10:17: hole is a number, where a word is wanted | numbers are compared with < <= > >=, as in thickness >= '6 mm'"},
		{"word where a number is wanted", "have: fitting.thickness", "have: fitting.state",
			"my/a.yaml:5:7: fitting.state is a word, where a number is wanted | a word is compared with ==, != or in, as in kind == \"chainplate\""},
		{"yes or no where a number is wanted", "have: fitting.thickness", "have: stay.toggle",
			"my/a.yaml:5:7: stay.toggle is a yes or no, where a number is wanted | a yes or no stands alone, or after not"},
		{"number where yes or no is wanted", "applies_if: stay.toggle", "applies_if: hole - end",
			"my/a.yaml:10:17: \"hole - end\" is a number, where a yes or no is wanted"},
		{"not binds tighter", "applies_if: stay.toggle", "applies_if: not hole > end",
			"my/a.yaml:10:17: \"not hole\" is a yes or no, where a number is wanted | what not is about stands in brackets, as in not (a > b)"},
		{"true is no fact", "applies_if: stay.toggle", "applies_if: stay.toggle and true",
			"my/a.yaml:10:33: \"true\" is no fact, where a yes or no is wanted | a yes or no stands alone, or after not"},
		{"call", "0.5 * hole", "floor(hole)",
			"my/a.yaml:9:15: floor can't be called | min, max or abs"},
		{"abs of two", "0.5 * hole", "abs(hole, end)",
			"my/a.yaml:9:15: abs is given 2 numbers | one number, as in abs(a)"},
		{"max of one", "0.5 * hole", "max(hole)",
			"my/a.yaml:9:15: max is given 1 number | two numbers or more, as in max(a, b)"},
		{"max of a length and a force", "0.5 * hole", "max(hole, stay.break_load)",
			"my/a.yaml:9:25: the first number, hole (9:19), is in mm; another number, stay.break_load (9:25), is in N | two of one dimension: both a length or both a force"},
		{"word fact and unknown word fact", "applies_if: stay.toggle", "applies_if: fitting.kind == fitting.kin",
			"my/a.yaml:10:33: there is no fact \"fitting.kin\" on a landing | did you mean fitting.kind, fitting.age or fitting.hidden?"},
		{"two words that never change", "applies_if: stay.toggle", "applies_if: '\"kept\" == \"new\"'",
			"my/a.yaml:10:18: `\"kept\" == \"new\"` compares two words that never change | a fact on one side"},
		{"list of facts", "applies_if: stay.toggle", "applies_if: fitting.kind in [fitting.state]",
			"my/a.yaml:10:34: \"fitting.state\" is no word in quotes | a word in quotes"},
		{"empty list of words", "applies_if: stay.toggle", "applies_if: fitting.kind in []",
			"my/a.yaml:10:33: \"[]\" is no list of words | words in brackets, as in [\"kept\", \"new\"]"},
		{"text before in", "applies_if: stay.toggle", "applies_if: |\n      'kept' in ['kept']",
			"my/a.yaml:11:7: 'kept' never changes | a fact before in"},
		{"list where yes or no is wanted", "applies_if: stay.toggle", "applies_if: stay.toggle and ['a']",
			"my/a.yaml:10:33: \"['a']\" is a list, where a yes or no is wanted | a list stands after in only"},
		{"text where yes or no is wanted", "applies_if: stay.toggle", "applies_if: stay.toggle and 'a'",
			"my/a.yaml:10:33: \"'a'\" is a text in quotes, where a yes or no is wanted | a text in quotes stands beside ==, != or in, or is a quantity where a number is wanted"},
		{"call where yes or no is wanted", "applies_if: stay.toggle", "applies_if: stay.toggle and max(hole, end)",
			"my/a.yaml:10:33: \"max(hole, end)\" is no yes or no, where a yes or no is wanted | min, max and abs give numbers; nothing else can be called"},
		{"sum compared as a word", "applies_if: stay.toggle", "applies_if: fitting.kind == hole + end",
			"my/a.yaml:10:33: \"hole + end\" is no word | == and != compare words; numbers are compared with < <= > >="},
		{"key that is no word", "because: It matters.", "because: It matters.\n? [a]\n: b",
			"my/a.yaml:15:3: a key must be a word | a word before the colon"},
		{"source without keys", "  - source: a book\n    as: judgement\n", "  - a book\n",
			"my/a.yaml:17:5: a source has no keys | keys and values, as in source: …"},
		{"example without keys", "  - { with: { fitting.state: new }, outcome: cannot tell }\n", "  - cannot tell\n",
			"my/a.yaml:20:1: no example has the outcome \"cannot tell\" | at least one example each that holds, fails and cannot tell\nmy/a.yaml:23:5: an example has no keys | keys and values, as in with: …"},
		{"with without keys", "with: { fitting.state: new }", "with: new",
			"my/a.yaml:23:13: with holds a text | facts and their values, as in thickness: 6 mm"},
		{"unknown call", "0.5 * hole", "sqrt(hole)",
			"my/a.yaml:9:15: sqrt can't be called | min, max or abs"},
		{"method", "0.5 * hole", "stay.hole(1)",
			"my/a.yaml:9:15: a fact can't be called | min, max or abs"},
		{"predicate", "applies_if: stay.toggle", `applies_if: "all(stay, # > 1)"`,
			"my/a.yaml:10:28: \"#\" has no place in an expression | " + grammar},
		{"index", "0.5 * hole", `stay["break_load"]`,
			"my/a.yaml:9:15: `stay[\"break_load\"]` is no fact's name | a fact's name, with a neighbour's name and a dot before it where it is a neighbour's"},
		{"index by number", "0.5 * hole", `stay[0]`,
			"my/a.yaml:9:15: \"stay[0]\" is no fact's name | a fact's name, with a neighbour's name and a dot before it where it is a neighbour's"},
		{"optional", "0.5 * hole", `stay?.break_load`,
			"my/a.yaml:9:19: \"?.\" has no place in an expression | " + grammar},
		{"coalesce", "0.5 * hole", `hole ?? end`,
			"my/a.yaml:9:20: \"??\" has no place in an expression | " + grammar},
		{"let", "0.5 * hole", `let x = hole; x`,
			"my/a.yaml:9:15: \"let\" has no place in an expression | " + grammar},
		{"pipe", "0.5 * hole", `hole | abs`,
			"my/a.yaml:9:20: \"|\" has no place in an expression | " + grammar},
		{"range", "applies_if: stay.toggle", `applies_if: stay.role in 1..3`,
			"my/a.yaml:10:31: \"..\" has no place in an expression | " + grammar},
		{"percent", "0.5 * hole", `hole % 3`,
			"my/a.yaml:9:20: \"%\" has no place in an expression | " + grammar},
		{"matches", "applies_if: stay.toggle", `applies_if: stay.role matches "f.*"`,
			"my/a.yaml:10:27: \"matches\" has no place in an expression | " + grammar},
		{"comment", "0.5 * hole", `end // hole`,
			"my/a.yaml:9:19: \"//\" has no place in an expression | write `/` to divide; an expression has no comments"},
		{"and as a sign", "applies_if: stay.toggle", `applies_if: stay.toggle && fitting.hidden`,
			"my/a.yaml:10:29: \"&&\" has no place in an expression | write `and`"},
		{"exponent", "0.5 * hole", `hole ** 1.5`,
			"my/a.yaml:9:23: the exponent 1.5 is no such number | a whole number from -20 to 20"},
		{"powers out of range", "0.5 * hole", `((hole ** 20) ** 20) ** 20 * hole`,
			"my/a.yaml:9:16: the powers of the units in \"(hole ** 20) ** 20\" are too high to be kept apart | lower powers"},
		{"unfinished", "0.5 * hole", `0.5 *`,
			"my/a.yaml:9:19: the expression can't be understood: something is missing at the end | " + grammar},
		{"not closed", "0.5 * hole", `max(hole, end`,
			"my/a.yaml:9:27: the expression can't be understood: something is missing at the end | " + grammar},
		{"folded", "at_least: 0.5 * hole", "at_least: >\n      0.5 *\n      hole",
			"my/a.yaml:9:15: an expression can't be folded over several lines | one line, or a `|` block"},
		{"over two lines", "at_least: 0.5 * hole", "at_least: 0.5\n      * hole",
			"my/a.yaml:9:15: an expression can't be folded over several lines | one line, or a `|` block"},
		{"colon not in quotes", "at_least: 0.5 * hole", "at_least: stay.toggle ? hole : end",
			"my/a.yaml:9:34: not YAML: mapping values are not allowed in this context | a text that holds `: `, as `a ? b : c` does, stands in quotes or in a `|` block"},
		{"anchor and alias", "at_least: 0.5 * hole", "at_least: &h hole\n  - at_least: *h",
			"my/a.yaml:9:5: a band lacks the key else | else: the grade if the limit is not met; one of stop, mend, watch\nmy/a.yaml:9:15: `&h` names a place for repeating, which a pack may not do | the text without it, or the text in quotes\nmy/a.yaml:10:15: `*h` repeats another place of the file, which a pack may not do | the text itself, or the text in quotes"},
		{"tag", "at_least: 0.5 * hole", "at_least: !!str hole",
			"my/a.yaml:9:15: YAML takes the `!` for a tag and drops it | `not` in an expression; in a text, put it in quotes"},
		{"key twice", "because: It matters.\n", "because: It matters.\nbecause: It does.\n",
			"my/a.yaml:15:1: the key because stands on line 14 already | each key once"},
		{"second document", "decides: [rigger]\n", "decides: [rigger]\n---\nid: b\n",
			"my/a.yaml:20:1: a second document begins here | one document a file"},
		{"two limits", "    else: stop\n", "    above: 3 mm\n    else: stop\n",
			"my/a.yaml:8:5: a band has both at_least and above | one limit a band; write a second band for the other"},
		{"no limit", "  - at_least: 4 mm\n    else", "  - else",
			"my/a.yaml:7:5: a band has no limit | one of at_least, at_most, above, below, true_that"},
		{"no grade", "    else: stop\n", "",
			"my/a.yaml:7:5: a band lacks the key else | else: the grade if the limit is not met; one of stop, mend, watch"},
		{"bad grade", "    else: stop\n", "    else: error\n",
			"my/a.yaml:8:11: else can't be \"error\" | one of stop, mend, watch"},
		{"limit beside bands", "have: fitting.thickness\n", "have: fitting.thickness\nat_least: 3 mm\n",
			"my/a.yaml:6:1: at_least can't stand beside bands | put it in a band of its own"},
		{"no limit at all", bands, "",
			"my/a.yaml:1:1: a rule lacks the key else | else: the grade if the limit is not met; one of stop, mend, watch\nmy/a.yaml:1:1: a rule has no limit | one of at_least, at_most, above, below, true_that"},
		{"nothing to compare", "have: fitting.thickness\n", "",
			"my/a.yaml:6:5: at_least compares, but the rule has no have | have: what is compared\nmy/a.yaml:12:22: nothing is named \"have\" that could be filled in | one of landing, stay, fitting, need, ratio or a fact's name"},
		{"have without a value", "have: fitting.thickness\n", "have:\n",
			"my/a.yaml:5:6: have is empty"},
		{"list for a text", "because: It matters.", "because: [It, matters]",
			"my/a.yaml:14:10: because holds a list | a text"},
		{"text for a list", "decides: [rigger]", "decides: rigger",
			"my/a.yaml:19:10: decides holds a text | a list, each entry after a hyphen or all of them in [ ]"},
		{"empty list", "decides: [rigger]", "decides: []",
			"my/a.yaml:19:10: decides is empty | at least one entry"},
		{"unknown kind", "on: landing", "on: landin",
			"my/a.yaml:3:5: there is no kind of subject named \"landin\" | did you mean landing?"},
		{"bad id", "id: a-rule", "id: A rule",
			"my/a.yaml:1:5: \"A rule\" is no name for a rule | small letters and digits with hyphens between, as in plate-outlasts-wire"},
		{"missing keys", "title: The plate is thick\non: landing\n", "",
			"my/a.yaml:1:1: a rule lacks the key title | title: what is so when the rule holds, as a sentence: The plate is stronger than the wire it holds\nmy/a.yaml:1:1: a rule lacks the key on | on: the kind of subject that is judged: stay, fitting, landing"},
		{"vary is worked out", "vary: [fitting.thickness]", "vary: [fitting.metal.yield]",
			"my/a.yaml:15:8: fitting.metal.yield is worked out and no value of the plan | a fact that the plan gives"},
		{"vary is no fact", "vary: [fitting.thickness]", "vary: [thickness]",
			"my/a.yaml:15:8: there is no fact \"thickness\" on a landing | did you mean fitting.thickness?"},
		{"how known", "as: judgement", "as: hearsay",
			"my/a.yaml:18:9: as can't be \"hearsay\" | one of published, common practice, computed, memory, judgement"},
		{"placeholder", `"{fitting} has {have}"`, `"{fiting} has {have}"`,
			"my/a.yaml:13:8: nothing is named \"fiting\" that could be filled in | did you mean fitting?"},
		{"placeholder of nothing", `"{fitting} has {have}"`, `"{fitting} has {have} of {xyzzy}"`,
			"my/a.yaml:13:32: nothing is named \"xyzzy\" that could be filled in | one of landing, stay, fitting, have, need, ratio or a fact's name"},
		{"need where a condition may not be met", "    else: mend\nholds_up: cutting\nsays: \"{fitting} has {have}\"",
			"    else: mend\n  - true_that: stay.toggle\n    else: mend\nholds_up: cutting\nsays: \"{fitting} has {need}\"",
			"my/a.yaml:15:22: there is no need where a limit is no number but a true_that | one of landing, stay, fitting, have or a fact's name"},
		{"open brace", `"{fitting} has {have}"`, `"{fitting} has {have"`,
			"my/a.yaml:13:22: a brace without its fellow | a name in braces, as in {have}"},
		{"example with an unknown fact", "fitting.thickness: 3 mm }", "fitting.thikness: 3 mm }",
			"my/a.yaml:22:35: there is no fact \"fitting.thikness\" on a landing | did you mean fitting.thickness, fitting.access or fitting.hidden?"},
		{"example with a force for a length", "fitting.thickness: 3 mm }", "fitting.thickness: 3 kN }",
			"my/a.yaml:22:54: 3 kN is a force where a length belongs | write for example \"6 mm\" or \"1/2 in\" (mm, cm, m, um, in, ft)"},
		{"example with a bare number", "fitting.thickness: 3 mm }", "fitting.thickness: 3 }",
			"my/a.yaml:22:54: 3 has no unit | write for example \"3 mm\" or \"1/2 in\" (mm, cm, m, um, in, ft)"},
		{"example with a word that never is", "with: { fitting.state: new }", "with: { fitting.state: newer }",
			"my/a.yaml:23:30: fitting.state is never \"newer\" | one of kept, remade, new"},
		{"example with a bad yes or no", "stay.toggle: no", "stay.toggle: maybe",
			"my/a.yaml:21:73: \"maybe\" is no yes or no | yes or no"},
		{"example that holds with a grade", "outcome: holds }", "outcome: holds, grade: mend }",
			"my/a.yaml:21:102: what holds has no grade | no grade"},
		{"bad outcome", "outcome: holds }", "outcome: passes }",
			"my/a.yaml:20:1: no example has the outcome \"holds\" | at least one example each that holds, fails and cannot tell\nmy/a.yaml:21:88: outcome can't be \"passes\" | one of holds, fails, cannot tell, does not apply"},
		{"no expression but a comment", "at_least: 4 mm", "at_least: # 4 mm",
			"my/a.yaml:7:14: at_least is empty"},
		{"not UTF-8", "It matters.", "It m\xe4tters.",
			"my/a.yaml:14:14: the byte 0xe4 is no text | text in UTF-8"},
		{"hidden character", "It matters.", "It\u2028matters.",
			"my/a.yaml:14:12: the character U+2028 can't be seen | letters, digits, marks and blanks"},
		{"two million brackets", "0.5 * hole", strings.Repeat("(", 2_000_000),
			"my/a.yaml:1:1: the file has more than a megabyte | a file of at most 1 MB"},
		{"as many brackets as a file may have", "0.5 * hole", strings.Repeat("(", 1_000_000),
			"my/a.yaml:9:15: the expression has 1000000 bytes | at most 2,000 bytes"},
		{"two thousand brackets", "0.5 * hole", strings.Repeat("(", 1000) + "hole" + strings.Repeat(")", 1000),
			"my/a.yaml:9:15: the expression has 2004 bytes | at most 2,000 bytes"},
		{"seventy brackets", "0.5 * hole", strings.Repeat("(", 70) + "hole" + strings.Repeat(")", 70),
			"my/a.yaml:9:79: the expression is nested more than 64 deep | a fact for the inner part, or two rules"},
		{"seventy signs", "0.5 * hole", "'" + strings.Repeat("- ", 70) + "hole'",
			"my/a.yaml:9:144: the expression is nested more than 64 deep | a fact for the inner part, or two rules"},
		{"more than a megabyte", "It matters.", strings.Repeat("It matters. ", 100_000),
			"my/a.yaml:1:1: the file has more than a megabyte | a file of at most 1 MB"},
		{"empty file", goodRule, "",
			"my/a.yaml:1:1: the file is empty | keys and values, as in `id: my-rule`"},
		{"only a comment", goodRule, "# nothing\n",
			"my/a.yaml:1:1: the file is empty | keys and values, as in `id: my-rule`"},
		{"a list for a file", goodRule, "- a\n- b\n",
			"my/a.yaml:1:1: the file holds no keys | keys and values, as in `id: my-rule`"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if !strings.Contains(goodRule, test.old) {
				t.Fatalf("the good rule has no %q", test.old)
			}
			p, problems := loadAll(t, packOf(strings.Replace(goodRule, test.old, test.new, 1)))
			if got := lines(problems); got != test.want {
				t.Errorf("\n%s", got)
			}
			if p != nil {
				t.Error("the pack was loaded all the same")
			}
		})
	}
}
