// Package reckon is the register of single formulas: each can be asked by name,
// with inputs as a person writes them, and answers with its results and its
// working.
//
// A Formula declares what it takes and gives; that declaration is the one source
// for reading the inputs, for the help and for the order of the answer. The
// arithmetic stands in packages strength, sheet, rig and corrosion, the look-ups in package
// table: here nothing is worked out twice.
//
// Three things can come back. An answer that is covered. An answer that is not:
// the inputs make sense, but the formula or the table does not reach them, and
// there is no number. Or a *Refusal, which says what is wrong with the inputs and
// what would be right. Any other error is a fault of this program.
package reckon

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"chainwale/engine/near"
	"chainwale/engine/working"
)

// Formula is one entry of the register.
type Formula struct {
	// Name is what the formula is asked by, in words with hyphens.
	Name string `json:"name"`
	// Title says in a few words what it tells.
	Title string `json:"title"`
	// Holds says where it holds and what is assumed.
	Holds   string   `json:"holds"`
	Inputs  []Input  `json:"inputs"`
	Results []Output `json:"results"`

	run func(in *inputs) (outcome, error)
}

// outcome is what a formula found: a value for each of its results, and how.
type outcome struct {
	results map[string]any
	working []working.Step
	// why says why some of the results are not there, "" if none is missing.
	why string
}

// formulas is the register, in the order it is listed in.
var formulas = []*Formula{
	&pinPlate, &pin, &strip, &stressConcentration,
	&boltGroup, &boltPull, &bolt, &host,
	&wire, &pittingResistance, &couple,
	&shrouds, &standing, &rightingMoment, &lashing, &windage, &stayAngle, &tensionByStretch,
	&bend, &springback, &pressForce, &minRadius, &holeToBend,
}

// Formulas are all entries, in the order of the register.
func Formulas() []*Formula { return slices.Clone(formulas) }

// Names are the names of all formulas, in the order of the register.
func Names() []string {
	var names []string
	for _, f := range formulas {
		names = append(names, f.Name)
	}
	return names
}

// Find gives the formula of a name. Capitals, spaces, hyphens and underscores make
// no difference. An unknown name is a *Refusal with the nearest ones.
func Find(name string) (*Formula, error) {
	for _, f := range formulas {
		if alike(f.Name, name) {
			return f, nil
		}
	}
	p := Problem{Why: "no formula is called " + clip(name)}
	switch nearest := near.Words(name, Names(), 3); {
	case strings.TrimSpace(name) == "":
		p = Problem{Why: "no formula is named", Expected: "one of " + join(Names(), "or")}
	case len(nearest) > 0:
		p.Expected = join(nearest, "or")
	default:
		p.Expected = "one of " + join(Names(), "or")
	}
	return nil, &Refusal{Problems: []Problem{p}}
}

// Run works a formula out. Bad inputs are a *Refusal; inputs that the formula does
// not reach give an answer that is not covered.
func Run(name string, given []Member) (Answer, error) {
	f, err := Find(name)
	if err != nil {
		return Answer{}, err
	}
	return f.Run(given)
}

// Run works the formula out, as Run by its name does.
func (f *Formula) Run(given []Member) (Answer, error) {
	in := read(f, given)
	if err := in.refusal(); err != nil {
		return Answer{}, err
	}
	found, err := f.run(in)
	if names := *in.undeclared; len(names) > 0 {
		return Answer{}, fmt.Errorf("the formula %s reads %s, which it does not declare", f.Name, join(names, "and"))
	}
	if refused := in.refusal(); refused != nil {
		return Answer{}, refused
	}
	var beyond *notCovered
	switch {
	case errors.As(err, &beyond):
		return uncovered(f, beyond.why), nil
	case err != nil:
		return Answer{}, err
	}
	return answer(f, found)
}

// noDifference drops what makes no difference in a name.
var noDifference = strings.NewReplacer(" ", "", "-", "", "_", "", "\t", "")

// plain is a name without capitals, spaces, hyphens and underscores.
func plain(name string) string { return noDifference.Replace(strings.ToLower(name)) }

// alike tells whether two names are one to a reader.
func alike(a, b string) bool { return plain(a) == plain(b) }

// join lists words as a sentence does: "a, b or c".
func join(words []string, last string) string {
	n := len(words)
	if n < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:n-1], ", ") + " " + last + " " + words[n-1]
}

// longestShown is how many characters of a user's text a message repeats.
const longestShown = 60

// clip is a user's text as a message may show it: quoted, on one line, not long.
func clip(text string) string {
	if runes := []rune(text); len(runes) > longestShown {
		text = string(runes[:longestShown]) + "…"
	}
	return fmt.Sprintf("%q", text)
}
