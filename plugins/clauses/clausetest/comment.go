package clausetest

import (
	"fmt"
	"regexp"
	"strings"

	"chainwale/engine/working"
)

// parts are what the comment of a clause has to say.
var parts = []string{"Equation", "Symbols:", "Holds ", "Source:"}

var (
	unit    = regexp.MustCompile(`\b(mm2?|mm3|N|N mm|MPa|deg|bare)\b`)
	edition = regexp.MustCompile(`\b(19|20)\d\d\b`)
	// unseen is what speaks as if from a standard's own text, which nobody here has seen
	// whole: what comes of one is "after" it.
	unseen = regexp.MustCompile(`\b(by|per|Source:)\s+(EN|AISC|ASME|ISO)\s|\b(EN|AISC|ASME|ISO) [-0-9BTH]+\s(asks|takes|sets|needs|allows)\b`)
)

// unexplained is what the comment of a clause does not say although it must.
func unexplained(comment string) (lacks []string) {
	for _, part := range parts {
		if !strings.Contains(comment, part) {
			lacks = append(lacks, "has no part "+part)
		}
	}
	if !unit.MatchString(partOf(comment, "Symbols:")) {
		lacks = append(lacks, "names no unit among its symbols")
	}
	if text := unseen.FindString(comment); text != "" {
		lacks = append(lacks, speaksByIt(text))
	}
	source := partOf(comment, "Source:")
	if !edition.MatchString(source) {
		lacks = append(lacks, "names no edition of its source")
	}
	if !saysHowKnown(source) {
		lacks = append(lacks, "does not say how its source is known")
	}
	return lacks
}

func speaksByIt(text string) string {
	return fmt.Sprintf("says %q of a text that was not seen: say after", strings.Join(strings.Fields(text), " "))
}

// partOf is a part of a comment, up to the empty line behind it or to what it says of
// errors.
func partOf(comment, part string) string {
	_, rest, _ := strings.Cut(comment, part)
	rest, _, _ = strings.Cut(rest, "\n\n")
	rest, _, _ = strings.Cut(rest, "Errors:")
	return rest
}

func saysHowKnown(text string) bool {
	for _, how := range working.AllHowKnown() {
		if strings.Contains(strings.Join(strings.Fields(text), " "), string(how)) {
			return true
		}
	}
	return false
}
