package drawing

import (
	"math"
	"slices"
	"strings"
)

// holeList is the holes with their places from the datum, those to drill later last.
func (p Part) holeList() table {
	t := table{title: "Holes, from " + p.datumName(), head: []string{"no", "along", "across", "size", "for", "make"}, strong: 1}
	zero := p.datum()
	add := func(x, y float64, size_ string, u HoleUse, make ...string) {
		what := strings.TrimSpace(line(u.Role) + " " + line(u.Called))
		if f := line(u.Fastener); f != "" {
			what = strings.TrimPrefix(what+": "+f, ": ")
		}
		var how []string
		for _, m := range append(make, line(u.Make)) {
			if m != "" {
				how = append(how, m)
			}
		}
		t.rows = append(t.rows, []string{whole(len(t.rows) + 1), size(x - zero.X), size(y - zero.Y), size_, what, strings.Join(how, "; ")})
	}
	for i, h := range p.Flat.Holes {
		u, cut := p.use(i), ""
		if u.Cut != 0 && u.Cut != h.Diameter {
			cut = "cut " + holeSize(p.cut(i))
		}
		add(h.At.X, h.At.Y, holeSize(h), u, cut, turned(h))
	}
	for _, h := range p.Later {
		add(h.At.X, h.At.Y, holeSize(h.Hole), h.HoleUse, turned(h.Hole), "mark in the flat, drill after folding")
	}
	return t
}

// foldList is the folds in the order in which they are pressed.
func (p Part) foldList(folds []band) table {
	t := table{title: "Folds, in press order", head: []string{"fold", "from datum", "turn to", "press to", "inside R", "up", "tool"}, strong: 1}
	zero := p.datum()
	for at, step := range p.order() {
		b := folds[step.Fold-1]
		from := size(b.At - zero.X)
		if b.Skew != 0 {
			from = size(b.from.X-zero.X) + " at the lower edge, " + size(b.to.X-zero.X) + " at the upper"
		}
		angle := math.Abs(b.Angle)
		press := "by test strip"
		if step.To > 0 {
			press = size(step.From) + " to " + size(step.To) + "°"
		}
		t.rows = append(t.rows, []string{"P" + whole(at+1), from, size(angle) + "°, leaves " + size(180-angle) + "°", press, size(b.Radius), "face " + string(b.faceUp()), line(step.Tool)})
	}
	return t
}

// Cautions in place: short, and where the hand is.
const (
	cutCaution    = "Cutting: clamp the plate, eyes and ears covered. Stainless by water jet, or laser under nitrogen, never under oxygen. Every cut edge is sharp: gloves, then break it."
	pressCaution  = "Press: the part can jump out. Hands clear, guard shut, nobody in line with the strip, never beyond what press and tools are rated for. No scribe, punch or stamp across the outside of a fold: it cracks there, and a cracked fold is scrap. Let it spring back, then measure; never bend back by more than about 1°."
	polishCaution = "Polishing hides cracks: look and photograph first. No gloves or loose sleeves at a wheel, held so that it can't snatch; chromium and nickel dust: mask."
	bathCaution   = "Acid goes into water. Goggles, gloves, air; a hot bath scalds; no chlorine cleaner; a spent bath holds metals: local waste rules."
	advises       = "This drawing advises; it is no survey and no approval. A qualified rigger, surveyor, naval architect and local code decide."
	tryFirst      = "make one, try it at the boat, then the rest; cut edges are sharp"
)

// finishCautions are those of what the finish asks for.
func (p Part) finishCautions() (list []string) {
	finish := strings.ToLower(p.Finish)
	asks := func(words ...string) bool {
		return slices.ContainsFunc(words, func(word string) bool { return strings.Contains(finish, word) })
	}
	if asks("polish", "grind", "ground", "blast", "brush") {
		list = append(list, polishCaution)
	}
	if asks("pickl", "passivat", "acid", "citric") {
		list = append(list, bathCaution)
	}
	return list
}

// held says what may be made before somebody has looked at it.
func (p Part) held() string {
	switch {
	case p.Hold != "":
		return "NOT TO BE CUT"
	case p.Quantity+p.OtherHand == 1:
		return "One part only. Not to be fitted until released."
	}
	return "First part only. Hold the rest until released."
}

// firstPart is what is measured on the first part, with room to write.
func (p Part) firstPart(m *model) table {
	t := table{title: "First part, as measured", head: []string{"size", "drawn", "measured"}}
	add := func(what string, v float64, unit string) {
		t.rows = append(t.rows, []string{what, size(v) + unit, ""})
	}
	add("thickness", p.Flat.Thickness, "")
	for i, h := range p.Flat.Holes {
		if i == p.Datum {
			add("hole "+whole(i+1)+", across", h.Diameter, "")
			if h.Long > 0 {
				add("hole "+whole(i+1)+", long", h.Long, "")
			}
		}
	}
	if far, d := p.farthest(); far >= 0 {
		add("flat: hole "+whole(p.Datum+1)+" to hole "+whole(far+1)+", centres", d, "")
	}
	if len(m.folds) == 0 {
		add("length", m.bounds.width(), "")
		add("width", m.bounds.height(), "")
		return t
	}
	s := newProfile(p, m)
	for at, step := range p.order() {
		add("P"+whole(at+1)+", turned", math.Abs(m.folds[step.Fold-1].Angle), "°")
	}
	for i, l := range s.legs {
		if !s.skewed && !l.cornerless {
			add("outside, "+p.legName(i), l.length(), "")
		}
	}
	if a, b, far := p.straight(m); far > 0 {
		add("folded: hole "+whole(a+1)+" to hole "+whole(b+1)+", straight, on face A", far, "")
	}
	add("overall, long", s.bounds.width(), "")
	add("overall, high", s.bounds.height(), "")
	return t
}

// straight are the two holes farthest apart in the flat of those that a fold parts, by
// their places in the list of holes, and the straight distance between their centres on
// face A of the folded part; 0 where no fold parts any. It tells at once whether the first
// part is right, whichever way its folds are turned.
func (p Part) straight(m *model) (a, b int, far float64) {
	holes := p.folded().Holes
	most := 0.0
	for i, h := range holes {
		for k, o := range holes[:i] {
			d := math.Hypot(h.At.X-o.At.X, h.At.Y-o.At.Y)
			parted := slices.ContainsFunc(m.folds, func(f band) bool { return f.beyond(h.At)*f.beyond(o.At) < 0 })
			if parted && d > most {
				v := minus(m.folding.Fold(h.At, 0), m.folding.Fold(o.At, 0))
				a, b, most, far = k, i, d, math.Sqrt(dot(v, v))
			}
		}
	}
	return a, b, far
}

// legName is between what a leg stands.
func (p Part) legName(i int) string {
	from, to := "near end", "far end"
	if i > 0 {
		from = p.letter(i - 1)
	}
	if i < len(p.Flat.Folds) {
		to = p.letter(i)
	}
	return from + " to " + to
}

// farthest is the hole farthest from the datum, and how far.
func (p Part) farthest() (index int, distance float64) {
	index = -1
	for i, h := range p.Flat.Holes {
		zero := p.Flat.Holes[p.Datum].At
		if d := math.Hypot(h.At.X-zero.X, h.At.Y-zero.Y); d > distance {
			index, distance = i, d
		}
	}
	return index, distance
}
