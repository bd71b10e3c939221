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
	const (
		crack, brass, knee   = "dangerous/crack-seen", "dangerous/brass-under-load", "dangerous/rotten-knee"
		bolts, weak, mended  = "dangerous/three-small-bolts", "dangerous/plate-weaker-than-the-wire", "boats/quillfish-mended"
		slot, glassed, small = "dangerous/304-in-a-wet-slot", "dangerous/glassed-in", "dangerous/pin-half-a-size-too-small"
	)
	for _, test := range []struct {
		name, file string
		change     []string
		rule, on   string
		outcome    finding.Outcome
		grade      finding.Grade
		says       string
	}{
		{"a fitting that serves nothing", mended, []string{"    serves: [backstay]\n", ""},
			"fitting-serves-a-stay", "fitting:backstay-plate", finding.Fails, finding.Mend,
			"backstay-plate serves no stay that the plan knows, so nothing of its strength was judged."},
		{"a wire that leads across its plate", brass, []string{"in_plane: 0 deg", "in_plane: 85 deg"},
			"wire-in-the-plates-plane", "landing:backstay", finding.Fails, finding.Mend,
			"Seen square on the plate's face, backstay leads 85 deg off the centre line of backstay-plate; more than 20 deg is too much."},
		{"a stay that nothing holds", mended, []string{"    serves: [backstay]\n", ""},
			"stay-has-its-fitting", "stay:backstay", finding.Fails, finding.Watch,
			"No fitting of the plan serves backstay, so nothing of what holds it was judged."},
		{"a pin too thin by its name", small, []string{", measured: [13.92 mm, 13.9 mm]", ""},
			"pin-fits", "landing:aft-lower", finding.Fails, finding.Mend,
			"The hole of aft-lower-plate measures 16.2 mm and the pin of aft-lower only 14 mm: a pin so loose hammers in its hole."},
		{"a pin of the right name that nobody measured", brass, []string{", measured: 12.6 mm", ""},
			"pin-fits", "landing:backstay", finding.CannotTell, finding.Watch, ""},
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
			"cap-plate-port is of 316L and stands where water gets and nobody looks, and the plan names no day, still to come, on which it is drawn and looked at."},
		{"a plate that stays new", brass, []string{"state: kept", "state: new"},
			"new-part-is-new", "fitting:backstay-plate", finding.Fails, finding.Mend,
			"backstay-plate is called new and was fitted 12.9 years ago. A part that stays is called kept; for one still to be made, leave out when it was fitted."},
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
			"host-is-sound", "mounting:fore-lower-plate", finding.CannotTell, finding.Mend,
			`not known: whether what the bolts go through was found sound, damp, soft or rotten, because nobody has looked; it would settle "What the bolts go through is sound"`},
		{"wear without pits", brass, []string{"pits: none seen", "pits: none seen, loss: 10 %, loss_at_hole: no"},
			"pits-and-thinning", "record:spring-2025", finding.Fails, finding.Mend,
			"backstay-plate has lost 10 per cent of its thickness, and 5 is the limit."},
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
			"Where the wire pulls, backstay-plate has 12.8 mm of metal from the centre of its pin hole outwards, which is 0.981 hole diameters; at least 1 is wanted."},
		{"a hole somewhere before the pin hole", brass, []string{"{ role: pin, diameter: 13 mm, along: 22 mm }", "{ role: pin, diameter: 13 mm, along: 38 mm }\n      - { role: bolt, diameter: 10.5 mm }"},
			"end-distance-of-pin-hole", "landing:backstay", finding.CannotTell, finding.Mend, ""},
		{"wear at a hole", brass, []string{"pits: none seen", "pits: none seen, loss: 2 %, loss_at_hole: yes"},
			"pits-and-thinning", "record:spring-2025", finding.Fails, finding.Mend,
			"backstay-plate has lost 2 per cent of its thickness at a hole or a bend, where it carries most."},
		{"a pin that does not go in", small, []string{"diameter: 14 mm, measured: [13.92 mm, 13.9 mm]", "diameter: 16.5 mm, measured: 16.4 mm"},
			"pin-fits", "landing:aft-lower", finding.Fails, finding.Mend,
			"The pin of aft-lower measures 16.4 mm and does not go into the hole of aft-lower-plate, which is 16.2 mm wide."},
		{"a plate that does not go into its fork", brass, []string{"opening: 15 mm", "opening: 11 mm"},
			"fork-is-filled", "landing:backstay", finding.Fails, finding.Mend,
			"backstay-plate is 12 mm thick and does not go into the fork of backstay, which is 11 mm wide."},
		{"a plate that was tested was drawn", brass, []string{"did: drawn and looked at", "did: tested"},
			"last-look", "fitting:backstay-plate", finding.Holds, "", ""},
		{"a crack in a plate that is called new", crack, []string{"state: kept", "state: new", "    installed: 2016\n", ""},
			"crack-seen", "record:spring-2026", finding.Fails, finding.Stop,
			"A crack, or a line across the metal, was seen on the part that cap-plate-port takes the place of: until the new one is fitted, and the plan says on which day, she does not sail."},
		{"a crack in a plate that is to be changed one day", crack, []string{"state: kept", "state: new", "installed: 2016", "installed: 2027"},
			"crack-seen", "record:spring-2026", finding.Fails, finding.Stop, ""},
		{"a crack in a plate that was changed since", crack, []string{"state: kept", "state: new", "installed: 2016", "installed: 2026-05"},
			"crack-seen", "record:spring-2026", finding.Holds, "", ""},
		{"a crack in a plate that was new a year ago", crack, []string{"state: kept", "state: new", "installed: 2016", "installed: 2025"},
			"crack-seen", "record:spring-2026", finding.Fails, finding.Stop,
			"A crack, or a line across the metal, was seen on cap-plate-port: it is replaced."},
		{"a leak at a plate that was new a year ago", crack, []string{"state: kept", "state: new", "installed: 2016", "installed: 2025", "leak: none seen", "leak: seen"},
			"leak-or-rust-weep", "record:spring-2026", finding.Fails, finding.Mend,
			"Water came in beside cap-plate-port or rust ran from it (water: seen; rust: none seen): it is drawn now, whatever its age."},
		{"bolts that are thicker than their holes", bolts, []string{"thread: 1/4-20 UNC", "thread: M12"},
			"bolts-outlast-wire", "bolt_group:cap-shroud-port", finding.CannotTell, finding.Mend,
			`not known: load at which one bolt shears and pull at which one bolt breaks along its length, because a bolt of 12 mm does not go through a hole of 6.747 mm; they would settle "The bolts are stronger than the wire"`},
		{"a break load in newtons", weak, []string{"diameter: 7 mm }", "diameter: 7 mm, break_load: 35.5 N, certificate: the dealer's }"},
			"plate-outlasts-wire", "landing:backstay", finding.CannotTell, finding.Mend,
			`not known: load at which the wire breaks; where its metal is not known, that of the stronger wire (backstay), because the certificate says 35.5 N, and such a wire breaks at 35.5 kN: one of them is a slip; it would settle "The plate is stronger than the wire it holds"`},
		{"a strength in thousands of pounds", weak, []string{"condition: annealed }", "condition: annealed, certificate: mill, yield: 205 ksi }"},
			"hole-stays-round-at-work", "landing:backstay", finding.CannotTell, finding.Watch, ""},
		{"a strength in thousands of pounds at the pin hole", weak, []string{"condition: annealed }", "condition: annealed, certificate: mill, yield: 30 ksi, ultimate: 205 ksi }"},
			"plate-outlasts-wire", "landing:backstay", finding.CannotTell, finding.Mend,
			`not known: least ultimate strength of the metal (backstay-plate), because 1413 MPa is given, more than twice the 485 MPa at which 316L breaks: one of them is a slip; it would settle "The plate is stronger than the wire it holds"`},
		{"304 behind glass", slot, []string{"glassed_in: no", "glassed_in: yes"},
			"can-be-looked-at", "fitting:cap-plate-port", finding.Fails, finding.Mend,
			"cap-plate-port is glassed in: the metal that carries the wire can't be seen without cutting."},
		{"a look at what shows of a plate behind glass", glassed, nil,
			"last-look", "fitting:lower-plate-port", finding.Fails, finding.Mend,
			"lower-plate-port is glassed in, so no look at what shows of it counts; it was made 11.9 years ago, and 10 years is the limit."},
		{"a plate behind glass that was drawn", glassed, nil,
			"record-makes-sense", "record:spring-2024/lower-plate-port", finding.Fails, finding.Watch,
			"The record spring-2024 says that lower-plate-port was drawn, and the plan that it is glassed in: what is laminated in is not drawn, so it does not count as a look."},
		{"no crack seen behind glass", glassed, nil,
			"crack-seen", "record:spring-2024/lower-plate-port", finding.CannotTell, finding.Watch,
			`not known: what its bolts, and the metal and wood about them, are like (lower-plate-port), because they are glassed in and can't be seen; it would settle "No crack was seen"`},
		{"a crack that shows beside the glass", glassed, []string{"crack: none seen", "crack: seen"},
			"crack-seen", "record:spring-2024/lower-plate-port", finding.Fails, finding.Stop, ""},
		{"rot behind glass", glassed, []string{"found: sound", "found: soft"},
			"host-is-sound", "mounting:lower-plate-port", finding.Fails, finding.Stop, ""},
		{"brass bolts behind glass", glassed, []string{"grade: A4-70", "grade: A4-70, metal: naval brass"},
			"no-zinc-brass-bolts", "bolt_group:aft-lower-port", finding.Fails, finding.Mend, ""},
		{"bolts behind glass", glassed, nil,
			"bolts-outlast-wire", "bolt_group:aft-lower-port", finding.CannotTell, finding.Mend,
			`not known: what its bolts, and the metal and wood about them, are like (lower-plate-port), because they are glassed in and can't be seen; it would settle "The bolts are stronger than the wire"`},
		{"a new plate that is to be glassed in", glassed, []string{"state: kept", "state: new", "    installed: 2015\n", ""},
			"bolts-outlast-wire", "bolt_group:aft-lower-port", finding.Holds, "", ""},
		{"a new plate that is to be glassed in can't be looked at", glassed, []string{"state: kept", "state: new", "    installed: 2015\n", ""},
			"can-be-looked-at", "fitting:lower-plate-port", finding.Fails, finding.Mend, ""},
		{"nobody says whether it is glassed in", glassed, []string{"      glassed_in: yes\n", ""},
			"can-be-looked-at", "fitting:lower-plate-port", finding.CannotTell, finding.Watch,
			`not known: whether it is laminated into the hull, so that nobody can see the metal; it would settle "The part can be looked at"`},
		{"a tang at the mast", mended, []string{"    kind: backstay plate\n", "    kind: tang\n"},
			"kind-is-covered", "fitting:backstay-plate", finding.Fails, finding.Mend,
			"The strength of backstay-plate is not covered here: a plan tells of the lower ends of stays, and a tang holds the upper ones. It needs a naval architect."},
		{"a tang is no chainplate", mended, []string{"    kind: backstay plate\n", "    kind: tang\n"},
			"stay-has-its-fitting", "stay:backstay", finding.Fails, finding.Watch, ""},
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
// with what it is bolted to, and that it can't be told while one of them has no direction.
func TestTwoStaysOnOnePlate(t *testing.T) {
	both := []string{"    serves: [cap-shroud]", "    serves: [cap-shroud, fore-lower]", "    serves: [fore-lower]\n", ""}
	nowhere := append(both, "    lower: { x: 0.55 m, y: 1.4 m, z: 1.75 m }\n", "")
	weakHost := append(both, "thickness: 24 mm", "thickness: 15 mm")
	for _, test := range []struct {
		name    string
		change  []string
		outcome finding.Outcome
		grade   finding.Grade
		says    string
	}{
		{"both known", both, finding.Fails, finding.Watch, "Under all its 2 stays together cap-plate-port holds 1.05 times what they ask of it; at least 1.25 is wanted."},
		{"a bulkhead that holds the one or the other", weakHost, finding.Fails, finding.Mend, "Under all its 2 stays together cap-plate-port holds 0.8 times what they ask of it; at least 1 is wanted."},
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
