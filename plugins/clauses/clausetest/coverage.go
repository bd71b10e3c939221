package clausetest

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"chainwale/engine/standard"
)

// Coverage holds a standard's table of clauses in step with the package in a folder:
// a file that makes a clause makes one, the standard declares it, and each clause that
// it declares as covered has a file and derives a fact.
func Coverage(t testing.TB, s standard.Standard, dir string) {
	t.Helper()
	d := describe(t, s)
	files := clauseFiles(t, dir)
	derived := map[string]bool{}
	for _, table := range d.Tables {
		for _, f := range table.Derives {
			derived[f.Clause] = true
		}
	}
	left := 0
	for _, c := range d.Clauses {
		if !c.Covered {
			left++
			continue
		}
		if files[c.Clause] == "" {
			t.Errorf("clause %s is declared, and no file makes it", c.Clause)
		}
		if !derived[c.Clause] {
			t.Errorf("clause %s is declared as covered and derives nothing", c.Clause)
		}
		delete(files, c.Clause)
	}
	for clause, file := range files {
		t.Errorf("%s makes clause %s, which the standard does not declare", file, clause)
	}
	if len(derived) == 0 || left == 0 {
		t.Errorf("%d clauses derive something and %d are left out: neither can be none", len(derived), left)
	}
}

// clauseFiles are the files of a package that make a clause, by the clause's number.
func clauseFiles(t testing.TB, dir string) map[string]string {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(dir, "*.go"))
	if err != nil {
		t.Fatal(err)
	}
	files := map[string]string{}
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		made := clausesMade(parsed)
		if len(made) > 1 {
			t.Errorf("%s makes %d clauses: a file makes one", name, len(made))
		}
		for _, clause := range made {
			if files[clause] != "" {
				t.Errorf("clause %s is made in %s and in %s", clause, files[clause], name)
			}
			files[clause] = name
			explained(t, name, parsed)
		}
	}
	return files
}

// clausesMade are the numbers of the clauses that a file makes: what stands as Clause
// in a literal of clauses.Clause.
func clausesMade(file *ast.File) (made []string) {
	ast.Inspect(file, func(n ast.Node) bool {
		literal, ok := n.(*ast.CompositeLit)
		if !ok {
			return true
		}
		if of, ok := literal.Type.(*ast.SelectorExpr); !ok || of.Sel.Name != "Clause" {
			return true
		}
		for _, e := range literal.Elts {
			if number, ok := numberOf(e); ok {
				made = append(made, number)
			}
		}
		return true
	})
	return made
}

// numberOf is a clause's number, where an element of a literal says it.
func numberOf(e ast.Expr) (string, bool) {
	pair, ok := e.(*ast.KeyValueExpr)
	if !ok {
		return "", false
	}
	key, isName := pair.Key.(*ast.Ident)
	text, isText := pair.Value.(*ast.BasicLit)
	if !isName || !isText || key.Name != "Clause" {
		return "", false
	}
	number, err := strconv.Unquote(text.Value)
	return number, err == nil
}

// explained holds that the function which makes a clause says what it must.
func explained(t testing.TB, name string, file *ast.File) {
	t.Helper()
	for _, d := range file.Decls {
		f, ok := d.(*ast.FuncDecl)
		if !ok || f.Recv != nil || f.Type.Results == nil || len(f.Type.Results.List) != 1 {
			continue
		}
		if of, ok := f.Type.Results.List[0].Type.(*ast.SelectorExpr); !ok || of.Sel.Name != "Clause" {
			continue
		}
		for _, lacks := range unexplained(f.Doc.Text()) {
			t.Errorf("%s: the comment of %s %s", name, f.Name.Name, lacks)
		}
		return
	}
	t.Errorf("%s makes a clause outside a function that gives one", name)
}
