package document

import (
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"time"
)

// DayForm is how a day is written.
const DayForm = "a day such as 2021-04-10, or only 2021-04 or 2021"

// The years that a day can lie in. No boat is older, no look is planned later.
const (
	earliestYear = 1800
	latestYear   = 2200
)

var dayPattern = regexp.MustCompile(`^(\d{4})(?:-(\d{2})(?:-(\d{2}))?)?$`)

// ParseDay reads a day as an owner writes it: a year, a month of a year or a day.
// It gives the earliest and the latest day that this can mean, at midnight UTC.
func ParseDay(text string) (first, last time.Time, err error) {
	parts := dayPattern.FindStringSubmatch(text)
	if parts == nil {
		return first, last, errors.New("is not a day in a form that is known here")
	}
	year, month, day := number(parts[1]), number(parts[2]), number(parts[3])
	switch {
	case year < earliestYear || year > latestYear:
		return first, last, fmt.Errorf("lies outside the years %d to %d", earliestYear, latestYear)
	case parts[2] == "":
		return date(year, time.January, 1), date(year, time.December, 31), nil
	case month < 1 || month > 12:
		return first, last, fmt.Errorf("is no day, since there is no month %s", parts[2])
	}
	lastOfMonth := date(year, time.Month(month)+1, 0)
	switch {
	case parts[3] == "":
		return date(year, time.Month(month), 1), lastOfMonth, nil
	case day < 1 || day > lastOfMonth.Day():
		return first, last, fmt.Errorf("is no day, since %s %d has no day %s", time.Month(month), year, parts[3])
	}
	first = date(year, time.Month(month), day)
	return first, first, nil
}

// number is a text of digits as a number; 0 if there are none.
func number(digits string) int {
	n, err := strconv.Atoi(digits)
	if err != nil {
		return 0
	}
	return n
}

func date(year int, month time.Month, day int) time.Time {
	return time.Date(year, month, day, 0, 0, 0, 0, time.UTC)
}
