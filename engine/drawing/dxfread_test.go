package drawing

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"chainwale/engine/sheet"
)

// This reader is stricter than those that shops have: it was written from what a
// cutting file must be, and knows nothing of how ours is made. It takes pairs of a group
// code and a value, and refuses what general readers let pass.

// pair is a group code and its value.
type pair struct {
	code  int
	value string
}

// dxfFile is a file that was read: variables of its head, records of its tables, what
// is drawn.
type dxfFile struct {
	version   string
	variables map[string][]pair
	layers    map[string]string
	types     map[string]bool
	handles   map[string]bool
	pointers  []string
	entities  []dxfEntity
}

// dxfEntity is one thing that is drawn, with its pairs.
type dxfEntity struct {
	kind, layer string
	pairs       []pair
	contour     sheet.Contour
	closed      bool
}

func (e dxfEntity) number(code int) float64 {
	for _, p := range e.pairs {
		if p.code == code {
			v, _ := strconv.ParseFloat(p.value, 64)
			return v
		}
	}
	return math.NaN()
}

// readDXF reads a file, strictly.
func readDXF(b []byte) (*dxfFile, error) {
	pairs, err := readPairs(b)
	if err != nil {
		return nil, err
	}
	f := &dxfFile{variables: map[string][]pair{}, layers: map[string]string{}, types: map[string]bool{}, handles: map[string]bool{}}
	var names []string
	for len(pairs) > 0 && pairs[0] != (pair{0, "EOF"}) {
		if len(pairs) < 3 || pairs[0] != (pair{0, "SECTION"}) || pairs[1].code != 2 {
			return nil, fmt.Errorf("no section where one is due: %v", pairs[0])
		}
		end := slices.Index(pairs, pair{0, "ENDSEC"})
		if end < 0 {
			return nil, fmt.Errorf("section %s does not end", pairs[1].value)
		}
		names = append(names, pairs[1].value)
		if err := f.section(pairs[1].value, pairs[2:end]); err != nil {
			return nil, fmt.Errorf("section %s: %w", pairs[1].value, err)
		}
		pairs = pairs[end+1:]
	}
	if len(pairs) != 1 {
		return nil, fmt.Errorf("the file does not end with EOF alone")
	}
	return f, f.whole(names)
}

// readPairs takes lines in twos.
func readPairs(b []byte) ([]pair, error) {
	text := string(b)
	for i, c := range b {
		if c > 126 || c < 32 && c != '\r' && c != '\n' {
			return nil, fmt.Errorf("byte %d is %q, which plain letters don't have", i, c)
		}
	}
	if strings.Count(text, "\n") != strings.Count(text, "\r\n") || !strings.HasSuffix(text, "\r\n") {
		return nil, fmt.Errorf("lines don't all end in CR LF")
	}
	lines := strings.Split(strings.TrimSuffix(text, "\r\n"), "\r\n")
	if len(lines)%2 != 0 {
		return nil, fmt.Errorf("%d lines don't make pairs", len(lines))
	}
	var pairs []pair
	for i := 0; i < len(lines); i += 2 {
		code, err := strconv.Atoi(strings.TrimSpace(lines[i]))
		if err != nil {
			return nil, fmt.Errorf("line %d: %q is no group code", i+1, lines[i])
		}
		p := pair{code, lines[i+1]}
		if err := p.check(); err != nil {
			return nil, fmt.Errorf("line %d: %w", i+2, err)
		}
		pairs = append(pairs, p)
	}
	return pairs, nil
}

// check holds a value against the kind that its code asks for.
func (p pair) check() error {
	switch {
	case p.code >= 10 && p.code <= 59:
		v, err := strconv.ParseFloat(p.value, 64)
		if err != nil || math.IsNaN(v) || math.IsInf(v, 0) || !strings.Contains(p.value, ".") {
			return fmt.Errorf("%q is no finite decimal number", p.value)
		}
	case p.code >= 60 && p.code <= 99:
		if _, err := strconv.Atoi(p.value); err != nil {
			return fmt.Errorf("%q is no whole number", p.value)
		}
	case p.code == 5 || p.code == 105 || p.code >= 320 && p.code <= 369:
		if _, err := strconv.ParseUint(p.value, 16, 64); err != nil {
			return fmt.Errorf("%q is no handle", p.value)
		}
	case len(p.value) > 255:
		return fmt.Errorf("a text of %d letters", len(p.value))
	}
	return nil
}

