package rig

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// drawShrouds draws a side with any number of spreaders, whose tips lie on a curve that
// bulges outward as those of real rigs do: then every spreader thrusts.
func drawShrouds(t *rapid.T) Shrouds {
	s := Shrouds{HalfBeam: rapid.Float64Range(500, 3000).Draw(t, "half beam")}
	var heights []float64
	height := 0.0
	for range rapid.IntRange(1, 8).Draw(t, "levels") {
		height += rapid.Float64Range(1000, 8000).Draw(t, "panel")
		heights = append(heights, height)
	}
	power := rapid.Float64Range(1, 3).Draw(t, "bulge")
	for i, h := range heights {
		l := ShroudLevel{Height: h, Tip: s.HalfBeam * (1 - math.Pow(h/(1.05*height), power)), Force: rapid.Float64Range(0, 20000).Draw(t, "force")}
		if i == len(heights)-1 {
			l.Tip = 0
		}
		s.Levels = append(s.Levels, l)
	}
	return s
}

// TestMomentCloses: what the sails heel her with, the chainplate holds, for any number
// of spreaders.
func TestMomentCloses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawShrouds(t)
		r, err := s.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		if r.Residual() > 1e-9 {
			t.Fatalf("%+v leaves %g of the moment", s, r.Residual())
		}
	})
}

// drawStays draws a rig.
func drawStays(t *rapid.T, least, most int) []HeldStay {
	var stays []HeldStay
	for range rapid.IntRange(least, most).Draw(t, "stays") {
		angle := rapid.Float64Range(0, 2*math.Pi).Draw(t, "angle")
		spread := rapid.Float64Range(300, 7000).Draw(t, "spread")
		stays = append(stays, HeldStay{Line: StayLine{Foot: Point{spread * math.Cos(angle), spread * math.Sin(angle), rapid.Float64Range(-500, 2000).Draw(t, "foot")}, Height: rapid.Float64Range(3000, 16000).Draw(t, "height")},
			Allowable: rapid.Float64Range(100, 20000).Draw(t, "allowable")})
	}
	return stays
}

// programme is the linear program behind a capacity, by brute force: the most of a
// push that pulls between nothing and all can hold. Every corner has at most one pull
// in between.
func programme(m []vector, push vector) float64 {
	best := 0.0
	for i, free := range m {
		for corner := range 1 << len(m) {
			if corner&(1<<i) != 0 {
				continue
			}
			var sum vector
			for k, v := range m {
				if corner&(1<<k) != 0 {
					sum = sum.plus(v)
				}
			}
			// free t + push l = -sum
			det := free.x*push.y - free.y*push.x
			if math.Abs(det) < 1e-12*free.size() {
				continue
			}
			t := (-sum.x*push.y + sum.y*push.x) / det
			l := (-free.x*sum.y + free.y*sum.x) / det
			if t >= -1e-9 && t <= 1+1e-9 {
				best = max(best, l)
			}
		}
	}
	return best
}

// TestCapacityAgainstALinearProgram holds every direction to the brute force, and the
// worst to all of them.
func TestCapacityAgainstALinearProgram(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, err := Capacity{Stays: drawStays(t, 1, 7)}.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		scale := 0.0
		for _, v := range r.m {
			scale += v.size()
		}
		for range 5 {
			deg := rapid.Float64Range(0, 360).Draw(t, "push")
			got, want := r.Against(deg), programme(r.m, toward(deg))
			if math.Abs(got-want) > 1e-6*scale {
				t.Fatalf("pushed towards %g deg: %g, by brute force %g", deg, got, want)
			}
			if got < r.Worst-1e-9*scale {
				t.Fatalf("the worst is %g, towards %g deg it is %g", r.Worst, deg, got)
			}
		}
		if at := r.Against(r.Falls[0]); math.Abs(at-r.Worst) > 1e-7*scale {
			t.Fatalf("the mast falls first towards %g deg, where %g is held, not %g", r.Falls[0], at, r.Worst)
		}
	})
}

// TestMarginsAgainstSampling holds the margin under wind and roll, and the one after a
// loss, to a fan of directions and to leaving each stay out.
func TestMarginsAgainstSampling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, err := Capacity{Stays: drawStays(t, 3, 9)}.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		d := pushing{wind: rapid.Float64Range(1e5, 1e7).Draw(t, "wind"), roll: rapid.Float64Range(0, 1e7).Draw(t, "roll")}
		if rapid.Bool().Draw(t, "wedged") {
			d.partners = rapid.Float64Range(0, 3e6).Draw(t, "partners")
		}
		now, after := d.margins(r.m)
		sampled, scale := sample(d, r.m), 0.0
		for _, v := range r.m {
			scale += v.size()
		}
		// Between two directions of the fan a pull changes by a quarter of a degree's worth.
		if now > sampled+1e-6*(1+sampled) || now < sampled*0.99-0.005*scale/d.wind {
			t.Fatalf("margin %g, sampled %g", now, sampled)
		}
		worst := math.Inf(1)
		for i := range r.m {
			left := append(append([]vector{}, r.m[:i]...), r.m[i+1:]...)
			lone, _ := d.margins(left)
			worst = min(worst, lone)
		}
		if math.Abs(after-worst) > 1e-6*(1+worst) {
			t.Fatalf("after a loss %g, leaving each out %g", after, worst)
		}
	})
}

