package drawing

import (
	"math"

	"chainwale/engine/sheet"
)

// scales are those that drawings are made to, the largest first.
var scales = []float64{5, 2, 1, 0.5, 0.4, 0.25, 0.2, 0.1, 0.05, 0.02, 0.01, 0.005}

// scaleName writes a scale as drawings do.
func scaleName(s float64) string {
	if s >= 1 {
		return size(s) + ":1"
	}
	return "1:" + size(1/s)
}

// largest is the largest scale at which something fits.
func largest(wide, high float64, room box) float64 {
	for _, s := range scales {
		if s*wide <= room.width() && s*high <= room.height() {
			return s
		}
	}
	return scales[len(scales)-1]
}

// flatView is the flat with its sizes.
type flatView struct {
	part  Part
	folds []band
	frame
	// bounds are those of the part on paper.
	bounds box
	// corners says whether the outline's corners have sizes of their own, missing that
	// some sizes found no room.
	corners, missing bool
	around           *places
	c                *picture
}

// What the flat leaves free on paper beside it and above it, for sizes and words.
const (
	flatBeside = 24.0
	flatHead   = 9.0
)

// rows are the ordinates of the flat, by the side on which they are written. Values are
// in place; where they stand on paper follows when the frame is known.
type rows struct{ above, below, left, right []ordinate }

// newFlatView lists the sizes of the flat.
func newFlatView(p Part, folds []band) *flatView {
	return &flatView{part: p, folds: folds, frame: frame{scale: 1}, corners: true}
}

// scaleIn is the scale at which the flat fits a room, and the height that it then takes.
func (v *flatView) scaleIn(room box) (scale, takes float64) {
	low, high := v.part.Flat.Outline.Bounds()
	r := v.sizes()
	over, under := flatHead+max(deep(r.above), 12), deep(r.below)+2
	scale = largest(high.X-low.X, high.Y-low.Y, box{room.left + flatBeside, room.low + under, room.right - flatBeside, room.high - over})
	return scale, scale*(high.Y-low.Y) + over + under
}

// draw draws the flat into a room from its top, at a scale.
func (v *flatView) draw(c *picture, room box, scale float64) {
	low, high := v.part.Flat.Outline.Bounds()
	v.c, v.around = c, &places{room: room}
	over := flatHead + max(deep(v.sizes().above), 12)
	v.scale = scale
	middle := (room.left + room.right) / 2
	v.origin = sheet.Point{X: middle - scale*(low.X+high.X)/2, Y: room.high - over - scale*high.Y}
	a, b := v.point(low), v.point(high)
	v.bounds = box{a.X, a.Y, b.X, b.Y}
	v.around.takeBox(box{room.left, room.high - 6, room.right, room.high})
	v.shape()
	v.writeRows(room)
	v.names()
	v.heading(room)
}

// shape draws the part itself.
func (v *flatView) shape() {
	for _, b := range v.folds {
		for _, beyond := range []float64{-b.half, b.half} {
			from, to := b.chord(v.part.Flat.Outline, beyond)
			edge := between(v.point(from), v.point(to))
			v.c.line(bandPen, edge)
			v.around.takePath(edge, false)
		}
		path := between(v.point(b.from), v.point(b.to))
		v.c.line(b.pen(), path)
		v.around.takePath(path, false)
	}
	outline := v.path(v.part.Flat.Outline)
	v.c.loop(edgePen, outline)
	v.around.takePath(outline, true)
	for i, h := range v.part.Flat.Holes {
		v.hole(h, edgePen, i == v.part.Datum)
	}
	for _, h := range v.part.Later {
		v.hole(h.Hole, hiddenPen, false)
	}
}

// hole draws a hole with the cross of its centre; the datum has a ring of its own.
func (v *flatView) hole(h sheet.Hole, pen pen, datum bool) {
	path := v.path(h.Contour())
	v.c.loop(pen, path)
	v.around.takePath(path, true)
	at := v.point(h.At)
	for _, stroke := range holeCross(at, h, v.scale, 1.6) {
		v.c.line(centrePen, stroke)
		v.around.takePath(stroke, false)
	}
	if datum {
		ring := circle(at, v.scale*widest(h)+1)
		v.c.loop(accentPen, ring)
		v.around.takePath(ring, true)
	}
}

