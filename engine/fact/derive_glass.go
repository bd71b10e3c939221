package fact

import "chainwale/engine/plan"

// glass says whether the part is laminated into the hull, and what follows: then its
// faces are reached by cutting, whatever else the plan says, and of a part that is
// kept nobody knows what its bolts are like. A part that stands all in the open is
// not glassed in; where nobody says either, nobody knows how it is reached.
func glass(f *Fitting, p *plan.Fitting) {
	m := p.Mounting
	giveYesNo(&f.GlassedIn, m.GlassedIn)
	if !m.GlassedIn.Given && p.Exposure.Value == "open" {
		f.GlassedIn.Give(false, p.Exposure.At)
	}
	giveWord(&f.Access, m.Access)
	f.BoltsAre.Give("in sight", m.GlassedIn.At)
	switch {
	case m.Access.Given && !f.GlassedIn.Known():
		f.Access.Refuse("")
		f.Access.lack(values(&f.GlassedIn.Value))
	case f.GlassedIn.Yes():
		f.Access.Give("cut", m.GlassedIn.At)
		if f.State.Is("kept") {
			f.BoltsAre.Refuse("they are glassed in and can't be seen")
		}
	}
}

// hide leaves unknown what a plan says of something that is glassed in: it may
// stand so on a drawing, but nobody has seen it.
func hide(v *Value, f *Fitting) {
	if !f.BoltsAre.Known() {
		v.Refuse("")
		v.lack(values(&f.BoltsAre.Value))
	}
}

// found takes how the host was found. Nobody knows it where nobody looked, nor that
// what stands behind glass is sound, solid or backed; what was seen to be wrong counts
// wherever it stands.
func found(m *Mounting, h plan.Host) {
	giveWord(&m.Found, h.Found)
	switch {
	case m.Found.Is("not looked at"):
		m.Found.Refuse("nobody has looked")
	case m.Found.Is("sound"):
		hide(&m.Found.Value, m.Fitting)
	}
	for _, y := range []*YesNo{&m.SolidUnderBolts, &m.Backing} {
		if y.Yes() {
			hide(&y.Value, m.Fitting)
		}
	}
}
