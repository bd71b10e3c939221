package fact

import (
	"math"
	"path"

	"chainwale/engine/plan"
	"chainwale/engine/strength"
	"chainwale/engine/table"
	"chainwale/engine/working"
)

// boltHoleOf is one bolt hole with what its facts are worked out from. A plan has more
// bolt holes than all else, so those of a group are made at once, and what they rest on
// and how they came about stands here rather than in lists and functions of each fact.
type boltHoleOf struct {
	BoltHole
	of     *boltsOf
	number int
	plan   *plan.Hole
	width  *Number
	pitch  float64
	// bears and ratio are what the bearing, and what ultimate load and end ratio, come from.
	bears [9]*Value
	ratio [4]*Value
	side  [1]*Value
}

// boltsGive is what all bolt holes of a group take from the group, each with those
// beside it where several go together.
type boltsGive struct {
	all    [7]*Value
	inLine bool
}

func (g *boltsGive) share() []*Value    { return g.all[0:3:3] }
func (g *boltsGive) lean() []*Value     { return g.all[1:2:2] }
func (g *boltsGive) length() []*Value   { return g.all[3:4:4] }
func (g *boltsGive) diameter() []*Value { return g.all[4:5:5] }
func (g *boltsGive) ultimate() []*Value { return g.all[5:6:6] }
func (g *boltsGive) head() []*Value     { return g.all[6:7:7] }

// boltHoles makes the bolt holes of the group.
func (o *boltsOf) boltHoles() []*BoltHole {
	if len(o.at) == 0 {
		return nil
	}
	g := o.group
	gives := &boltsGive{inLine: o.inLine(), all: [7]*Value{&g.Count.Value, &g.Lean.Value, &g.PinAlong.Value,
		&g.Length.Value, &g.BoltDiameter.Value, &g.BoltUltimate.Value, &g.BoltHead.Value}}
	made, list := make([]boltHoleOf, len(o.at)), make([]*BoltHole, len(o.at))
	name := "a bolt hole of " + g.Fitting.Name
	for i := range made {
		h := &made[i]
		h.of, h.number, h.plan, h.pitch, h.width = o, i, o.holes[i], o.pitch(i), o.width(o.holes[i])
		id := g.Stay.ID + "/" + path.Base(h.plan.At.Pointer) // its number among the holes, in whichever file they stand
		h.BoltHole.Subject = Subject{ID: id, Name: name, At: h.plan.At, shower: h}
		h.Stay, h.Fitting = g.Stay, g.Fitting
		h.derive(gives)
		h.forStandards(gives)
		list[i] = &h.BoltHole
	}
	return list
}

// derive works out what the bolt presses on the plate, what the plate stands there, and
// how far it is from the far end, towards which it presses.
func (h *boltHoleOf) derive(gives *boltsGive) {
	g, m := h.of.group, &h.Fitting.Metal
	give(&h.Hole, h.plan.AcrossPull())
	h.bears = [9]*Value{&h.Hole.Value, &h.Fitting.Thickness.Value, &h.width.Value, &g.Length.Value, &g.BoltDiameter.Value, &g.Grade.Value,
		&m.Yield.Value, &m.Ultimate.Value, &m.Stainless.Value}
	h.ratio = [4]*Value{&h.Bearing.Value, &h.Share.Value, &g.Length.Value, &h.Hole.Value}
	h.Share.derive(gives.share(), h.share)
	h.Bearing.derive(h.bears[:], h.bearing)
	h.Ultimate.derive(h.ratio[0:2:2], h.ultimate)
	h.EndRatio.derive(h.ratio[2:4:4], h.endRatio)
}

// forStandards gives where the hole stands and what bolt is in it, which design standards
// ask for beyond what the program's own rules do.
func (h *boltHoleOf) forStandards(gives *boltsGive) {
	g := h.of.group
	h.side = [1]*Value{&h.width.Value}
	h.End.derive(gives.length(), h.end)
	h.Side.derive(h.side[:], h.besideIt)
	h.Pitch.Give(h.pitch, h.plan.At)
	h.InLine.Give(gives.inLine, h.plan.At)
	same(&h.Lean, &g.Lean, gives.lean())
	same(&h.BoltDiameter, &g.BoltDiameter, gives.diameter())
	same(&h.BoltUltimate, &g.BoltUltimate, gives.ultimate())
	if h.BoltHead.follows(gives.head()) {
		h.BoltHead.Give(g.BoltHead.Text(), g.BoltHead.at)
	}
}

// same gives a number that another subject has already, which is all it comes from.
func same(n, as *Number, from []*Value) {
	n.derive(from, func() (float64, error) { return as.number, nil })
}

// pull is the bolt group as this bolt sees it, and its place in that.
func (h *boltHoleOf) pull() (r strength.BoltGroupResult, at int, err error) {
	group, at := h.of.sheareds(h.number)
	r, err = resultOf(group)
	return r, at, err
}

