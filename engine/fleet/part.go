// Package fleet has the parts of a run over many plans that know nothing of plans:
// which of them fall to this machine, judging them side by side in a fixed order,
// and the sums. Whatever the number of boats, it keeps sums and no reports.
package fleet

import (
	"crypto/sha256"
	"encoding/binary"
	"fmt"
	"regexp"
	"strconv"
)

// mostParts is into how many parts a fleet can be split.
const mostParts = 10_000

var partForm = regexp.MustCompile(`^([0-9]{1,5})/([0-9]{1,5})$`)

// ReadPart reads "2/5", the second of five parts.
func ReadPart(text string) (i, n int, err error) {
	m := partForm.FindStringSubmatch(text)
	if m == nil {
		return 0, 0, fmt.Errorf("%q is not a part of a fleet; write for example 2/5, the second of five parts", text)
	}
	i, _ = strconv.Atoi(m[1]) // at most five digits, by the form
	n, _ = strconv.Atoi(m[2])
	return i, n, checkPart(i, n)
}

func checkPart(i, n int) error {
	switch {
	case n < 1 || n > mostParts:
		return fmt.Errorf("a fleet has 1 to %d parts, not %d", mostParts, n)
	case i < 1 || i > n:
		return fmt.Errorf("there is no part %d of %d; parts are counted from 1", i, n)
	}
	return nil
}

// Part gives those of the names that fall to part i of n, in the order given. Each
// name falls to exactly one part, and to which is settled by the name alone: where
// boats come or go, the others stay in the part they were in. Parts are of about
// the same size and not exactly so.
func Part(i, n int, names []string) ([]string, error) {
	if err := checkPart(i, n); err != nil {
		return nil, err
	}
	var mine []string
	for _, name := range names {
		sum := sha256.Sum256([]byte(name))
		if binary.BigEndian.Uint64(sum[:8])%uint64(n) == uint64(i-1) {
			mine = append(mine, name)
		}
	}
	return mine, nil
}
