package plan

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"time"
)

func show(src string) {
	p, ps, err := Parse("p.yaml", []byte(src))
	fmt.Println("-----", p != nil, err)
	for _, x := range ps {
		fmt.Printf("   %d:%d %s | %s | %s\n", x.At.Line, x.At.Column, x.At.Pointer, x.Message, x.Expected)
	}
}
func TestZZ(t *testing.T) {
	src, _ := os.ReadFile("testdata/grey-wagtail.yaml")
	for range 3 {
		t0 := time.Now()
		show(string(src))
		fmt.Println(time.Since(t0))
	}
	p, _, _ := Parse("x/g.yaml", src)
	fmt.Printf("%+v\n", p)
	r := func(a, b string) { fmt.Println(a, "→", b); show(strings.Replace(string(src), a, b, 1)) }
	r("thickness:", "thicknes:")
	r("thickness: [6.35 mm, 6.3 mm]", "thickness: 6")
	r("thickness: [6.35 mm, 6.3 mm]", "thickness: [6.35 mm, 6, 3 N]")
	r("thickness: [6.35 mm, 6.3 mm]", "thickness: 0 mm")
	r("thickness: [6.35 mm, 6.3 mm]", "thickness:")
	r("thickness: [6.35 mm, 6.3 mm]", "thickness: []")
	r("thickness: [6.35 mm, 6.3 mm]", "thickness: {a: b}")
	r("thickness: [6.35 mm, 6.3 mm]", "thickness: -6 mm")
	r("chainwale: 1", "chainwale: 2")
	r("chainwale: 1", "chainwale: 010")
	r("chainwale: 1", "chainwale: 0x10")
	r("chainwale: 1", "chainwale: 1_000")
	r("chainwale: 1", "chainwale: '1'")
	r("chainwale: 1", "chainwal: 1")
	r("chainwale: 1 ", "")
	r("state: kept", "state: Kept")
	r("state: kept", "")
	r("  name: Grey Wagtail", "")
	r("  name: Grey Wagtail", "  name: ''")
	r("  name: Grey Wagtail", "  name: null")
	r("toggle: yes", "toggle: maybe")
	r("toggle: yes", "toggle: [yes]")
	r("serves: [cap-shroud]", "serves: cap-shroud")
	r("serves: [cap-shroud]", "serves: [cap-shroud, cap-shroud-port]")
	r("serves: [cap-shroud]", "serves: [cap-shrod]")
	r("serves: [forestay]", "serves: [cap-shroud]")
	r("installed: 1984", "installed: 1984-13")
	r("installed: 1984", "installed: 2021-02-30")
	r("installed: 1984", "installed: 5/1/1984")
	r("installed: 1984", "installed: [1984]")
	r("certificate: 20411", "metal: 316")
	r(", certificate: 20411", "")
	r("end: round", "end: square")
	r("along: 140 mm", "along: 340 mm")
	r("across: 0 mm", "across: 20 mm")
	r("diameter: 13.1 mm", "diameter: 39 mm")
	r("along: 19 mm", "along: 6 mm")
	r("between: [316, silicon bronze]", "between: [316]")
	r("between: [316, silicon bronze]", "between: [316, '', x]")
	r("id: forestay", "id: cap-shroud-port")
	r("id: forestay", "id: cap-shroud")
	r("id: forestay", "id: Fore Stay")
	r("fitting: cap-plate-port", "fitting: cap-plat")
	r("stays:", "stay:")
	r("boat:", "boot:")
	r("yield: 205", "yield: 905")
	r("boat:", "boat: x\nfoo:")
	r("stays:", "stays: x\nfoo:")
	r("fork: { opening: 14.5 mm, cheek: 6 mm }", "fork: 14 mm")
	r("in_plane: 4 deg", "in_plane: 94 deg")
	r("break_load: 47.2 kN", "break_load: [47.2 kN]")
	r("packs: [chainplates]", "packs: []")
	r("role: cap shroud", "role: shroud")
}
