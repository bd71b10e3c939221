package pattern

import (
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// mostName is how many letters the name of a part has on a drawing.
const mostName = 40

// Named gives each part a name that no other has, whatever letters its file's name can't
// have and whether small or large: first the fitting's id; where several have that, the
// side beside it, or the boat before it; and at last a number. Each of those that share
// an id is named anew, so that none passes for the only one. An id that is longer than a
// drawing's name is cut, and has a number behind it; the list of groups has it in full.
func Named(parts []Part) []Part {
	list := slices.Clone(parts)
	sharing := map[string][]int{}
	var order []string
	for i, p := range list {
		key := FileName(strings.ToLower(p.Name))
		if sharing[key] == nil {
			order = append(order, key)
		}
		sharing[key] = append(sharing[key], i)
	}
	taken := map[string]bool{}
	for key, of := range sharing {
		taken[key] = len(of) == 1 && !tooLong(list[of[0]].Name)
	}
	for _, key := range order {
		if of := sharing[key]; len(of) > 1 || tooLong(list[of[0]].Name) {
			nameAnew(list, of, taken)
		}
	}
	return list
}

func tooLong(name string) bool { return len([]rune(name)) > mostName }

// nameAnew tries the ways to tell parts of one name apart until one gives each its own.
func nameAnew(list []Part, of []int, taken map[string]bool) {
	for _, way := range []func(Part, int) string{
		func(p Part, _ int) string { return p.Name + "-" + p.Copies[0].Side },
		func(p Part, _ int) string { return slug(p.Copies[0].Boat) + "-" + p.Name },
		func(p Part, _ int) string { return slug(p.Copies[0].Boat) + "-" + p.Name + "-" + p.Copies[0].Side },
	} {
		names, own := map[string]bool{}, true
		for n, i := range of {
			name := way(list[i], n)
			key := FileName(strings.ToLower(name))
			own = own && !names[key] && !taken[key] && !tooLong(name) && strings.Trim(name, "-") == name
			names[key] = true
		}
		if own {
			for n, i := range of {
				list[i].Name = way(list[i], n)
				taken[FileName(strings.ToLower(list[i].Name))] = true
			}
			return
		}
	}
	number := 0
	for _, i := range of {
		base := list[i].Name
		for {
			number++
			tail := "-" + strconv.Itoa(number)
			letters := []rune(base)
			list[i].Name = string(letters[:min(len(letters), mostName-len(tail))]) + tail
			if key := FileName(strings.ToLower(list[i].Name)); !taken[key] {
				taken[key] = true
				break
			}
		}
	}
}

// slug is a boat's name as a part of a file's name.
func slug(boat string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(boat), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }), "-")
}

// FileName is a part's name as a file can have it.
func FileName(name string) string {
	return strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>|`, r) || r < ' ' {
			return '-'
		}
		return r
	}, strings.TrimLeft(name, "."))
}
