package drawing

import (
	"sort"
	"unicode/utf8"
)

// The two typefaces are Helvetica and its bold, which every PDF reader has; no font
// travels in the file. Widths are in thousandths of the letter size, for the codes 32
// to 255 of the Windows Latin alphabet that PDF calls WinAnsi. Source: the metrics that
// come with the free faces of the same widths (published).

var plainWidths = [224]uint16{
	278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278,
	556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
	1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
	667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
	333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556,
	556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584, 0,
	556, 0, 222, 556, 333, 1000, 556, 556, 333, 1000, 667, 333, 1000, 0, 611, 0,
	0, 222, 222, 333, 333, 350, 556, 1000, 333, 1000, 500, 333, 944, 0, 500, 667,
	278, 333, 556, 556, 556, 556, 260, 556, 333, 737, 370, 556, 584, 333, 737, 333,
	400, 584, 333, 333, 333, 556, 537, 278, 333, 333, 365, 556, 834, 834, 834, 611,
	667, 667, 667, 667, 667, 667, 1000, 722, 667, 667, 667, 667, 278, 278, 278, 278,
	722, 722, 778, 778, 778, 778, 778, 584, 778, 722, 722, 722, 722, 667, 667, 611,
	556, 556, 556, 556, 556, 556, 889, 500, 556, 556, 556, 556, 278, 278, 278, 278,
	556, 556, 556, 556, 556, 556, 556, 584, 611, 556, 556, 556, 556, 500, 556, 500,
}

var boldWidths = [224]uint16{
	278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278,
	556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 333, 333, 584, 584, 584, 611,
	975, 722, 722, 722, 722, 667, 611, 778, 722, 278, 556, 722, 611, 833, 722, 778,
	667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 333, 278, 333, 584, 556,
	333, 556, 611, 556, 611, 556, 333, 611, 611, 278, 278, 556, 278, 889, 611, 611,
	611, 611, 389, 556, 333, 611, 556, 778, 556, 556, 500, 389, 280, 389, 584, 0,
	556, 0, 278, 556, 500, 1000, 556, 556, 333, 1000, 667, 333, 1000, 0, 611, 0,
	0, 278, 278, 500, 500, 350, 556, 1000, 333, 1000, 556, 333, 944, 0, 500, 667,
	278, 333, 556, 556, 556, 556, 280, 556, 333, 737, 370, 556, 584, 333, 737, 333,
	400, 584, 333, 333, 333, 611, 556, 278, 333, 333, 365, 556, 834, 834, 834, 611,
	722, 722, 722, 722, 722, 722, 1000, 722, 667, 667, 667, 667, 278, 278, 278, 278,
	722, 722, 778, 778, 778, 778, 778, 584, 778, 722, 722, 722, 722, 667, 667, 611,
	556, 556, 556, 556, 556, 556, 889, 556, 556, 556, 556, 556, 278, 278, 278, 278,
	611, 611, 611, 611, 611, 611, 611, 584, 611, 611, 611, 611, 611, 556, 611, 556,
}

// high are the letters of the codes 128 to 159, 0 where there is none.
var high = [32]rune{
	'€', 0, '‚', 'ƒ', '„', '…', '†', '‡', 'ˆ', '‰', 'Š', '‹', 'Œ', 0, 'Ž', 0,
	0, '‘', '’', '“', '”', '•', '–', '—', '˜', '™', 'š', '›', 'œ', 0, 'ž', 'Ÿ',
}

// stripped gives letters of Latin alphabets that the typeface lacks without their marks.
// Each run begins at a letter's code.
var stripped = []struct {
	first   rune
	letters string
}{
	{0x100, "AaAaAaCcCcCcCcDdDdEeEeEeEeEeGgGgGgGgHhHhIiIiIiIiIiIiJjKkkLlLlLlLlLlNnNnNnnNnOoOoOoOERrRrRrSsSsSsSsTtTtTtUuUuUuUuUuUuWwYyYZzZzZz"},
}

// code is the letter's code in the typeface, and whether it has one.
func code(r rune) (byte, bool) {
	switch {
	case r >= 32 && r < 127, r >= 160 && r <= 255:
		return byte(r), true
	case r == '−':
		return 0x96, true
	}
	for i, h := range high {
		if h == r && r != 0 {
			return byte(128 + i), true
		}
	}
	for _, run := range stripped {
		if at := int(r - run.first); r >= run.first && at < len(run.letters) {
			return run.letters[at], true
		}
	}
	return '?', false
}

// encode gives a text in the codes of the typeface: letters with marks that it lacks
// lose them, and others become a question mark.
func encode(s string) []byte {
	b := make([]byte, 0, len(s))
	for _, r := range s {
		c, _ := code(r)
		b = append(b, c)
	}
	return b
}

// unprinted are the letters of texts that the typeface has nothing for, in order.
func unprinted(texts ...string) []rune {
	var list []rune
	for _, t := range texts {
		for _, r := range t {
			if _, ok := code(r); !ok {
				list = append(list, r)
			}
		}
	}
	sort.Slice(list, func(i, j int) bool { return list[i] < list[j] })
	return list
}

// textWidth is how wide a line of letters runs, mm.
func textWidth(s string, height float64, bold bool) float64 {
	widths := &plainWidths
	if bold {
		widths = &boldWidths
	}
	sum := 0
	for len(s) > 0 {
		r, n := utf8.DecodeRuneInString(s)
		s = s[n:]
		c, _ := code(r)
		if c >= 32 {
			sum += int(widths[c-32])
		}
	}
	return float64(sum) * height / 1000
}
