package quantity

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// Readings are several readings of one quantity, such as the thickness of a plate
// taken in three places, in canonical units. They are made by ParseReadings or
// NewReadings, which see to it that there is one at least and that all are
// finite; the zero value holds none and its statistics are NaN.
type Readings struct {
	values    []float64
	dimension Dimension
}

// ParseReadings reads a list of readings of the dimension that is wanted. An
// error tells which of them is wrong and wraps its *BadQuantity.
func ParseReadings(texts []string, want Dimension) (Readings, error) {
	values := make([]float64, len(texts))
	for i, t := range texts {
		q, err := ParseAs(t, want)
		if err != nil {
			return Readings{}, fmt.Errorf("reading %d of %d: %w", i+1, len(texts), err)
		}
		values[i] = q.Value
	}
	return NewReadings(want, values...)
}

// NewReadings makes a list of readings out of values in canonical units.
func NewReadings(d Dimension, values ...float64) (Readings, error) {
	if len(values) == 0 {
		return Readings{}, errors.New("there are no readings in the list; write one at least")
	}
	for i, v := range values {
		if !finite(v) {
			return Readings{}, fmt.Errorf("reading %d of %d is no finite number", i+1, len(values))
		}
	}
	r := Readings{slices.Clone(values), d}
	if !finite(r.Spread()) {
		return Readings{}, errors.New("the readings are too far apart to reckon with")
	}
	return r, nil
}

// N is how many readings there are.
func (r Readings) N() int { return len(r.values) }

// Dimension is that of every reading.
func (r Readings) Dimension() Dimension { return r.dimension }

// Values are the readings in the order they were taken, in canonical units.
func (r Readings) Values() []float64 { return slices.Clone(r.values) }

// Min is the smallest reading.
func (r Readings) Min() float64 { return r.extreme(slices.Min[[]float64]) }

// Max is the largest reading.
func (r Readings) Max() float64 { return r.extreme(slices.Max[[]float64]) }

func (r Readings) extreme(of func([]float64) float64) float64 {
	if len(r.values) == 0 {
		return math.NaN()
	}
	return of(r.values)
}

// Mean is the arithmetic mean of the readings,
//
//	mean = min + sum(x - min)/n
//
// counted from the smallest so that equal readings give just themselves and
// large ones don't overflow.
func (r Readings) Mean() float64 {
	least := r.Min()
	sum := 0.0
	for _, v := range r.values {
		sum += (v - least) / float64(len(r.values))
	}
	return min(least+sum, r.Max())
}

// Spread is the largest reading less the smallest.
func (r Readings) Spread() float64 { return r.Max() - r.Min() }

// StandardDeviation is how far single readings scatter about their mean,
//
//	s = sqrt(sum((x - mean)^2)/(n - 1))
//
// the experimental standard deviation. ok is false for a single reading, which
// tells nothing about scatter.
//
// Source: textbook statistics, as the Guide to the expression of uncertainty in
// measurement has it (JCGM 100:2008, 4.2.2), from memory.
func (r Readings) StandardDeviation() (s float64, ok bool) {
	if len(r.values) < 2 {
		return math.NaN(), false
	}
	mean, spread := r.Mean(), r.Spread()
	if spread == 0 {
		return 0, true
	}
	sum := 0.0
	for _, v := range r.values {
		// In parts of the spread, so that no square overflows.
		part := (v - mean) / spread
		sum += part * part
	}
	return spread * math.Sqrt(sum/float64(len(r.values)-1)), true
}

// StandardUncertainty is how well the readings fix their mean by their scatter
// alone, s/sqrt(n) with s their standard deviation; what is wrong with the tool
// or the place is not in it. ok is false for a single reading.
//
// Source: as StandardDeviation, clause 4.2.3.
func (r Readings) StandardUncertainty() (u float64, ok bool) {
	s, ok := r.StandardDeviation()
	return s / math.Sqrt(float64(len(r.values))), ok
}

// Shelf makes readings by the hundred out of pieces of memory that they share, for
// whoever lets go of all of them together. The zero value is ready.
type Shelf struct {
	values []float64
	made   []Readings
}

// shelfAhead is how many readings a piece has room for.
const shelfAhead = 256

// Keep is NewReadings of a copy of the values, nil where there would be an error.
func (s *Shelf) Keep(d Dimension, values []float64) *Readings {
	if len(values) == 0 {
		return nil
	}
	if cap(s.values)-len(s.values) < len(values) {
		s.values = make([]float64, 0, max(shelfAhead, len(values)))
	}
	from := len(s.values)
	s.values = append(s.values, values...)
	r := Readings{s.values[from:len(s.values):len(s.values)], d}
	for _, v := range values {
		if !finite(v) {
			return nil
		}
	}
	if !finite(r.Spread()) {
		return nil
	}
	if len(s.made) == 0 {
		s.made = make([]Readings, shelfAhead)
	}
	kept := &s.made[0]
	s.made = s.made[1:]
	*kept = r
	return kept
}
