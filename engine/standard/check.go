package standard

import (
	"io/fs"
	"path"
	"slices"
	"strings"
)

// What a standard says is checked before any of it is used, alike for one in the
// process and one apart. The checks give a *Fault without the standard's name, since
// whoever asked knows it.

// CheckDescription tells why a declaration can't be used: it is of another
// contract, a name is no name, a unit is not canonical, something is declared twice
// or leans on what is not declared.
func CheckDescription(d Description) error {
	if err := CheckContract(d.Contract); err != nil {
		return err
	}
	err := firstError(
		checkName("id", d.ID, idPattern, "en-1993-1-8"),
		checkName("prefix", d.Prefix, namePattern, "en1993"),
		CheckText("title", d.Title), CheckText("edition", d.Edition), CheckText("publisher", d.Publisher),
	)
	switch {
	case err != nil:
		return err
	case slices.Contains(reserved, d.Prefix):
		return broken("its prefix %s is a word of the rules' own language", d.Prefix)
	case d.Basis != Ultimate && d.Basis != Design:
		return broken("its basis is %+q, neither %s nor %s", shortened(string(d.Basis)), Ultimate, Design)
	}
	covered, err := checkClauses(d.Clauses)
	if err != nil {
		return err
	}
	if err := checkTables(d.Tables, covered); err != nil {
		return err
	}
	return checkPack(d.Pack)
}

// checkClauses gives the clauses that are covered.
func checkClauses(clauses []Clause) (map[string]bool, error) {
	covered := map[string]bool{}
	for _, c := range clauses {
		if err := firstError(CheckText("clause", c.Clause), CheckText("reason at clause "+shortened(c.Clause), c.Why)); err != nil {
			return nil, err
		}
		if _, again := covered[c.Clause]; again {
			return nil, broken("it lists clause %s twice", c.Clause)
		}
		covered[c.Clause] = c.Covered
	}
	return covered, nil
}

func checkTables(tables []Table, covered map[string]bool) error {
	if len(tables) == 0 {
		return broken("it has no table, so it derives nothing")
	}
	var kinds []string
	for _, t := range tables {
		err := checkName("kind", t.Kind, namePattern, "landing")
		if err == nil {
			err = t.check(covered)
		}
		if err != nil {
			return err
		}
		kinds = append(kinds, t.Kind)
	}
	if kind, again := twice(kinds); again {
		return broken("it has two tables of the kind %s", kind)
	}
	return nil
}

func (t Table) check(covered map[string]bool) error {
	var reads, derives []string
	for _, r := range t.Reads {
		if err := r.check(); err != nil {
			return err
		}
		reads = append(reads, r.Name)
	}
	for _, d := range t.Derives {
		if err := d.check(reads, covered); err != nil {
			return err
		}
		derives = append(derives, d.Name)
	}
	if name, again := twice(reads); again {
		return broken("it reads %s of a %s twice", name, t.Kind)
	}
	if name, again := twice(derives); again {
		return broken("it derives %s of a %s twice", name, t.Kind)
	}
	if len(derives) == 0 {
		return broken("its table of the kind %s derives nothing", t.Kind)
	}
	for _, d := range t.Derives {
		if len(d.From) == 0 {
			return broken("its fact %s names nothing that it comes from, so it would be known whatever is unknown", d.Name)
		}
	}
	return nil
}

func (r Read) check() error {
	if err := checkName("read", r.Name, readPattern, "stay.break_load"); err != nil {
		return err
	}
	switch {
	case r.Type != Number && r.Type != Word && r.Type != YesNo:
		return broken("it reads %s as %+q, which is none of %s, %s, %s", r.Name, shortened(string(r.Type)), Number, Word, YesNo)
	case r.Type != Number && r.Unit != "":
		return broken("it reads %s in %+q, but a %s has no unit", r.Name, shortened(r.Unit), r.Type)
	}
	return checkUnit("its read "+r.Name, r.Unit)
}

func (d Derive) check(reads []string, covered map[string]bool) error {
	err := checkName("fact", d.Name, namePattern, "plate_net")
	if err == nil {
		err = firstError(checkUnit("its fact "+d.Name, d.Unit), CheckText("meaning of "+d.Name, d.Meaning))
	}
	switch {
	case err != nil:
		return err
	case !covered[d.Clause]:
		return broken("it derives %s by clause %+q, which is not among the clauses that it covers", d.Name, shortened(d.Clause))
	case d.Bears && d.Unit != "N":
		return broken("its fact %s is to be a load of the wire, but is in %q and not in N", d.Name, d.Unit)
	}
	for _, name := range d.From {
		if !slices.Contains(reads, name) {
			return broken("its fact %s comes from %+q, which the table does not read", d.Name, shortened(name))
		}
	}
	if name, again := twice(d.From); again {
		return broken("its fact %s comes from %s twice", d.Name, name)
	}
	return nil
}

// checkPack tells why files don't make a pack. What stands in them is for whoever
// loads the pack.
func checkPack(files []File) error {
	var paths []string
	for _, f := range files {
		if !fs.ValidPath(f.Path) || f.Path == "." || strings.Contains(f.Path, `\`) || CheckText("path", f.Path) != nil {
			return broken("its pack has a file %+q, which is no path within a pack", shortened(f.Path))
		}
		paths = append(paths, f.Path)
	}
	if name, again := twice(paths); again {
		return broken("its pack has the file %s twice", name)
	}
	for _, p := range paths {
		for dir := path.Dir(p); dir != "."; dir = path.Dir(dir) {
			if slices.Contains(paths, dir) {
				return broken("its pack has %s both as a file and as a folder", dir)
			}
		}
	}
	if !slices.Contains(paths, "pack.yaml") {
		return broken("its pack has no pack.yaml, so nothing would judge what it derives")
	}
	return nil
}
