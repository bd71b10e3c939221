package rig

import (
	"math"
	"slices"
)

// pushing is what pushes on a mast about its heel: wind from anywhere, and a roll to
// one side or the other; and the moment that its partners take of it. N mm.
type pushing struct{ wind, roll, partners float64 }

// margin is how many times the push a set holds that pulls h towards p.
func (d pushing) margin(p vector, h float64) float64 {
	size := p.size()
	return (h + d.partners*size) / (d.wind*size + d.roll*math.Abs(p.y))
}

// margins are how many times the push a set of stays holds, as it is and with the one
// stay gone that hurts most. This is the inner loop of the search.
//
// The least of h(n)/push(n) lies at a normal of the set's faces, and each face is
// parallel to one of the moments. A stay that is gone takes its pull out of h and a
// normal out of the list; that normal says nothing that the others don't.
func (d pushing) margins(m []vector) (now, afterLoss float64) {
	now, afterLoss = math.Inf(1), math.Inf(1)
	for _, v := range m {
		size := v.size()
		if size == 0 {
			continue
		}
		p := vector{-v.y, v.x}
		push, taken := d.wind*size+d.roll*math.Abs(p.y), d.partners*size
		ahead, behind, mostAhead, mostBehind := pulls(m, p)
		now = min(now, (min(ahead, behind)+taken)/push)
		afterLoss = min(afterLoss, (min(ahead-mostAhead, behind-mostBehind)+taken)/push)
	}
	if d.partners > 0 && d.roll > 0 {
		d.fanOut(m, func(p vector, h, largest float64) {
			now, afterLoss = min(now, d.margin(p, h)), min(afterLoss, d.margin(p, h-largest))
		})
	}
	none := d.rounding(m)
	return d.orNothing(now, none), d.orNothing(afterLoss, none)
}

// vanishing is how small a capacity counts as none, of all pulls together.
const vanishing = 1e-9

// rounding is how much of a margin may be left over by sums that are nothing.
func (d pushing) rounding(m []vector) float64 {
	scale := 0.0
	for _, v := range m {
		scale += v.size()
	}
	return vanishing * scale / (d.wind + d.roll)
}

// orNothing is a margin without what rounding left of nothing. Where no stay pulls at
// all, the partners alone hold.
func (d pushing) orNothing(margin, none float64) float64 {
	alone := d.partners / (d.wind + d.roll)
	if math.IsInf(margin, 1) || margin <= alone+none {
		return alone
	}
	return margin
}

// tightest is where a set of stays gives first.
type tightest struct {
	margin, afterLoss float64
	// falls are the directions that the mast falls in first, the lowest first.
	falls []float64
	// governs pulls most against the first of them; lost is the stay whose loss hurts
	// most. -1 where there is none.
	governs, lost int
}

// alike is how near two margins must be to count as one.
const alike = 1e-9

// tightest says where a set gives first, beside its margins.
func (d pushing) tightest(m []vector) tightest {
	t := tightest{governs: -1, lost: -1}
	t.margin, t.afterLoss = d.margins(m)
	lossAt, lossFall := math.Inf(1), 0.0
	// What rounding left of nothing is as good as nothing.
	near := t.margin + alike*(1+t.margin) + d.rounding(m)
	d.eachNormal(m, func(p vector, h, largest float64) {
		fall := around(-p.x, -p.y)
		if now := d.margin(p, h); now <= near {
			t.fall(fall)
		}
		// Of losses that hurt alike, the one in the lowest direction counts, so that
		// the order of the stays makes no difference.
		after := d.margin(p, h-largest)
		if same := alike * (1 + math.Abs(after)); after < lossAt-same || after <= lossAt+same && fall < lossFall {
			lossAt, lossFall, t.lost = min(lossAt, after), fall, strongest(m, p)
		}
	})
	if len(t.falls) > 0 {
		t.governs = strongest(m, toward(t.falls[0]).times(-1))
	}
	return t
}

// fall notes a direction unless it is there.
func (t *tightest) fall(deg float64) {
	near := func(f float64) bool { return math.Abs(math.Remainder(f-deg, 360)) < 1e-6 }
	if !slices.ContainsFunc(t.falls, near) {
		t.falls = append(t.falls, deg)
		slices.Sort(t.falls)
	}
}

// strongest is the stay that pulls most towards p, -1 if none does.
func strongest(m []vector, p vector) int {
	best, at := 0.0, -1
	for i, v := range m {
		if pull := v.dot(p); pull > best*(1+alike) {
			best, at = pull, i
		}
	}
	return at
}

// eachNormal goes through the normals at which a set can give first, with what it
// pulls that way and the largest part of it that comes from one stay.
func (d pushing) eachNormal(m []vector, look func(p vector, h, largest float64)) {
	eachNormal(m, look)
	if d.partners > 0 && d.roll > 0 {
		d.fanOut(m, look)
	}
}

// fan is how many more directions are looked at where partners and a roll come
// together: then the least need not lie at a normal of a face.
const fan = 720

func (d pushing) fanOut(m []vector, look func(p vector, h, largest float64)) {
	for i := range fan {
		p := toward(float64(i) * 360 / fan)
		ahead, _, most, _ := pulls(m, p)
		look(p, ahead, most)
	}
}

// eachNormal goes through the normals that a face of a set of stays can have.
func eachNormal(m []vector, look func(p vector, h, largest float64)) {
	for _, v := range m {
		if v.x == 0 && v.y == 0 {
			continue
		}
		p := vector{-v.y, v.x}
		ahead, behind, mostAhead, mostBehind := pulls(m, p)
		look(p, ahead, mostAhead)
		look(p.times(-1), behind, mostBehind)
	}
}

// pulls are the sums that a set pulls towards p and away from it, and the largest of
// each. The search spends its time here.
func pulls(m []vector, p vector) (ahead, behind, mostAhead, mostBehind float64) {
	var all, net, most, least float64
	for _, w := range m {
		pull := w.x*p.x + w.y*p.y
		all += math.Abs(pull)
		net += pull
		if pull > most {
			most = pull
		}
		if pull < least {
			least = pull
		}
	}
	return (all + net) / 2, (all - net) / 2, most, -least
}
