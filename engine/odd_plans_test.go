package engine_test

import (
	"os"
	"strings"
	"testing"

	"chainwale/engine/finding"
	"chainwale/engine/plan"
)

// TestOddPlans holds that what makes no sense in a plan is said by the right rule,
// with the right grade, in a sentence that makes sense; and that it counts for
// nothing where it would otherwise pass.
func TestOddPlans(t *testing.T) {
	const crack, brass, knee, mended = "dangerous/crack-seen", "dangerous/brass-under-load", "dangerous/rotten-knee", "boats/quillfish-mended"
	for _, test := range []struct {
		name, file string
		change     []string
		rule, on   string
		outcome    finding.Outcome
		grade      finding.Grade
		says       string
	}{
		{"a fitting that serves nothing", mended, []string{"    serves: [backstay]\n", ""},
			"fitting-serves-a-stay", "fitting:backstay-plate", finding.Fails, finding.Watch,
			"backstay-plate serves no stay that the plan knows, so nothing of its strength was judged."},
		{"a record of tomorrow", brass, []string{"on: 2025-04-26", "on: 2027-04-26"},
			"record-makes-sense", "record:spring-2025", finding.Fails, finding.Mend,
			"The record spring-2025 of backstay-plate is dated after the day judged on, so it does not count as a look."},
		{"a record of tomorrow is no look", brass, []string{"on: 2025-04-26", "on: 2027-04-26"},
			"last-look", "fitting:backstay-plate", finding.Fails, finding.Watch,
			"backstay-plate was made, or last drawn and looked at, 12.9 years ago; 5 years is the limit."},
		{"a record before the part was there", brass, []string{"on: 2025-04-26", "on: 2013-04-26"},
			"record-makes-sense", "record:spring-2025", finding.Fails, finding.Watch,
			"The record spring-2025 of backstay-plate is dated before the part was there, so it does not count as a look."},
		{"a record before the part was there is no look", brass, []string{"on: 2025-04-26", "on: 2013-04-26"},
			"last-look", "fitting:backstay-plate", finding.Fails, finding.Watch,
			"backstay-plate was made, or last drawn and looked at, 12.9 years ago; 5 years is the limit."},
		{"a record of the year in which the part was fitted may be of it", brass, []string{"on: 2025-04-26", "on: 2014"},
			"record-makes-sense", "record:spring-2025", finding.Holds, "", ""},
		{"a crack under a wrong date is a crack", brass, []string{"on: 2025-04-26", "on: 2013-04-26", "crack: none seen", "crack: seen"},
			"crack-seen", "record:spring-2025", finding.Fails, finding.Stop,
			"A crack, or a line across the metal, was seen on backstay-plate: it is replaced."},
		{"a kept plate of tomorrow", brass, []string{"installed: 2014", "installed: 2031"},
			"age-of-plate", "fitting:backstay-plate", finding.CannotTell, finding.Mend,
			`not known: how many years ago the part was made, because 2031 is later than the day judged on; it would settle "The part is not older than such parts are trusted"`},
		{"nobody can have looked at a plate of tomorrow", brass, []string{"installed: 2014", "installed: 2031"},
			"last-look", "fitting:backstay-plate", finding.CannotTell, finding.Watch,
			`not known: how many years ago it was last drawn and looked at, or made, because 2031 is later than the day judged on; it would settle "The part was drawn and looked at not long ago"`},
		{"a wire of tomorrow", brass, []string{"installed: 2021", "installed: 2031"},
			"age-of-wire", "stay:backstay", finding.CannotTell, finding.Watch,
			`not known: how many years ago the wire was fitted, because 2031 is later than the day judged on; it would settle "The wire is not older than such wires are trusted"`},
		{"a next look that has passed", crack, []string{"next_look: 2028", "next_look: 2020"},
			"metal-for-a-hidden-wet-place", "fitting:cap-plate-port", finding.Fails, finding.Watch,
			"cap-plate-port is of 316L and stands where water gets and nobody looks. It wants access to both faces (panel) and a day for the next look (planned: no)."},
		{"a plate that stays new", brass, []string{"state: kept", "state: new"},
			"new-part-is-new", "fitting:backstay-plate", finding.Fails, finding.Mend,
			"backstay-plate is called new and was fitted 12.9 years ago. A part that stays is kept; for one still to be made, leave out when it was fitted."},
		{"rotten wood", knee, nil,
			"host-is-sound", "mounting:fore-lower-plate", finding.Fails, finding.Stop,
			"What fore-lower-plate is bolted to was found rotten."},
		{"rotten wood with a strength given", knee, nil,
			"host-holds-the-bolts", "bolt_group:fore-lower", finding.CannotTell, finding.Watch,
			`not known: load at work that what the bolts go through holds (by the yield modes of timber, or a third of what crushes laminate), because it was found rotten and has no strength to reckon with; it would settle "What the bolts go through holds them"`},
		{"soft laminate with a thickness given", brass, []string{"found: sound", "found: soft"},
			"bolt-heads-do-not-pull-through", "bolt_group:backstay", finding.CannotTell, finding.Watch,
			`not known: pull at which a bolt's washer or backing comes through the laminate, because it was found soft and has no strength to reckon with; it would settle "No bolt is pulled through the laminate"`},
		{"damp wood", knee, []string{"found: rotten", "found: damp"},
			"host-is-sound", "mounting:fore-lower-plate", finding.Fails, finding.Mend,
			"What fore-lower-plate is bolted to was found damp."},
		{"wood that nobody looked at", knee, []string{"found: rotten", "found: not looked at"},
			"host-is-sound", "mounting:fore-lower-plate", finding.Fails, finding.Mend,
			"Nobody looked at what fore-lower-plate is bolted to."},
		{"wear without pits", brass, []string{"pits: none seen", "pits: none seen, loss: 10 %, loss_at_hole: no"},
			"pits-and-thinning", "record:spring-2025", finding.Fails, finding.Mend,
			"backstay-plate has lost 0.1 of its thickness; at a hole or a bend: no."},
		{"a pin of brass", brass, []string{"measured: 12.6 mm, metal: 316", "measured: 12.6 mm, metal: naval brass"},
			"no-zinc-brass-pin", "landing:backstay", finding.Fails, finding.Mend,
			"The pin of backstay is of naval brass, a brass that loses its zinc in sea water and then has no strength."},
		{"bolts of brass", brass, []string{"grade: A4-70", "grade: A4-70, metal: naval brass"},
			"no-zinc-brass-bolts", "bolt_group:backstay", finding.Fails, finding.Mend,
			"The bolts of backstay-plate are of naval brass, a brass that loses its zinc in sea water and then has no strength."},
		{"bolts of a grade that nobody knows", brass, []string{"grade: A4-70", "grade: Z9"},
			"no-zinc-brass-bolts", "bolt_group:backstay", finding.CannotTell, finding.Watch, ""},
		{"a hole between the pin hole and the end", brass, []string{"{ role: pin, diameter: 13 mm, along: 22 mm }", "{ role: pin, diameter: 13 mm, along: 38 mm }\n      - { role: bolt, diameter: 10.5 mm, along: 20 mm }"},
			"end-distance-of-pin-hole", "landing:backstay", finding.Fails, finding.Stop,
			"From the centre of its pin hole backstay-plate has 12.8 mm of metal in the pull of the wire, which is 0.981 hole diameters; 1 is the limit."},
		{"a hole somewhere before the pin hole", brass, []string{"{ role: pin, diameter: 13 mm, along: 22 mm }", "{ role: pin, diameter: 13 mm, along: 38 mm }\n      - { role: bolt, diameter: 10.5 mm }"},
			"end-distance-of-pin-hole", "landing:backstay", finding.CannotTell, finding.Mend, ""},
		{"a bent rod", mended, []string{"kind: backstay plate", "kind: u-bolt"},
			"kind-is-covered", "fitting:backstay-plate", finding.Fails, finding.Mend,
			"The strength of a u-bolt is not covered here: backstay-plate needs a naval architect."},
	} {
		t.Run(test.name, func(t *testing.T) {
			f := findingOf(check(t, "odd.yaml", changed(t, test.file, test.change...)), test.rule, test.on)
			switch {
			case f == nil:
				t.Errorf("%s says nothing of %s", test.rule, test.on)
			case f.Outcome != test.outcome || f.Grade != test.grade:
				t.Errorf("%s gives %s %s, wanted %s %s: %s", test.rule, f.Outcome, f.Grade, test.outcome, test.grade, f.Message)
			case test.says != "" && f.Message != test.says:
				t.Errorf("%s says\n%s\nwanted\n%s", test.rule, f.Message, test.says)
			}
		})
	}
}

