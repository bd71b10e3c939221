package main

import (
	"errors"
	"fmt"
	"os"
	"strings"
)

// largePlan repeats stays and fittings of a plan under new ids until it has about
// as many bytes as asked for.
func largePlan(from string, size int) ([]byte, error) {
	src, err := os.ReadFile(from)
	if err != nil {
		return nil, err
	}
	head, rest, ok1 := strings.Cut(string(src), "\nstays:\n")
	stays, rest, ok2 := strings.Cut(rest, "\nfittings:\n")
	fittings, _, ok3 := strings.Cut(rest, "\ncontacts:\n")
	if !ok1 || !ok2 || !ok3 {
		return nil, errors.New(from + " has other parts than stays, fittings and contacts")
	}
	ids := idsIn(stays + fittings)
	var allStays, allFittings strings.Builder
	for i := 0; len(head)+allStays.Len()+allFittings.Len() < size; i++ {
		rename := renamer(ids, i)
		allStays.WriteString(rename.Replace(stays) + "\n")
		allFittings.WriteString(rename.Replace(fittings) + "\n")
	}
	return []byte(head + "\nstays:\n" + allStays.String() + "fittings:\n" + allFittings.String()), nil
}

// idsIn are the ids that a part of a plan gives.
func idsIn(text string) (ids []string) {
	for line := range strings.Lines(text) {
		if id, ok := strings.CutPrefix(line, "  - id: "); ok {
			ids = append(ids, strings.TrimSpace(id))
		}
	}
	return ids
}

// renamer puts a number behind the ids where they are given and where they are served.
func renamer(ids []string, i int) *strings.Replacer {
	var pairs []string
	for _, id := range ids {
		for _, around := range [][2]string{{"id: ", "\n"}, {"[", "]"}, {"[", ","}, {", ", "]"}, {", ", ","}} {
			pairs = append(pairs, around[0]+id+around[1], fmt.Sprintf("%s%s-%d%s", around[0], id, i, around[1]))
		}
	}
	return strings.NewReplacer(pairs...)
}
