package en1993

import (
	"chainwale/engine/standard"
	"chainwale/engine/working"
	"chainwale/plugins/clauses"
)

// The partial factors are the recommended ones; a national annex may change them.
// gammaM2 stands before what breaks, gammaM6 before what a pin may suffer that is to
// come out again.
const (
	gammaM2 = 1.25
	gammaM6 = 1.00
)

// loadFactor turns the wire's load at work into the design load. The wire's break
// load is no design load: by it nearly every sound plate of annealed stainless would
// fail.
const loadFactor = 1.5

var (
	partial = working.Source{Title: "after EN 1993-1-8 and EN 1993-1-4, recommended partial factors", Edition: "2005, 2006", As: working.Memory,
		For: "gamma M0 of 1.00, of stainless 1.10; gamma M2 of 1.25 and gamma M6,ser of 1.00 are published"}
	loads = working.Source{Title: "this project, after EN 1990", As: working.Judgement, For: "1.5 times the load at work as the design load"}
)

// gammaM0 stands before what yields: 1.10 for stainless, after EN 1993-1-4, else 1.00.
func gammaM0(family string) float64 {
	if family == "stainless" {
		return 1.10
	}
	return 1.00
}

// modulus is the elastic modulus in MPa: of stainless after EN 1993-1-4, else of steel.
func modulus(family string) float64 {
	if family == "stainless" {
		return 200000
	}
	return 210000
}

// square says why a pin is not covered unless the wire pulls square to it.
func square(r clauses.Row) error {
	if err := clauses.InPlane(r, "so it does not pull square to the pin"); err != nil {
		return err
	}
	return clauses.Steel("the pin", r.Word("pin_family"))
}

// along says why a plate is not covered unless the wire pulls along it.
func along(r clauses.Row) error {
	if err := clauses.InPlane(r, "and the clause is for a plate pulled in its plane"); err != nil {
		return err
	}
	if err := clauses.Along(r, "and the clause is for a pull along the plate"); err != nil {
		return err
	}
	return clauses.Steel("the plate", r.Word("fitting.metal.family"))
}

// pinReads are what all checks of the pin read.
func pinReads(more ...standard.Read) []standard.Read {
	return append([]standard.Read{clauses.Number("pin_diameter", "mm"), clauses.Word("pin_family"), clauses.Number("lean_out", "deg")}, more...)
}

// after is a source in EN 1993-1-8.
func after(clause string, as working.HowKnown, what string) working.Source {
	return working.Source{Title: "after EN 1993-1-8", Edition: "2005", Clause: clause, As: as, For: what}
}
