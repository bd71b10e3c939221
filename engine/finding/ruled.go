package finding

import "chainwale/engine/working"

// Ruled is one rule as somebody reads it: what must be so, how bad it is if not,
// and why.
type Ruled struct {
	ID      string `json:"id"`
	Title   string `json:"title"`
	On      string `json:"on"`
	Have    string `json:"have"`
	Applies string `json:"applies_if"`
	// Bands are its limits, the worst first.
	Bands     []RuledBand      `json:"bands"`
	IfUnknown Grade            `json:"if_unknown"`
	HoldsUp   string           `json:"holds_up"`
	Because   string           `json:"because"`
	Known     []working.Source `json:"known"`
	Decides   []string         `json:"decides"`
}

// RuledBand is one limit as written.
type RuledBand struct {
	// Verb is at_least, at_most, above, below or true_that.
	Verb    string `json:"verb"`
	Limit   string `json:"limit"`
	Else    Grade  `json:"else"`
	Applies string `json:"applies_if"`
}
