package pattern

import (
	"bytes"
	"fmt"
	"math"
	"strings"

	"chainwale/engine/quantity"
	"chainwale/engine/sheet"
)

// The cautions at the press.
const (
	pressCaution = "Take care: the part can jump out and the punch can burst; hands and heads clear, guard shut, never beyond what\npress, die and punch are rated for. A crack on the outside of a fold is scrap; a fabricator or rigger decides, not the eye."
	Advises      = "chainwale advises; this is no survey and no approval. A qualified rigger, surveyor, naval architect and local code decide."
)

// What the table of strokes is reckoned with where the plan does not say.
const (
	// shoulderShare is the radius of a die's shoulders as a share of its opening. It is
	// more than most dies have, which makes a stroke fold more and so the strokes fewer
	// (judgement).
	shoulderShare = 1.0 / 8
	// ramStep is the travel that a dial gauge at the ram tells apart, mm (judgement).
	ramStep = 0.1
	// tableRows is how many rows a table of strokes has at the most.
	tableRows = 15
)

// PressSheet is the sheet that hangs at the press while the part is folded: the order of
// the folds, the tools, forces and angles, and for each fold how far to pump from each
// angle that is measured, so that it comes near and never goes beyond. stroke is what the
// ram travels in a full stroke of a hand pump, mm; 0 counts the ram's travel instead. A
// part without folds has no sheet.
func (p Part) PressSheet(stroke float64) []byte {
	if len(p.Folds) == 0 {
		return nil
	}
	var b bytes.Buffer
	say := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	d := p.Drawing()
	say("Press sheet of %s, %s", p.Name, d.Title)
	say("%s", Advises)
	say("%s\n", pressCaution)
	for _, w := range d.Warnings {
		say("! %s", w)
	}
	say("%s %s, %s", mm(p.Flat.Thickness), d.Metal, counts(d.Quantity, d.OtherHand))
	say("Fold lines count along the flat from %s; which end and which face is which, drawing %s-drawing.pdf shows.", datumWords(p), FileName(p.Name))
	say("Mark them on the inside of the fold with a pen or a light centre punch; no scribe, punch or stamp on the outside.")
	if d.OtherHand > 0 {
		say("The other hand: the same blank, the other face up at every fold, the same strokes.")
	}
	p.sayOrder(say)
	p.sayForce(say)
	for at, step := range d.Press {
		p.saySteps(say, at+1, step.Fold-1, stroke)
	}
	say("\nNever bend back by more than about 1 deg: the metal is worked twice. Note what is beyond, and have it looked at.")
	say("%s", Advises)
	return b.Bytes()
}

func counts(drawn, other int) string {
	if other == 0 {
		return fmt.Sprintf("%d off", drawn)
	}
	return fmt.Sprintf("%d off as drawn and %d of the other hand", drawn, other)
}

// datumWords are from where the fold lines count.
func datumWords(p Part) string {
	if h := p.datum(); h != nil {
		return fmt.Sprintf("the centre of the drawing's hole %d", p.Drawing().Datum+1)
	}
	return "the loaded end"
}

// datum is the hole from which the drawing counts, nil for none.
func (p Part) datum() *sheet.Hole {
	if len(p.Flat.Holes) == 0 {
		return nil
	}
	return &p.Flat.Holes[p.Drawing().Datum]
}

// sayOrder writes the folds in their order.
func (p Part) sayOrder(say func(string, ...any)) {
	switch {
	case len(p.Orders) == 0:
		say("\nThe order of the folds was not tried: %s. They stand as they lie.%s", p.PressWhy, p.tryCard())
	case !p.Orders[0].Clear():
		say("\nNo order of the folds comes clear of punch, die and frame; this is the one that lacks least.")
	default:
		say("\nIn this order the part comes clear of punch, die and frame by %s at the least.", mm(p.Orders[0].Least()))
	}
	zero := 0.0
	if h := p.datum(); h != nil {
		zero = h.At.X
	}
	rows := [][]string{{"", "fold", "line at", "up", "leave", "opens by", "press to", "inside R", "tool", "force"}}
	for at, step := range pressSteps(p) {
		f := p.Folds[step.Fold-1]
		up := "face A"
		if f.Angle < 0 {
			up = "face B"
		}
		opens, press := "not known", "by test strip"
		if a := f.Press; a != nil {
			angle := math.Abs(f.Angle)
			opens = fmt.Sprintf("%.1f to %.1f deg", a.Least-angle, a.Most-angle)
			press = fmt.Sprintf("%.1f, likely %.1f, to %.1f deg", a.Least, a.Likely, a.Most)
		}
		line := mm(f.At - zero)
		if f.Skew != 0 {
			line = p.skewWords(f, zero)
		}
		rows = append(rows, []string{fmt.Sprintf("P%d", at+1), f.Name, line, up, fmt.Sprintf("%.4g deg", math.Abs(f.Angle)), opens, press, mm(f.Radius), dieWords(f.Die), f.forceWords()})
	}
	sayTable(say, rows)
}

// tryCard tells to try the order with a card model, unless the reason why it is not known
// does.
func (p Part) tryCard() string {
	if strings.Contains(p.PressWhy, "card model") {
		return ""
	}
	return " Try it with a card model."
}

