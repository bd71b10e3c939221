package drawing

import (
	"math"
	"slices"

	"chainwale/engine/sheet"
)

// ordinate is a size from the datum: where the thing is on paper, and what is written.
type ordinate struct {
	at    sheet.Point
	value float64
	// before is what stands before the number: the letter of a fold.
	before string
	colour colour
	bold   bool
}

// side is where a row of ordinates stands.
type side int

const (
	above side = iota
	below
	toLeft
	toRight
)

// How ordinates are written: the height of their letters, the room that each has along
// its row, how far the row stands off the part, and over what length lines step aside.
const (
	ordinateText = 3.4
	ordinateRoom = 4.1
	ordinateOff  = 2.0
	ordinateStep = 3.0
)

// text is what is written.
func (o ordinate) text() string {
	if o.before == "" {
		return size(o.value)
	}
	return o.before + " " + size(o.value)
}

// deep is how far a row of ordinates reaches from the part.
func deep(list []ordinate) float64 {
	long := 0.0
	for _, o := range list {
		long = max(long, textWidth(o.text(), ordinateText, true))
	}
	return ordinateOff + ordinateStep + 1.8 + long
}

// row writes ordinates of one side along an edge of the part, each with a line from its
// thing. Those that would stand on each other step aside. If they find no room between
// low and high, none is written.
func row(c *picture, around *places, list []ordinate, at side, edge, low, high float64) (fits bool) {
	along := func(o ordinate) float64 {
		if at == above || at == below {
			return o.at.X
		}
		return o.at.Y
	}
	slices.SortStableFunc(list, func(a, b ordinate) int {
		switch d := along(a) - along(b); {
		case d < 0:
			return -1
		case d > 0:
			return 1
		}
		return 0
	})
	if room := int((high-low)/ordinateRoom) + 1; len(list) > room {
		return false
	}
	wanted := make([]float64, len(list))
	for i, o := range list {
		// What would lie outside the row is wanted at its end; apart spreads it from there.
		wanted[i] = min(max(along(o), low+ordinateRoom*float64(i)), high-ordinateRoom*float64(len(list)-1-i))
	}
	for i, place := range apart(wanted, ordinateRoom) {
		list[i].draw(c, around, at, edge, place)
	}
	return true
}

// draw writes one ordinate: out to the edge, aside to its place, and the number.
func (o ordinate) draw(c *picture, around *places, at side, edge, place float64) {
	upright, out, along := true, 1.0, o.at.X
	switch at {
	case below:
		out = -1
	case toLeft:
		upright, out, along = false, -1, o.at.Y
	case toRight:
		upright, along = false, o.at.Y
	}
	point := func(along, away float64) sheet.Point {
		if upright {
			return sheet.Point{X: along, Y: edge + out*away}
		}
		return sheet.Point{X: edge + out*away, Y: along}
	}
	points := []sheet.Point{o.at, point(along, ordinateOff), point(place, ordinateOff+ordinateStep), point(place, ordinateOff+ordinateStep+1)}
	c.line(pen{width: 0.18, colour: o.colour}, polyline(points))
	around.takePoints(points)
	foot := point(place, ordinateOff+ordinateStep+1.8)
	w := words{text: o.text(), height: ordinateText, colour: o.colour, bold: o.bold, at: foot}
	middle := capital * ordinateText / 2
	if upright {
		w.at.X, w.turn = w.at.X+middle, 90
	} else {
		w.at.Y -= middle
	}
	if out < 0 {
		w.align = atRight
	}
	c.text(w)
	around.takeBox(w.box())
}

// once leaves one ordinate of each value: the one nearest to the edge that they run to.
func once(list []ordinate, distance func(ordinate) float64) []ordinate {
	var kept []ordinate
	for _, o := range list {
		same := slices.IndexFunc(kept, func(k ordinate) bool { return math.Abs(k.value-o.value) < 0.005 && k.before == o.before })
		switch {
		case same < 0:
			kept = append(kept, o)
		case distance(o) < distance(kept[same]):
			o.bold = o.bold || kept[same].bold
			kept[same] = o
		}
	}
	return kept
}
