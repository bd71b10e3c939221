package drawing

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"chainwale/testdata/outside/tool"
)

// written puts cutting files of some parts into a folder and tells what a reader must
// find in each.
func written(t *testing.T) (files []string, things [][]string) {
	t.Helper()
	dir := t.TempDir()
	for _, p := range slices.Concat([]Part{chainplate(t)}, odd(t), parts(t, some(6))) {
		for i, o := range everyDXF {
			var b bytes.Buffer
			if err := DXF(&b, p, o); err != nil {
				t.Fatal(err)
			}
			name := filepath.Join(dir, fmt.Sprintf("%s-%d.dxf", p.Name, i))
			if err := os.WriteFile(name, b.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
			files, things = append(files, name), append(things, expected(t, p, o))
		}
	}
	return files, things
}

// expected are the things of a part as the readers print them.
func expected(t *testing.T, p Part, o DXFOptions) []string {
	t.Helper()
	shapes, err := p.dxfShapes(o.CutOnly)
	if err != nil {
		t.Fatal(err)
	}
	var list []string
	for _, s := range shapes {
		switch {
		case s.circle:
			list = append(list, fmt.Sprintf("circle %s %.9f %.9f %.9f", s.layer, s.at.X, s.at.Y, s.size))
		case s.word != "":
			list = append(list, fmt.Sprintf("text %s %.9f %.9f %.9f", s.layer, s.at.X, s.at.Y, s.size))
		case s.line:
			list = append(list, fmt.Sprintf("line %s %.9f %.9f %.9f %.9f", s.layer, s.contour[0].X, s.contour[0].Y, s.contour[1].X, s.contour[1].Y))
		default:
			text := fmt.Sprintf("contour %s 1 ", s.layer)
			for _, v := range s.contour {
				text += fmt.Sprintf("; %.9f %.9f %.9f", v.X, v.Y, v.Bulge)
			}
			list = append(list, text)
		}
	}
	for i := range list {
		list[i] = strings.ReplaceAll(list[i], "-0.000000000", "0.000000000")
	}
	return list
}

// TestEzdxf reads the cutting files with ezdxf: its auditor finds nothing, and what it
// finds drawn is what was meant.
func TestEzdxf(t *testing.T) {
	if testing.Short() {
		t.Skip("long, and run in full before the race detector")
	}
	python := tool.Need(t, "ezdxf")
	files, things := written(t)
	out, err := exec.Command(python, append([]string{"testdata/read_ezdxf.py"}, files...)...).CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	blocks := strings.Split(string(out), "file ")[1:]
	if len(blocks) != len(files) {
		t.Fatalf("%d of %d files were read", len(blocks), len(files))
	}
	for i, b := range blocks {
		head, rest, _ := strings.Cut(b, "\n")
		version := "AC1009"
		if i%2 == 1 {
			version = "AC1015"
		}
		if want := version + " units 4 errors 0 fixes 0"; head != want {
			t.Errorf("%s: %s, want %s", filepath.Base(files[i]), head, want)
		}
		compareThings(t, files[i], rest, things[i])
	}
}

// TestDxflib reads them with a reader in C++.
func TestDxflib(t *testing.T) {
	if testing.Short() {
		t.Skip("long, and run in full before the race detector")
	}
	tool.Need(t, "dxflib")
	reader := filepath.Join(t.TempDir(), "reader")
	if out, err := exec.Command("g++", "-o", reader, "testdata/read_dxflib.cpp", "-ldxflib").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	files, things := written(t)
	out, err := exec.Command(reader, files...).Output()
	if err != nil {
		t.Fatal(err)
	}
	blocks := strings.SplitAfter(string(out), "end\n")
	if len(blocks) != len(files)+1 {
		t.Fatalf("%d of %d files were read", len(blocks)-1, len(files))
	}
	for i := range files {
		compareThings(t, files[i], strings.TrimSuffix(blocks[i], "end\n"), things[i])
	}
}

func compareThings(t *testing.T, file, printed string, want []string) {
	t.Helper()
	got := strings.Split(strings.TrimSpace(strings.ReplaceAll(printed, "-0.000000000", "0.000000000")), "\n")
	if !slices.Equal(got, want) {
		t.Errorf("%s: it reads\n%s\nwant\n%s", filepath.Base(file), strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}
