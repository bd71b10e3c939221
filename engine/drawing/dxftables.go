package drawing

// table writes a table of an edition: its head, then its records.
func (d *dxf) table(name string, handle, records int, inside func(owner int)) {
	d.word(0, "TABLE")
	d.word(2, name)
	d.owned(handle, 0, "AcDbSymbolTable")
	d.integer(70, records)
	if name == "DIMSTYLE" && d.modern {
		d.word(100, "AcDbDimStyleTable")
		d.integer(71, 1)
	}
	inside(handle)
	d.word(0, "ENDTAB")
}

// record begins a record of a table and names it.
func (d *dxf) record(kind, class, name string, handle, owner int) {
	d.word(0, kind)
	d.owned(handle, owner, "AcDbSymbolTableRecord", class)
	d.word(2, name)
}

func (d *dxf) tables() {
	d.table("VPORT", 0x8, 1, d.viewport)
	types := len(lineTypes)
	if d.modern {
		types += 2
	}
	d.table("LTYPE", 0x5, types, d.lineTypeRecords)
	d.table("LAYER", 0x2, len(d.layers), d.layerRecords)
	d.table("STYLE", 0x3, 1, d.style)
	d.table("VIEW", 0x6, 0, func(int) {})
	d.table("UCS", 0x7, 0, func(int) {})
	d.table("APPID", 0x9, 1, func(owner int) {
		d.record("APPID", "AcDbRegAppTableRecord", "ACAD", 0x12, owner)
		d.integer(70, 0)
	})
	d.table("DIMSTYLE", 0xA, 1, d.dimensionStyle)
	if d.modern {
		d.table("BLOCK_RECORD", blockTable, 2, func(owner int) {
			d.record("BLOCK_RECORD", "AcDbBlockTableRecord", "*Model_Space", modelRecord, owner)
			d.record("BLOCK_RECORD", "AcDbBlockTableRecord", "*Paper_Space", paperRecord, owner)
		})
	}
}

// viewport makes a program open the file with the part in the middle.
func (d *dxf) viewport(owner int) {
	d.record("VPORT", "AcDbViewportTableRecord", "*ACTIVE", 0x20, owner)
	d.integer(70, 0)
	pair := func(code int, x, y float64) {
		d.number(code, x)
		d.number(code+10, y)
	}
	pair(10, 0, 0)
	pair(11, 1, 1)
	pair(12, (d.low.X+d.high.X)/2, (d.low.Y+d.high.Y)/2)
	pair(13, 0, 0)
	pair(14, 10, 10)
	pair(15, 10, 10)
	d.number(16, 0)
	d.number(26, 0)
	d.number(36, 1)
	d.number(17, 0)
	d.number(27, 0)
	d.number(37, 0)
	w, h := d.high.X-d.low.X, d.high.Y-d.low.Y
	const wide = 1.6
	d.number(40, 1.1*max(h, w/wide))
	d.number(41, wide)
	d.number(42, 50)
	d.number(43, 0)
	d.number(44, 0)
	d.number(50, 0)
	d.number(51, 0)
	for _, flag := range [][2]int{{71, 0}, {72, 100}, {73, 1}, {74, 3}, {75, 0}, {76, 0}, {77, 0}, {78, 0}} {
		d.integer(flag[0], flag[1])
	}
}

// lineTypeRecords are the patterns; R2000 also names those that a thing takes from its
// layer or block.
func (d *dxf) lineTypeRecords(owner int) {
	if d.modern {
		d.lineType("ByBlock", "", nil, 0x14, owner)
		d.lineType("ByLayer", "", nil, 0x15, owner)
	}
	for i, t := range lineTypes {
		d.lineType(t.name, t.look, t.pattern, plainType+i, owner)
	}
}

func (d *dxf) lineType(name, look string, pattern []float64, handle, owner int) {
	d.record("LTYPE", "AcDbLinetypeTableRecord", name, handle, owner)
	d.integer(70, 0)
	d.word(3, look)
	d.integer(72, 'A')
	d.integer(73, len(pattern))
	sum := 0.0
	for _, v := range pattern {
		sum += max(v, -v)
	}
	d.number(40, sum)
	for _, v := range pattern {
		d.number(49, v)
		if d.modern {
			d.integer(74, 0)
		}
	}
}

func (d *dxf) layerRecords(owner int) {
	for i, l := range d.layers {
		d.record("LAYER", "AcDbLayerTableRecord", l.name, 0x30+i, owner)
		d.integer(70, 0)
		d.integer(62, l.colour)
		d.word(6, l.lineType)
	}
}

func (d *dxf) style(owner int) {
	d.record("STYLE", "AcDbTextStyleTableRecord", "STANDARD", plainStyle, owner)
	d.integer(70, 0)
	d.number(40, 0)
	d.number(41, 1)
	d.number(50, 0)
	d.integer(71, 0)
	d.number(42, wordHeight)
	d.word(3, "txt")
	d.word(4, "")
}

// dimensionStyle is there because readers ask for it; no dimension is written. Its
// handle has a code of its own.
func (d *dxf) dimensionStyle(owner int) {
	d.word(0, "DIMSTYLE")
	if d.modern {
		d.word(105, hex(0x27))
		d.word(330, hex(owner))
		d.word(100, "AcDbSymbolTableRecord")
		d.word(100, "AcDbDimStyleTableRecord")
	}
	d.word(2, "STANDARD")
	d.integer(70, 0)
}

// blocks are the two spaces that R2000 draws in; R12 has none.
func (d *dxf) blocks() {
	if !d.modern {
		return
	}
	for i, space := range []struct {
		name   string
		record int
	}{{"*Model_Space", modelRecord}, {"*Paper_Space", paperRecord}} {
		open := func(kind, class string, handle int) {
			d.word(0, kind)
			d.owned(handle, space.record, "AcDbEntity")
			if space.record == paperRecord {
				d.integer(67, 1)
			}
			d.word(8, "0")
			d.word(100, class)
		}
		open("BLOCK", "AcDbBlockBegin", 0x21+2*i)
		d.word(2, space.name)
		d.integer(70, 0)
		d.number(10, 0)
		d.number(20, 0)
		d.number(30, 0)
		d.word(3, space.name)
		d.word(1, "")
		open("ENDBLK", "AcDbBlockEnd", 0x22+2*i)
	}
}

// objects is the dictionary that holds all others: here an empty one of groups.
func (d *dxf) objects() {
	d.word(0, "DICTIONARY")
	d.owned(rootDict, 0, "AcDbDictionary")
	d.word(3, "ACAD_GROUP")
	d.word(350, hex(groupDict))
	d.word(0, "DICTIONARY")
	d.owned(groupDict, rootDict, "AcDbDictionary")
}
