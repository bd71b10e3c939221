package table

import (
	"fmt"
	"strings"

	"chainwale/engine/near"
)

// UnknownName says that a table has no row of that name, and which are nearest.
type UnknownName struct {
	// What is the kind of thing that was looked for: "metal", "thread".
	What string
	Name string
	Near []string
}

// Error is "no metal is called "361L"; the nearest are 316L, 304L and 316".
func (e *UnknownName) Error() string {
	text := fmt.Sprintf("no %s is called %q", e.What, clip(e.Name))
	switch n := len(e.Near); n {
	case 0:
		return text
	case 1:
		return text + "; the nearest is " + e.Near[0]
	default:
		return text + "; the nearest are " + strings.Join(e.Near[:n-1], ", ") + " and " + e.Near[n-1]
	}
}

// clip keeps a name short enough to print.
func clip(name string) string {
	if runes := []rune(name); len(runes) > 60 {
		return string(runes[:60]) + "…"
	}
	return name
}

// noDifference drops what makes no difference in a name.
var noDifference = strings.NewReplacer(" ", "", "-", "", "_", "", "\t", "")

// plain is a name without what makes no difference: capitals, spaces, hyphens
// and underscores.
func plain(name string) string { return noDifference.Replace(strings.ToLower(name)) }

// index finds things of one kind by any of their names.
type index[T any] struct {
	what   string
	byName map[string]T
	// shown are the names as written, for the nearest.
	shown []string
}

func newIndex[T any](what string) *index[T] {
	return &index[T]{what: what, byName: map[string]T{}}
}

// add gives a thing one more name. Two things of one name are a fault of the table.
func (x *index[T]) add(name string, thing T) error {
	key := plain(name)
	if _, twice := x.byName[key]; twice {
		return fmt.Errorf("%q stands twice for a %s", name, x.what)
	}
	x.byName[key] = thing
	x.shown = append(x.shown, name)
	return nil
}

// has says whether a name is there.
func (x *index[T]) has(name string) bool {
	_, ok := x.byName[plain(name)]
	return ok
}

// find looks a name up.
func (x *index[T]) find(name string) (T, error) {
	thing, ok := x.byName[plain(name)]
	if !ok {
		return thing, &UnknownName{What: x.what, Name: name, Near: near.Words(name, x.shown, 3)}
	}
	return thing, nil
}
