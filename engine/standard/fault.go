package standard

import (
	"errors"
	"fmt"
)

// Side says what is to change so that a standard can be used again.
type Side string

const (
	// ChangeStandard: the standard breaks the contract.
	ChangeStandard Side = "change the standard"
	// BuildAnew: the standard speaks an older contract.
	BuildAnew Side = "build the standard anew for this program"
	// NewerProgram: the standard speaks a newer contract.
	NewerProgram Side = "use a newer chainwale"
	// TrustAnew: the standard is not what was trusted.
	TrustAnew Side = "look at what changed, then trust the standard anew"
)

// Fault says that a standard can't be used, why, and which side has to change.
type Fault struct {
	// Standard is its id, "" where whoever asks knows it and the finder did not.
	Standard string
	Message  string
	Side     Side
}

// Error names the standard, what is wrong and which side to change.
func (f *Fault) Error() string {
	if f.Standard == "" {
		return f.Why()
	}
	return "standard " + f.Standard + ": " + f.Why()
}

// Why is the fault without the standard's name, for a sentence that has it already.
func (f *Fault) Why() string {
	if f.Side == "" {
		return f.Message
	}
	return f.Message + ": " + string(f.Side)
}

// Why is an error without the standard's name.
func Why(err error) string {
	var f *Fault
	if errors.As(err, &f) {
		return f.Why()
	}
	return err.Error()
}

// broken is a breach of the contract by the standard.
func broken(format string, args ...any) error {
	return &Fault{Message: fmt.Sprintf(format, args...), Side: ChangeStandard}
}

// CheckContract tells whether this program speaks the contract of that version.
func CheckContract(version int) error {
	message := fmt.Sprintf("the standard speaks contract %d, this program %d", version, Contract)
	switch {
	case version > Contract:
		return &Fault{Message: message, Side: NewerProgram}
	case version < Contract:
		return &Fault{Message: message, Side: BuildAnew}
	}
	return nil
}
