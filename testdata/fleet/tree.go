package fleet

// group is keys with values in the order they are written.
type group []field

type field struct {
	key string
	// value is a string, a bool, an int, a list or a group.
	value any
}

// list is values in a row. A list of groups is written one under the other.
type list []any

// line is a group that stands on one line.
type line group

// get finds a value by its key, nil if there is none.
func (g group) get(key string) any {
	for _, f := range g {
		if f.key == key {
			return f.value
		}
	}
	return nil
}

// with is the group with another value under a key, which comes last if it is new.
func (g group) with(key string, value any) group {
	changed := append(group{}, g...)
	for i := range changed {
		if changed[i].key == key {
			changed[i].value = value
			return changed
		}
	}
	return append(changed, field{key, value})
}

// without is the group without some keys.
func (g group) without(keys ...string) group {
	var left group
next:
	for _, f := range g {
		for _, key := range keys {
			if f.key == key {
				continue next
			}
		}
		left = append(left, f)
	}
	return left
}

// only is the group with no other keys than those.
func (g group) only(keys ...string) group {
	var left group
	for _, key := range keys {
		if v := g.get(key); v != nil {
			left = append(left, field{key, v})
		}
	}
	return left
}
