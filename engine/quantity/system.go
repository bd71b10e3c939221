package quantity

import (
	"fmt"
	"strings"
)

// System is the family of units that numbers are printed in for people.
type System int

const (
	// Metric prints mm, kN, MPa, N m, kg, degC.
	Metric System = iota
	// US prints in, lbf, ksi, lbf ft, lb, degF.
	US
)

// String is the system's name, as ParseSystem reads it.
func (s System) String() string {
	if s == US {
		return "US"
	}
	return "metric"
}

// ParseSystem reads "metric" or "US", in small or capital letters.
func ParseSystem(text string) (System, error) {
	switch strings.ToLower(trimBlanks(text)) {
	case "metric":
		return Metric, nil
	case "us":
		return US, nil
	}
	return Metric, fmt.Errorf(`%q is no system of units; write "metric" or "US"`, shown(text))
}
