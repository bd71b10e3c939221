package quantity

import "testing"

var sink Quantity

func BenchmarkParse(b *testing.B) {
	for _, text := range []string{"6 mm", "8.6 kN", "5 1/4 in", "40 degF", "2.5 US gal", "30 KSI"} {
		b.Run(text, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				sink, _ = Parse(text)
			}
		})
	}
}
