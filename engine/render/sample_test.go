package render

import (
	"strings"

	"chainwale/engine/finding"
	"chainwale/engine/working"
)

// nasty is text that a careless writer would let break out of JSON or XML.
const nasty = "a <b> & \"c\" ]]> {0} [x](1) é \x01 \uFFFE"

// sampleFinding is a finding of a rule with everything that renderers print.
func sampleFinding(rule, subject string, o finding.Outcome, g finding.Grade) finding.Finding {
	f := finding.Finding{
		Rule: rule, Title: "The title of " + rule, Part: strings.TrimPrefix(subject, "landing:"), Pack: "strength", Outcome: o, Grade: g, Subject: subject,
		At: finding.Place{File: "boats/grey wagtail.yaml", Line: 7, Column: 3, Pointer: "/fittings/0"}, Related: []finding.Place{{File: "boats/grey wagtail.yaml", Line: 9, Column: 5, Pointer: "/stays/0"}},
		Unknown: []string{}, Shown: []finding.Shown{}, Message: "What " + rule + " says of " + subject + ".", Because: "It matters.",
		Decides: []string{"rigger", "naval architect"}, Known: []working.Source{{Title: "A handbook", Edition: "1999", Clause: "3.1", As: working.Published, For: "the limit"}},
		Fingerprint: "0123456789abcdef",
	}
	if g == finding.Stop {
		f.HoldsUp = "cutting"
	}
	return f
}

// sample is a report with a finding of every sort.
func sample() finding.Report {
	stop := sampleFinding("plate-outlasts-wire", "landing:cap-port", finding.Fails, finding.Stop)
	stop.Have, stop.Need, stop.Fingerprint = &finding.Amount{Value: 30e3, Unit: "N"}, &finding.Amount{Value: 35.5e3, Unit: "N"}, "00000000000000a1"
	taken := sampleFinding("plate-outlasts-wire", "landing:cap-starboard", finding.Fails, finding.Stop)
	taken.Accepted, taken.Fingerprint = &finding.Acceptance{Who: "the owner", Why: "new plates are " + nasty, Until: "2027-05-01"}, "00000000000000a2"
	mend := sampleFinding("pin-fits", "landing:cap-port", finding.Fails, finding.Mend)
	mend.At.File, mend.Message, mend.Fingerprint = "classes/sandling#33.yaml", nasty, "00000000000000a3"
	open := sampleFinding("age-of-plate", "landing:cap-port", finding.CannotTell, finding.Mend)
	open.Unknown, open.Fingerprint = []string{"installed"}, "00000000000000a4"
	watchOpen := sampleFinding("fork-is-filled", "landing:cap-port", finding.CannotTell, finding.Watch)
	watchOpen.Fingerprint = "00000000000000a5"
	watch := sampleFinding("pin-fits", "landing:cap-starboard", finding.Fails, finding.Watch)
	watch.Fingerprint = "00000000000000a6"
	holds := sampleFinding("pin-holds", "landing:cap-port", finding.Holds, "")
	holds.Fingerprint = "00000000000000a7"
	other := sampleFinding("pin-holds", "landing:cap-starboard", finding.DoesNotApply, "")
	other.Fingerprint = "00000000000000a8"
	return finding.Report{
		Chainwale: "0.1", Version: finding.ReportVersion, On: "2026-11-25", Plan: finding.PlanRead{File: "boats/grey wagtail.yaml"}, Boat: "Grey Wagtail", RefuseAt: finding.Mend,
		Problems: []finding.Problem{}, Measure: []finding.Measure{}, Packs: []finding.PackUsed{{ID: "strength", Edition: "1", Changed: []string{}}}, Standards: []finding.StandardUsed{},
		NotSeen: []string{"cap-port: no record says that it was drawn and looked at"}, Cautions: []string{"chainwale advises.", "A calculation does not inspect."},
		Findings: []finding.Finding{stop, taken, mend, open, watch, watchOpen, holds, other},
		Counts:   finding.Counts{Holds: 1, Fails: 4, CannotTell: 2, DoesNotApply: 1, Accepted: 1, Stop: 1, Mend: 2, Watch: 2},
	}
}

// refused is the report of a plan with problems.
func refused() finding.Report {
	r := sample()
	r.Findings, r.Packs, r.NotSeen, r.Boat, r.Counts = []finding.Finding{}, []finding.PackUsed{}, []string{}, "", finding.Counts{}
	r.Problems = []finding.Problem{{At: finding.Place{File: "boats/grey wagtail.yaml", Line: 2, Column: 9, Pointer: "/boat/nam"}, Message: "nam is no key here", Expected: "did you mean name? " + nasty}}
	return r
}

// compared is the sample beside an earlier report.
func compared() finding.Report {
	r := sample()
	r.Against = &finding.Against{
		File: "last.json", Hash: "sha256:" + strings.Repeat("0", 64), On: "2026-04-01", New: []string{"00000000000000a1"},
		Changed:   []finding.Changed{{Fingerprint: "00000000000000a3", How: finding.Worse, Was: finding.Past{Rule: "pin-fits", Subject: "landing:cap-port", Outcome: finding.Fails, Grade: finding.Watch, Message: "m", Fingerprint: "00000000000000a3"}}},
		Gone:      []finding.Past{{Rule: "metal-outlasts-use", Subject: "fitting:old", Outcome: finding.Fails, Grade: finding.Stop, Message: "It was worn.", Fingerprint: "00000000000000b1"}},
		NotJudged: []finding.Past{{Rule: "yard-rule", Subject: "fitting:old", Outcome: finding.CannotTell, Grade: finding.Mend, Message: "m", Fingerprint: "00000000000000b2"}},
		Same:      4,
	}
	return r
}