func (f *dxfFile) section(name string, pairs []pair) error {
	switch name {
	case "HEADER":
		return f.header(pairs)
	case "TABLES":
		return f.tables(pairs)
	}
	for _, record := range records(pairs) {
		f.note(record)
		if name == "ENTITIES" {
			if err := f.entity(record); err != nil {
				return err
			}
		}
	}
	return nil
}

// records cuts pairs where a 0 begins the next.
func records(pairs []pair) [][]pair {
	var list [][]pair
	for _, p := range pairs {
		if p.code == 0 || list == nil {
			list = append(list, nil)
		}
		list[len(list)-1] = append(list[len(list)-1], p)
	}
	return list
}

func (f *dxfFile) header(pairs []pair) error {
	name := ""
	for _, p := range pairs {
		if p.code == 9 {
			name = p.value
			continue
		}
		if name == "" {
			return fmt.Errorf("a value %v without a name", p)
		}
		f.variables[name] = append(f.variables[name], p)
	}
	if v := f.variables["$ACADVER"]; len(v) == 1 {
		f.version = v[0].value
	}
	return nil
}

// note keeps handles, which must be unique, and pointers, which must lead somewhere.
func (f *dxfFile) note(record []pair) {
	for _, p := range record {
		switch p.code {
		case 5, 105:
			key := p.value
			if f.handles[key] {
				key = "twice " + key
			}
			f.handles[key] = true
		case 330, 350:
			f.pointers = append(f.pointers, p.value)
		}
	}
}

func (f *dxfFile) tables(pairs []pair) error {
	open, count, declared := "", 0, 0
	var names []string
	for _, r := range records(pairs) {
		f.note(r)
		get := func(code int) string {
			for _, p := range r {
				if p.code == code {
					return p.value
				}
			}
			return ""
		}
		switch kind := r[0].value; {
		case kind == "TABLE":
			open, count = get(2), 0
			declared, _ = strconv.Atoi(get(70))
			names = append(names, open)
		case kind == "ENDTAB":
			if open == "" || count != declared {
				return fmt.Errorf("table %q says %d records and has %d", open, declared, count)
			}
			open = ""
		case kind != open:
			return fmt.Errorf("a %s in table %q", kind, open)
		default:
			count++
			switch kind {
			case "LAYER":
				f.layers[get(2)] = get(6)
			case "LTYPE":
				f.types[get(2)] = true
			}
		}
	}
	want := []string{"VPORT", "LTYPE", "LAYER", "STYLE", "VIEW", "UCS", "APPID", "DIMSTYLE"}
	if f.version == "AC1015" {
		want = append(want, "BLOCK_RECORD")
	}
	if open != "" || !slices.Equal(names, want) {
		return fmt.Errorf("tables %v, want %v, and %q is open", names, want, open)
	}
	return nil
}

// markers are the classes that R2000 asks for, and in which order.
var markers = map[string][]string{
	"CIRCLE": {"AcDbEntity", "AcDbCircle"}, "LINE": {"AcDbEntity", "AcDbLine"},
	"LWPOLYLINE": {"AcDbEntity", "AcDbPolyline"}, "TEXT": {"AcDbEntity", "AcDbText", "AcDbText"},
}

func (f *dxfFile) entity(r []pair) error {
	e := dxfEntity{kind: r[0].value, pairs: r}
	var classes []string
	handle := false
	for _, p := range r {
		switch p.code {
		case 8:
			e.layer = p.value
		case 100:
			classes = append(classes, p.value)
		case 5:
			handle = true
		}
	}
	if e.layer == "" {
		return fmt.Errorf("a %s without a layer", e.kind)
	}
	modern := f.version == "AC1015"
	if modern && (!slices.Equal(classes, markers[e.kind]) || !handle) {
		return fmt.Errorf("a %s with the classes %v, handle %v", e.kind, classes, handle)
	}
	if !modern && (len(classes) > 0 || handle || e.kind == "LWPOLYLINE") {
		return fmt.Errorf("a %s as R12 does not know it", e.kind)
	}
	return f.draw(e)
}

