package render

import (
	"cmp"
	"encoding/json"
	"io"
	"net/url"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"chainwale/engine/finding"
)

const (
	sarifSchema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
	// sarifPrint is the key under which a result's fingerprint stands.
	sarifPrint = "chainwale/v1"
)

// SARIF writes the report as one run of SARIF 2.1.0. What can't be told is of kind
// open and never a pass; its grade stands in the result's properties. An accepted
// finding stays, with a suppression that says who took it on. status is the exit
// status of the check.
func SARIF(w io.Writer, r finding.Report, status int) error {
	rules, index := sarifRules(r.Findings)
	run := sarifRun{
		Tool:        sarifTool{Driver: sarifDriver{Name: "chainwale", Version: r.Chainwale, Rules: rules}},
		Invocations: []sarifInvocation{sarifInvocationOf(r, status)},
		Language:    "en", ColumnKind: "unicodeCodePoints",
		Results: []sarifResult{},
		Properties: sarifRunBag{On: r.On, Boat: r.Boat, Plan: r.Plan, RefuseAt: r.RefuseAt, Counts: r.Counts,
			Packs: r.Packs, Standards: r.Standards, NotSeen: r.NotSeen, Cautions: r.Cautions},
	}
	if len(r.Cautions) > 0 {
		run.Tool.Driver.FullDescription = sarifTextOf(r.Cautions[0])
	}
	states := baseline(r)
	for i := range r.Findings {
		f := &r.Findings[i]
		run.Results = append(run.Results, sarifResultOf(r, f, index[ruleKey(f)], states))
	}
	run.Results = append(run.Results, sarifAbsent(r.Against)...)
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	out.SetIndent("", "  ")
	return out.Encode(sarifLog{Schema: sarifSchema, Version: "2.1.0", Runs: []sarifRun{run}})
}

// ruleKey names the rule of a finding: packs are kept apart.
func ruleKey(f *finding.Finding) string { return f.Rule + "\x00" + f.Pack }

// sarifRules describes the rules that the findings name, in the order of their ids,
// and gives the number of each. A rule weighs as much as its worst finding here.
func sarifRules(findings []finding.Finding) ([]sarifRule, map[string]int) {
	worst := map[string]*finding.Finding{}
	for i := range findings {
		f := &findings[i]
		if w := worst[ruleKey(f)]; w == nil || f.Grade.WorseThan(w.Grade) {
			worst[ruleKey(f)] = f
		}
	}
	keys := make([]string, 0, len(worst))
	for key := range worst {
		keys = append(keys, key)
	}
	slices.SortFunc(keys, func(a, b string) int { return cmp.Compare(a, b) })
	rules, index := []sarifRule{}, map[string]int{}
	for i, key := range keys {
		index[key] = i
		rules = append(rules, sarifRuleOf(worst[key]))
	}
	return rules, index
}

func sarifRuleOf(f *finding.Finding) sarifRule {
	return sarifRule{
		ID: f.Rule, ShortDescription: sarifTextOf(f.Title), FullDescription: sarifTextOf(f.Because), Help: sarifTextOf(ruleHelp(f)),
		DefaultConfiguration: sarifConfiguration{sarifLevels[f.Grade]},
		Properties:           sarifRuleBag{Pack: f.Pack, Grade: f.Grade, Decides: f.Decides},
	}
}

// ruleHelp says why a rule matters, who decides, and what stands behind it.
func ruleHelp(f *finding.Finding) string {
	parts := []string{f.Because}
	if len(f.Decides) > 0 {
		parts = append(parts, "Decides: "+strings.Join(f.Decides, ", then ")+".")
	}
	for _, k := range f.Known {
		line := "Source: " + k.String()
		if k.For != "" {
			line += ", for " + k.For
		}
		parts = append(parts, line+".")
	}
	return strings.TrimSpace(strings.Join(parts, "\n"))
}

var sarifLevels = map[finding.Grade]string{finding.Stop: "error", finding.Mend: "warning", finding.Watch: "note", "": "none"}

var sarifKinds = map[finding.Outcome]string{finding.Fails: "fail", finding.CannotTell: "open", finding.Holds: "pass", finding.DoesNotApply: "notApplicable"}

// sarifLevel is the level of a result, which is none unless it fails.
func sarifLevel(f *finding.Finding) string {
	if f.Outcome != finding.Fails {
		return "none"
	}
	return sarifLevels[f.Grade]
}

