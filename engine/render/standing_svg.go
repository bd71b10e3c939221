package render

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"chainwale/engine/finding"
	"chainwale/engine/quantity"
)

// The picture of a step, in mm: on the left a rose of the gusts that use the wanted
// margin up, by where the wind comes from; beside it the boat from above with what
// holds; on the right the same in words.
const (
	roseX, roseY, roseR = 62.0, 78.0, 44.0
	deckX, deckY        = 141.0, 78.0
	deckHigh            = 84.0
	wordsX              = 168.0
	sheetWide           = 272.0
	sheetHigh           = 156.0

	ink, grey, accent = "#141414", "#6b6b6b", "#005494"
)

// StandingSVG draws one step of an order of work.
func StandingSVG(w io.Writer, s finding.Standing, step *finding.StandingStep, number, of int) error {
	p := &stepPicture{sheet: s, step: step}
	p.open(fmt.Sprintf("Step %d of %d: %s", number, of, step.ID))
	p.words(8, 9, 4.2, ink, fmt.Sprintf("%s, step %d of %d: %s", s.Boat, number, of, step.ID))
	y := p.column(8, 15, 2.6, grey, sheetWide-16, topCaution(s, step))
	if h := worse(step); h != nil {
		p.rose(h)
		p.deck(h)
		p.said(h, y+8)
	} else {
		p.column(8, y+8, 3.4, ink, sheetWide-16, "What is held in this step can't be told. Do not begin it.")
	}
	p.column(8, sheetHigh-9, 2.6, grey, sheetWide-16, s.StepCautions[1]+" "+s.Cautions[0])
	p.put("</svg>\n")
	_, err := io.WriteString(w, p.b.String())
	return err
}

type stepPicture struct {
	b     strings.Builder
	sheet finding.Standing
	step  *finding.StandingStep
}

func (p *stepPicture) put(format string, args ...any) { fmt.Fprintf(&p.b, format, args...) }

func (p *stepPicture) open(title string) {
	p.put(`<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="%[1]gmm" height="%[2]gmm" viewBox="0 0 %[1]g %[2]g" role="img" fill="none" stroke-linejoin="round" font-family="Helvetica, Arial, sans-serif">
<title>%[3]s</title>
<desc>How many knots of gust use the wanted margin up, by the direction of the wind. A margin under assumptions, never a safe mast.</desc>
<rect width="%[1]g" height="%[2]g" fill="#ffffff"/>
`, sheetWide, sheetHigh, escaped(title))
}

var forXML = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")

func escaped(s string) string { return forXML.Replace(s) }

func (p *stepPicture) words(x, y, size float64, colour, text string) {
	p.anchored(x, y, size, colour, "start", text)
}

func (p *stepPicture) anchored(x, y, size float64, colour, anchor, text string) {
	p.put("<text x=\"%.2f\" y=\"%.2f\" font-size=\"%g\" fill=\"%s\" text-anchor=\"%s\">%s</text>\n", x, y, size, colour, anchor, escaped(text))
}

// column writes a paragraph within a width and gives the height below it.
func (p *stepPicture) column(x, y, size float64, colour string, wide float64, text string) float64 {
	const perLetter = 0.5 // of the size, on the average
	for _, l := range wrap(text, int(wide/(perLetter*size))) {
		p.words(x, y, size, colour, l)
		y += 1.35 * size
	}
	return y
}

func (p *stepPicture) line(x1, y1, x2, y2, wide float64, colour, dashes string) {
	p.put("<path d=\"M%.2f %.2fL%.2f %.2f\" stroke=\"%s\" stroke-width=\"%g\"%s/>\n", x1, y1, x2, y2, colour, wide, dashed(dashes))
}

func dashed(dashes string) string {
	if dashes == "" {
		return ""
	}
	return ` stroke-dasharray="` + dashes + `"`
}

func (p *stepPicture) circle(x, y, r, wide float64, colour, dashes string) {
	p.put("<circle cx=\"%.2f\" cy=\"%.2f\" r=\"%.2f\" stroke=\"%s\" stroke-width=\"%g\"%s/>\n", x, y, r, colour, wide, dashed(dashes))
}

// rim is the gust at the edge of the rose: enough for the step's own, in whole tens.
func rim(h *finding.Held) float64 {
	return max(60, 10*math.Ceil(1.25*h.Gust/10))
}

