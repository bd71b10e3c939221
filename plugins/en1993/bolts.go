package en1993

import (
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
	if err := clauses.Steel("the bolt", r.Word("bolt_family")); err != nil {
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
