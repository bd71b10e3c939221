package plan

// The words for sides that the plan knows.
const (
	Port      = "port"
	Starboard = "starboard"
	Both      = "both"
	Centre    = "centre"
)

// SidedIDs are the ids of the parts that one entry of the plan stands for. With
// side: both, cap-shroud is two parts, cap-shroud-port and cap-shroud-starboard;
// with any other side, or none, it is itself.
func SidedIDs(id, side string) []string {
	if side == Both {
		return []string{id + "-" + Port, id + "-" + Starboard}
	}
	return []string{id}
}

// sidesOf are the sides on which the parts of SidedIDs stand, in the same order.
func sidesOf(side string) []string {
	if side == Both {
		return []string{Port, Starboard}
	}
	return []string{side}
}

// meet tells whether parts on two sides can hold each other: only port and
// starboard are apart. A side that isn't known may be any.
func meet(a, b string) bool {
	return !(a == Port && b == Starboard || a == Starboard && b == Port)
}

// knownSide tells whether a side is given in one of the plan's words.
func knownSide(side Text) bool {
	switch side.Value {
	case Port, Starboard, Both, Centre:
		return true
	}
	return false
}
