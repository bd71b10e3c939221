package plan

import (
	"strings"
	"testing"
)

// change is what is done to the wagtail's plan: the first text is put in place of
// the second, once.
type change struct{ old, new string }

// expectAfter changes the wagtail's plan and compares what is said of it.
func expectAfter(t *testing.T, changes []change, want []string) {
	t.Helper()
	src := readWagtail(t)
	for _, c := range changes {
		if !strings.Contains(src, c.old) {
			t.Fatalf("%q does not stand in the plan", c.old)
		}
		src = strings.Replace(src, c.old, c.new, 1)
	}
	p, problems, err := Parse("p.yaml", []byte(src))
	if err != nil {
		t.Fatal(err)
	}
	if (p != nil) != (len(problems) == 0) {
		t.Errorf("there is a plan beside %d problems: %v", len(problems), p != nil)
	}
	expectTold(t, problems, want)
}

// What is wrong with one value, by the schema.
func TestValues(t *testing.T) {
	const thickness = "thickness: [6.35 mm, 6.3 mm]"
	for _, c := range []struct {
		old, new string
		want     []string
	}{
		{"packs:", "packs:", nil},
		{"thickness:", "thicknes:", []string{"p.yaml:41:5 /fittings/0/thicknes | thicknes is not a key here | did you mean thickness? keys here: bonding, exposure, finish, folds, "}},
		{"threads_in_plane:", "thread_in_plane:", []string{"p.yaml:55:50 /fittings/0/mounting/bolts/thread_in_plane | thread_in_plane is not a key here | did you mean threads_in_plane? keys here: grade, head, metal, "}},
		{"outline:\u0020", "\"out/line~\": ", []string{"p.yaml:42:5 /fittings/0/out~1line~0 | out/line~ is not a key here | did you mean outline?"}},
		{thickness, "thickness: 6", []string{`p.yaml:41:16 /fittings/0/thickness | 6 has no unit | for example "6 mm" or "1/2 in" (mm, cm, `}},
		{thickness, "thickness: [6.35 mm, 6, 3 N]", []string{"p.yaml:41:26 /fittings/0/thickness/1 | 6 has no unit", "p.yaml:41:29 /fittings/0/thickness/2 | 3 N is a force where a length belongs"}},
		{thickness, "thickness: 0 mm", []string{"p.yaml:41:16 /fittings/0/thickness | 0 mm is not more than 0 mm | more than 0 mm"}},
		{thickness, "thickness: -6 mm", []string{"p.yaml:41:16 /fittings/0/thickness | -6 mm is not more than 0 mm"}},
		{thickness, "thickness: [6 mm, -6 mm]", []string{"p.yaml:41:23 /fittings/0/thickness/1 | -6 mm is not more than 0 mm"}},
		{thickness, "thickness:", []string{"p.yaml:41:5 /fittings/0/thickness | thickness has no value | for example 6 mm, 1/4 in or [6.35 mm, 6.3 mm], or leave the key out"}},
		{thickness, "thickness: []", []string{"p.yaml:41:16 /fittings/0/thickness | thickness is an empty list"}},
		{thickness, "thickness: {of: 6 mm}", []string{"p.yaml:41:16 /fittings/0/thickness | thickness holds keys where one value belongs"}},
		{"width: 38 mm", "width: 0 in", []string{"p.yaml:42:23 /fittings/0/outline/width | 0 in is not more than 0 mm"}},
		{"length: 320 mm", "length: -1 m", []string{"p.yaml:42:38 /fittings/0/outline/length | -1 m is not more than 0 mm"}},
		{"diameter: 10 mm", "diameter: 0 mm", []string{"p.yaml:45:33 /fittings/0/holes/1/diameter | 0 mm is not more than 0 mm"}},
		{"diameter: 12.7 mm", "diameter: [12.7 mm]", []string{"p.yaml:18:22 /stays/0/pin/diameter | diameter is a list where one value belongs"}},
		{"break_load: 47.2 kN", "break_load: 4800 kg", []string{"p.yaml:15:73 /stays/0/wire/break_load | 4800 kg is a mass where a force belongs"}},
		{"in_plane: 4 deg", "in_plane: 94 deg", []string{"p.yaml:21:23 /stays/0/lean/in_plane | 94 deg is more than 90 deg"}},
		{", certificate: 20411", "", []string{"p.yaml:15:5 /stays/0/wire/certificate | break_load stands without certificate | the key certificate"}},
		{`certificate: "heat 4711", `, "", []string{"p.yaml:40:5 /fittings/0/metal/certificate | ultimate stands without certificate", "p.yaml:40:5 /fittings/0/metal/certificate | yield stands without certificate"}},
		{"end: round", "end: square", []string{"p.yaml:42:59 /fittings/0/outline/end_radius | end_radius can't stand here | leave end_radius out, or write end: round"}},
		{"chainwale: 1 ", "# ", []string{"p.yaml:3:1 /chainwale | the file has no chainwale | chainwale: 1"}},
		{"chainwale: 1", "chainwale: 2", []string{"p.yaml:1:12 /chainwale | chainwale is 2, and only 1 is taken | 1"}},
		{"chainwale: 1", "chainwale: 01", []string{`p.yaml:1:12 /chainwale | "01" is not a whole number as it is written here | 1`}},
		{"chainwale: 1", "chainwale: 0x1", []string{`p.yaml:1:12 /chainwale | "0x1" is not a whole number`}},
		{"chainwale: 1", "chainwale: 1_0", []string{`p.yaml:1:12 /chainwale | "1_0" is not a whole number`}},
		{"chainwale: 1", "chainwale: '1'", []string{`p.yaml:1:12 /chainwale | "1" is a text and not a number, since it stands in quotes | 1`}},
		{"  name: Grey Wagtail\n", "", []string{"p.yaml:3:1 /boat/name | boat has no name | the key name, for example Grey Wagtail"}},
		{"name: Grey Wagtail", "naem: Grey Wagtail", []string{"p.yaml:4:3 /boat/naem | naem is not a key here | did you mean name?"}},
		{"name: Grey Wagtail", "name: ''", []string{"p.yaml:4:9 /boat/name | name is empty | for example Grey Wagtail"}},
		{"name: Grey Wagtail", "name: 1984", nil},
		{"name: Grey Wagtail", "name: no", nil},
		{"boat:\n", "boat: x\nbaot:\n", []string{"p.yaml:3:7 /boat | boat is a single value where keys with values belong | keys here: beam, bowsprit, class, climate, ", "p.yaml:4:1 /baot | baot is not a key here | did you mean boat?"}},
		{"    state: kept\n", "", []string{"p.yaml:35:5 /fittings/0/state | cap-plate has no state | the key state, one of: kept, remade, new"}},
		{"state: kept", "state: Kept", []string{`p.yaml:36:12 /fittings/0/state | "Kept" can't stand under state | did you mean kept? one of: kept, remade, new`}},
		{"kind: chainplate\n", "kind: chain plate\n", []string{`p.yaml:37:11 /fittings/0/kind | "chain plate" can't stand under kind | did you mean chainplate? one of: chainplate, `}},
		{"    role: cap shroud\n", "", []string{"p.yaml:12:5 /stays/0/role | cap-shroud has no role"}},
		{"    side: both\n    serves: [cap-shroud]", "    serves: [cap-shroud]", []string{"p.yaml:35:5 /fittings/0/side | cap-plate has no side | the key side, one of: port, starboard, both, centre"}},
		{"role: pin, ", "", []string{"p.yaml:44:9 /fittings/0/holes/0/role | entry 1 of holes has no role | the key role, pin or bolt"}},
		{"mast_step: keel-stepped", "mast_step: keel", []string{`p.yaml:8:14 /boat/mast_step | "keel" can't stand under mast_step | keel-stepped or deck-stepped`}},
		{"toggle: yes", "toggle: Yes", []string{`p.yaml:20:13 /stays/0/toggle | "Yes" can't stand under toggle | did you mean yes? yes or no`}},
		{"toggle: yes", "toggle: true", nil},
		{"serves: [cap-shroud]", "serves: cap-shroud", []string{"p.yaml:39:13 /fittings/0/serves | serves is a single value where a list belongs | for example [cap-shroud]"}},
		{"installed: 1984", "installed: 1984-13", []string{`p.yaml:48:16 /fittings/0/installed | "1984-13" is no day, since there is no month 13 | a day such as 2021-04-10`}},
		{"installed: 1984", "installed: 5/1/1984", []string{`p.yaml:48:16 /fittings/0/installed | "5/1/1984" is not a day in a form that is known here`}},
		{"installed: 1984", "installed: [1984]", []string{"p.yaml:48:16 /fittings/0/installed | installed is a list where one value belongs"}},
		{"on: 2021-04-10", "on: 2021-02-29", []string{`p.yaml:80:9 /records/0/on | "2021-02-29" is no day, since February 2021 has no day 29`}},
		{"between: [316, silicon bronze]", "between: [316]", []string{"p.yaml:72:14 /contacts/0/between | between lists 1, and 2 belong there"}},
		{"packs: [chainplates]", "packs: []", []string{"p.yaml:85:8 /packs | packs is an empty list"}},
		{"metal: 316, diameter", "metal: ~, diameter", []string{"p.yaml:15:33 /stays/0/wire/metal | metal has no value"}},
		{"certificate: 20411", "metal: 316", []string{"p.yaml:15:82 /stays/0/wire/metal | the key metal stands twice; it is already in line 15"}},
	} {
		t.Run(c.new, func(t *testing.T) { expectAfter(t, []change{{c.old, c.new}}, c.want) })
	}
}

