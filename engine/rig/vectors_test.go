package rig

import (
	"encoding/json"
	"math"
	"os"
	"slices"
	"testing"

	"chainwale/engine/working"
)

// near holds a value to what it should be, as a part of it.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance*max(1e-9, math.Abs(want))) {
		t.Errorf("%s is %.9g, want %.9g", what, got, want)
	}
}

// must stops a test on an error.
func must[T any](v T, err error) func(*testing.T) T {
	return func(t *testing.T) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// checkWorking holds that every step says what it is, where it comes from and how that
// is known, and that one of them has a value.
func checkWorking(t *testing.T, steps []working.Step, value float64) {
	t.Helper()
	found := false
	for _, s := range steps {
		if s.Symbol == "" || s.Formula == "" || s.Meaning == "" || s.Source.Title == "" || !slices.Contains(working.AllHowKnown(), s.Source.As) {
			t.Errorf("step %+v is incomplete", s)
		}
		found = found || s.Value == value
	}
	if !found {
		t.Errorf("no step says %g", value)
	}
}

// vectors are values worked out in another language; see the note in the file.
type vectors map[string]any

func readVectors(t *testing.T) vectors {
	t.Helper()
	src, err := os.ReadFile("testdata/vectors.json")
	if err != nil {
		t.Fatal(err)
	}
	var v vectors
	if err := json.Unmarshal(src, &v); err != nil {
		t.Fatal(err)
	}
	return v
}

// at is the number at a path of keys.
func (v vectors) at(t *testing.T, path ...string) float64 {
	t.Helper()
	var here any = map[string]any(v)
	for _, key := range path {
		m, ok := here.(map[string]any)
		if !ok {
			t.Fatalf("no %v in the vectors", path)
		}
		here = m[key]
	}
	n, ok := here.(float64)
	if !ok {
		t.Fatalf("%v in the vectors is %v", path, here)
	}
	return n
}

const loads = "rm_and_nbs_and_mast"

// exact is as near as another language's rounding.
const exact = 1e-9

func TestRightingMomentVectors(t *testing.T) {
	v := readVectors(t)
	of := func(path ...string) float64 { return v.at(t, append([]string{loads}, path...)...) }
	gm := must(StabilityMoment{Mass: 6000, GM: 1050}.Reckon())(t)
	near(t, "RM30 of GM", gm.At30/1e6, of("rm30_gm", "rm30_kNm"), exact)
	wall := must(StabilityMoment{Mass: 6000, GM: 1050, BM: 1600}.Reckon())(t)
	near(t, "RM30 wall-sided", wall.At30/1e6, of("rm30_wall", "rm30_kNm"), exact)
	inclined := must(InclinedMoment{Mass: 6000, Weight: 100, Distance: 1600, Heel: 2}.Reckon())(t)
	near(t, "GM inclined", inclined.GM/1000, of("inclining", "gm_m"), exact)
	near(t, "RM30 inclined", inclined.At30/1e6, of("inclining", "rm30_linear_kNm"), exact)
	rolled := must(RolledMoment{Mass: 6000, Beam: 3400, Period: of("roll", "T")}.Reckon())(t)
	near(t, "GM rolled", rolled.GM, 1050, exact)
	estimated := must(EstimatedMoment{Waterline: 9000}.Reckon())(t)
	near(t, "RM30 estimated", estimated.At30/1e6, of("rm30_graph", "lwl9_kNm"), 1e-9)
	for _, feet := range []struct {
		length float64
		key    string
	}{{32, "lwl32ft_kNm"}, {40, "lwl40ft_kNm"}} {
		e := must(EstimatedMoment{Waterline: feet.length * 304.8}.Reckon())(t)
		near(t, "a reading of the chart", e.At30/1e6, of("rm30_graph", feet.key), 1e-6)
	}
	crew := must(CrewMoment{People: 5, Beam: 3400, Freeboard: 1100}.Reckon())(t)
	near(t, "crew", crew.Moment/1000, of("crew", "dRM_Nm"), exact)
	near(t, "crew by statics", crew.Moment/1000, of("crew", "physics"), 0.003)
	for _, r := range []RightingMoment{gm, wall, inclined, rolled, estimated} {
		checkWorking(t, r.Working(), r.At30)
		if r.Trust == "" || !(r.Least < r.At30 && r.At30 < r.Most) || r.LoadsPlates != (r.How == "inclined") {
			t.Errorf("%+v", r)
		}
	}
	checkWorking(t, crew.Working(), crew.Moment)
}

// example is the masthead rig with one spreader that the vectors work through, N and mm.
func exampleCases(t *testing.T) LoadCasesResult {
	t.Helper()
	return must(LoadCases{RightingMoment: 30.8909475e6, Freeboard: 1100, Heights: []float64{6600, 13000}, Boom: 1500, Head: 8220, ReefCentre: 3740}.Reckon())(t)
}

func TestShroudVectors(t *testing.T) {
	v := readVectors(t)
	of := func(path ...string) float64 { return v.at(t, append([]string{loads, "nbs"}, path...)...) }
	cases := exampleCases(t)
	near(t, "T1", cases.T1/1000, of("T1"), exact)
	near(t, "T2", cases.T2/1000, of("T2"), exact)
	checkWorking(t, cases.Working(), cases.T2)
	for key, forces := range map[string][]float64{"case1": cases.Foresail, "case2": cases.ReefedMain} {
		s := Shrouds{HalfBeam: 1450, Levels: []ShroudLevel{{6600, 1050, forces[0]}, {13000, 0, forces[1]}}}
		r := must(s.Reckon())(t)
		near(t, "D2", r.Levels[1].Diagonal/1000, of(key, "D2"), exact)
		near(t, "V1", r.Levels[0].Vertical/1000, of(key, "V1"), exact)
		near(t, "C1", r.Levels[0].Spreader/1000, of(key, "C1"), exact)
		near(t, "D1", r.Levels[0].Diagonal/1000, of(key, "D1"), exact)
		near(t, "beta1", r.Levels[0].DiagonalAngle, of(key, "beta1"), exact)
		near(t, "gamma1", r.Levels[0].VerticalAngle, of(key, "gam1"), exact)
		near(t, "moment", r.HeelingMoment/1e6, of(key, "moment_lhs"), exact)
		for _, value := range []float64{r.HeldMoment, r.Levels[0].Diagonal, r.Levels[0].Vertical, r.Levels[0].Spreader, r.Levels[1].Diagonal} {
			checkWorking(t, r.Working(), value)
		}
	}
}

func TestRequiredVectors(t *testing.T) {
	v := readVectors(t)
	of := func(path ...string) float64 { return v.at(t, append([]string{loads, "nbs"}, path...)...) }
	d1, v1 := of("case2", "D1")*1000, of("case1", "V1")*1000
	for _, c := range []struct {
		role StayRole
		pull float64
		want float64
	}{
		{SingleLower, d1, of("req_break_kN", "D1_single_2_8")}, {ForeLower, d1, of("req_break_kN", "D1_double_2_5")},
		{Intermediate, of("case1", "D2") * 1000, of("req_break_kN", "D2_2_3")}, {CapShroud, v1, of("req_break_kN", "V1_3_0")},
	} {
		r := must(RequiredShroud{c.role, c.pull}.Reckon())(t)
		near(t, string(c.role), r.BreakLoad/1000, c.want, exact)
		checkWorking(t, r.Working(), r.BreakLoad)
	}
	const rm = 30.8909475e6
	af, aa := of("stays", "alpha_f"), of("stays", "alpha_a")
	for _, c := range []struct {
		stay RequiredStay
		key  string
	}{
		{RequiredStay{Role: Forestay, RightingMoment: rm, Height: 13000, Freeboard: 1100}, "Pfo"},
		{RequiredStay{Role: Backstay, RightingMoment: rm, Height: 13000, Freeboard: 1100, Angle: aa, ForestayAngle: af}, "Pa_masthead"},
		{RequiredStay{Role: InnerForestay, RightingMoment: rm, Height: 9000, Freeboard: 1100}, "Pinner_la9"},
		{RequiredStay{Role: Backstay, RightingMoment: rm, Height: 11000, Freeboard: 1100, Angle: aa, Fractional: true}, "Pa_frac_la11"},
	} {
		r := must(c.stay.Reckon())(t)
		near(t, c.key, r.BreakLoad/1000, of("stays", c.key), exact)
		checkWorking(t, r.Working(), r.BreakLoad)
	}
	k := must(ShroudTension{RightingMoment: rm, HalfBeam: 1450}.Reckon())(t)
	near(t, "PT", k.Shrouds/1000, v.at(t, loads, "skene", "PT_kN"), exact)
	// The vectors take the printed 2.78, the formula the product of the two factors.
	near(t, "mast", k.Mast/1000, v.at(t, loads, "skene", "mast_kN"), 0.002)
	near(t, "product", KinneyShrouds*KinneyStays, v.at(t, loads, "skene", "prod"), exact)
	checkWorking(t, k.Working(), k.Mast)
}

func TestMastVectors(t *testing.T) {
	v := readVectors(t)
	s := must(MastSection{Long: 170, Broad: 115, Wall: 3.2}.Reckon())(t)
	for key, got := range map[string]float64{"I_T_mm4": s.AcrossI, "W_T_mm3": s.AcrossW, "I_L_mm4": s.AlongI, "W_L_mm3": s.AlongW, "A_mm2": s.Area, "mass_kg_m": s.Mass} {
		near(t, key, got, v.at(t, loads, "section", key), exact)
	}
	checkWorking(t, s.Working(), s.AcrossW)
	for _, kn := range []string{"15", "20", "25", "30", "40", "50"} {
		speed := map[string]float64{"15": 15, "20": 20, "25": 25, "30": 30, "40": 40, "50": 50}[kn] * KnotInMetresPerSecond
		w := must(Windage{Diameter: 170, Length: 13000, Wind: speed}.Reckon())(t)
		near(t, "q", w.Pressure*1e6, v.at(t, loads, "wind", kn, "q_Pa"), exact)
		near(t, "F", w.Force, v.at(t, loads, "wind", kn, "F_N"), exact)
		near(t, "M", w.Moment/1000, v.at(t, loads, "wind", kn, "M_Nm"), exact)
		near(t, "Re", w.Reynolds, v.at(t, loads, "wind", kn, "Re"), exact)
		wire := must(Windage{Diameter: 6, Length: 1000, Wind: speed}.Reckon())(t)
		near(t, "wire", wire.Force, v.at(t, loads, "wind", kn, "wire6_N_per_m"), exact)
		checkWorking(t, w.Working(), w.Moment)
	}
	roll := must(DockRoll{MassPerLength: v.at(t, loads, "roll_dyn", "m_per_m"), Height: 13000, RollAxis: 1000, Angle: 5, Period: 3.5}.Reckon())(t)
	near(t, "roll", roll.Moment/1000, v.at(t, loads, "roll_dyn", "total"), exact)
	checkWorking(t, roll.Working(), roll.Moment)
	p := must(Partners{Modulus: s.AcrossW, Yield: 170, Height: 1700, Force: v.at(t, loads, "partners", "F"), Moment: v.at(t, loads, "partners", "M") * 1000, Wedged: true}.Reckon())(t)
	near(t, "heel", p.Heel, v.at(t, loads, "partners", "R_heel"), exact)
	near(t, "partners", p.Partners, v.at(t, loads, "partners", "R_partner"), exact)
	checkWorking(t, p.Working(), p.Partners)
}

// TestCantileverVectors: the honest wind is a third of the naive one.
func TestCantileverVectors(t *testing.T) {
	v := readVectors(t)
	s := must(MastSection{Long: 170, Broad: 115, Wall: 3.2}.Reckon())(t)
	for alloy, yield := range map[string]float64{"6063-T6": 170, "6061-T6": 240, "6082-T6": 250} {
		wind := must(Windage{Diameter: 170, Length: 13000, Wind: 1}.Reckon())(t)
		c := must(Cantilever{Section: s, Modulus: 70000, Yield: yield, Height: 13000, MassPerLength: v.at(t, loads, "roll_dyn", "m_per_m"), PerSquare: 1.4 * wind.Moment, Roll: v.at(t, loads, "roll_dyn", "total") * 1000}.Reckon())(t)
		near(t, "Hcr", c.Critical/1000, v.at(t, loads, "greenhill", "Hcr_m"), exact)
		near(t, "more", c.More, v.at(t, loads, "greenhill", "amp"), exact)
		near(t, "allowable", c.Allowable/1e6, v.at(t, "cantilever_knockdown", alloy, "Mallow_kNm"), exact)
		near(t, "gust", c.Gust/KnotInMetresPerSecond, v.at(t, "cantilever_knockdown", alloy, "V_gust_kn"), exact)
		checkWorking(t, c.Working(), c.Gust)
	}
}

func TestStayAngleVectors(t *testing.T) {
	v := readVectors(t)
	for key, deg := range map[string]float64{"5": 5, "9": 9, "12": 12, "30": 30} {
		l := must(StayLine{Foot: Point{0, 13000 * math.Tan(radians(deg)), 0}, Height: 13000}.Reckon())(t)
		near(t, "T/F", 1/l.Sideways, v.at(t, loads, "angle", key, "T_over_F"), exact)
		near(t, "P/F", l.Down/l.Sideways, v.at(t, loads, "angle", key, "P_over_F"), exact)
		near(t, "angle", l.Angle, deg, exact)
		checkWorking(t, l.Working(), l.Angle)
	}
}

// vectorRig is the rig of the vectors, turned so that y is to port, and what each stay
// may bear.
func vectorRig() []HeldStay {
	const t = 9600.0
	at := func(name string, x, y, h float64) HeldStay {
		return HeldStay{name, StayLine{Foot: Point{x, y, 0}, Height: h}, t}
	}
	return []HeldStay{
		at("cap_P", 0, 1450, 13000), at("cap_S", 0, -1450, 13000),
		at("fwdlow_P", 550, 1400, 6600), at("fwdlow_S", 550, -1400, 6600), at("aftlow_P", -550, 1400, 6600), at("aftlow_S", -550, -1400, 6600),
		at("forestay", 4200, 0, 13000), at("backstay", -6300, 0, 13000),
	}
}

// without leaves stays out by name.
func without(stays []HeldStay, names ...string) []HeldStay {
	return slices.DeleteFunc(slices.Clone(stays), func(s HeldStay) bool { return slices.Contains(names, s.Name) })
}

func TestCapacityVectors(t *testing.T) {
	v := readVectors(t)
	for _, c := range []struct {
		key string
		off []string
	}{
		{"intact", nil}, {"minus_cap_P", []string{"cap_P"}}, {"minus_cap_S", []string{"cap_S"}}, {"minus_fwdlow_P", []string{"fwdlow_P"}},
		{"minus_aftlow_S", []string{"aftlow_S"}}, {"minus_forestay", []string{"forestay"}}, {"minus_backstay", []string{"backstay"}},
		{"minus_fwdlow_P+aftlow_P", []string{"fwdlow_P", "aftlow_P"}}, {"minus_cap_P+fwdlow_P", []string{"cap_P", "fwdlow_P"}},
		{"minus_cap_P+fwdlow_P+aftlow_P", []string{"cap_P", "fwdlow_P", "aftlow_P"}}, {"minus_forestay+fwdlow_P+fwdlow_S", []string{"forestay", "fwdlow_P", "fwdlow_S"}},
		{"minus_backstay+aftlow_P+aftlow_S", []string{"backstay", "aftlow_P", "aftlow_S"}},
	} {
		r := must(Capacity{Stays: without(vectorRig(), c.off...)}.Reckon())(t)
		near(t, c.key, r.Worst/1e6, v.at(t, "staying", c.key), exact)
		checkWorking(t, r.Working(), r.Worst)
		if r.Holds != (r.Worst > 0) {
			t.Errorf("%s: %+v", c.key, r)
		}
	}
	port := without(vectorRig(), "cap_P", "fwdlow_P", "aftlow_P")
	halyard := HeldStay{"halyard", StayLine{Foot: Point{-300, 1450, 0}, Height: 12900}, 4000}
	r := must(Capacity{Stays: append(port, halyard)}.Reckon())(t)
	near(t, "halyard", r.Worst/1e6, v.at(t, "staying", "halyard_sub_port_all", "r"), exact)
}

// TestCapacityOfUnitPulls are the vectors of stays with a moment of one.
func TestCapacityOfUnitPulls(t *testing.T) {
	v := readVectors(t)
	for _, c := range []struct {
		at   []float64
		want float64
	}{
		{[]float64{0, 120, 240}, v.at(t, "staying", "three_unit_120")}, {[]float64{0, 90, 180, 270}, v.at(t, "staying", "four_unit_90")},
		{[]float64{0, 100, 200}, v.at(t, "staying", "three_0_100_200")}, {[]float64{0, 80, 160}, 0}, {[]float64{0, 180}, 0}, {[]float64{30, 210}, 0}, {[]float64{30}, 0},
	} {
		var m []vector
		for _, deg := range c.at {
			m = append(m, toward(deg))
		}
		now, _ := pushing{wind: 1}.margins(m)
		if math.Abs(now-c.want) > 1e-9 || (c.want == 0) != (now == 0) {
			t.Errorf("%v hold %g, want %g", c.at, now, c.want)
		}
	}
}

func TestSharingVectors(t *testing.T) {
	v := readVectors(t)
	const ea = 3039500.0
	stay := func(name string, x, y, rest float64) ElasticStay {
		return ElasticStay{name, StayLine{Foot: Point{x, y, 0}, Height: 13000}, ea, rest}
	}
	for _, c := range []struct {
		key   string
		force float64
	}{{"elastic", 270}, {"elastic2", 1000}} {
		// The vectors push towards y, which is to starboard there and to port here.
		s := Sharing{Stays: []ElasticStay{stay("S", 0, 1450, 3000), stay("P", 0, -1450, 3000), stay("F", 4200, 0, 4000), stay("B", -6300, 0, 1000*v.at(t, "staying", c.key, "T0", "B"))}, Push: c.force * 13000, Toward: 90}
		r := must(s.Reckon())(t)
		for i, e := range s.Stays {
			near(t, c.key+" "+e.Name, r.Pulls[i]/1000, v.at(t, "staying", c.key, "T", e.Name), 1e-6)
		}
		_, y := r.Moves(13000)
		want := map[string]float64{"elastic": 0.04728029188310848, "elastic2": 0.23375615848816783}[c.key]
		near(t, c.key+" moves", y/1000, want, 1e-6)
		if !(r.Residual < 1e-6) || (len(r.Slack) == 1) != (c.key == "elastic2") {
			t.Errorf("%s: residual %g, slack %v", c.key, r.Residual, r.Slack)
		}
		checkWorking(t, r.Working(), r.Lean)
	}
}

func TestMastPanelVectors(t *testing.T) {
	v := readVectors(t)
	of := func(key string) float64 { return v.at(t, loads, "mast", key) }
	p := must(MastPanel{Thrust: of("PT_N"), Length: 6600, SecondMoment: of("Ix_mm4_k2_5_deck")}.Reckon())(t)
	near(t, "times", p.Times, of("sf_at_3_375"), exact)
	near(t, "needs", p.Needs, of("euler_k")*of("PT_N")*6.6*6.6, exact)
	checkWorking(t, p.Working(), p.Times)
	keel := must(MastPanel{Thrust: of("PT_N"), Length: 6600, SecondMoment: 2.5 * of("PT_N") * 6.6 * 6.6}.Reckon())(t)
	near(t, "times at 2.5", keel.Times, of("sf_at_k2_5"), exact)
	if _, err := (MastPanel{Thrust: 1, Length: 1}).Reckon(); err == nil {
		t.Error("no second moment gave no error")
	}
}
