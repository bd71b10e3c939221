package fleet

import "fmt"

// class is an invented class of boats as her builder drew her.
type class struct {
	name, file string
	length     float64 // of the hull, m
	wire       float64 // diameter of the cap shrouds, mm
	plates     string  // metal of the chainplates
	host       string
	spreaders  int
	bowsprit   bool
}

var classes = []class{
	{"Saltholm 31", "saltholm-31", 9.4, 6, "316L", "plywood", 2, false},
	{"Corncrake 36", "corncrake-36", 11.0, 8, "316L", "plywood", 1, false},
	{"Marram 40", "marram-40", 12.2, 8, "316L", "laminate", 2, false},
	{"Hollin Cutter", "hollin-cutter", 10.4, 8, "nickel aluminium bronze", "laminate", 1, true},
}

func (c class) fileIn(form Form) string { return fmt.Sprintf("classes/%s.%s", c.file, form) }

// wires are the wires of a rig with what belongs to each, by diameter in mm.
var wires = map[float64]struct {
	pin, hole, opening, cheek float64 // of the pin and its fork
	plate, width, end         float64 // of a plate that outlasts it
	thread                    string
	bolt                      float64
	washer                    float64
}{
	6: {11.1, 11.5, 12.5, 5, 8, 44, 24, "3/8-16 UNC", 10, 30},
	7: {12.7, 13.1, 14.5, 6, 10, 50, 27, "3/8-16 UNC", 10, 30},
	8: {14, 14.4, 16, 7, 12, 60, 32, "1/2-13 UNC", 13, 40},
}

// stand is a wire of the rig: what it does, where it starts and how thick it is
// beside the cap shrouds.
type stand struct {
	id, role, side string
	thinner        float64
	x, y, z        float64 // of the lower end, in parts of the hull's length
	height         float64 // of the upper end, in parts of the mast
}

// rig lists the wires of a class.
func (c class) rig() []stand {
	all := []stand{
		{"cap-shroud", "cap shroud", "both", 0, 0, 0.145, 0.18, 1},
		{"fore-lower", "fore lower", "both", 1, 0.055, 0.14, 0.18, 0.52},
		{"aft-lower", "aft lower", "both", 1, -0.055, 0.14, 0.18, 0.52},
		{"backstay", "backstay", "centre", 1, -0.6, 0, 0.16, 1},
		{"forestay", "forestay", "centre", 0, 0.37, 0, 0.15, 0.99},
		{"inner-forestay", "inner forestay", "centre", 2, 0.26, 0, 0.17, 0.7},
		{"running-backstay", "running backstay", "both", 2, -0.38, 0.12, 0.16, 0.7},
	}
	if c.spreaders > 1 {
		all = append(all, stand{"intermediate", "intermediate", "both", 1, 0, 0.142, 0.18, 0.75})
	}
	return all
}

// diameter is that of one wire, never under 6 mm.
func (c class) diameter(s stand) float64 { return max(c.wire-s.thinner, 6) }

func mm(v float64) string { return fmt.Sprintf("%.4g mm", v) }
func m(v float64) string  { return fmt.Sprintf("%.4g m", v) }

// stay is a wire as it is drawn.
func (c class) stay(s stand) group {
	d := c.diameter(s)
	w := wires[d]
	mast := 1.35 * c.length
	return group{
		{"id", s.id}, {"role", s.role}, {"side", s.side},
		{"wire", line{{"construction", "1x19"}, {"metal", "316"}, {"diameter", mm(d)}}},
		{"lower", line{{"x", m(s.x * c.length)}, {"y", m(s.y * c.length)}, {"z", m(s.z * c.length)}}},
		{"upper", line{{"x", "0 mm"}, {"y", "0 mm"}, {"z", m(s.height * mast)}}},
		{"pin", line{{"diameter", mm(w.pin)}, {"metal", "17-4PH H1025"}}},
		{"fork", line{{"opening", mm(w.opening)}, {"cheek", mm(w.cheek)}}},
		{"toggle", true},
		{"lean", line{{"in_plane", "1 deg"}, {"out_of_plane", "1 deg"}}},
	}
}

// kinds are the sorts of plates that are not called chainplates.
var kinds = map[string]string{"backstay": "backstay plate", "forestay": "stemhead"}

// fitting is the plate of a wire as it is drawn: a strip with one pin and a row of bolts.
func (c class) fitting(s stand) group {
	w := wires[c.diameter(s)]
	kind := kinds[s.id]
	if kind == "" {
		kind = "chainplate"
	}
	holes := list{line{{"role", "pin"}, {"diameter", mm(w.hole)}, {"along", mm(w.end)}}}
	along := w.end + 100
	for range 6 {
		holes = append(holes, line{{"role", "bolt"}, {"diameter", mm(w.bolt)}, {"along", mm(along)}})
		along += 60
	}
	return group{
		{"id", s.id + "-plate"}, {"kind", kind}, {"side", s.side}, {"serves", list{s.id}},
		{"metal", line{{"name", c.plates}, {"condition", "annealed"}}},
		{"thickness", mm(w.plate)},
		{"outline", line{{"width", mm(w.width)}, {"length", mm(along)}, {"end", "round"}}},
		{"holes", holes},
		{"welded", false},
		{"mounting", c.mounting(s)},
	}
}

// mounting is how a plate is held: to a bulkhead or knee under deck, or outside on
// the hull at the ends of the boat.
func (c class) mounting(s stand) group {
	w := wires[c.diameter(s)]
	host := line{{"kind", c.host}, {"thickness", "36 mm"}, {"density", "680 kg/m3"}, {"edge", "120 mm"}}
	if c.host == "laminate" {
		host = line{{"kind", c.host}, {"thickness", "18 mm"}, {"edge", "120 mm"}}
	}
	to, through := "bulkhead", s.side == "both"
	if !through {
		to = "hull"
	}
	return group{
		{"to", to}, {"through_deck", through}, {"glassed_in", false}, {"access", "open"}, {"first_fixed", "45 mm"},
		{"host", host},
		{"backing_plate", true},
		{"bolts", line{{"thread", w.thread}, {"grade", "A4-80"}, {"threads_in_plane", false}, {"head", "hex"}, {"washer", mm(w.washer)}}},
	}
}

// plan is the class's template.
func (c class) plan() group {
	var stays, fittings list
	for _, s := range c.rig() {
		stays = append(stays, c.stay(s))
		fittings = append(fittings, c.fitting(s))
	}
	return group{
		{"chainwale", 1},
		{"boat", group{{"class", c.name}, {"mast_step", "keel-stepped"}}},
		{"stays", stays},
		{"fittings", fittings},
	}
}