func sarifResultOf(r finding.Report, f *finding.Finding, rule int, states map[string]string) sarifResult {
	result := sarifResult{
		RuleID: f.Rule, RuleIndex: rule, Kind: sarifKinds[f.Outcome], Level: sarifLevel(f), Message: sarifText{sarifEscaped(f.Message)},
		PartialFingerprints: map[string]string{sarifPrint: f.Fingerprint}, BaselineState: states[f.Fingerprint],
		Properties: sarifResultBag{Outcome: f.Outcome, Grade: f.Grade, HoldsUp: f.HoldsUp, Subject: f.Subject, Have: f.Have, Need: f.Need, Ratio: f.Ratio, Unknown: f.Unknown},
	}
	place := sarifPlace(f.At)
	place.LogicalLocations = []sarifLogical{{f.Subject}}
	result.Locations = []sarifLocation{place}
	for _, at := range f.Related {
		result.relate(sarifPlace(at), "This value counts as well.")
	}
	if f.At.File != r.Plan.File && r.Plan.File != "" {
		result.relate(sarifPlace(finding.Place{File: r.Plan.File}), "The plan that is judged; it builds on the file in which the value stands.")
	}
	if f.Accepted != nil {
		result.Suppressions = []sarifSuppression{{Kind: "external", Status: "accepted", Justification: acceptance(f.Accepted)}}
	}
	return result
}

// relate adds a further place, with a number of its own.
func (r *sarifResult) relate(at sarifLocation, why string) {
	at.ID, at.Message = len(r.RelatedLocations)+1, sarifTextOf(why)
	r.RelatedLocations = append(r.RelatedLocations, at)
}

func sarifInvocationOf(r finding.Report, status int) sarifInvocation {
	in := sarifInvocation{ExecutionSuccessful: status <= 1, ExitCode: status}
	for _, p := range r.Problems {
		message := p.Message
		if p.Expected != "" {
			message += ": " + p.Expected
		}
		in.Notifications = append(in.Notifications, sarifNotification{Level: "error", Message: sarifText{sarifEscaped(message)}, Locations: []sarifLocation{sarifPlace(p.At)}})
	}
	return in
}

// sarifPlace is a place in a file; a file of which no line is known stands for itself.
func sarifPlace(at finding.Place) sarifLocation {
	var place sarifLocation
	if at.File != "" {
		place.PhysicalLocation = &sarifPhysical{ArtifactLocation: sarifArtifact{fileURI(at.File)}}
		if at.Line > 0 {
			place.PhysicalLocation.Region = &sarifRegion{StartLine: at.Line, StartColumn: max(at.Column, 0)}
		}
	}
	if at.Pointer != "" {
		place.Properties = &sarifPlacedBag{at.Pointer}
	}
	return place
}

// fileURI is a file's name as a reference by RFC 3986: relative as it was named on
// the command line, and of the scheme file where it was named from the root.
func fileURI(name string) string {
	slashed := filepath.ToSlash(name)
	u := url.URL{Path: slashed}
	if volume := filepath.VolumeName(name); volume != "" {
		u.Path = "/" + strings.TrimPrefix(slashed, "/")
		u.Scheme = "file"
	} else if path.IsAbs(slashed) {
		u.Scheme = "file"
	}
	return u.String()
}

// sarifTextOf is a text for a message, nil where there is nothing to say.
func sarifTextOf(s string) *sarifText {
	if s == "" {
		return nil
	}
	return &sarifText{sarifEscaped(s)}
}

// sarifEscaped writes a text so that a reader of SARIF takes it for nothing else: a
// brace would begin a placeholder, and brackets before a parenthesis a link (after
// SARIF 2.1.0, 3.11.5 and 3.11.6, known from memory).
func sarifEscaped(s string) string {
	s = strings.NewReplacer("{", "{{", "}", "}}").Replace(s)
	if strings.Contains(s, "](") {
		s = strings.NewReplacer(`\`, `\\`, "[", `\[`, "]", `\]`).Replace(s)
	}
	return s
}

// baseline gives each finding its state against an earlier report; without one
// there are none.
func baseline(r finding.Report) map[string]string {
	states := map[string]string{}
	if r.Against == nil {
		return states
	}
	for i := range r.Findings {
		states[r.Findings[i].Fingerprint] = "unchanged"
	}
	for _, print := range r.Against.New {
		states[print] = "new"
	}
	for _, c := range r.Against.Changed {
		states[c.Fingerprint] = "updated"
	}
	return states
}

// sarifAbsent are the findings of an earlier report that are gone. Their rules may
// not be described here, so they have no number.
func sarifAbsent(a *finding.Against) (results []sarifResult) {
	if a == nil {
		return nil
	}
	for _, p := range a.Gone {
		was := finding.Finding{Outcome: p.Outcome, Grade: p.Grade}
		results = append(results, sarifResult{
			RuleID: p.Rule, RuleIndex: -1, Kind: sarifKinds[p.Outcome], Level: sarifLevel(&was), Message: sarifText{sarifEscaped(p.Message)},
			Locations:           []sarifLocation{{LogicalLocations: []sarifLogical{{p.Subject}}}},
			PartialFingerprints: map[string]string{sarifPrint: p.Fingerprint}, BaselineState: "absent",
			Properties: sarifResultBag{Outcome: p.Outcome, Grade: p.Grade, Subject: p.Subject},
		})
	}
	return results
}
