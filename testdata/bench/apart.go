package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// apartRounds is how often the fleet of a thousand fittings is judged each way.
const apartRounds = 7

// apartRuns judges plans with a thousand fittings by four standards, in the program
// and as processes of their own.
func apartRuns(dir string) ([]*run, error) {
	fleet := filepath.Join(dir, "thousand")
	if err := os.MkdirAll(fleet, 0o755); err != nil {
		return nil, err
	}
	for i := range 2 {
		if err := os.WriteFile(filepath.Join(fleet, fmt.Sprintf("%d.yaml", i)), []byte(manyFittings(i, 250)), 0o644); err != nil {
			return nil, err
		}
	}
	judge := []string{filepath.Join(dir, "chainwale"), "fleet", fleet, "--on", "2026-11-25", "--as", "json"}
	for _, id := range []string{"en-1993-1-8", "aisc-360", "asme-bth-1", "air-force-lug"} {
		judge = append(judge, "--standard", id)
	}
	return []*run{
		{name: "1,000 fittings by four standards", args: judge},
		{name: "the same, apart", args: append(append([]string{}, judge...), "--apart")},
	}, nil
}

// manyFittings is a plan with so many pairs of chainplates, each with its own wire.
func manyFittings(boat, pairs int) string {
	var stays, fittings strings.Builder
	for i := range pairs {
		fmt.Fprintf(&stays, `  - id: s%d
    role: cap shroud
    side: both
    wire: { construction: 1x19, metal: 316, diameter: 7 mm }
    pin: { diameter: 12.7 mm, metal: 316 }
    fork: { opening: 14.5 mm, cheek: 6 mm }
    lean: { in_plane: 2 deg, out_of_plane: 1 deg }
`, i)
		fmt.Fprintf(&fittings, `  - id: p%d
    state: kept
    kind: chainplate
    side: both
    serves: [s%d]
    metal: { name: 316L }
    thickness: %d mm
    outline: { width: %d mm, length: 420 mm }
    holes:
      - { role: pin, diameter: 13 mm, along: %d mm }
      - { role: bolt, diameter: 10.5 mm, along: 160 mm }
      - { role: bolt, diameter: 10.5 mm, along: 220 mm }
      - { role: bolt, diameter: 10.5 mm, along: 280 mm }
`, i, i, 8+i%5, 45+i%7, 22+i%4)
	}
	return fmt.Sprintf("chainwale: 1\nboat: { name: Thousand %d, waters: coastal, climate: temperate }\nstays:\n%sfittings:\n%s", boat, stays.String(), fittings.String())
}

// printApart prints how the two ways compare.
func printApart(runs []*run) {
	fmt.Printf("\nStandards as processes of their own, median of %d rounds\n\n", apartRounds)
	w := table("program", "ms", "times in the program", "ms of processor")
	for _, r := range runs {
		row(w, r.name, ms(median(r.took)), ratio(median(r.took), median(runs[0].took)), ms(median(r.worked)))
	}
	w.Flush()
	fmt.Println("\nwanted: apart at most 1.5 times in the program")
}