// sizes lists all ordinates: holes and corners above, folds and ends below, heights to
// the side that is nearer.
func (v *flatView) sizes() rows {
	var r rows
	zero := v.part.datum()
	low, high := v.part.Flat.Outline.Bounds()
	add := func(p sheet.Point, along, across float64, datum bool) {
		at := v.point(p)
		r.above = append(r.above, ordinate{at: sheet.Point{X: at.X, Y: at.Y + across}, value: p.X - zero.X, colour: ink, bold: datum})
		if p.X > (low.X+high.X)/2 {
			r.right = append(r.right, ordinate{at: sheet.Point{X: at.X + along, Y: at.Y}, value: p.Y - zero.Y, colour: ink, bold: datum})
		} else {
			r.left = append(r.left, ordinate{at: sheet.Point{X: at.X - along, Y: at.Y}, value: p.Y - zero.Y, colour: ink, bold: datum})
		}
	}
	hole := func(h sheet.Hole, datum bool) {
		x, y := reaches(h)
		add(h.At, v.scale*x+1.8, v.scale*y+1.8, datum)
	}
	for i, h := range v.part.Flat.Holes {
		hole(h, i == v.part.Datum)
	}
	for _, h := range v.part.Later {
		hole(h.Hole, false)
	}
	if v.corners {
		for _, corner := range sharpCorners(v.part.Flat.Outline) {
			add(corner, 0.4, 0.4, false)
		}
	}
	for _, x := range []float64{low.X, high.X} {
		r.below = append(r.below, ordinate{at: v.point(sheet.Point{X: x, Y: (low.Y + high.Y) / 2}), value: x - zero.X, colour: ink})
	}
	for _, b := range v.folds {
		at := v.point(b.from)
		if b.Skew != 0 {
			at = v.point(sheet.Point{X: b.At})
		}
		r.below = append(r.below, ordinate{at: at, value: b.At - zero.X, before: v.part.letter(b.index), colour: accent, bold: true})
	}
	for _, y := range []float64{low.Y, high.Y} {
		r.left = append(r.left, ordinate{at: v.point(sheet.Point{X: edgeAt(v.part.Flat.Outline, y), Y: y}), value: y - zero.Y, colour: ink})
	}
	return r
}

// writeRows writes the rows. Where corners leave no room, the holes come first.
func (v *flatView) writeRows(room box) {
	from, to := room.left+3, room.right-3
	low, high := v.bounds.low-10, v.bounds.high+10
	writes := []func(rows) bool{
		func(r rows) bool {
			return row(v.c, v.around, once(r.above, func(o ordinate) float64 { return v.bounds.high - o.at.Y }), above, v.bounds.high, from, to)
		},
		func(r rows) bool {
			return row(v.c, v.around, once(r.below, func(o ordinate) float64 { return o.at.Y }), below, v.bounds.low, from, to)
		},
		func(r rows) bool {
			return row(v.c, v.around, once(r.left, func(o ordinate) float64 { return o.at.X }), toLeft, v.bounds.left, low, high)
		},
		func(r rows) bool {
			return row(v.c, v.around, once(r.right, func(o ordinate) float64 { return -o.at.X }), toRight, v.bounds.right, low, high)
		},
	}
	missing := false
	for _, write := range writes {
		v.corners = true
		if !write(v.sizes()) {
			v.corners, missing = false, true
			write(v.sizes())
		}
	}
	v.missing = missing
}

// sharpCorners are the corners of an outline that a drawing must place: where straight
// pieces meet, and where a slanted one meets an arc.
func sharpCorners(c sheet.Contour) []sheet.Point {
	var list []sheet.Point
	slanted := func(a, b sheet.Vertex) bool {
		return !bulges(a) && math.Abs(a.X-b.X) > 1e-6 && math.Abs(a.Y-b.Y) > 1e-6
	}
	for i, v := range c {
		before, next := c[(i+len(c)-1)%len(c)], c[(i+1)%len(c)]
		if !bulges(before) && !bulges(v) || slanted(before, v) || slanted(v, next) {
			list = append(list, sheet.Point{X: v.X, Y: v.Y})
		}
	}
	return list
}

