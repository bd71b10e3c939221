package fact

import "chainwale/engine/plan"

// Which hole of a new part meets which that is there.

// meeting is a hole of the part and what it has to meet.
type meeting struct {
	hole *plan.Hole
	// hull is the hole in the hull, nil where the old part's hole counts, which is then
	// the one at an index of the development.
	hull *plan.HullHole
	old  int
}

// count sorts the bolt holes into those that have to meet and those that are drilled at
// the boat. A hole that is neither is cut and may land on nothing: then neither number is
// known.
func (m *matchOf) count() {
	toDrill := 0
	for i := range m.plan.Holes {
		h := &m.plan.Holes[i]
		if h.Role.Value != "bolt" {
			continue
		}
		meets, ok := m.partner(h)
		switch {
		case h.DrillAtBoat.Value || ok && meets.drilled():
			toDrill++
		case ok:
			m.holes = append(m.holes, meets)
		default:
			m.open = append(m.open, m.meetsNothing(h))
		}
	}
	m.counted(&m.match.Matched, len(m.holes))
	m.counted(&m.match.ToDrill, toDrill)
	m.toFill()
}

// counted gives a number of holes where all of them are told apart.
func (m *matchOf) counted(n *Number, holes int) {
	if n.follows(m.open) {
		n.Give(float64(holes), m.match.At)
	}
}

// meetsNothing is the gap that a bolt hole leaves, at its place.
func (m *matchOf) meetsNothing(h *plan.Hole) *Value {
	name, among := "a bolt hole without a name", "measured/holes"
	if h.Name.Given {
		name = "the bolt hole " + h.Name.Value
	}
	if len(m.plan.HullHoles) > 0 {
		among = "hull_holes"
	}
	var n Number
	n.WouldStand(h.At)
	n.Refuse(name + " is not drilled at the boat and meets no hole of those under " + among)
	return &n.Value
}

// toFill counts the holes of the hull that are left over. Where none is listed, nobody
// has said that there is none.
func (m *matchOf) toFill() {
	n := &m.match.ToFill
	if len(m.plan.HullHoles) == 0 {
		at := m.plan.At
		at.Pointer += "/hull_holes"
		n.WouldStand(at)
		return
	}
	left := 0
	for _, h := range m.plan.HullHoles {
		if !h.Hole.Given && h.Is.Value != "filled" {
			left++
		}
	}
	n.Give(float64(left), m.match.At)
}

// partner finds what stands against a bolt hole: a hole in the hull, or else the old
// part's.
func (m *matchOf) partner(h *plan.Hole) (meeting, bool) {
	for i := range m.plan.HullHoles {
		o := &m.plan.HullHoles[i]
		if o.Hole.Given && o.Hole.Value == h.Name.Value {
			return meeting{hole: h, hull: o}, true
		}
	}
	if len(m.plan.HullHoles) > 0 {
		return meeting{}, false
	}
	for i, o := range m.plan.Measured.Holes {
		if h.Name.Given && o.Hole.Value == h.Name.Value {
			return meeting{hole: h, old: i}, true
		}
	}
	return meeting{}, false
}

// drilled tells whether hull and part are drilled together, so that nothing can be off.
func (x meeting) drilled() bool {
	return x.hull != nil && x.hull.Is.Value != "round" && x.hull.Is.Value != "square"
}
