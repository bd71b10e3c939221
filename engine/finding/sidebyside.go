package finding

// SideBySide sets what several design standards say of the same landings.
type SideBySide struct {
	Plan      string         `json:"plan"`
	Boat      string         `json:"boat"`
	On        string         `json:"on"`
	Standards []StandardSaid `json:"standards"`
	Landings  []LandingSaid  `json:"landings"`
}

// StandardSaid is one of the standards; Fault says why it did not answer.
type StandardSaid struct {
	ID      string `json:"id"`
	Edition string `json:"edition"`
	Hash    string `json:"hash"`
	// Basis is ultimate or design: whether its strengths hold no safety factor, or all.
	Basis string `json:"basis"`
	Fault string `json:"fault"`
}

// LandingSaid is one stay on one fitting, as each standard sees it.
type LandingSaid struct {
	Fitting string `json:"fitting"`
	Stay    string `json:"stay"`
	// BreakLoad is the wire's break load in N; 0 if it is not known.
	BreakLoad float64 `json:"break_load"`
	Said      []Said  `json:"said"`
	// Spread is, for each basis on which two standards or more said something, the
	// largest number of times the wire over the smallest.
	Spread map[string]float64 `json:"spread"`
}

// Said is what one standard says of one landing: the clause that gives way first.
type Said struct {
	Standard string `json:"standard"`
	// Told is false where no clause told: then there is neither load nor clause.
	Told bool `json:"told"`
	// Bears is the load of the wire in N at which that clause's limit is reached, and
	// Times that load over the wire's break load.
	Bears  float64 `json:"bears"`
	Times  float64 `json:"times_the_wire"`
	Clause string  `json:"clause"`
	Fact   string  `json:"fact"`
	// NotCovered are the reasons of clauses that do not cover it, Lacks the readings
	// for want of which a clause can't tell.
	NotCovered []string `json:"not_covered"`
	Lacks      []string `json:"lacks"`
}
