package document

import (
	"errors"
	"fmt"
	"time"
)

// DayForm is how a day is written.
const DayForm = "a day such as 2021-04-10, or only 2021-04 or 2021"

// The years that a day can lie in. No boat is older, no look is planned later.
const (
	earliestYear = 1800
	latestYear   = 2200
)

// ParseDay reads a day as an owner writes it: a year, a month of a year or a day.
// It gives the earliest and the latest day that this can mean, at midnight UTC.
func ParseDay(text string) (first, last time.Time, err error) {
	parts, ok := dayParts(text)
	if !ok {
		return first, last, errors.New("is not a day in a form that is known here")
	}
	year, month, day := digitsOf(parts[0]), digitsOf(parts[1]), digitsOf(parts[2])
	switch {
	case year < earliestYear || year > latestYear:
		return first, last, fmt.Errorf("lies outside the years %d to %d", earliestYear, latestYear)
	case parts[1] == "":
		return date(year, time.January, 1), date(year, time.December, 31), nil
	case month < 1 || month > 12:
		return first, last, fmt.Errorf("is no day, since there is no month %s", parts[1])
	}
	lastOfMonth := date(year, time.Month(month)+1, 0)
	switch {
	case parts[2] == "":
		return date(year, time.Month(month), 1), lastOfMonth, nil
	case day < 1 || day > lastOfMonth.Day():
		return first, last, fmt.Errorf("is no day, since %s %d has no day %s", time.Month(month), year, parts[2])
	}
	first = date(year, time.Month(month), day)
	return first, first, nil
}

// dayParts takes "2021-04-10", "2021-04" or "2021" apart; what is not there is "".
func dayParts(text string) (parts [3]string, ok bool) {
	at := 0
	for i, length := range [3]int{4, 2, 2} {
		switch {
		case i > 0 && at == len(text):
			return parts, true
		case i > 0 && text[at] != '-':
			return parts, false
		case i > 0:
			at++
		}
		if at+length > len(text) || digits(text[at:at+length]) < length {
			return parts, false
		}
		parts[i] = text[at : at+length]
		at += length
	}
	return parts, at == len(text)
}

// digitsOf is a text of digits as a number; 0 if there are none.
func digitsOf(text string) (n int) {
	for i := range len(text) {
		n = 10*n + int(text[i]-'0')
	}
	return n
}

func date(year int, month time.Month, day int) time.Time {
	return time.Date(year, month, day, 0, 0, 0, 0, time.UTC)
}
