package accept

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strings"

	"chainwale/engine/finding"
	"chainwale/engine/working"
)

// findings tells of every entry that does nothing, or less than it says.
func (l *ledger) findings() []finding.Finding {
	var list []finding.Finding
	times := map[string]int{}
	for _, e := range l.entries {
		rule, says, at := e.fault()
		if rule == "" {
			continue
		}
		subject := e.subject()
		if times[rule+subject]++; times[rule+subject] > 1 {
			subject = fmt.Sprintf("%s (%d)", subject, times[rule+subject])
		}
		list = append(list, e.finding(rule, subject, says, at))
	}
	return list
}

// fault is the rule that an entry breaks, with the end of its sentence; the rule is
// "" if the entry does what it says.
func (e *entry) fault() (rule, says string, at finding.Place) {
	switch {
	case e.idle == Lapsed:
		return Lapsed, fmt.Sprintf("ended with %s; %s.", day(e.Until), e.afterwards()), e.at
	case e.idle != "":
		return e.idle, e.says, e.at
	case len(e.short) > 0:
		return FallsShort, "does not cover " + listed(e.short) + ".", e.At
	case e.covered > 0:
		return "", "", e.At
	case e.beside != nil:
		return MatchesNothing, fmt.Sprintf("adds nothing: what it names is accepted already in line %d.", e.beside.At.Line), e.At
	}
	return MatchesNothing, "has nothing to accept: the rule finds nothing amiss there now. Take it out.", e.At
}

// afterwards is what became of what a lapsed entry named.
func (e *entry) afterwards() string {
	switch {
	case len(e.short) > 0:
		return "what it covered counts again"
	case e.beside != nil:
		return fmt.Sprintf("the one in line %d has taken its place, so it can go", e.beside.At.Line)
	}
	return "there is nothing left to accept, so it can go"
}

// mostListed is how many findings a sentence lists.
const mostListed = 3

// listed names findings that an entry falls short of, and why.
func listed(short []finding.Finding) string {
	var parts []string
	for _, f := range short[:min(mostListed, len(short))] {
		how := "which is " + string(f.Grade)
		if f.Outcome == finding.CannotTell {
			how = "which can't be told"
		}
		parts = append(parts, f.Subject+", "+how)
	}
	if more := len(short) - mostListed; more > 0 {
		parts = append(parts, fmt.Sprintf("%d more", more))
	}
	return strings.Join(parts, "; ")
}

// shortOf says on a finding why an entry that names it does not cover it.
func (e *entry) shortOf(f finding.Finding) string {
	taken := fmt.Sprintf("%s accepted this as %s until %s; ", capital(e.Who), e.Grade, day(e.Until))
	if f.Outcome == finding.CannotTell {
		return taken + "that does not cover what can't be told."
	}
	return taken + fmt.Sprintf("that does not cover it as %s.", f.Grade)
}

// capital begins a sentence.
func capital(s string) string {
	r := []rune(s)
	if len(r) == 0 {
		return "Somebody"
	}
	return strings.ToUpper(string(r[:1])) + string(r[1:])
}

// subject names an entry by what it accepts, so that it survives moved lines.
func (e *entry) subject() string {
	name := "acceptance:" + e.Rule
	if e.Subject != "" {
		name += " of " + e.Subject
	}
	return strings.Join(strings.Fields(name+" as "+string(e.Grade)), " ")
}

// reasons say why each of the rules matters.
var reasons = map[string]string{
	Lapsed:         "Somebody took this on for a time, and the time is over. Whoever still stands by it sets a new day after looking again.",
	MatchesNothing: "An acceptance that nobody needs lies in wait: it would cover something that nobody has looked at.",
	FallsShort:     "Somebody took on what was known then. What is worse, or not known, nobody has taken on.",
	OfAnotherBoat:  "What somebody took on for one boat was judged on that boat. Her sister has her own metal and her own history.",
}

var titles = map[string]string{
	Lapsed:         "Acceptances have not lapsed",
	MatchesNothing: "Each acceptance has something to accept",
	FallsShort:     "Acceptances cover what they name",
	OfAnotherBoat:  "Acceptances are this boat's own",
}

// part is what a reader looks such findings up under.
const part = "what was accepted"

func (e *entry) finding(rule, subject, says string, at finding.Place) finding.Finding {
	of := e.Rule
	if e.Subject != "" {
		of += " of " + e.Subject
	}
	return finding.Finding{
		Rule: rule, Title: titles[rule], Part: part, Pack: Pack, Outcome: finding.Fails, Grade: finding.Watch,
		Subject: subject, At: at, Related: []finding.Place{}, Unknown: []string{}, Shown: []finding.Shown{},
		Message: fmt.Sprintf("The acceptance of %s as %s by %s %s", of, e.Grade, e.Who, says),
		Because: reasons[rule], Decides: []string{"owner"}, Fingerprint: fingerprint(rule, subject),
		Known: []working.Source{{Title: "the way this program treats acceptances", As: working.Judgement}},
	}
}

// fingerprint names a finding by rule and subject, as every finding is named.
func fingerprint(rule, subject string) string {
	sum := sha256.Sum256([]byte(rule + "\x00" + subject))
	return hex.EncodeToString(sum[:8])
}