// A missing reading is no fault: it is an honest cannot tell.
func TestLeastPlans(t *testing.T) {
	for _, src := range []string{
		"chainwale: 1\nboat: {name: x}\n",
		"chainwale: 1\nboat: {name: x}\nstays: [{id: a, role: forestay, side: centre}]\nfittings: [{id: b, state: kept, kind: tang, side: both}]\ncontacts: [{id: c, between: [a, b]}]\nrecords: [{id: d, fitting: b, on: 2020, did: looked at}]\n",
		"chainwale: 1\nboat: {name: x}\nstays: [{id: a, role: forestay, side: centre, wire: {}, lower: {}, pin: {}, lean: {}}]\nfittings: [{id: b, state: kept, kind: tang, side: both, metal: {}, outline: {}, holes: [{role: pin}], mounting: {bolts: {}}}]\n",
		"chainwale: 1\nboat: {name: x}\nstays: []\nfittings: []\ncontacts: []\nrecords: []\n",
	} {
		p, problems, err := Parse("p.yaml", []byte(src))
		if p == nil || err != nil {
			t.Errorf("%s%v, %v", src, problems, err)
		}
	}
}

// What takes two values to be wrong.
func TestCrossChecks(t *testing.T) {
	const second = "  - id: forestay\n    role: forestay\n    side: centre\n"
	holes := "      - { role: pin, stay: cap-shroud, diameter: 13.1 mm, along: 19 mm, across: 0 mm }\n"
	for name, c := range map[string]struct {
		changes []change
		want    []string
	}{
		"a stay's id twice":                {[]change{{"id: forestay", "id: cap-shroud"}, {"serves: [forestay]", "serves: [cap-shroud]"}, {"kind: stemhead", "kind: tie rod"}}, []string{"p.yaml:24:9 /stays/1/id | the id cap-shroud stands twice; it is already in line 12 | an id of its own for each stay"}},
		"the id of one of two":             {[]change{{"id: forestay", "id: cap-shroud-port"}}, []string{"p.yaml:24:9 /stays/1/id | the id cap-shroud-port is taken: cap-shroud in line 12 has side: both, and this is one of its two"}},
		"two of which one's id is taken":   {[]change{{"stays:\n", "stays:\n  - { id: cap-shroud-port, role: intermediate, side: port }\n"}}, []string{"p.yaml:13:9 /stays/1/id | with side: both, cap-shroud is also called cap-shroud-port, and that id is already in line 12"}},
		"a fitting's id twice":             {[]change{{"id: mast-tang", "id: cap-plate"}}, []string{"p.yaml:58:9 /fittings/1/id | the id cap-plate stands twice; it is already in line 35"}},
		"a stay's id for a fitting":        {[]change{{"id: mast-tang", "id: cap-shroud"}}, nil},
		"a contact's id twice":             {[]change{{"contacts:\n", "contacts:\n  - { id: stem-bolts, between: [a, b] }\n"}}, []string{"p.yaml:72:9 /contacts/1/id | the id stem-bolts stands twice; it is already in line 71"}},
		"a record's id twice":              {[]change{{"records:\n", "records:\n  - { id: spring-look, fitting: stem, on: 2020, did: tested }\n"}}, []string{"p.yaml:79:9 /records/1/id | the id spring-look stands twice; it is already in line 78"}},
		"an id in capitals":                {[]change{{"id: forestay", "id: Forestay"}, {"serves: [forestay]", "serves: [cap-shrowd]"}}, []string{`p.yaml:24:9 /stays/1/id | "Forestay" is not in the form of id | words in lower case joined by hyphens`, "p.yaml:67:14 /fittings/2/serves/0 | no stay has the id cap-shrowd | did you mean cap-shroud"}},
		"an id with a fault is not hunted": {[]change{{"id: forestay", "id: fore_stay"}}, []string{"p.yaml:24:9 /stays/1/id | \"fore_stay\" is not in the form of id"}},
		"an unknown stay":                  {[]change{{"serves: [forestay]", "serves: [bobstay]"}}, []string{"p.yaml:67:14 /fittings/2/serves/0 | no stay has the id bobstay | the id of a stay: cap-shroud, cap-shroud-port, cap-shroud-starboard, forestay"}},
		"a misspelt stay":                  {[]change{{"serves: [forestay]", "serves: [forstay]"}}, []string{"p.yaml:67:14 /fittings/2/serves/0 | no stay has the id forstay | did you mean forestay?"}},
		"no stays at all":                  {[]change{{readBetween(t, "stays:\n", "fittings:"), ""}, {"serves: [cap-shroud]", "side: both"}, {"side: both\n    side: both", "side: both"}, {", stay: cap-shroud", ""}, {"    serves: [cap-shroud-port, cap-shroud-starboard]\n", ""}}, []string{"p.yaml:42:14 /fittings/2/serves/0 | no stay has the id forestay | the id of a stay; the plan has none yet"}},
		"a misspelt list of stays":         {[]change{{"stays:\n", "stay:\n"}}, []string{"p.yaml:11:1 /stay | stay is not a key here | did you mean stays?"}},
		"an unknown stay of a hole":        {[]change{{"stay: cap-shroud,", "stay: cap-shrouds,"}}, []string{"p.yaml:44:28 /fittings/0/holes/0/stay | no stay has the id cap-shrouds | did you mean cap-shroud"}},
		"a hole for a stay not served":     {[]change{{"stay: cap-shroud,", "stay: forestay,"}}, []string{"p.yaml:44:28 /fittings/0/holes/0/stay | cap-plate does not serve forestay | one of the stays under serves"}},
		"a hole for one side":              {[]change{{"stay: cap-shroud,", "stay: cap-shroud-starboard,"}}, nil},
		"an unknown fitting of a record":   {[]change{{"fitting: cap-plate-port", "fitting: cap-plat"}}, []string{"p.yaml:79:14 /records/0/fitting | no fitting has the id cap-plat | did you mean cap-plate"}},
		"a stay twice":                     {[]change{{"serves: [cap-shroud]", "serves: [cap-shroud, cap-shroud]"}}, []string{"p.yaml:39:26 /fittings/0/serves/1 | cap-plate serves cap-shroud twice"}},
		"a stay and its one side":          {[]change{{"serves: [cap-shroud]", "serves: [cap-shroud, cap-shroud-port]"}}, []string{"p.yaml:39:26 /fittings/0/serves/1 | cap-plate serves cap-shroud-port twice"}},
		"two plates for one stay":          {[]change{{"serves: [forestay]", "serves: [forestay, cap-shroud]"}}, []string{"p.yaml:67:24 /fittings/2/serves/1 | the lower end of cap-shroud-port is already held by cap-plate in line 35"}},
		"two plates for one side":          {[]change{{"serves: [forestay]\n    side: centre", "serves: [forestay, cap-shroud]\n    side: starboard"}}, []string{"p.yaml:67:24 /fittings/2/serves/1 | the lower end of cap-shroud-starboard is already held by cap-plate in line 35"}},
		"a plate for each side":            {[]change{{"    side: both\n    serves: [cap-shroud]", "    side: port\n    serves: [cap-shroud]"}, {"fitting: cap-plate-port", "fitting: cap-plate"}, {"serves: [forestay]\n    side: centre", "serves: [forestay, cap-shroud]\n    side: starboard"}}, nil},
		"a bobstay's two plates":           {[]change{{"role: forestay", "role: bobstay"}, {"fittings:\n", "fittings:\n  - { id: crane-iron, state: kept, kind: chainplate, side: centre, serves: [forestay] }\n"}}, nil},
		"a tie rod below the plate":        {[]change{{"fittings:\n", "fittings:\n  - { id: rod, state: kept, kind: tie rod, side: both, serves: [cap-shroud] }\n"}}, nil},
		"a stay on the other side":         {[]change{{"    side: both\n    serves: [cap-shroud]", "    side: port\n    serves: [cap-shroud-starboard]"}, {", stay: cap-shroud", ""}, {"cap-plate-port", "cap-plate"}}, []string{"p.yaml:39:14 /fittings/0/serves/0 | cap-plate stands on the port side, and cap-shroud-starboard does not"}},
		"a hole beyond the end":            {[]change{{"along: 140 mm", "along: 340 mm"}}, []string{"p.yaml:45:47 /fittings/0/holes/1/along | this hole lies outside the plate, which is 320 mm long"}},
		"a hole through the far end":       {[]change{{"along: 140 mm", "along: 318 mm"}}, []string{"p.yaml:45:47 /fittings/0/holes/1/along | this hole cuts through the far end: its edge is 323 mm from the loaded end and the plate is 320 mm long"}},
		"a hole through the loaded end":    {[]change{{"along: 19 mm", "along: 6 mm"}}, []string{"p.yaml:44:66 /fittings/0/holes/0/along | this hole cuts through the loaded end: its centre is 6 mm from there and its radius is 6.55 mm"}},
		"a hole beside the plate":          {[]change{{"across: 0 mm", "across: -20 mm"}}, []string{"p.yaml:44:81 /fittings/0/holes/0/across | this hole lies outside the plate, whose edge is 19 mm from the centre line"}},
		"a hole through the side":          {[]change{{"across: 0 mm", "across: 13 mm"}}, []string{"p.yaml:44:81 /fittings/0/holes/0/across | this hole cuts through the plate's side: its edge is 19.6 mm from the centre line and the plate's is 19 mm"}},
		"a hole wider than the plate":      {[]change{{"diameter: 10 mm, along: 140", "diameter: 38 mm, along: 140"}}, []string{"p.yaml:45:33 /fittings/0/holes/1/diameter | this hole is 38 mm wide and the plate only 38 mm"}},
		"an oval hole":                     {[]change{{"diameter: 10 mm, along: 140", "shape: oval, diameter: 10 mm, long: 20 mm, along: 140"}}, nil},
		"an oval hole without its length":  {[]change{{"diameter: 10 mm, along: 140", "shape: oval, diameter: 10 mm, along: 140"}}, []string{"p.yaml:45:30 /fittings/0/holes/1/shape | an oval hole is known by its width and its length, and this one has no long | its whole length as long beside diameter, its width: shape: oval, diameter: 12 mm, long: 20 mm"}},
		"a length without an oval hole":    {[]change{{"diameter: 10 mm, along: 140", "diameter: 10 mm, long: 20 mm, along: 140"}}, []string{"p.yaml:45:46 /fittings/0/holes/1/long | only an oval hole has a long | leave long out, or write shape: oval"}},
		"a way without an oval hole":       {[]change{{"diameter: 10 mm, along: 140", "diameter: 10 mm, long_way: across, along: 140"}}, []string{"p.yaml:45:50 /fittings/0/holes/1/long_way | only an oval hole has a long_way | leave long_way out, or write shape: oval, diameter: 12 mm, long: 20 mm, long_way: across"}},
		"an oval hole that is round":       {[]change{{"diameter: 10 mm, along: 140", "shape: oval, diameter: 10 mm, long: 10 mm, along: 140"}}, []string{"p.yaml:45:59 /fittings/0/holes/1/long | this hole is 10 mm long and 10 mm wide: that is not oval | the whole length from end to end, which is more than diameter, the width"}},
		"a way nobody knows":               {[]change{{"diameter: 10 mm, along: 140", "shape: oval, diameter: 10 mm, long: 20 mm, long_way: up, along: 140"}}, []string{`p.yaml:45:76 /fittings/0/holes/1/long_way | "up" can't stand under long_way | along or across`}},
		"oval through the far end":         {[]change{{"diameter: 10 mm, along: 140", "shape: oval, diameter: 10 mm, long: 20 mm, along: 312"}}, []string{"p.yaml:45:73 /fittings/0/holes/1/along | this hole cuts through the far end: its edge is 322 mm from the loaded end and the plate is 320 mm long"}},
		"oval through the loaded end":      {[]change{{"diameter: 13.1 mm, along", "shape: oval, diameter: 13.1 mm, long: 38 mm, along"}}, []string{"p.yaml:44:92 /fittings/0/holes/0/along | this hole cuts through the loaded end: its centre is 19 mm from there and half its length is 19 mm"}},
		"oval through both sides":          {[]change{{"diameter: 10 mm, along: 140", "shape: oval, diameter: 10 mm, long: 40 mm, long_way: across, along: 140"}}, []string{"p.yaml:45:59 /fittings/0/holes/1/long | this hole is 40 mm wide and the plate only 38 mm"}},
		"oval across beside the end":       {[]change{{"diameter: 10 mm, along: 140", "shape: oval, diameter: 10 mm, long: 20 mm, long_way: across, along: 312"}}, nil},
		"two ovals that meet":              {[]change{{"diameter: 10 mm, along: 140", "shape: oval, diameter: 10 mm, long: 60 mm, along: 140"}, {"diameter: 10 mm, along: 190", "shape: oval, diameter: 10 mm, long: 50 mm, along: 190"}}, []string{"p.yaml:46:73 /fittings/0/holes/2/along | this hole runs into the one in line 45"}},
		"two ovals side by side":           {[]change{{"diameter: 10 mm, along: 140 mm", "shape: oval, diameter: 8 mm, long: 60 mm, along: 140 mm, across: -8 mm"}, {"diameter: 10 mm, along: 190 mm", "shape: oval, diameter: 8 mm, long: 60 mm, along: 150 mm, across: 8 mm"}}, nil},
		"two ovals in one place":           {[]change{{"diameter: 10 mm, along: 140", "shape: oval, diameter: 10 mm, long: 60 mm, along: 190"}}, []string{"p.yaml:46:47 /fittings/0/holes/2/along | this hole stands where the one in line 45 stands"}},
		"readings of a length too far off": {[]change{{"diameter: 10 mm, along: 140", "shape: oval, diameter: 10 mm, long: [20 mm, 26 mm], along: 140"}}, []string{"p.yaml:45:59 /fittings/0/holes/1/long | these 2 readings lie 6 mm apart"}},
		"a heat without its certificate":   {[]change{{"metal: { name: 316L, condition: annealed, certificate: \"heat 4711\", yield: 205 MPa, ultimate: 515 MPa }", "metal: { name: 316L, heat: 4711 }"}}, []string{"p.yaml:40:5 /fittings/0/metal/certificate | heat stands without certificate | the key certificate"}},
		"in inches for who reads them":     {[]change{{"units: metric", "units: us"}, {"along: 140 mm", "along: 14 in"}}, []string{"p.yaml:45:47 /fittings/0/holes/1/along | this hole lies outside the plate, which is 12.6 in long"}},
		"a yield above the ultimate":       {[]change{{"yield: 205 MPa, ultimate: 515 MPa }\n    thickness", "yield: 515 MPa, ultimate: 205 MPa }\n    thickness"}}, []string{"p.yaml:40:80 /fittings/0/metal/yield | this yield strength is more than the ultimate strength in line 40"}},
		"a pin's yield above the ultimate": {[]change{{"yield: 205 MPa", "yield: 600 MPa"}}, []string{"p.yaml:18:82 /stays/0/pin/yield | this yield strength is more"}},
		"all at once, by their places": {[]change{{"waters: coastal", "waters: costal"}, {holes, ""}, {"along: 140 mm", "along: 340 mm"}, {"thickness:", "thicknes:"}, {"serves: [forestay]", "serves: [forstay]"}, {"side: both\n    wire", "side: bothe\n    wire"}, {second, second + "    tensions: 5 kN\n"}},
			[]string{"p.yaml:6:11 /boat/waters", "p.yaml:14:11 /stays/0/side", "p.yaml:27:5 /stays/1/tensions", "p.yaml:42:5 /fittings/0/thicknes", "p.yaml:45:47 /fittings/0/holes/0/along", "p.yaml:67:14 /fittings/2/serves/0"}},
	} {
		t.Run(name, func(t *testing.T) { expectAfter(t, c.changes, c.want) })
	}
}

// readBetween is the part of the wagtail's plan from one text up to another.
func readBetween(t *testing.T, from, to string) string {
	t.Helper()
	_, rest, found := strings.Cut(readWagtail(t), from)
	part, _, ends := strings.Cut(rest, to)
	if !found || !ends {
		t.Fatalf("%q and %q are not in the plan", from, to)
	}
	return from + part
}