// polar is a point of the rose: from ahead is up, from port left.
func polar(deg, r float64) (x, y float64) {
	a := deg * math.Pi / 180
	return roseX - r*math.Sin(a), roseY - r*math.Cos(a)
}

// rose draws the gust that uses the wanted margin up, for winds from all round.
func (p *stepPicture) rose(h *finding.Held) {
	edge := rim(h)
	scale := roseR / edge
	for v := 10.0; v <= edge; v += 10 {
		p.circle(roseX, roseY, v*scale, 0.12, grey, "")
		if math.Mod(v, 20) == 0 {
			x, y := polar(337.5, v*scale)
			p.anchored(x+0.6, y-0.6, 2.4, grey, "start", fmt.Sprintf("%.0f kn", v))
		}
	}
	for deg := 0.0; deg < 360; deg += 45 {
		x, y := polar(deg, roseR)
		p.line(roseX, roseY, x, y, 0.12, grey, "")
	}
	p.circle(roseX, roseY, h.Gust*scale, 0.9, accent, "")
	p.curve(h, scale, edge)
	p.weakest(h, scale)
	for _, side := range []struct {
		deg          float64
		anchor, says string
		dx, dy       float64
	}{{0, "middle", "wind from ahead", 0, -6.5}, {90, "end", "port", -6.5, 1}, {180, "middle", "wind from astern", 0, 8}, {270, "start", "starboard", 6.5, 1}} {
		x, y := polar(side.deg, roseR)
		p.anchored(x+side.dx, y+side.dy, 2.8, ink, side.anchor, side.says)
	}
	p.anchored(roseX, roseY+roseR+13, 2.6, accent, "middle", fmt.Sprintf("thick ring: gust of the step, %s", kn(h.Gust)))
	p.anchored(roseX, roseY+roseR+17, 2.6, ink, "middle", fmt.Sprintf("black line: gust at which the wanted %s are used up (drawn to %.0f kn)", times(h.Wanted), edge))
	if len(h.Holding) > 0 {
		p.anchored(roseX, roseY+roseR+21, 2.6, ink, "middle", "arrow: the wind against which the least is held")
	}
}

// curve is the line of the rose; what lies beyond the edge runs along it.
func (p *stepPicture) curve(h *finding.Held, scale, edge float64) {
	var d strings.Builder
	for i, v := range h.Rose {
		if v < 0 || v > edge {
			v = edge
		}
		x, y := polar(float64(i)*360/float64(len(h.Rose)), v*scale)
		letter := "L"
		if i == 0 {
			letter = "M"
		}
		fmt.Fprintf(&d, "%s%.2f %.2f", letter, x, y)
	}
	p.put("<path d=\"%sZ\" stroke=\"%s\" stroke-width=\"0.6\"/>\n", d.String(), ink)
}

// weakest is an arrow with the wind from which the least is held.
func (p *stepPicture) weakest(h *finding.Held, scale float64) {
	if len(h.Holding) == 0 {
		return // it falls any way
	}
	from := h.Falls + 180
	x, y := polar(from, min(roseR, max(h.UsedUp*scale, 4)))
	far := roseR + 5
	x2, y2 := polar(from, far)
	p.line(x2, y2, x, y, 0.5, ink, "")
	for _, turn := range []float64{-0.4, 0.4} {
		a := math.Atan2(y2-y, x2-x) + turn
		p.line(x, y, x+3*math.Cos(a), y+3*math.Sin(a), 0.5, ink, "")
	}
}

// deck draws the boat from above with what holds: a full line and dot for a stay that
// is on, a broken line and cross for one that is off, a square for a stand-in.
func (p *stepPicture) deck(h *finding.Held) {
	fore, aft, broad := p.extent()
	scale := min(deckHigh/(fore+aft), 40/(2*broad))
	at := func(x, y float64) (float64, float64) {
		return deckX - y*scale, deckY + (fore-aft)/2*scale - x*scale
	}
	bowX, bowY := at(fore, 0)
	portX, portY := at(0, broad)
	starX, starY := at(0, -broad)
	sternP, sternY := at(-aft, 0.7*broad)
	sternS, _ := at(-aft, -0.7*broad)
	p.put("<path d=\"M%.2f %.2fQ%.2f %.2f %.2f %.2fL%.2f %.2fL%.2f %.2fL%.2f %.2fQ%.2f %.2f %.2f %.2fZ\" stroke=\"%s\" stroke-width=\"0.25\"/>\n",
		bowX, bowY, portX, (bowY+portY)/2, portX, portY, sternP, sternY, sternS, sternY, starX, starY, starX, (bowY+starY)/2, bowX, bowY, grey)
	mastX, mastY := at(0, 0)
	p.put("<circle cx=\"%.2f\" cy=\"%.2f\" r=\"1.1\" fill=\"%s\"/>\n", mastX, mastY, ink)
	for _, l := range p.sheet.Lines {
		x, y := at(l.X, l.Y)
		p.mark(l, h, mastX, mastY, x, y)
	}
	p.anchored(deckX, deckY+deckHigh/2+13, 2.6, ink, "middle", "full: holds; crossed: off; square: stand-in")
}

