package fleet

import (
	"fmt"
	"math/rand/v2"
	"strings"
)

// Names and places are invented. No two boats have one name: each has her number in it.
var (
	firstNames  = []string{"Marsh", "Grey", "Silver", "Morning", "Little", "Northern", "Old", "Quiet", "Copper", "Winter", "Salt", "Blue"}
	secondNames = []string{"Wagtail", "Lantern", "Heron", "Tern", "Petrel", "Sandpiper", "Bell", "Harbour", "Thistle", "Drift", "Lapwing", "Otter"}
	havens      = []string{"Ennerhaven", "Tolsey Creek", "Port Marrow", "Skelwick", "Dunmouth Pool", "Farrow Quay"}
	people      = []string{"owner", "yard", "surveyor", "rigger"}
)

// boat is one boat: her class's drawings, and what is hers.
type boat struct {
	r          *rand.Rand
	class      class
	name, file string
	head       group
	stays      []group
	fittings   []group
	contacts   list
	records    list
}

func newBoat(r *rand.Rand, i int, form Form) *boat {
	b := &boat{r: r, class: classes[r.IntN(len(classes))]}
	b.name = pick(r, firstNames) + " " + pick(r, secondNames)
	b.file = fmt.Sprintf("%s-%06d", strings.ToLower(strings.ReplaceAll(b.name, " ", "-")), i)
	b.head = group{{"name", fmt.Sprintf("%s %d of %s", b.name, i, pick(r, havens))}, {"class", b.class.name},
		{"waters", pick(r, []string{"coastal", "coastal", "fresh"})}, {"climate", "temperate"},
		{"mast_step", "keel-stepped"}, {"units", pick(r, []string{"metric", "metric", "metric", "us"})}}
	fitted := fmt.Sprint(2018 + r.IntN(7))
	for _, s := range b.class.rig() {
		b.stays = append(b.stays, b.stay(s, fitted))
		b.fittings = append(b.fittings, b.fitting(s))
	}
	b.touch()
	b.look(2021, 2024)
	if form == YAML { // without quotes and braces it takes another winter to as many bytes
		b.look(2019)
	}
	return b
}

func pick(r *rand.Rand, of []string) string { return of[r.IntN(len(of))] }

// stay is a wire with what was measured on it.
func (b *boat) stay(s stand, fitted string) group {
	w := wires[b.class.diameter(s)]
	pin := line{{"diameter", mm(w.pin)}, {"measured", b.readings(w.pin - 0.08)}, {"metal", "17-4PH H1025"}}
	return b.class.stay(s).with("pin", pin).with("installed", fitted)
}

// readings are one to three readings of a size.
func (b *boat) readings(size float64) any {
	var all list
	for range 1 + b.r.IntN(3) {
		all = append(all, fmt.Sprintf("%.2f mm", size+0.04*b.r.Float64()-0.02))
	}
	if len(all) == 1 {
		return all[0]
	}
	return all
}

// fitting is a plate with what was measured and seen of it.
func (b *boat) fitting(s stand) group {
	f := b.class.fitting(s)
	plate := wires[b.class.diameter(s)].plate
	mounting := f.get("mounting").(group)
	host := mounting.get("host").(line)
	mounting = mounting.with("host", append(append(line{}, host...), field{"found", "sound"}, field{"how", pick(b.r, []string{"with a spike", "by tapping", "with a spike and by tapping"})}))
	if mounting.get("through_deck") == true {
		mounting = mounting.with("slot", line{{"gap", "4 mm"}, {"edge_sealed", true}, {"sealant", "butyl"}, {"lets_go", true}, {"plastic_near", false}})
	} else {
		f = f.with("exposure", "open")
	}
	f = f.with("mounting", mounting).with("thickness", b.readings(plate))
	f = append(group{f[0], {"state", "kept"}}, f[1:]...)
	return f.with("installed", fmt.Sprint(2015+b.r.IntN(5))).with("next_look", "2028")
}

// touch lists where unlike metals touch.
func (b *boat) touch() {
	for i := range 3 {
		b.contacts = append(b.contacts, line{{"id", fmt.Sprintf("joint-%d", i+1)}, {"between", list{"316", pick(b.r, []string{"316L", "304"})}},
			{"exposure", "normal"}, {"hidden", false}, {"isolated", false}})
	}
}

// look notes what was seen of each plate in the winters that she was laid up.
func (b *boat) look(years ...int) {
	for _, year := range years {
		for _, f := range b.fittings {
			id := f.get("id").(string)
			b.records = append(b.records, line{{"id", fmt.Sprintf("winter-%d-%s", year, id)}, {"fitting", id},
				{"on", fmt.Sprintf("%d-%02d-%02d", year, 1+b.r.IntN(3), 1+b.r.IntN(28))}, {"did", "drawn and looked at"},
				{"crack", "none seen"}, {"leak", "none seen"}, {"rust_weep", "none seen"}, {"pits", "none seen"}, {"ovality", "1 %"}, {"pin_bent", "none seen"}, {"by", pick(b.r, people)}})
		}
	}
}

// plan is all that is known of her.
func (b *boat) plan() group {
	return group{{"chainwale", 1}, {"boat", b.head}, {"stays", groups(b.stays)}, {"fittings", groups(b.fittings)}, {"contacts", b.contacts}, {"records", b.records}}
}

func groups(of []group) (all list) {
	for _, g := range of {
		all = append(all, g)
	}
	return all
}

// overClass is her plan over that of her class: only what differs is written.
func (b *boat) overClass(form Form) group {
	drawn := b.class.plan()
	own := func(of []group, from string) (all list) {
		plain := drawn.get(from).(list)
		for i, g := range of {
			all = append(all, differing(g, plain[i].(group)))
		}
		return all
	}
	return group{{"chainwale", 1}, {"template", "../" + b.class.fileIn(form)}, {"boat", b.head.without("class", "mast_step")},
		{"stays", own(b.stays, "stays")}, {"fittings", own(b.fittings, "fittings")}, {"contacts", b.contacts}, {"records", b.records}}
}

// differing leaves out of an entry what its class has alike.
func differing(g, plain group) (left group) {
	for _, f := range g {
		if f.key == "id" || fmt.Sprint(plain.get(f.key)) != fmt.Sprint(f.value) {
			left = append(left, f)
		}
	}
	return left
}
