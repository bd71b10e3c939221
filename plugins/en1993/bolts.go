package en1993

import (
	"errors"
	"fmt"
	"strings"

	"chainwale/engine/standard"
	"chainwale/engine/strength"
	"chainwale/plugins/clauses"
)

// boltReads are what all checks of one bolt read.
func boltReads() []standard.Read {
	return []standard.Read{
		clauses.Number("bolt_diameter", "mm"), clauses.Number("bolt_stress_area", "mm2"), clauses.Number("bolt_ultimate", "MPa"),
		clauses.Word("bolt_family"), clauses.Word("grade"), clauses.YesNo("threads_in_plane"), clauses.Word("bolt_head"),
	}
}

// reckonBolt works out what one bolt holds by design, sheared in one plane and
// pulled.
func reckonBolt(r clauses.Row) (strength.ENBoltResult, error) {
	if err := steel("the bolt", r.Word("bolt_family")); err != nil {
		return strength.ENBoltResult{}, err
	}
	return strength.ENBolt{
		StressArea: r.Number("bolt_stress_area"), Diameter: r.Number("bolt_diameter"), Ultimate: r.Number("bolt_ultimate"),
		ThreadFactor: threadFactor(r.Word("bolt_family"), r.Word("grade")), GammaM2: gammaM2,
		ThreadsInPlane: r.Yes("threads_in_plane"), Countersunk: r.Word("bolt_head") == "countersunk",
	}.Reckon()
}

// threadFactor is the shear factor of a thread: 0.6 for the classes of carbon steel
// that the table names so, 0.5 for its others and for stainless.
func threadFactor(family, grade string) float64 {
	for _, class := range []string{"4.6", "5.6", "8.8"} {
		if family == "steel" && strings.HasSuffix(grade, class) {
			return 0.6
		}
	}
	return 0.5
}

// holeReads are what all checks of a bolt hole read.
func holeReads(more ...standard.Read) []standard.Read {
	return append([]standard.Read{clauses.Number("hole", "mm")}, more...)
}

// plainHole says why a bolt hole is not covered: only a round hole under a plain
// head, in one line of bolts along the plate, pulled along that line.
func plainHole(r clauses.Row) error {
	switch head := r.Word("bolt_head"); head {
	case "countersunk":
		return errors.New("the head is countersunk, and how deep it is sunk into the plate is not known")
	case "square-neck":
		return errors.New("a square neck stands in a square hole, and the clause is for round ones")
	}
	if !r.Yes("in_line") {
		return errors.New("bolts stand beside each other, and how they share the metal between them is not covered here")
	}
	if lean := r.Number("lean"); lean > mostLeanOfBolts || lean < -mostLeanOfBolts {
		return fmt.Errorf("the wire leans %.3g deg across the plate in its plane, so its bolts are not pulled along their line; up to %d deg is covered", lean, mostLeanOfBolts)
	}
	return steel("the plate", r.Word("fitting.metal.family"))
}
