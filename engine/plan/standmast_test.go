package plan

import (
	"os"
	"strings"
	"testing"
)

// What can't be of a mast, its stays and an order of work is told at its place.
func TestStandingChecks(t *testing.T) {
	for name, c := range map[string]struct {
		from, to string
		want     []string
	}{
		"as it is":                      {"", "", nil},
		"a stay above the masthead":     {"upper: { x: 0 mm, y: 0 mm, z: 11.9 m }\n  - id: forestay", "upper: { x: 0 mm, y: 0 mm, z: 12.4 m }\n  - id: forestay", []string{"o.yaml:27:35 /stays/0/upper/z | cap-shroud ends 12.4 m above the heel and the mast is only 12 m long"}},
		"a mast shorter than its stays": {"height: 12 m", "height: 10 m", []string{"o.yaml:18:67 /boat/mast/windage/0/top | the upper end is at 11.5 m and the mast is only 10 m long", "o.yaml:27:35 /stays/0/upper/z | cap-shroud ends 11.9 m above the heel and the mast is only 10 m long", "o.yaml:32:35 /stays/1/upper/z", "o.yaml:37:35 /stays/2/upper/z", "o.yaml:57:15 /standing/stand_ins/0/height | halyard is at 11.8 m and the mast is only 10 m long"}},
		"a plate on the centreline":     {"y: 1.3 m", "y: 0 mm", []string{"o.yaml:26:26 /stays/0/lower/y | the plate of cap-shroud stands on the centreline, and a cap shroud there can't hold the mast sideways"}},
		"two stays with one id":         {"id: backstay\n", "id: forestay\n", []string{"o.yaml:33:9 /stays/2/id | the id forestay stands twice"}},
		"a negative height":             {"height: 12 m", "height: -12 m", []string{"o.yaml:9:13 /boat/mast/height | "}},
		"upside down":                   {"lower: { x: -5 m, y: 0 mm, z: 1.5 m }", "lower: { x: -5 m, y: 0 mm, z: 13.5 m }", []string{"o.yaml:36:35 /stays/2/lower/z | the lower end of backstay is at 13.5 m and its upper end at 11.9 m"}},
		"spreaders above the mast":      {"height: 6.5 m", "height: 16.5 m", []string{"o.yaml:16:19 /boat/mast/spreaders/0/height | this spreader is at 16.5 m and the masthead at 12 m"}},
		"a wall of half the tube":       {"wall: 3 mm", "wall: 60 mm", []string{"o.yaml:11:51 /boat/mast/section/wall | a wall of 60 mm is more than half of the tube"}},
		"a deck above the masthead":     {"deck: 1.6 m", "deck: 16 m", []string{"o.yaml:10:11 /boat/mast/deck | the deck is at 16 m and the masthead at 12 m"}},
		"a boom above the reefed head":  {"boom: 2.8 m", "boom: 9 m", []string{"o.yaml:20:24 /boat/reefed_main/boom", "o.yaml:20:24 /boat/reefed_main/boom"}},
		"off twice":                     {"id: cap-in\n      fit: [cap-plate-port]", "id: cap-in\n      remove: [cap-plate-port]", []string{"o.yaml:73:16 /standing/steps/2/remove/0 | cap-plate-port is off already"}},
		"a stay off with its plate":     {"id: cap-in\n      fit: [cap-plate-port]", "id: cap-in\n      remove: [cap-shroud-port]", []string{"o.yaml:73:16 /standing/steps/2/remove/0 | cap-shroud-port is off already: its plate cap-plate-port is out"}},
		"on twice":                      {"replace: [cap-shroud-starboard]", "fit: [cap-shroud-starboard]", []string{"o.yaml:76:13 /standing/steps/3/fit/0 | cap-shroud-starboard is on already"}},
		"a stand-in up twice":           {"replace: [cap-shroud-starboard]", "fit: [halyard]", []string{"o.yaml:76:13 /standing/steps/3/fit/0 | halyard is up already"}},
		"a stand-in down that is not":   {"fit: [halyard]\n      attended", "remove: [halyard]\n      attended", []string{"o.yaml:64:16 /standing/steps/0/remove/0 | halyard is not up"}},
		"a name that nothing bears":     {"replace: [cap-shroud-starboard]", "replace: [cap-shroud-starbord]", []string{"o.yaml:76:17 /standing/steps/3/replace/0 | no stay, fitting or stand-in has the id cap-shroud-starbord"}},
		"a name of two things":          {"replace: [cap-shroud-starboard]", "replace: [forestay]", []string{"o.yaml:76:17 /standing/steps/3/replace/0 | forestay is the id of more than one thing here"}},
		"a stand-in on a pair":          {"lands_on: cap-plate-port", "lands_on: cap-plate", []string{"o.yaml:59:17 /standing/stand_ins/0/lands_on | cap-plate is two fittings, and a line lands on one"}},
		"a stand-in on nothing":         {"lands_on: cap-plate-port", "lands_on: cap-plates", []string{"o.yaml:59:17 /standing/stand_ins/0/lands_on | no fitting has the id cap-plates"}},
		"no parts":                      {"parts: 1", "parts: 0", []string{"o.yaml:60:69 /standing/stand_ins/0/line/parts | a line in 0 parts is none"}},
		"over before it begins":         {"until: 2027-04-16", "until: 2027-04-01", []string{"o.yaml:71:14 /standing/steps/1/until | cap-out is over before it begins"}},
		"out of order":                  {"on: 2027-04-16", "on: 2027-03-16", []string{"o.yaml:74:11 /standing/steps/2/on | cap-in is done before the step that stands before it (2027-04-02)"}},
		"begun before the last is over": {"on: 2027-04-16", "on: 2027-04-12", []string{"o.yaml:74:11 /standing/steps/2/on | cap-in begins before the step that stands before it is over (2027-04-16)"}},
		"a gust below the wind":         {"  place: afloat", "  wind: 60 kn\n  place: afloat", []string{"o.yaml:52:9 /standing/gust | the gust is below the mean wind"}},
		"a deck far above a mast on it": {"keel-stepped", "deck-stepped", []string{"o.yaml:10:11 /boat/mast/deck | the mast is deck-stepped, and its deck is 1600 mm above its heel"}},
		"a storm below the gust":        {"storm_gust: 45 kn", "storm_gust: 10 kn", []string{"o.yaml:52:15 /standing/storm_gust | the gust while nobody stands by is below"}},
		"a step twice":                  {"id: other-cap", "id: brace", []string{"o.yaml:75:11 /standing/steps/3/id | the id brace stands twice; it is already in line 63"}},
		"a job that is a stand-in":      {"  place: afloat", "  place: afloat\n  jobs: [halyard]", []string{"o.yaml:51:10 /standing/jobs/0 | halyard is a stand-in"}},
	} {
		t.Run(name, func(t *testing.T) {
			src, err := os.ReadFile("testdata/order.yaml")
			if err != nil {
				t.Fatal(err)
			}
			text := string(src)
			if c.from != "" && strings.Count(text, c.from) != 1 {
				t.Fatalf("%q stands %d times", c.from, strings.Count(text, c.from))
			}
			_, problems, err := Parse("o.yaml", []byte(strings.Replace(text, c.from, c.to, 1)))
			if err != nil {
				t.Fatal(err)
			}
			expectTold(t, problems, c.want)
		})
	}
}