// changed is a plan of testdata with pieces of its text changed, each of which must
// be there.
func changed(t *testing.T, file string, pieces ...string) string {
	t.Helper()
	src, err := os.ReadFile("../testdata/" + file + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	text := string(src)
	for i := 0; i < len(pieces); i += 2 {
		if !strings.Contains(text, pieces[i]) {
			t.Fatalf("%s has no %q", file, pieces[i])
		}
		text = strings.Replace(text, pieces[i], pieces[i+1], 1)
	}
	return text
}

// TestTwoStaysOnOnePlate holds that a plate under two wires is judged under both,
// and that it can't be told while one of them has no direction.
func TestTwoStaysOnOnePlate(t *testing.T) {
	both := []string{"    serves: [cap-shroud]", "    serves: [cap-shroud, fore-lower]", "    serves: [fore-lower]\n", ""}
	nowhere := append(both, "    lower: { x: 0.55 m, y: 1.4 m, z: 1.75 m }\n", "")
	for _, test := range []struct {
		name    string
		change  []string
		outcome finding.Outcome
		grade   finding.Grade
		says    string
	}{
		{"both known", both, finding.Holds, "", ""},
		{"one without its lower end", nowhere, finding.CannotTell, finding.Watch, `would settle "The plate bears all its stays together"`},
	} {
		f := findingOf(check(t, "two.yaml", changed(t, "boats/quillfish-mended", test.change...)), "plate-bears-all-its-stays", "fitting:cap-plate-port")
		if f == nil || f.Outcome != test.outcome || f.Grade != test.grade || !strings.Contains(f.Message, test.says) {
			t.Errorf("%s: %+v, wanted %s %s", test.name, f, test.outcome, test.grade)
		}
	}
}

// TestMissingStay holds that a plate which serves a stay that the plan doesn't have
// is a problem of the plan, at its place, and that nothing is judged past it.
func TestMissingStay(t *testing.T) {
	for _, test := range []struct {
		name, serves, message, expected string
		column                          int
	}{
		{"one of two is missing", "[cap-shroud, mizzen-shroud]", "no stay has the id mizzen-shroud", "", 26},
		{"one of two is misspelt", "[cap-shroud, for-lower]", "no stay has the id for-lower", "fore-lower", 26},
		{"the only one is missing", "[mizzen-shroud]", "no stay has the id mizzen-shroud", "", 14},
	} {
		text := changed(t, "boats/quillfish-mended", "serves: [cap-shroud]", "serves: "+test.serves)
		_, problems, err := plan.Parse("two.yaml", []byte(text))
		if err != nil || len(problems) != 1 {
			t.Errorf("%s: %v %v", test.name, err, problems)
			continue
		}
		p := problems[0]
		line := 1 + strings.Count(text[:strings.Index(text, "serves: "+test.serves)], "\n")
		if p.At.Line != line || p.At.Column != test.column || p.Message != test.message || !strings.Contains(p.Expected, test.expected) {
			t.Errorf("%s: %d:%d: %s (%s), wanted line %d", test.name, p.At.Line, p.At.Column, p.Message, p.Expected, line)
		}
	}
}
