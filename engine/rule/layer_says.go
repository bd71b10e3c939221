package rule

import (
	"fmt"
	"strings"
)

// Says is what a change makes otherwise, in a few words.
func (c Change) Says() string {
	if c.Off {
		return "switched off"
	}
	var parts []string
	if c.Band > 0 {
		parts = append(parts, fmt.Sprintf("band %d", c.Band))
	}
	if c.limit.given() {
		parts = append(parts, "limit "+written(c.limit))
	}
	if c.Grade != "" {
		parts = append(parts, "grade "+string(c.Grade))
	}
	if c.IfUnknown != "" {
		parts = append(parts, "if not known "+string(c.IfUnknown))
	}
	return strings.Join(parts, ", ")
}