func (h *boltHoleOf) share() (float64, error) {
	r, at, err := h.pull()
	if err != nil {
		return 0, err
	}
	return r.Bolts[at].Size(), nil
}

// pressed is the plate under the bolt.
func (h *boltHoleOf) pressed() (inHoleResult, error) {
	o, g, m := h.of, h.of.group, &h.Fitting.Metal
	grade, err := o.gradeAt()
	if err != nil {
		return inHoleResult{}, err
	}
	end, _ := h.end()
	side, _ := h.besideIt()
	return inHole{strength.BoltHole{Thickness: o.bearingThickness(), Bolt: g.BoltDiameter.Float(), Hole: h.Hole.Float(), End: end,
		Side: side, Pitch: h.pitch, Yield: m.Yield.Float(), Ultimate: m.Ultimate.Float(),
		BoltUltimate: grade.Ultimate, Stainless: m.Stainless.Yes()}, h.plan.LiesAcross()}.Reckon()
}

func (h *boltHoleOf) bearing() (float64, error) {
	r, err := h.pressed()
	return r.bears(), err
}

func (h *boltHoleOf) ultimate() (float64, error) { return h.Bearing.Float() / h.Share.Float(), nil }

func (h *boltHoleOf) end() (float64, error) {
	return h.of.group.Length.Float() - h.plan.Along.Value - h.of.beyond[h.number], nil
}

func (h *boltHoleOf) endRatio() (float64, error) {
	end, err := h.end()
	return end / h.Hole.Float(), err
}

func (h *boltHoleOf) besideIt() (float64, error) {
	return h.width.Float()/2 - abs(h.plan.Across.Value), nil
}

// show shows how a fact of the hole came about.
func (h *boltHoleOf) show(v *Value) []working.Step {
	g := h.of.group
	switch v {
	case &h.Share.Value:
		r, _, err := h.pull()
		return stepsOf(r, err)
	case &h.Bearing.Value:
		r, err := h.pressed()
		return stepsOf(r, err)
	case &h.Ultimate.Value:
		return oneLine("F", "bearing / share", "N", h.ultimate)
	case &h.EndRatio.Value:
		return oneLine("e1/d0", "(length - along) / hole", "", h.endRatio)
	case &h.End.Value:
		return oneLine("e1", "length - along", "mm", h.end)
	case &h.Side.Value:
		return oneLine("e2", "width/2 - |across|", "mm", h.besideIt)
	case &h.Lean.Value:
		return g.Lean.Working()
	case &h.BoltDiameter.Value:
		return g.BoltDiameter.Working()
	case &h.BoltUltimate.Value:
		return g.BoltUltimate.Working()
	}
	return nil
}

// stepsOf is the working of a result. There is none where the formula refuses: the value
// is unknown for the same reason, and says so.
func stepsOf(r worked, err error) []working.Step {
	if err != nil {
		return nil
	}
	return r.Working()
}

// oneLine is the working of a single line of arithmetic.
func oneLine(symbol, line, unit string, of func() (float64, error)) []working.Step {
	value, _ := of()
	return oneStep(symbol, line, value, unit, arithmeticSource)()
}

// gradeRow is the row of a bolt's grade, or why there is none.
type gradeRow struct {
	row table.BoltGradeRow
	err error
}

// gradeAt is the row of the bolts' grade at their size, looked up once.
func (o *boltsOf) gradeAt() (table.BoltGradeRow, error) {
	if o.grade == nil {
		row, err := table.BoltGradeAt(o.group.Grade.Text(), o.group.BoltDiameter.Float())
		o.grade = &gradeRow{row, err}
	}
	return o.grade.row, o.grade.err
}

// bearingThickness is the thickness that bears on a bolt. A countersunk head takes
// half its depth, and is taken to be half as deep as the bolt is thick.
func (o *boltsOf) bearingThickness() float64 {
	t := o.group.Fitting.Thickness.Float()
	if o.plan.Mounting.Bolts.Head.Value != "countersunk" {
		return t
	}
	return t - o.group.BoltDiameter.Float()/4
}

// pitch is the distance to the next bolt towards the far end, 0 if there is none. Of
// oval holes it is that of the ends which face each other; those that pass each other
// leave next to none.
func (o *boltsOf) pitch(i int) float64 {
	next := 0.0
	for j, b := range o.at {
		if d := o.at[i].Y - b.Y; d > 0.5 {
			d = max(d-o.beyond[i]-o.beyond[j], 0.001)
			if next == 0 || d < next {
				next = d
			}
		}
	}
	return next
}

// besides is how far bolts stand off one line along the plate before they stand
// beside each other, mm.
const besides = 0.5

// inLine tells whether all bolts stand in one line along the plate.
func (o *boltsOf) inLine() bool {
	for _, b := range o.at {
		if math.Abs(b.X-o.at[0].X) > besides {
			return false
		}
	}
	return true
}
