package standard

// Bits marks rows, bit i of the whole for row i, the lowest bit of the first byte first.
type Bits []byte

// NewBits has room for so many rows, none of them marked.
func NewBits(rows int) Bits { return make(Bits, (rows+7)/8) }

// Has tells whether a row is marked; a row beyond the end is not.
func (b Bits) Has(row int) bool {
	return row >= 0 && row/8 < len(b) && b[row/8]&(1<<(row%8)) != 0
}

// Set marks a row, for which there must be room.
func (b Bits) Set(row int) { b[row/8] |= 1 << (row % 8) }

// Number is the number of a row, and whether it is known.
func (c *Column) Number(row int) (float64, bool) {
	if !c.Known.Has(row) || row >= len(c.Numbers) {
		return 0, false
	}
	return c.Numbers[row], true
}

// Word is the word of a row, and whether it is known.
func (c *Column) Word(row int) (string, bool) {
	if row < 0 || row >= len(c.Index) || c.Index[row] == 0 || int(c.Index[row]) > len(c.Words) {
		return "", false
	}
	return c.Words[c.Index[row]-1], true
}

// NewNumbers is a column of numbers, none of them known yet.
func NewNumbers(name string, rows int) Column {
	return Column{Name: name, Numbers: make([]float64, rows), Known: NewBits(rows)}
}

// Give sets the number of a row.
func (c *Column) Give(row int, number float64) {
	c.Numbers[row] = number
	c.Known.Set(row)
}

// NewWords is a column of words, none of them known yet.
func NewWords(name string, rows int) Column {
	return Column{Name: name, Index: make([]uint32, rows)}
}

// GiveWord sets the word of a row.
func (c *Column) GiveWord(row int, word string) {
	for i, w := range c.Words {
		if w == word {
			c.Index[row] = uint32(i + 1)
			return
		}
	}
	c.Words = append(c.Words, word)
	c.Index[row] = uint32(len(c.Words))
}
