package table

import (
	"fmt"
	"math"
	"slices"
	"sync"

	"chainwale/engine/working"
)

// ThreadRow is a thread size.
type ThreadRow struct {
	// Name is the designation ("3/8-16 UNC", "M10"), Series "ISO coarse", "UNC" or "UNF".
	Name, Series string
	// Diameter and Pitch are in mm.
	Diameter, Pitch float64
	// StressArea is the nominal tensile stress area, Root the area at the root of the thread (NaN where the table gives none), mm2.
	StressArea, Root float64
	Source           working.Source
}

// Shank is the area of the plain shank, mm2.
func (t ThreadRow) Shank() float64 { return math.Pi / 4 * t.Diameter * t.Diameter }

// BoltGradeRow is what a bolt grade promises.
type BoltGradeRow struct {
	// Name is the marking ("A4-70"), Metal the family of metals it is made of ("316").
	Name, Metal, Standard string
	// Ultimate and Yield (0.2 % offset) are minima in MPa.
	Ultimate, Yield float64
	// ElongationDiameters is the least elongation after fracture in bolt diameters, NaN where the grade gives it otherwise.
	ElongationDiameters float64
	// Smallest and Largest bound the bolt diameter in mm.
	Smallest, Largest float64
	Source            working.Source
}

type boltTable struct {
	threads []ThreadRow
	thread  *index[int]
	grades  []BoltGradeRow
	grade   *index[int]
}

var bolts = sync.OnceValues(loadBolts)

func loadBolts() (*boltTable, error) {
	t := &boltTable{thread: newIndex[int]("thread"), grade: newIndex[int]("bolt grade")}
	var threadNames, gradeNames [][]string
	var err error
	t.threads, err = readRows("threads.csv", func(r *row) ThreadRow {
		threadNames = append(threadNames, append([]string{r.text("name")}, r.list("names")...))
		return ThreadRow{Name: r.text("name"), Series: r.text("series"), Diameter: r.needed("diameter"), Pitch: r.needed("pitch"),
			StressArea: r.needed("stress_area"), Root: r.number("root"), Source: r.source("source", "known", "stress area")}
	})
	if err != nil {
		return nil, err
	}
	t.grades, err = readRows("grades.csv", func(r *row) BoltGradeRow {
		gradeNames = append(gradeNames, append([]string{r.text("name")}, r.list("names")...))
		r.known("size_known")
		return BoltGradeRow{Name: r.text("name"), Metal: r.text("metal"), Standard: r.text("standard"), Ultimate: r.needed("ultimate"), Yield: r.needed("yield"),
			ElongationDiameters: r.number("elongation_diameters"), Smallest: r.needed("smallest"), Largest: r.needed("largest"), Source: r.source("source", "known", "bolt strength")}
	})
	if err != nil {
		return nil, err
	}
	if err := addAll(t.thread, threadNames); err != nil {
		return nil, err
	}
	return t, addAll(t.grade, gradeNames)
}

// addAll gives each row all of its names; spellings that come to the same are passed over.
func addAll(x *index[int], names [][]string) error {
	for i, all := range names {
		for n, name := range all {
			if at, ok := x.byName[plain(name)]; ok && n > 0 && at == i {
				continue
			}
			if err := x.add(name, i); err != nil {
				return err
			}
		}
	}
	return nil
}

// Thread looks a thread up by its designation: "M10", "3/8-16 UNC", "3/8 in UNC".
func Thread(designation string) (ThreadRow, error) {
	t, err := bolts()
	if err != nil {
		return ThreadRow{}, err
	}
	i, err := t.thread.find(designation)
	if err != nil {
		return ThreadRow{}, err
	}
	return t.threads[i], nil
}

// Threads are all rows, in the order of the file.
func Threads() ([]ThreadRow, error) {
	t, err := bolts()
	if err != nil {
		return nil, err
	}
	return slices.Clone(t.threads), nil
}

// BoltGrade looks a grade up by its marking: "A4-70", "F593G", "8.8". A metal
// without a class ("316", "A4") is its softest bolt.
func BoltGrade(name string) (BoltGradeRow, error) {
	t, err := bolts()
	if err != nil {
		return BoltGradeRow{}, err
	}
	i, err := t.grade.find(name)
	if err != nil {
		return BoltGradeRow{}, err
	}
	return t.grades[i], nil
}

// BoltGradeAt is BoltGrade for a bolt of a diameter in mm. A bolt thicker than its
// ISO 3506-1 class reaches counts as class 50 unless a certificate says otherwise;
// any other bolt outside its grade's sizes is an error.
func BoltGradeAt(name string, diameter float64) (BoltGradeRow, error) {
	g, err := BoltGrade(name)
	if err != nil {
		return g, err
	}
	if diameter >= g.Smallest && diameter <= g.Largest {
		return g, nil
	}
	if g.Standard == "ISO 3506-1" && diameter > g.Largest {
		soft, err := BoltGrade(g.Name[:3] + "50")
		if err == nil && diameter <= soft.Largest {
			return soft, nil
		}
	}
	return BoltGradeRow{}, fmt.Errorf("%s holds for bolts of %g to %g mm, not for %g mm", g.Name, g.Smallest, g.Largest, diameter)
}

// BoltGrades are all rows, in the order of the file.
func BoltGrades() ([]BoltGradeRow, error) {
	t, err := bolts()
	if err != nil {
		return nil, err
	}
	return slices.Clone(t.grades), nil
}