// sample is a margin by looking every half degree.
func sample(d pushing, m []vector) float64 {
	best := math.Inf(1)
	for i := range 720 {
		p := toward(float64(i) / 2)
		ahead, _, _, _ := pulls(m, p)
		best = min(best, d.margin(p, ahead))
	}
	return best
}

// TestCapacityProperties: fewer stays hold no more, pulls scale it, and it is nothing
// exactly where a half circle is empty.
func TestCapacityProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stays := drawStays(t, 2, 9)
		all, err := Capacity{Stays: stays}.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		fewer, err := Capacity{Stays: stays[1:]}.Reckon()
		if err != nil || fewer.Worst > all.Worst*(1+1e-9)+1e-6 {
			t.Fatalf("fewer stays hold %g, all %g, %v", fewer.Worst, all.Worst, err)
		}
		for i := range stays {
			stays[i].Allowable *= 2.5
		}
		more, err := Capacity{Stays: stays}.Reckon()
		if err != nil || math.Abs(more.Worst-2.5*all.Worst) > 1e-6*(1+more.Worst) {
			t.Fatalf("2.5 times the pull holds %g, not 2.5 times %g, %v", more.Worst, all.Worst, err)
		}
		if gap := widestGap(all.m); math.Abs(gap-180) > 0.01 && all.Holds != (gap < 180) {
			t.Fatalf("holds is %v with a gap of %g deg", all.Holds, gap)
		}
	})
}

// widestGap is the widest angle without a stay, deg.
func widestGap(m []vector) float64 {
	widest := 0.0
	for _, v := range m {
		next := 360.0
		for _, w := range m {
			if turn := math.Mod(around(w.x, w.y)-around(v.x, v.y)+360, 360); turn > 0 {
				next = min(next, turn)
			}
		}
		widest = max(widest, next)
	}
	return widest
}

// TestUsedUpGust: at the gust that uses a margin up, the margin is what is left.
func TestUsedUpGust(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, err := Capacity{Stays: drawStays(t, 3, 9)}.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		const perSquare = 1e4
		d := pushing{wind: 1, roll: rapid.Float64Range(0, 1e6).Draw(t, "roll")}
		wanted := rapid.Float64Range(1, 4).Draw(t, "wanted")
		gust := d.usedUp(r.m, perSquare, wanted)
		if gust == 0 {
			return
		}
		d.wind = perSquare * gust * gust
		if now, _ := d.margins(r.m); math.Abs(now-wanted) > 1e-6*wanted {
			t.Fatalf("a gust of %g m/s leaves %g, not %g", gust, now, wanted)
		}
	})
}

// TestSharingBalances: whatever holds is in balance, and what falls is not held by the
// exact test either.
func TestSharingBalances(t *testing.T) {
	tried, held := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		tried++
		stays := drawStays(t, 2, 8)
		s := Sharing{Push: rapid.Float64Range(1e3, 1e5).Draw(t, "push"), Toward: rapid.Float64Range(0, 360).Draw(t, "toward")}
		rest := rapid.Bool().Draw(t, "at rest")
		for _, h := range stays {
			e := ElasticStay{Line: h.Line, EA: rapid.Float64Range(1e6, 1e7).Draw(t, "EA")}
			if rest {
				e.AtRest = rapid.Float64Range(0, 100).Draw(t, "rest")
			}
			s.Stays = append(s.Stays, e)
		}
		c, _ := Capacity{Stays: stays}.Reckon()
		r, err := s.Reckon()
		if err == nil {
			held++
			if r.Residual > 1e-6 {
				t.Fatalf("%g of the push is left over", r.Residual)
			}
		} else if gap := widestGap(c.m); gap < 150 { // with a wider one soft wires let it lean too far
			t.Fatalf("%v, though the widest gap is %g deg", err, gap)
		}
	})
	if held*10 < tried {
		t.Errorf("only %d sets of %d held", held, tried)
	}
}

// TestBendingBalances: the supports hold the load and its moment, whatever the spans.
func TestBendingBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := MastBending{Load: rapid.Float64Range(0.001, 1).Draw(t, "load")}
		height := 0.0
		for range rapid.IntRange(2, 7).Draw(t, "supports") {
			b.Supports = append(b.Supports, height)
			height += rapid.Float64Range(500, 8000).Draw(t, "span")
		}
		b.Top = b.Supports[len(b.Supports)-1] + rapid.Float64Range(0, 3000).Draw(t, "over")
		r, err := b.Reckon()
		if err != nil {
			t.Fatal(err)
		}
		sum, about := 0.0, 0.0
		for i, f := range r.Reactions {
			sum, about = sum+f, about+f*b.Supports[i]
		}
		whole := b.Load * b.Top
		if math.Abs(sum-whole) > 1e-9*whole || math.Abs(about-whole*b.Top/2) > 1e-9*whole*b.Top {
			t.Fatalf("reactions %v of %+v leave %g N and %g N mm", r.Reactions, b, sum-whole, about-whole*b.Top/2)
		}
		for i := range b.Supports {
			if at := r.at(b.Supports[i]); math.Abs(at-r.AtSupports[i]) > 1e-6*whole*b.Top {
				t.Fatalf("the reactions make %g over support %d, the moments say %g", at, i+1, r.AtSupports[i])
			}
		}
	})
}

// at is the moment at a height by the loads above it.
func (r MastBendingResult) at(height float64) float64 {
	over := r.of.Top - height
	m := -r.of.Load * over * over / 2
	for i, f := range r.Reactions {
		if s := r.of.Supports[i]; s > height {
			m += f * (s - height)
		}
	}
	return m
}