// extent is how far the lines lead forward, aft and to the side, with a little room.
func (p *stepPicture) extent() (fore, aft, broad float64) {
	for _, l := range p.sheet.Lines {
		fore, aft, broad = max(fore, l.X), max(aft, -l.X), max(broad, math.Abs(l.Y))
	}
	return 1.08*fore + 200, 1.08*aft + 200, 1.12*broad + 100
}

func (p *stepPicture) mark(l finding.Line, h *finding.Held, mx, my, x, y float64) {
	holds := slices.ContainsFunc(h.Holding, func(o finding.Holding) bool { return o.Name == l.Name })
	switch {
	case l.StandIn && !holds:
		return // not up, or counted as nothing: the words say which
	case l.StandIn:
		p.line(mx, my, x, y, 0.4, accent, "")
		p.put("<rect x=\"%.2f\" y=\"%.2f\" width=\"2.4\" height=\"2.4\" fill=\"%s\"/>\n", x-1.2, y-1.2, accent)
	case holds:
		p.line(mx, my, x, y, 0.4, ink, "")
		p.put("<circle cx=\"%.2f\" cy=\"%.2f\" r=\"0.9\" fill=\"%s\"/>\n", x, y, ink)
	default:
		p.line(mx, my, x, y, 0.3, ink, "1.4 1.4")
		p.line(x-1.4, y-1.4, x+1.4, y+1.4, 0.6, ink, "")
		p.line(x-1.4, y+1.4, x+1.4, y-1.4, 0.6, ink, "")
	}
}

// said writes the step in words.
func (p *stepPicture) said(h *finding.Held, y float64) {
	wide := sheetWide - wordsX - 6
	say := func(size float64, format string, args ...any) {
		y = p.column(wordsX, y+0.3*size, size, ink, wide, fmt.Sprintf(format, args...)) + 0.8
	}
	if p.step.Does != "" {
		say(3.2, "%s", p.step.Does)
	}
	for _, of := range []struct {
		word  string
		names []string
	}{{"up", p.step.Fit}, {"off", p.step.Remove}, {"changed for new", p.step.Replace}, {"not holding", h.Off}} {
		if len(of.names) > 0 {
			say(2.9, "%s: %s", of.word, strings.Join(of.names, ", "))
		}
	}
	short := ""
	if h.Margin < h.Wanted || h.AfterLoss < h.WantedAfterLoss {
		short = "TOO LITTLE: "
	}
	say(3.6, "%sheld %s in a gust of %s, %s wanted", short, atLeast(h.Margin), kn(h.Gust), times(h.Wanted))
	say(2.9, "with %s gone too: %s, %s wanted", orNothing(h.Lost), atLeast(h.AfterLoss), times(h.WantedAfterLoss))
	say(2.9, "%s", falls(h))
	say(2.9, "wanted margin used up at %s, all that is counted on at %s", knAtLeast(h.UsedUp), knAtLeast(h.Gone))
	for _, in := range h.Uncounted {
		say(2.9, "%s counts as nothing: %s", in.Name, in.Because)
	}
	for _, c := range h.Concerns {
		say(2.9, "AGAINST PRACTICE: %s", c)
	}
}

// StateSheet writes what to note down before anything is eased, to print and fill in.
func StateSheet(w io.Writer, s finding.Standing, system quantity.System) error {
	t := &standingText{text{out: w, system: system, said: map[string]bool{}}, s}
	t.line("%s, the state of the rig before anything is eased", s.Boat)
	t.line("date ____________   who ____________   where she lies ____________")
	t.line("")
	t.stateSheet()
	for _, c := range s.Cautions[:2] {
		t.prose("", c)
	}
	return t.err
}
