package fact

import "sync"

// words turns words into small whole numbers and back, so that a rule compares
// words as it compares numbers, and NaN stands for an unknown one of either.
// It only grows by the words of packs, tables and plans.
var words = struct {
	sync.RWMutex
	id   map[string]int
	text []string
}{id: map[string]int{}}

// WordID is the number that stands for a word in a row of facts.
func WordID(text string) float64 {
	words.RLock()
	id, ok := words.id[text]
	words.RUnlock()
	if ok {
		return float64(id)
	}
	words.Lock()
	defer words.Unlock()
	if id, ok = words.id[text]; !ok {
		id = len(words.text)
		words.id[text] = id
		words.text = append(words.text, text)
	}
	return float64(id)
}

// WordText is the word that a number stands for; "" if it stands for none.
func WordText(id float64) string {
	words.RLock()
	defer words.RUnlock()
	if i := int(id); i >= 0 && i < len(words.text) && float64(i) == id {
		return words.text[i]
	}
	return ""
}