// edgeAt is the least X at which an outline reaches a height.
func edgeAt(c sheet.Contour, y float64) float64 {
	least, off := 0.0, math.Inf(1)
	for _, p := range c.Flatten(0.01) {
		if d := math.Abs(p.Y - y); d < off-0.02 || d < off+0.02 && p.X < least {
			least, off = p.X, min(off, d)
		}
	}
	return least
}

// names writes the numbers of holes, the letters of folds and the radii of corners.
func (v *flatView) names() {
	v.radii()
	around := []float64{45, 135, 315, 225, 90, 270, 0, 180}
	number := 0
	name := func(h sheet.Hole, after string) {
		number++
		at, reach := v.point(h.At), v.scale*widest(h)
		rings := []float64{reach + 1.5, reach + 2.5, reach + 4, reach + 6, reach + 9, reach + 13}
		w := words{text: whole(number) + ": " + holeSize(h) + after, height: 3.2, bold: true, colour: ink}
		found, crowd := v.around.find(w, at, rings, around)
		if crowd >= 1 {
			w.text = whole(number)
			found, _ = v.around.find(w, at, rings, around)
		}
		v.around.lay(v.c, found, at, reach)
	}
	for _, b := range v.folds {
		way := " away"
		if b.toward() {
			way = " toward"
		}
		w := words{text: v.part.letter(b.index) + way, height: 3.2, bold: true, colour: accent}
		v.around.put(v.c, w, v.point(b.to), []float64{2, 5, 8, 11}, []float64{90, 60, 120, 30, 150, 270})
	}
	for _, h := range v.part.Flat.Holes {
		name(h, "")
	}
	for _, h := range v.part.Later {
		name(h.Hole, " later")
	}
}

// radii writes each radius of the outline once, with how often it comes.
func (v *flatView) radii() {
	type round struct {
		arc   arc
		count int
	}
	var list []*round
	c := v.part.Flat.Outline
	for i, corner := range c {
		if !bulges(corner) {
			continue
		}
		a := newArc(corner, c[(i+1)%len(c)])
		known := false
		for _, r := range list {
			if math.Abs(r.arc.radius-a.radius) < 0.005 {
				r.count++
				known = true
			}
		}
		if !known {
			list = append(list, &round{a, 1})
		}
	}
	for _, r := range list {
		text := "R" + size(r.arc.radius)
		if r.count > 1 {
			text = whole(r.count) + " × " + text
		}
		// Off the middle of an end, where the heights are written.
		on := r.arc.at(0.3)
		if other := r.arc.at(0.7); other.Y > on.Y {
			on = other
		}
		at := v.point(on)
		out := math.Atan2(on.Y-r.arc.centre.Y, on.X-r.arc.centre.X) * 180 / math.Pi
		v.around.put(v.c, words{text: text, height: 3.2, colour: ink}, at, []float64{5, 7, 10, 14}, []float64{out, out + 30, out - 30, out + 55, out - 55, out + 80, out - 80})
	}
}

// heading says what is seen and how large.
func (v *flatView) heading(room box) {
	low, high := v.part.Flat.Outline.Bounds()
	text := "Flat, seen on face A, " + scaleName(v.scale) + ", " + size(high.X-low.X) + " × " + size(high.Y-low.Y) + " × " + size(v.part.Flat.Thickness) + " mm"
	if v.missing {
		text += "; the rest: hole list, cutting file"
	}
	heading := words{at: sheet.Point{X: room.left + 2, Y: room.high - 5}, text: text, height: headHeight, bold: true, colour: ink}
	v.c.text(heading)
	if len(v.folds) > 0 {
		v.rolled(room, heading.box().right+6)
	}
}

// rolled says how the sheet lies that the part is cut from, to the right of the heading,
// in as many words as there is room for.
func (v *flatView) rolled(room box, from float64) {
	text, long := "rolling direction of the sheet", 29.0
	if room.right-from < textWidth(text, textHeight, false)+long+7 {
		text, long = "rolled", 12
	}
	right, y := room.right-4, room.high-5
	v.c.text(words{at: sheet.Point{X: right - long - 3, Y: y}, text: text, height: 3.2, align: atRight, colour: ink})
	v.c.line(finePen, stroke(right-long, y+1, right, y+1))
	v.c.loop(solid, arrow(sheet.Point{X: right - long, Y: y + 1}, math.Pi))
	v.c.loop(solid, arrow(sheet.Point{X: right, Y: y + 1}, 0))
}
