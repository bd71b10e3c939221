package quantity

import (
	"fmt"
	"math"
	"strconv"
)

// Unknown is how a number is printed that is not known: a NaN or an infinity.
const Unknown = "unknown"

// Quantity is a number in the canonical unit of its dimension.
type Quantity struct {
	Value     float64
	Dimension Dimension
}

// String is the quantity in its canonical unit, with as many digits as it takes
// to give the same number when it is read back: Parse(q.String()) is q for every
// finite q whose dimension has a name. It is for machines and working sheets;
// Format is for people.
func (q Quantity) String() string {
	return withUnit(exact(q.Value), q.Dimension.Unit())
}

// In is the value counted in another unit of the same dimension, spelled as in a
// plan: Quantity{25.4, Length}.In("in") is 1.
func (q Quantity) In(unit string) (float64, error) {
	u := spelled[unit]
	if u == nil {
		return 0, fmt.Errorf("%q is not a unit known here", unit)
	}
	if u.dimension != q.Dimension {
		return 0, fmt.Errorf("%s is a unit of %s, not of %s", unit, u.dimension.Name(), q.Dimension.Name())
	}
	return u.fromCanonical(q.Value), nil
}

// exact writes a number with the fewest digits that read back as the same
// number, without an exponent where that stays short.
func exact(v float64) string {
	size := math.Abs(v)
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0):
		return Unknown
	case size == 0:
		return "0"
	case size < 1e-4 || size >= 1e15:
		return strconv.FormatFloat(v, 'e', -1, 64)
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// withUnit puts a unit behind a number. What isn't known needs none.
func withUnit(number, unit string) string {
	if unit == "" || number == Unknown {
		return number
	}
	return number + " " + unit
}
