package render

import (
	"encoding/xml"
	"fmt"
	"io"
	"strings"

	"chainwale/engine/finding"
)

// JUnit XML has no published standard; these are the elements and attributes that
// its readers agree on (common practice). Times are left out: the same plan and day
// give the same bytes.

type junitSuites struct {
	XMLName xml.Name     `xml:"testsuites"`
	Name    string       `xml:"name,attr"`
	Tests   int          `xml:"tests,attr"`
	Failed  int          `xml:"failures,attr"`
	Errors  int          `xml:"errors,attr"`
	Skipped int          `xml:"skipped,attr"`
	Suites  []junitSuite `xml:"testsuite"`
}

type junitSuite struct {
	Name    string      `xml:"name,attr"`
	Tests   int         `xml:"tests,attr"`
	Failed  int         `xml:"failures,attr"`
	Errors  int         `xml:"errors,attr"`
	Skipped int         `xml:"skipped,attr"`
	Cases   []junitCase `xml:"testcase"`
}

// junitCase has at most one of error, failure and skipped; with none it passes.
type junitCase struct {
	Name    string      `xml:"name,attr"`
	Class   string      `xml:"classname,attr"`
	File    string      `xml:"file,attr,omitempty"`
	Line    int         `xml:"line,attr,omitempty"`
	Error   *junitFault `xml:"error"`
	Failure *junitFault `xml:"failure"`
	Skipped *junitFault `xml:"skipped"`
	Out     *junitText  `xml:"system-out"`
}

// junitText is text between tags, which encoding/xml makes safe: a character that
// XML has no place for becomes U+FFFD.
type junitText struct {
	Text string `xml:",chardata"`
}

type junitFault struct {
	Message string `xml:"message,attr"`
	Type    string `xml:"type,attr,omitempty"`
	Text    string `xml:",chardata"`
}

// JUnit writes the report as test results: a suite for each part of the boat, a case
// for each finding. What fails and refuses the plan is a failure, what can't be told
// and refuses it an error: an unknown never passes. What is milder than that passes
// with a note; what somebody took on is skipped, with their name, and so is what
// does not apply. The first suite says that the plan was judged, or why not.
func JUnit(w io.Writer, r finding.Report) error {
	all := junitSuites{Name: "chainwale " + r.Plan.File, Suites: []junitSuite{junitPlan(r)}}
	number := map[string]int{}
	for i := range r.Findings {
		f := &r.Findings[i]
		name := partOf(f)
		n, known := number[name]
		if !known {
			n = len(all.Suites)
			number[name] = n
			all.Suites = append(all.Suites, junitSuite{Name: name})
		}
		all.Suites[n].Cases = append(all.Suites[n].Cases, junitCaseOf(f, r.RefuseAt))
	}
	all.sum()
	return writeXML(w, all)
}

// partOf is what a finding is looked up under; one read from a file has its subject alone.
func partOf(f *finding.Finding) string {
	if f.Part == "" {
		return f.Subject
	}
	return f.Part
}

func writeXML(w io.Writer, v any) error {
	if _, err := io.WriteString(w, xml.Header); err != nil {
		return err
	}
	out := xml.NewEncoder(w)
	out.Indent("", "  ")
	if err := out.Encode(v); err != nil {
		return err
	}
	_, err := io.WriteString(w, "\n")
	return err
}

// junitPlan is the suite of the plan itself: a case that says what was judged, and
// an error for each problem. A plan that nothing judged is not green.
func junitPlan(r finding.Report) junitSuite {
	suite := junitSuite{Name: "the plan"}
	for _, p := range r.Problems {
		c := junitCase{Name: where(p.At), Class: "problem", File: p.At.File, Line: p.At.Line}
		c.Error = &junitFault{Message: p.Message, Type: "problem", Text: p.Expected}
		suite.Cases = append(suite.Cases, c)
	}
	judged := junitCase{Name: "the plan is judged", Class: "plan", File: r.Plan.File}
	switch {
	case r.Judged():
		judged.Out = &junitText{junitSummary(r)}
	default:
		judged.Error = &junitFault{Message: "nothing was judged", Type: "problem"}
	}
	suite.Cases = append(suite.Cases, judged)
	return suite
}

// junitSummary says what stands behind a run: the day, the counts, what was not seen.
func junitSummary(r finding.Report) string {
	c := r.Counts
	lines := []string{
		fmt.Sprintf("%s, judged as of %s; findings from %s up refuse the plan.", r.Boat, r.On, r.RefuseAt),
		fmt.Sprintf("%d stop, %d mend, %d watch; %d hold, %d fail, %d cannot tell, %d do not apply, %d accepted.",
			c.Stop, c.Mend, c.Watch, c.Holds, c.Fails, c.CannotTell, c.DoesNotApply, c.Accepted),
	}
	for _, n := range r.NotSeen {
		lines = append(lines, "Not seen and not checked: "+n)
	}
	return strings.Join(append(lines, r.Cautions...), "\n")
}

func junitCaseOf(f *finding.Finding, refuseAt finding.Grade) junitCase {
	c := junitCase{Name: f.Rule + " " + f.Subject, Class: f.Pack + "." + f.Rule, File: f.At.File, Line: f.At.Line}
	fault := &junitFault{Message: junitHead(f), Type: string(f.Grade), Text: junitDetails(f)}
	switch {
	case f.Outcome == finding.DoesNotApply:
		c.Skipped = &junitFault{Message: "does not apply: " + f.Message}
	case f.Outcome == finding.Holds:
	case f.Accepted != nil:
		fault.Message = acceptance(f.Accepted) + "; " + fault.Message
		c.Skipped = fault
	case f.Grade.Known() && !f.Grade.AtLeast(refuseAt):
		c.Out = &junitText{fault.Message + "\n" + fault.Text}
	case f.Outcome == finding.Fails:
		c.Failure = fault
	default:
		c.Error = fault
	}
	return c
}

// junitHead is a finding in one line.
func junitHead(f *finding.Finding) string {
	head := label(f)
	if f.HoldsUp != "" {
		head += ", holds up " + f.HoldsUp
	}
	if f.Outcome == finding.CannotTell {
		head += ", cannot tell"
	}
	return head + ": " + f.Message
}

// junitDetails are the lines below: where it stands, why it matters, who decides.
func junitDetails(f *finding.Finding) string {
	lines := []string{fmt.Sprintf("%s %s", where(f.At), f.At.Pointer)}
	if f.Because != "" {
		lines = append(lines, f.Because)
	}
	if len(f.Decides) > 0 {
		lines = append(lines, "decides: "+strings.Join(f.Decides, ", then "))
	}
	return strings.Join(lines, "\n")
}

// sum counts the cases of each suite and of all.
func (all *junitSuites) sum() {
	for i := range all.Suites {
		s := &all.Suites[i]
		for _, c := range s.Cases {
			s.Tests++
			switch {
			case c.Error != nil:
				s.Errors++
			case c.Failure != nil:
				s.Failed++
			case c.Skipped != nil:
				s.Skipped++
			}
		}
		all.Tests, all.Errors, all.Failed, all.Skipped = all.Tests+s.Tests, all.Errors+s.Errors, all.Failed+s.Failed, all.Skipped+s.Skipped
	}
}
