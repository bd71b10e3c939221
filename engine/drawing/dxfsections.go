package drawing

import (
	"strconv"

	"chainwale/engine/sheet"
)

// Handles are numbers of things in an R2000 file, by which they point at each other.
// Tables and dictionaries have fixed ones, entities go on from firstHandle.
const (
	modelRecord = 0x1F
	paperRecord = 0x1E
	rootDict    = 0xC
	groupDict   = 0xD
	plainStyle  = 0x11
	plainType   = 0x16
	blockTable  = 0x1
	firstHandle = 0x40
)

// write makes the whole file.
func (d *dxf) write(shapes []dxfShape) {
	body := &dxf{modern: d.modern, handle: d.handle, low: d.low, high: d.high, layers: d.layers}
	if d.modern {
		body.section("CLASSES", func() {})
	}
	body.section("TABLES", body.tables)
	body.section("BLOCKS", body.blocks)
	body.section("ENTITIES", func() {
		for _, s := range shapes {
			body.entity(s)
		}
	})
	if d.modern {
		body.section("OBJECTS", body.objects)
	}
	body.word(0, "EOF")
	// The header names the next free handle, so it is written when all are given.
	d.handle = body.handle
	d.section("HEADER", d.header)
	d.b = append(d.b, body.b...)
}

func (d *dxf) section(name string, inside func()) {
	d.word(0, "SECTION")
	d.word(2, name)
	inside()
	d.word(0, "ENDSEC")
}

// header says edition, units (4: millimetres) and the corners of what is drawn.
func (d *dxf) header() {
	variable := func(name string) { d.word(9, name) }
	variable("$ACADVER")
	if d.modern {
		d.word(1, "AC1015")
		variable("$DWGCODEPAGE")
		d.word(3, "ANSI_1252")
		variable("$HANDSEED")
		d.word(5, hex(d.handle))
		variable("$MEASUREMENT")
		d.integer(70, 1)
	} else {
		d.word(1, "AC1009")
	}
	variable("$INSUNITS")
	d.integer(70, 4)
	variable("$LUNITS")
	d.integer(70, 2)
	variable("$LTSCALE")
	d.number(40, 1)
	variable("$INSBASE")
	d.point(10, sheet.Point{})
	variable("$EXTMIN")
	d.point(10, d.low)
	variable("$EXTMAX")
	d.point(10, d.high)
	for name, p := range pairs("$LIMMIN", d.low, "$LIMMAX", d.high) {
		variable(name)
		d.number(10, p.X)
		d.number(20, p.Y)
	}
}

// pairs yields two names with their points, in order.
func pairs(a string, p sheet.Point, b string, q sheet.Point) func(func(string, sheet.Point) bool) {
	return func(yield func(string, sheet.Point) bool) {
		if yield(a, p) {
			yield(b, q)
		}
	}
}

func hex(handle int) string {
	const digits = 16
	return upper(strconv.FormatInt(int64(handle), digits))
}

func upper(s string) string {
	b := []byte(s)
	for i, c := range b {
		if c >= 'a' && c <= 'f' {
			b[i] = c - 'a' + 'A'
		}
	}
	return string(b)
}

// next gives a new handle.
func (d *dxf) next() int {
	d.handle++
	return d.handle - 1
}

// owned writes a handle and whose the thing is; R12 has neither.
func (d *dxf) owned(handle, owner int, classes ...string) {
	if !d.modern {
		return
	}
	d.word(5, hex(handle))
	d.word(330, hex(owner))
	for _, c := range classes {
		d.word(100, c)
	}
}

func (d *dxf) class(name string) {
	if d.modern {
		d.word(100, name)
	}
}

func (d *dxf) entity(s dxfShape) {
	switch {
	case s.circle:
		d.begin("CIRCLE", s.layer, "AcDbCircle")
		d.point(10, s.at)
		d.number(40, s.size)
	case s.word != "":
		d.begin("TEXT", s.layer, "AcDbText")
		d.point(10, s.at)
		d.number(40, s.size)
		d.word(1, dxfText(s.word))
		d.class("AcDbText")
	case s.line:
		d.begin("LINE", s.layer, "AcDbLine")
		d.point(10, sheet.Point{X: s.contour[0].X, Y: s.contour[0].Y})
		d.point(11, sheet.Point{X: s.contour[1].X, Y: s.contour[1].Y})
	case d.modern:
		d.lightPolyline(s)
	default:
		d.oldPolyline(s)
	}
}

func (d *dxf) begin(kind, layer, class string) {
	d.word(0, kind)
	d.owned(d.next(), modelRecord, "AcDbEntity")
	d.word(8, layer)
	d.class(class)
}

// lightPolyline is the closed contour of R2000: 70 with bit 1 says closed.
func (d *dxf) lightPolyline(s dxfShape) {
	d.begin("LWPOLYLINE", s.layer, "AcDbPolyline")
	d.integer(90, len(s.contour))
	d.integer(70, 1)
	for _, v := range s.contour {
		d.number(10, v.X)
		d.number(20, v.Y)
		if bulges(v) {
			d.number(42, v.Bulge)
		}
	}
}

// oldPolyline is the closed contour of R12.
func (d *dxf) oldPolyline(s dxfShape) {
	d.begin("POLYLINE", s.layer, "")
	d.integer(66, 1)
	d.point(10, sheet.Point{})
	d.integer(70, 1)
	for _, v := range s.contour {
		d.begin("VERTEX", s.layer, "")
		d.point(10, sheet.Point{X: v.X, Y: v.Y})
		if bulges(v) {
			d.number(42, v.Bulge)
		}
	}
	d.begin("SEQEND", s.layer, "")
}
