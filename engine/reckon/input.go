package reckon

import (
	"encoding/json"

	"chainwale/engine/quantity"
)

// Input declares one value that a formula takes.
type Input struct {
	Name string
	// Takes is the sort of value, Dimension and Limit what an Amount must be.
	Takes     Sort
	Dimension quantity.Dimension
	Limit     Limit
	// Words are those that a OneOf takes.
	Words []string
	// Parts are the inputs inside a group or inside each entry of a list.
	Parts    []Input
	Optional bool
	// Instead says that it stands in for others, and has no place beside them in the example.
	Instead bool
	Means   string
	// Example is a value that would do, as it stands in JSON without the quotation
	// marks of a text.
	Example string
}

// Sort is what sort of value an input takes.
type Sort string

const (
	// Amount is a number with its unit: "8 mm".
	Amount Sort = "quantity"
	// Share is a part of a whole: "17 %".
	Share Sort = "share"
	// Count is a whole number of things.
	Count Sort = "whole number"
	// OneOf is one of some words.
	OneOf Sort = "word"
	// Named is a name that a table knows: a metal, a thread.
	Named Sort = "name"
	// YesNo is yes or no.
	YesNo Sort = "yes or no"
	// Parted is a group of values with names.
	Parted Sort = "group"
	// Rows is a list of groups.
	Rows Sort = "list"
)

// Limit is what an amount has to be.
type Limit int

const (
	// Any may be of either sign.
	Any Limit = iota
	// FromZero is zero or more.
	FromZero
	// AboveZero is more than zero.
	AboveZero
)

// Output declares one value that a formula gives.
type Output struct {
	Name string
	// Gives is Amount, Share for a bare number, or Named for a word.
	Gives     Sort
	Dimension quantity.Dimension
	// Many says that there is a list of them, Parts that each is a group.
	Many  bool
	Parts []Output
	// Sometimes says that not every answer has it.
	Sometimes bool
	Means     string
}

// above declares an amount of more than zero.
func above(name string, d quantity.Dimension, example, means string) Input {
	return Input{Name: name, Takes: Amount, Dimension: d, Limit: AboveZero, Example: example, Means: means}
}

// from declares an amount of zero or more.
func from(name string, d quantity.Dimension, example, means string) Input {
	return Input{Name: name, Takes: Amount, Dimension: d, Limit: FromZero, Example: example, Means: means}
}

// either declares an amount of either sign.
func either(name string, d quantity.Dimension, example, means string) Input {
	return Input{Name: name, Takes: Amount, Dimension: d, Example: example, Means: means}
}

// oneOf declares a word out of some.
func oneOf(name string, words []string, example, means string) Input {
	return Input{Name: name, Takes: OneOf, Words: words, Example: example, Means: means}
}

// called declares a name that a table knows.
func called(name, example, means string) Input {
	return Input{Name: name, Takes: Named, Example: example, Means: means}
}

// counted declares a whole number of one or more.
func counted(name, example, means string) Input {
	return Input{Name: name, Takes: Count, Example: example, Means: means}
}

// optional lets an input be left out.
func optional(i Input) Input {
	i.Optional = true
	return i
}

// instead lets an input be given in place of others.
func instead(i Input) Input {
	i.Instead = true
	return optional(i)
}

// gives declares an amount that a formula gives.
func gives(name string, d quantity.Dimension, means string) Output {
	return Output{Name: name, Gives: Amount, Dimension: d, Means: means}
}

// bare declares a bare number, word a word that a formula gives.
func bare(name, means string) Output { return Output{Name: name, Gives: Share, Means: means} }
func word(name, means string) Output { return Output{Name: name, Gives: Named, Means: means} }

// MarshalJSON writes what a program needs to know to give the input.
func (i Input) MarshalJSON() ([]byte, error) {
	return json.Marshal(struct {
		Name     string   `json:"name"`
		Takes    Sort     `json:"takes"`
		Measure  string   `json:"measure,omitempty"`
		Units    []string `json:"units,omitempty"`
		Words    []string `json:"words,omitempty"`
		Parts    []Input  `json:"parts,omitempty"`
		Optional bool     `json:"optional"`
		Means    string   `json:"means"`
		Example  string   `json:"example"`
	}{i.Name, i.Takes, i.measure(), i.units(), i.Words, i.Parts, i.Optional, i.Means, i.Example})
}

func (i Input) measure() string {
	if i.Takes != Amount {
		return ""
	}
	return i.Dimension.Name()
}

func (i Input) units() []string {
	switch i.Takes {
	case Amount, Share:
		return quantity.Spellings(i.Dimension)
	}
	return nil
}

// MarshalJSON writes what a program needs to know to read the result.
func (o Output) MarshalJSON() ([]byte, error) {
	return json.Marshal(struct {
		Name      string   `json:"name"`
		Gives     string   `json:"gives"`
		Unit      string   `json:"unit,omitempty"`
		Parts     []Output `json:"parts,omitempty"`
		Sometimes bool     `json:"sometimes"`
		Means     string   `json:"means"`
	}{o.Name, o.sort(), o.unit(), o.Parts, o.Sometimes, o.Means})
}

// sort is the form of a result in words.
func (o Output) sort() string {
	switch {
	case o.Many && o.Gives == Parted:
		return "list of groups"
	case o.Many:
		return "list of quantities"
	case o.Gives == Share:
		return "bare number"
	case o.Gives == Named:
		return "word"
	}
	return string(o.Gives)
}

func (o Output) unit() string {
	if o.Gives != Amount {
		return ""
	}
	return o.Dimension.Unit()
}
