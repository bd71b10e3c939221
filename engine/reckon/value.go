package reckon

// Value is an input as the user wrote it, before anyone knows what it should be: a
// text, a list or a group of named values.
type Value struct {
	Kind Kind
	// Text is that of a Text: "8 mm", "316", "yes".
	Text string
	// Items are those of a List, Members those of a Group.
	Items   []Value
	Members []Member
	// At says where the value stands, such as "standard input:3:12". It is empty
	// for one that has no place, as on the command line.
	At string
}

// Member is a value with its name.
type Member struct {
	Name  string
	Value Value
	// At says where the name stands, as in Value.
	At string
}

// Kind is the form of a Value.
type Kind int

const (
	// Text is a text, a number or a yes or no, all by their own characters.
	Text Kind = iota
	// List is values in a row.
	List
	// Group is names with values.
	Group
	// Nothing is JSON's null. It is never taken: what is not known is left out.
	Nothing
)
