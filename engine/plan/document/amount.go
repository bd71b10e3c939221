package document

import (
	"encoding/json"
	"errors"
	"fmt"

	"github.com/santhosh-tekuri/jsonschema/v5"

	"chainwale/engine/quantity"
)

// amount is what the keyword `quantity` says: a text must be a quantity of the
// dimension `of`, more than `above`, from `from` and up to `to`. Bounds are
// written with their units, as in a plan:
//
//	"quantity": { "of": "length", "above": "0 mm" }
type amount struct {
	of              quantity.Dimension
	above, from, to *bound
}

// bound is one end of the range, as it was written and as a number.
type bound struct {
	text  string
	value float64
}

// dimensions are those that a schema may name.
var dimensions = []quantity.Dimension{
	quantity.Bare, quantity.Length, quantity.Area, quantity.Volume, quantity.Force, quantity.Stress, quantity.Moment,
	quantity.Mass, quantity.Angle, quantity.Time, quantity.Potential, quantity.Temperature, quantity.Density, quantity.Speed,
}

// newAmount reads the keyword's value. A fault in it is ours.
func newAmount(spec any) (*amount, error) {
	parts, ok := spec.(map[string]any)
	if !ok {
		return nil, errors.New(`the keyword quantity wants {"of": ...}`)
	}
	a := &amount{}
	found := false
	for _, d := range dimensions {
		if parts["of"] == d.Name() {
			a.of, found = d, true
		}
	}
	if !found {
		return nil, fmt.Errorf("%v is no dimension", parts["of"])
	}
	for name, value := range parts {
		if name == "of" {
			continue
		}
		if err := a.setBound(name, value); err != nil {
			return nil, err
		}
	}
	return a, nil
}

func (a *amount) setBound(name string, value any) error {
	text, ok := value.(string)
	ends := map[string]**bound{"above": &a.above, "from": &a.from, "to": &a.to}
	if ends[name] == nil || !ok {
		return fmt.Errorf("the keyword quantity does not know %q: %v", name, value)
	}
	q, err := quantity.ParseAs(text, a.of)
	if err != nil {
		return err
	}
	*ends[name] = &bound{text, q.Value}
	return nil
}

// fault is what is wrong with a text as a quantity, nil if it is one.
func (a *amount) fault(text string) *quantity.BadQuantity {
	q, err := quantity.ParseAs(text, a.of)
	var bad *quantity.BadQuantity
	switch {
	case errors.As(err, &bad):
		return bad
	case err != nil:
		return &quantity.BadQuantity{Text: text, Why: err.Error()}
	case a.above != nil && q.Value <= a.above.value:
		return &quantity.BadQuantity{Text: text, Why: fmt.Sprintf("%s is not more than %s", text, a.above.text), Expected: "more than " + a.above.text}
	case a.from != nil && q.Value < a.from.value:
		return &quantity.BadQuantity{Text: text, Why: fmt.Sprintf("%s is less than %s", text, a.from.text), Expected: a.from.text + " or more"}
	case a.to != nil && q.Value > a.to.value:
		return &quantity.BadQuantity{Text: text, Why: fmt.Sprintf("%s is more than %s", text, a.to.text), Expected: a.to.text + " or less"}
	}
	return nil
}

// value is a text as a quantity; ok is false where fault would find one.
func (a *amount) value(text string) (value float64, ok bool) {
	value, ok = quantity.ReadAs(text, a.of)
	low := a.above != nil && value <= a.above.value || a.from != nil && value < a.from.value
	high := a.to != nil && value > a.to.value
	return value, ok && !low && !high
}

// amountKeyword brings the keyword into a JSON Schema compiler.
type amountKeyword struct{}

func (amountKeyword) Compile(_ jsonschema.CompilerContext, schema map[string]any) (jsonschema.ExtSchema, error) {
	spec, ok := schema["quantity"]
	if !ok {
		return nil, nil
	}
	a, err := newAmount(spec)
	if err != nil {
		return nil, err
	}
	return a, nil
}

// Validate judges texts; a list's entries are judged by its items. Readings that
// are sound one by one can still lie too far apart to reckon with.
func (a *amount) Validate(ctx jsonschema.ValidationContext, v any) error {
	switch v := v.(type) {
	case string:
		if bad := a.fault(v); bad != nil {
			return ctx.Error("quantity", "%s", bad.Why)
		}
	case []any:
		if err := a.together(v); err != nil {
			return ctx.Error("quantity", "%s", err)
		}
	case json.Number:
		return ctx.Error("quantity", "%s has no unit", v)
	}
	return nil
}

// together tells why sound readings don't make one quantity.
func (a *amount) together(items []any) error {
	var texts []string
	for _, item := range items {
		text, ok := item.(string)
		if !ok || a.fault(text) != nil {
			return nil
		}
		texts = append(texts, text)
	}
	if len(texts) == 0 {
		return nil
	}
	_, err := quantity.ParseReadings(texts, a.of)
	return err
}
