package iso12215

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"sync"

	"chainwale/engine/finding"
	"chainwale/engine/plan/document"
	"chainwale/engine/working"
)

//go:embed values.schema.json
var schemaFiles embed.FS

// schema is what a file of values may hold, made when the first is read.
var schema = sync.OnceValues(func() (*document.Schema, error) {
	text, err := schemaFiles.ReadFile("values.schema.json")
	if err != nil {
		return nil, err
	}
	return document.Compile(text)
})

// values are what a user's file gives.
type values struct {
	edition string
	// from says where they come from, with the file's sum.
	from string
	// missing says why there are none, "" where there are.
	missing string
	roles   map[string]map[string]value
}

// value is one value of the file.
type value struct {
	number float64
	clause string
	at     finding.Place
}

// BadFile is a file of values with faults.
type BadFile struct{ Problems []finding.Problem }

// Error tells the first fault and how many more there are.
func (b *BadFile) Error() string {
	p := b.Problems[0]
	text := fmt.Sprintf("%s:%d:%d: %s", p.At.File, p.At.Line, p.At.Column, p.Message)
	if p.Expected != "" {
		text += "; right would be: " + p.Expected
	}
	if more := len(b.Problems) - 1; more > 0 {
		text += fmt.Sprintf(" (and %d more)", more)
	}
	return text
}

// licensed is what every clause says where there are no values.
const licensed = "the values of ISO 12215-10 are licensed and none come with the program: give a file of yours"

// readFile reads a file of values.
func readFile(name string) (*values, error) {
	none := &values{edition: "2020", from: "a file of the user's own, which was not given", missing: licensed}
	if name == "" {
		return none, nil
	}
	info, err := os.Stat(name)
	if errors.Is(err, fs.ErrNotExist) {
		none.missing = fmt.Sprintf("%s (%s is not there)", licensed, name)
		return none, nil
	}
	if err == nil && !info.Mode().IsRegular() {
		err = errors.New("it is no ordinary file") // a pipe would keep us waiting
	}
	if err != nil {
		return nil, unreadable(name, err)
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, unreadable(name, err)
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, document.MostBytes+1))
	if err != nil {
		return nil, unreadable(name, err)
	}
	return read(name, text)
}

// unreadable is a fault of the file as a whole, without the path, which the place has.
func unreadable(name string, err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		err = p.Err
	}
	return &BadFile{[]finding.Problem{{At: finding.Place{File: name, Line: 1, Column: 1}, Message: "the file can't be read: " + err.Error(), Expected: "a file of values"}}}
}

// read reads the text of a file of values.
func read(name string, text []byte) (*values, error) {
	root, problems := document.Read(name, text)
	if len(problems) > 0 {
		return nil, &BadFile{problems}
	}
	s, err := schema()
	if err != nil {
		return nil, err
	}
	if problems, err = s.Check(root); err != nil {
		return nil, err
	}
	if len(problems) > 0 {
		return nil, &BadFile{problems}
	}
	sum := sha256.Sum256(text)
	v := &values{edition: root.Member("edition").Text, from: "a file of the user's own, sha256:" + hex.EncodeToString(sum[:]), roles: map[string]map[string]value{}}
	for _, role := range root.Member("roles").Members {
		given := map[string]value{}
		for _, n := range role.Members {
			number := n.Member("value")
			given[n.Key] = value{number.Amount.Mean(), n.Member("clause").Text, number.At}
		}
		v.roles[role.Key] = given
	}
	return v, nil
}

// called are the keys of a role's values in words.
var called = map[string]string{"design_load": "design load", "plate_factor": "factor of the plate", "pin_factor": "factor of the pin"}

// find is a value for a role, or why there is none.
func (v *values) find(role, key string) (value, error) {
	if v.missing != "" {
		return value{}, errors.New(v.missing)
	}
	found, ok := v.roles[role][key]
	if !ok {
		return value{}, fmt.Errorf("the file of values gives no %s for the role %s", called[key], role)
	}
	return found, nil
}

// step shows a value as the file gives it.
func (v *values) step(found value, symbol, key, unit string) working.Step {
	return working.Step{
		Symbol: symbol, Meaning: called[key], Formula: fmt.Sprintf("as given in %s:%d:%d", found.at.File, found.at.Line, found.at.Column), Value: found.number, Unit: unit,
		Source: working.Source{Title: "after ISO 12215-10, as the user's own file gives it", Edition: v.edition, Clause: found.clause, As: working.Published, For: "the value; whoever wrote the file answers for it"},
	}
}
