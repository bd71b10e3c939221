// Package published holds no code of the program, only the test that runs every
// case under testdata/published: worked examples, tables and minima that others
// have printed, held against what the formulas and tables give.
//
// A case is one YAML file. It names its source and how that source is known, the
// formula, the inputs and outputs with their units, and a tolerance with the
// reason for it. What a source prints and the formula does not give stands under
// does_not_close with a note on why; the test holds that it still does not.
// A file of another kind, an input that the formula doesn't read and a formula
// that no runner knows are all failures, so that no case sits there unread.
package published
