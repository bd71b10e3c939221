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
	// Spread is the largest breaking strength over the smallest, by the standards that
	// gave one; 0 where fewer than two did.
	Spread float64 `json:"spread"`
}

// Said is what one standard says of one landing.
type Said struct {
	Standard string `json:"standard"`
	// Breaks is what gives way first of all that the standard holds against the wire's
	// break load, AtWork what comes nearest to its limit of all that it holds against
	// the wire's load at work. nil where no clause told.
	Breaks *Governs `json:"breaks"`
	AtWork *Governs `json:"at_work"`
	// FailsBeside are the titles of rules that fail beside the loads: distances, fits.
	FailsBeside []string `json:"fails_beside"`
	// NotCovered are the reasons of clauses that do not cover it, Lacks the readings
	// for want of which a clause can't tell.
	NotCovered []string `json:"not_covered"`
	Lacks      []string `json:"lacks"`
}

// Governs is the clause that governs.
type Governs struct {
	// Load is the load of the wire in N at which the clause's limit is reached; Times
	// is that over the wire's break load, or over its load at work; Asked is how many
	// times the standard asks for.
	Load   float64 `json:"load"`
	Times  float64 `json:"times"`
	Asked  float64 `json:"asked"`
	Clause string  `json:"clause"`
	Fact   string  `json:"fact"`
	Rule   string  `json:"rule"`
}
