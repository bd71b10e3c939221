package fleet

// spoil makes one or two of the faults that boats and plans have: of some the rules
// tell, others the plan's reader.
func (b *boat) spoil() {
	for range 1 + b.r.IntN(2) {
		faults[b.r.IntN(len(faults))](b)
	}
}

// faults are what goes wrong.
var faults = []func(*boat){
	func(b *boat) { b.onStay("pin", "measured", "12.1 mm") },
	func(b *boat) { b.onStay("fork", "opening", nil) },
	func(b *boat) { b.onStay("wire", "diameter", "10 mm") },
	func(b *boat) { b.onStay("installed", "", "2004") },
	func(b *boat) { b.onStay("toggle", "", false) },
	func(b *boat) { b.onStay("role", "", "cap shrowd") },
	func(b *boat) { b.onStay("pin", "diameter", "14,3 mm") },
	func(b *boat) { b.onFitting("thickness", "", "4 mm") },
	func(b *boat) { b.onFitting("thickness", "", nil) },
	func(b *boat) { b.onFitting("metal", "name", "304") },
	func(b *boat) { b.onFitting("installed", "", "1984") },
	func(b *boat) { b.onFitting("installed", "", nil) },
	func(b *boat) { b.onFitting("outline", "width", "28 mm") },
	func(b *boat) { b.onFitting("serves", "", list{"cap-shroud-plate"}) },
	func(b *boat) { b.onFitting("next_look", "", "20288") },
	func(b *boat) { b.inMounting("host", "found", "rotten") },
	func(b *boat) { b.inMounting("host", "found", "not looked at") },
	func(b *boat) { b.inMounting("bolts", "grade", nil) },
	func(b *boat) { b.inMounting("bolts", "thread", "1/4-20 UNC") },
	func(b *boat) { b.inMounting("glassed_in", "", true) },
	func(b *boat) { b.records[b.r.IntN(len(b.records))] = b.seen("crack", "seen") },
	func(b *boat) { b.records[b.r.IntN(len(b.records))] = b.seen("rust_weep", "seen") },
	func(b *boat) { b.records[b.r.IntN(len(b.records))] = b.seen("fitting", "mizzen-plate") },
	func(b *boat) { b.contacts[0] = b.joint("between", list{"aluminium", "316"}) },
}

func (b *boat) onStay(key, below string, value any) { changeOne(b, b.stays, key, below, value) }

func (b *boat) onFitting(key, below string, value any) { changeOne(b, b.fittings, key, below, value) }

func (b *boat) inMounting(key, below string, value any) {
	i := b.r.IntN(len(b.fittings))
	mounting := changed(b.fittings[i].get("mounting").(group), key, below, value)
	b.fittings[i] = b.fittings[i].with("mounting", mounting)
}

func changeOne(b *boat, entries []group, key, below string, value any) {
	i := b.r.IntN(len(entries))
	entries[i] = changed(entries[i], key, below, value)
}

// changed sets a value, or the one below it; nil takes it out.
func changed(g group, key, below string, value any) group {
	switch {
	case below != "":
		inner, ok := g.get(key).(line)
		if !ok {
			return g
		}
		return g.with(key, line(changed(group(inner), below, "", value)))
	case value == nil:
		return g.without(key)
	}
	return g.with(key, value)
}

func (b *boat) seen(key, value string) line {
	record := b.records[b.r.IntN(len(b.records))].(line)
	return line(group(record).with("id", "later-look").with(key, value))
}

func (b *boat) joint(key string, value any) line {
	return line(group(b.contacts[0].(line)).with(key, value))
}
