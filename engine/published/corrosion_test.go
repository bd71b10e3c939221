package published

import (
	"chainwale/engine/corrosion"
	"chainwale/engine/quantity"
	"chainwale/engine/table"
)

// corrosionRunners are the formulas of engine/corrosion.
var corrosionRunners = map[string]runner{
	"pitting-resistance":          runPitting,
	"pitting-resistance-of-metal": runPittingOf,
	"couple":                      runCouple,
}

func runPitting(in *inputs) results {
	share := func(name string) float64 { return 100 * in.or(name, quantity.Bare, 0) }
	r := ok(corrosion.PittingResistance{Chromium: share("cr"), Molybdenum: share("mo"), Nitrogen: share("n"), Tungsten: share("w")}.Reckon())(in)
	return results{"pren": bare(r.PREN)}
}

func runPittingOf(in *inputs) results {
	m := ok(table.MetalNamed(in.word("metal")))(in)
	return results{"pren": bare(ok(corrosion.PittingOf(m))(in).PREN)}
}

func runCouple(in *inputs) results {
	exposure := ok(corrosion.ExposureNamed(in.word("exposure")))(in)
	c := ok(corrosion.CoupleOf(in.word("a"), in.word("b"), exposure))(in)
	r := ok(c.Reckon())(in)
	return results{"difference": volts(r.Difference), "worst": volts(r.Worst), "anode": r.Anode, "verdict": string(r.Verdict)}
}
