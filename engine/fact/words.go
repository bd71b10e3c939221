package fact

import (
	"maps"
	"slices"
	"sync"
	"sync/atomic"
)

// words turns words into small whole numbers and back, so that a rule compares
// words as it compares numbers, and NaN stands for an unknown one of either.
// It only grows by the words of packs, tables and plans.
//
// Nearly every word that is asked for was met before, by many plans at once. So known
// holds those that are read without a lock, and is never changed but replaced; what
// came since stands in late, which joins it when it has become as large.
var words = struct {
	known atomic.Pointer[vocabulary]
	sync.Mutex
	late map[string]int
	text []string
}{late: map[string]int{}}

// vocabulary is a table of words that is read only.
type vocabulary struct {
	id   map[string]int
	text []string
}

// WordID is the number that stands for a word in a row of facts.
func WordID(text string) float64 {
	if known := words.known.Load(); known != nil {
		if id, ok := known.id[text]; ok {
			return float64(id)
		}
	}
	words.Lock()
	defer words.Unlock()
	return float64(lateWord(text))
}

// lateWord finds or adds a word while the lock is held.
func lateWord(text string) int {
	known := words.known.Load()
	if known == nil {
		known = &vocabulary{}
	}
	if id, ok := known.id[text]; ok {
		return id // it joined meanwhile
	}
	id, ok := words.late[text]
	if !ok {
		id = len(words.text)
		words.late[text] = id
		words.text = append(words.text, text)
	}
	const fewest = 64
	if len(words.late) >= max(fewest, len(known.id)) {
		all := maps.Clone(words.late)
		maps.Copy(all, known.id)
		words.known.Store(&vocabulary{all, slices.Clone(words.text)})
		clear(words.late)
	}
	return id
}

// WordText is the word that a number stands for; "" if it stands for none.
func WordText(id float64) string {
	i := int(id)
	if i < 0 || float64(i) != id {
		return ""
	}
	if known := words.known.Load(); known != nil && i < len(known.text) {
		return known.text[i]
	}
	words.Lock()
	defer words.Unlock()
	if i < len(words.text) {
		return words.text[i]
	}
	return ""
}
