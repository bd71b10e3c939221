package published

import (
	"chainwale/engine/quantity"
	"chainwale/engine/table"
)

// tableRunners are the look-ups of engine/table.
var tableRunners = map[string]runner{
	"metal":  runMetal,
	"wire":   runWire,
	"thread": runThread,

	"bolt-grade": runGrade,
	"clevis-pin": runClevisPin,
}

func runMetal(in *inputs) results {
	welded := in.has("welded") && in.flag("welded")
	m := ok(table.MetalFor(in.word("metal"), in.or("thickness", quantity.Length, 0), welded))(in)
	return results{"yield": stress(m.Yield), "ultimate": stress(m.Ultimate), "ultimate_max": stress(m.UltimateMax), "elongation": bare(m.Elongation / 100), "row": m.Name}
}

func runWire(in *inputs) results {
	var loads []quantity.Quantity
	construction, metal := in.word("construction"), in.word("metal")
	for _, d := range in.numbers("diameters", quantity.Length) {
		w := ok(table.Wire(construction, metal, d))(in)
		loads = append(loads, force(w.BreakLoad))
	}
	return results{"break_loads": loads}
}

func runThread(in *inputs) results {
	t := ok(table.Thread(in.word("thread")))(in)
	return results{"stress_area": area(t.StressArea), "shank": area(t.Shank()), "pitch": length(t.Pitch)}
}

func runGrade(in *inputs) results {
	g := ok(table.BoltGradeAt(in.word("grade"), in.number("diameter", quantity.Length)))(in)
	return results{"yield": stress(g.Yield), "ultimate": stress(g.Ultimate), "grade": g.Name}
}

func runClevisPin(in *inputs) results {
	p := ok(table.ClevisPin(in.number("nominal", quantity.Length)))(in)
	return results{"largest": length(p.Largest), "smallest": length(p.Smallest), "head": length(p.Head), "split_pin": length(p.SplitPin), "standard": p.Standard}
}
