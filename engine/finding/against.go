package finding

// Against is what a report says of an earlier one of the same boat. Findings of
// this report are named by their fingerprints.
type Against struct {
	// File is the earlier report as named on the command line, Hash "sha256:" over its bytes.
	File string `json:"file"`
	Hash string `json:"hash"`
	// On is the day of the earlier report.
	On string `json:"on"`
	// New are findings that the earlier report did not have.
	New     []string  `json:"new"`
	Changed []Changed `json:"changed"`
	// Gone are findings that the rules do not make any more, NotJudged those of
	// packs that did not judge this time.
	Gone      []Past `json:"gone"`
	NotJudged []Past `json:"not_judged"`
	// Same counts the findings that are as they were.
	Same int `json:"same"`
}

// How says how a finding changed.
type How string

const (
	// Worse: its grade is worse.
	Worse How = "worse"
	// Milder: its grade is milder and its outcome as it was.
	Milder How = "milder"
	// Turned: from fails to cannot tell, or the other way round, and no worse in grade.
	Turned How = "turned"
	// Returned: it was accepted, and is so no more.
	Returned How = "returned"
)

// Changed is a finding that both reports have, and what it was.
type Changed struct {
	Fingerprint string `json:"fingerprint"`
	How         How    `json:"how"`
	Was         Past   `json:"was"`
}

// Past is a finding of an earlier report.
type Past struct {
	Rule        string  `json:"rule"`
	Subject     string  `json:"subject"`
	Outcome     Outcome `json:"outcome"`
	Grade       Grade   `json:"grade"`
	Message     string  `json:"message"`
	Fingerprint string  `json:"fingerprint"`
}
