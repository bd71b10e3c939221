package plan

import (
	"bytes"
	"strings"
	"testing"

	"chainwale/engine/plan/document"
	"chainwale/schema"
)

// twentyKB is a plan of 20 KB: the wagtail with more fittings.
func twentyKB(b *testing.B) []byte {
	src := readWagtail(b)
	_, rest, _ := strings.Cut(src, "fittings:\n")
	plate, _, _ := strings.Cut(rest, "  - id: mast-tang")
	plate = strings.Replace(plate, "    serves: [cap-shroud]\n", "", 1)
	plate = strings.Replace(plate, "stay: cap-shroud, ", "", 1)
	var more bytes.Buffer
	for i := 0; len(src)+more.Len() < 20_000; i++ {
		more.WriteString(strings.Replace(plate, "cap-plate", "plate-"+strings.Repeat("i", i+1), 1))
	}
	return []byte(strings.Replace(src, "fittings:\n", "fittings:\n"+more.String(), 1))
}

func BenchmarkParse(b *testing.B) {
	src := twentyKB(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, problems, err := Parse("p.yaml", src); err != nil || len(problems) > 0 {
			b.Fatal(problems, err)
		}
	}
}

func BenchmarkRead(b *testing.B) {
	src := twentyKB(b)
	for b.Loop() {
		document.Read("p.yaml", src)
	}
}

func BenchmarkCompileSchema(b *testing.B) {
	for b.Loop() {
		if _, err := document.Compile(schema.Plan()); err != nil {
			b.Fatal(err)
		}
	}
}
