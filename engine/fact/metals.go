package fact

import (
	"maps"
	"sync/atomic"

	"chainwale/engine/table"
)

// called are the metals of the table that were found, by the names that plans call them.
// A plan asks for the same few again for each plate, pin and bolt, and a row is long.
var called atomic.Pointer[map[string]*table.Metal]

// mostCalled is how many names are kept: more than the table has metals.
const mostCalled = 256

// metalCalled is a row of the table, which must not be changed. A metal that it doesn't
// have is an error.
func metalCalled(name string) (*table.Metal, error) {
	known := called.Load()
	if known != nil {
		if row := (*known)[name]; row != nil {
			return row, nil
		}
	}
	row, err := table.MetalNamed(name)
	if err != nil {
		return nil, err
	}
	more := map[string]*table.Metal{}
	if known != nil {
		more = maps.Clone(*known)
	}
	if len(more) < mostCalled {
		more[name] = &row
		called.CompareAndSwap(known, &more) // whoever comes second looks it up again
	}
	return &row, nil
}
