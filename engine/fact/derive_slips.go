package fact

import (
	"fmt"

	"chainwale/engine/quantity"
	"chainwale/engine/table"
)

// What a plan gives may be a slip: a unit left out or mixed up, two sizes that can't
// both be right. Nobody knows then which is wrong, and what follows is unknown.

// believable is how many times what the table lets a metal break at, at the least, a
// certificate may name for it. Hard-rolled metal reaches less; a slip of the unit, as
// 205 ksi for 205 MPa, goes far beyond.
const believable = 2

// believe leaves a strength unknown that the metal can't have. A row of nothing says
// nothing.
func believe(n *Number, row table.Metal, name string) {
	if row.Ultimate > 0 && n.number > believable*row.Ultimate {
		n.Refuse(fmt.Sprintf("%.4g MPa is given, more than twice the %.4g MPa at which %s breaks: one of them is a slip", n.number, row.Ultimate, name))
	}
}

// driveFit is how much thicker than its hole a bolt can be measured, in mm, and yet
// go through it.
const driveFit = 0.3

// tooThick refuses a bolt that does not go through its hole: one of the two sizes is
// a slip, and nobody knows which.
func (o *boltsOf) tooThick(bolt float64) error {
	for _, h := range o.holes {
		if h.Diameter.Given && bolt > h.Diameter.Value+driveFit {
			return fmt.Errorf("a bolt of %.4g mm does not go through a hole of %.4g mm", bolt, h.Diameter.Value)
		}
	}
	return nil
}

// believableBreak is the least share of the table's break load that a certificate may
// name: the lists of the trade lie closer together.
const believableBreak = 0.75

// tooWeak leaves a certified break load unknown that is far less than what such a wire
// breaks at: a slip of the unit, as N for kN, would make every part look strong.
func tooWeak(s *Stay) {
	row, err := wireRow(s)
	if !s.WireDiameter.Known() || !s.Construction.Known() || err != nil || s.BreakLoad.number >= believableBreak*row.BreakLoad {
		return
	}
	s.BreakLoad.Refuse(fmt.Sprintf("the certificate says %s, and such a wire breaks at %s: one of them is a slip",
		quantity.Format(s.BreakLoad.number, quantity.Force, quantity.Metric), quantity.Format(row.BreakLoad, quantity.Force, quantity.Metric)))
}
