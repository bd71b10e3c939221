package document

import (
	"bytes"
	"errors"

	"go.yaml.in/yaml/v4"

	"chainwale/engine/finding"
)

// A file of a megabyte can be made to keep the YAML reader busy for many seconds.
// The limits here stop it long before, and are far from any plan.

// mostMarks is how many brackets, commas, colons and the like a YAML file may
// hold. The reader's time grows faster than their number: a megabyte of them takes
// seconds, this many a twentieth of one. Of a plan every tenth character is one, so
// half a megabyte of plan does not reach it.
const mostMarks = 50_000

// marks are the characters that can make the reader look far ahead.
const marks = "[]{},:?\"'&*!|>%"

// isMark is the same as a table.
var isMark = func() (set [256]bool) {
	for _, b := range []byte(marks) {
		set[b] = true
	}
	return set
}()

// wholeLines is the end of the last line that ends at the limit or before, so that
// the cut itself is no fault; the limit if the file has no shorter line.
func wholeLines(src []byte, limit int) int {
	if end := bytes.LastIndexByte(src[:limit], '\n') + 1; end > 0 && limit < len(src) {
		return end
	}
	return limit
}

// markLimit is the offset of the first mark too many, or the file's end.
func markLimit(src []byte) int {
	seen := 0
	for i, b := range src {
		if !isMark[b] {
			continue
		}
		if seen++; seen > mostMarks {
			return i
		}
	}
	return len(src)
}

// tooDeep is what the YAML reader says when nesting stops it.
const tooDeep = "nested too deep"

// nesting stops the YAML reader early at brackets or dashes without end.
type nesting struct{}

// CheckDepth lets keys and dashes go a little deeper than our own count, which
// knows the place better.
func (nesting) CheckDepth(depth int, ctx *yaml.DepthContext) error {
	most := deepest
	if ctx.Kind == yaml.DepthKindBlock {
		most *= 2
	}
	if depth > most {
		return errors.New(tooDeep)
	}
	return nil
}

// CheckAlias is for aliases that are followed; ours are refused.
func (nesting) CheckAlias(int, int) error { return nil }

// before tells whether a stands earlier in the file than b.
func before(a, b finding.Place) bool {
	return a.Line < b.Line || a.Line == b.Line && a.Column < b.Column
}
