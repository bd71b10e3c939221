package drawing

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"syscall"
	"testing"
	"time"
)

// processorTime is what this program has used of the processors so far, so that a busy
// machine does not show.
func processorTime(b *testing.B) time.Duration {
	var used syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &used); err != nil {
		b.Fatal(err)
	}
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}

// writers are all files of a part, by what their names end in.
var writers = []struct {
	ending string
	write  func(io.Writer, Part) error
}{
	{"-r12.dxf", func(w io.Writer, p Part) error { return DXF(w, p, DXFOptions{Version: R12}) }},
	{"-r2000.dxf", func(w io.Writer, p Part) error { return DXF(w, p, DXFOptions{Version: R2000}) }},
	{"-cut-r12.dxf", func(w io.Writer, p Part) error { return DXF(w, p, DXFOptions{Version: R12, CutOnly: true}) }},
	{"-cut-r2000.dxf", func(w io.Writer, p Part) error { return DXF(w, p, DXFOptions{Version: R2000, CutOnly: true}) }},
	{".svg", SVG},
	{"-folded.svg", FoldedSVG},
	{"-drawing.pdf", func(w io.Writer, p Part) error { return DrawingPDF(w, p, PDFOptions{}) }},
	{"-template.pdf", func(w io.Writer, p Part) error { return TemplatePDF(w, p, TemplateOptions{}) }},
}

// BenchmarkWriters times each kind of file over 200 parts.
func BenchmarkWriters(b *testing.B) {
	list := parts(b, 200)
	for _, w := range writers {
		b.Run(w.ending, func(b *testing.B) {
			length, begin := 0, processorTime(b)
			for b.Loop() {
				length = 0
				for _, p := range list {
					var buffer bytes.Buffer
					if err := w.write(&buffer, p); err != nil {
						b.Fatal(err)
					}
					length += buffer.Len()
				}
			}
			b.ReportMetric(float64((processorTime(b)-begin).Microseconds())/float64(b.N*len(list)), "cpu-us/file")
			b.ReportMetric(float64(length)/float64(len(list)), "bytes/file")
		})
	}
}

// BenchmarkFolder writes all files of 200 parts into a folder, and says how many times
// as long that takes as writing the same bytes ready-made.
func BenchmarkFolder(b *testing.B) {
	list := parts(b, 200)
	ready := map[string][]byte{}
	total := 0
	for _, p := range list {
		for _, w := range writers {
			var buffer bytes.Buffer
			if err := w.write(&buffer, p); err != nil {
				b.Fatal(err)
			}
			ready[p.Name+w.ending] = buffer.Bytes()
			total += buffer.Len()
		}
	}
	var making, copying time.Duration
	for i := 0; b.Loop(); i++ {
		dir := filepath.Join(b.TempDir(), fmt.Sprint(i))
		if err := os.MkdirAll(dir+"/ready", 0o755); err != nil {
			b.Fatal(err)
		}
		begin := processorTime(b)
		for _, p := range list {
			for _, w := range writers {
				var buffer bytes.Buffer
				if err := w.write(&buffer, p); err != nil {
					b.Fatal(err)
				}
				if err := os.WriteFile(filepath.Join(dir, p.Name+w.ending), buffer.Bytes(), 0o644); err != nil {
					b.Fatal(err)
				}
			}
		}
		making += processorTime(b) - begin
		begin = processorTime(b)
		for name, bytes := range ready {
			if err := os.WriteFile(filepath.Join(dir, "ready", name), bytes, 0o644); err != nil {
				b.Fatal(err)
			}
		}
		copying += processorTime(b) - begin
	}
	b.ReportMetric(float64(making)/float64(copying), "x-ready-made")
	b.ReportMetric(making.Seconds()*1000/float64(b.N*len(list)), "cpu-ms/part")
	b.ReportMetric(float64(total)/float64(len(list)), "bytes/part")
}