// draw takes an entity, the corners of an old polyline into the one that is open.
func (f *dxfFile) draw(e dxfEntity) error {
	var last *dxfEntity
	if n := len(f.entities); n > 0 && f.entities[n-1].kind == "POLYLINE open" {
		last = &f.entities[n-1]
	}
	switch e.kind {
	case "VERTEX":
		if last == nil || last.layer != e.layer {
			return fmt.Errorf("a corner of no polyline")
		}
		last.contour = append(last.contour, sheet.Vertex{X: e.number(10), Y: e.number(20), Bulge: or0(e.number(42))})
		return nil
	case "SEQEND":
		if last == nil {
			return fmt.Errorf("an end of no polyline")
		}
		last.kind = "POLYLINE"
		return nil
	}
	if last != nil {
		return fmt.Errorf("a polyline that does not end")
	}
	switch e.kind {
	case "POLYLINE":
		if e.number(66) != 1 {
			return fmt.Errorf("a polyline that announces no corners")
		}
		e.kind, e.closed = "POLYLINE open", e.number(70) == 1
	case "LWPOLYLINE":
		for _, p := range e.pairs {
			v, _ := strconv.ParseFloat(p.value, 64)
			switch n := len(e.contour) - 1; p.code {
			case 10:
				e.contour = append(e.contour, sheet.Vertex{X: v})
			case 20:
				e.contour[n].Y = v
			case 42:
				e.contour[n].Bulge = v
			}
		}
		if e.number(90) != float64(len(e.contour)) {
			return fmt.Errorf("a polyline says %g corners and has %d", e.number(90), len(e.contour))
		}
		e.closed = e.number(70) == 1
	case "CIRCLE", "LINE", "TEXT":
	default:
		return fmt.Errorf("a %s is nothing for a cutter", e.kind)
	}
	f.entities = append(f.entities, e)
	return nil
}

func or0(v float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return v
}

// whole checks what takes the whole file: sections, units, layers, handles.
func (f *dxfFile) whole(names []string) error {
	want := map[string][]string{"AC1009": {"HEADER", "TABLES", "BLOCKS", "ENTITIES"}, "AC1015": {"HEADER", "CLASSES", "TABLES", "BLOCKS", "ENTITIES", "OBJECTS"}}[f.version]
	if want == nil || !slices.Equal(names, want) {
		return fmt.Errorf("edition %q with the sections %v", f.version, names)
	}
	if u := f.variables["$INSUNITS"]; len(u) != 1 || u[0].value != "4" {
		return fmt.Errorf("units are %v, not millimetres", u)
	}
	for layer, lineType := range f.layers {
		if !f.types[lineType] {
			return fmt.Errorf("layer %s has the line type %s, which no table has", layer, lineType)
		}
	}
	for _, e := range f.entities {
		if _, ok := f.layers[e.layer]; !ok {
			return fmt.Errorf("layer %s is not declared", e.layer)
		}
		if e.kind == "POLYLINE open" {
			return fmt.Errorf("a polyline that does not end")
		}
	}
	return f.checkHandles()
}

func (f *dxfFile) checkHandles() error {
	if f.version != "AC1015" {
		return nil
	}
	if m := f.variables["$MEASUREMENT"]; len(m) != 1 || m[0].value != "1" {
		return fmt.Errorf("the measurement is %v, not metric", m)
	}
	highest := uint64(0)
	for h := range f.handles {
		v, err := strconv.ParseUint(h, 16, 64)
		if err != nil || v == 0 {
			return fmt.Errorf("handle %s", h)
		}
		highest = max(highest, v)
	}
	for _, p := range f.pointers {
		if p != "0" && !f.handles[p] {
			return fmt.Errorf("handle %s is pointed at and is nowhere", p)
		}
	}
	seed := f.variables["$HANDSEED"]
	if len(seed) != 1 {
		return fmt.Errorf("no next handle")
	}
	if v, _ := strconv.ParseUint(seed[0].value, 16, 64); v <= highest {
		return fmt.Errorf("the next handle %X is given already, the highest is %X", v, highest)
	}
	return nil
}