// skewWords are where a fold line that is turned from square meets the two sides of the
// part, as the drawing's list has it.
func (p Part) skewWords(f Fold, zero float64) string {
	low, high := p.Flat.Outline.Bounds()
	at := func(y float64) string { return mm(f.At + y*math.Tan(f.Skew*math.Pi/180) - zero) }
	return at(low.Y) + " at the lower edge, " + at(high.Y) + " at the upper"
}

// sayForce holds the press to its rating.
func (p Part) sayForce(say func(string, ...any)) {
	most := 0.0
	for _, f := range p.Folds {
		most = math.Max(most, f.ForceMost) // NaN stays
	}
	switch {
	case math.IsNaN(p.Rating):
		say("The plan does not say what the press is rated for: read its plate before the first stroke, and the die's and the punch's.")
	case math.IsNaN(most):
		say("The press is rated %s; what the folds take is not known: watch the gauge.", quantity.Format(p.Rating, quantity.Force, quantity.Metric))
	case most > p.Rating:
		say("TOO MUCH FOR THIS PRESS: it is rated %s and a fold may take %s.", quantity.Format(p.Rating, quantity.Force, quantity.Metric), quantity.Format(most, quantity.Force, quantity.Metric))
	default:
		say("The press is rated %s: stop where the gauge shows more than the force above, and look why.", quantity.Format(p.Rating, quantity.Force, quantity.Metric))
	}
}

// saySteps writes how far to pump for one fold.
func (p Part) saySteps(say func(string, ...any), number, fold int, stroke float64) {
	f := p.Folds[fold]
	say("\nP%d, fold %s, to be left at %.4g deg", number, f.Name, math.Abs(f.Angle))
	steps, err := p.bumping(f, stroke)
	if err != nil {
		say("  No strokes are told: %s. Go by a test strip of the same sheet, and by less than half of what is left each time.", err)
		return
	}
	unit := "mm of ram travel"
	if stroke > 0 {
		unit = fmt.Sprintf("strokes of %s", mm(stroke))
	}
	if steps.first == 0 {
		say("  %s.", steps.why)
		return
	}
	say("  First %s %s from where the ram touches, then let go wholly and measure the angle with a bevel on a clean leg.", steps.say(steps.first), unit)
	say("  After that, from the angle that is left, so much further than the ram has been; let go, measure, and look again:")
	rows := [][]string{{"", "left, deg", unit}}
	for _, r := range steps.rows {
		amount := steps.say(r.Strokes)
		if r.Strokes == 0 {
			amount = "stop"
		}
		rows = append(rows, []string{"", fmt.Sprintf("%.4g", r.Angle), amount})
	}
	sayTable(say, rows)
	say("  Between two rows take the lower one's, the smaller. Stop within half a degree, or where one more might go beyond.")
	say("  If a step folds more than 1.3 times what it should, the press is another than the one reckoned with: from there on take")
	say("  0.7 of what is left, by the degrees that your own last step gave.")
	say("  read:  after ______ left ______ | after ______ left ______ | after ______ left ______ | after ______ left ______")
}

// pumping is the table of a fold.
type pumping struct {
	first float64
	rows  []sheet.BumpRow
	say   func(strokes float64) string
	why   string
}

// bumping works the table out: with the press's strokes, or with steps of a dial gauge.
func (p Part) bumping(f Fold, stroke float64) (pumping, error) {
	angle := math.Abs(f.Angle)
	if f.Press == nil {
		return pumping{}, fmt.Errorf("how far the metal springs back is not known")
	}
	// Pumped in quarters of a stroke, or as the gauge tells.
	b := sheet.Bumping{Die: f.Die, Shoulder: f.Die * shoulderShare, Thickness: p.Flat.Thickness, Radius: f.Radius, Stroke: 4 * ramStep, Target: angle, Springback: math.Max(0, f.Press.Least-angle)}
	made := pumping{say: func(strokes float64) string { return fmt.Sprintf("%.1f", strokes*4*ramStep) }}
	if stroke > 0 {
		b.Stroke = stroke
		made.say = func(strokes float64) string { return fmt.Sprintf("%.2f", strokes) }
	}
	next, err := b.Next(nil)
	if err != nil {
		return pumping{}, err
	}
	made.first, made.why = next.Strokes, next.Why
	step := math.Max(1, math.Ceil(angle/tableRows))
	rows, err := b.Sheet(math.Min(step, angle))
	if err != nil {
		return pumping{}, err
	}
	made.rows = rows[1:] // from the flat, the first push is told
	return made, nil
}

// sayTable writes rows in columns, the first row as their heads.
func sayTable(say func(string, ...any), rows [][]string) {
	widths := make([]int, len(rows[0]))
	for _, r := range rows {
		for i, cell := range r {
			widths[i] = max(widths[i], len([]rune(cell)))
		}
	}
	for _, r := range rows {
		var line strings.Builder
		for i, cell := range r {
			line.WriteString(cell + strings.Repeat(" ", widths[i]-len([]rune(cell))+2))
		}
		say("  %s", strings.TrimRight(line.String(), " "))
	}
}
