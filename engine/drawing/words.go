package drawing

import (
	"math"
	"strconv"
	"strings"
	"unicode"

	"chainwale/engine/sheet"
)

// size writes a length in mm, or an angle in deg, as a drawing has it: to a hundredth,
// without noughts at the end.
func size(v float64) string {
	s := strconv.FormatFloat(round(v), 'f', -1, 64)
	return strings.Replace(s, "-", "−", 1)
}

// round rounds to a hundredth; nothing is -0.
func round(v float64) float64 {
	r := math.Round(v*100) / 100
	if r == 0 {
		return 0
	}
	return r
}

func whole(n int) string { return strconv.Itoa(n) }

// line makes one printable line of a text from outside.
func line(s string) string {
	if plain(s) {
		return s
	}
	clean := strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) || unicode.IsControl(r) || r == unicode.ReplacementChar {
			return ' '
		}
		if unicode.Is(unicode.Cf, r) || r >= 0xfffe && r <= 0xffff {
			return -1
		}
		return r
	}, s)
	return strings.Join(strings.Fields(clean), " ")
}

// plain tells whether a text is a printable line as it stands.
func plain(s string) bool {
	for i := range len(s) {
		c := s[i]
		if c < ' ' || c > '~' || c == ' ' && (i == 0 || i == len(s)-1 || s[i-1] == ' ') {
			return false
		}
	}
	return true
}

// off is "4 off" with the hands, for title and cutting file.
func (p Part) off() string {
	if p.OtherHand == 0 {
		return whole(p.Quantity) + " off" + bracket(p.Hand)
	}
	return whole(p.Quantity+p.OtherHand) + " off: " + whole(p.Quantity) + " as drawn" + bracket(p.Hand) + ", " +
		whole(p.OtherHand) + " of the other hand" + bracket(p.OppositeHand)
}

func bracket(s string) string {
	if s = line(s); s == "" {
		return ""
	}
	return " (" + s + ")"
}

// holeSize is how a hole's size is written.
func holeSize(h sheet.Hole) string {
	switch {
	case h.Square:
		return size(h.Diameter) + " square"
	case h.Long > 0:
		return "oval " + size(h.Diameter) + " x " + size(h.Long)
	}
	return "Ø" + size(h.Diameter)
}

// turned is how a hole that is not round lies, as far as that has to be said.
func turned(h sheet.Hole) string {
	const near = 0.005
	off := math.Abs(math.Remainder(h.Turn, 180))
	switch {
	case h.Square && math.Abs(math.Remainder(h.Turn, 90)) > near:
		return "turned " + size(h.Turn) + "°"
	case h.Long == 0:
		return ""
	case off <= near:
		return "its length along"
	case off >= 90-near:
		return "its length across"
	}
	return "its length turned " + size(h.Turn) + "°"
}
