package geomag

import (
	"errors"
	"math"
	"strconv"
	"strings"

	"cuesta/orient"
)

// Year is a date as a decimal year: 2026.5 is the middle of 2026.
type Year float64

// ErrDate is what every error about a date wraps.
var ErrDate = errors.New("not a date the field can be reckoned for")

// reach is how many years from its epoch a straight line is carried at all.
const reach = 50

func (y Year) check(epoch Year) error {
	if math.Abs(float64(y-epoch)) <= reach {
		return nil
	}
	text := strconv.FormatFloat(float64(y), 'f', -1, 64)
	return &orient.ParseError{
		Text: text, Pos: 1, Read: "read a date more than 50 years from the field model",
		Would: "give one from 2025.0 to 2030.0", Err: ErrDate,
	}
}

// YearOf is the decimal year at the start of a day of the Gregorian calendar:
// January 1 is the whole year. False for a day that does not exist.
func YearOf(year, month, day int) (Year, bool) {
	if month < 1 || month > 12 || day < 1 || day > monthDays(year, month) {
		return 0, false
	}
	before := day - 1
	for m := 1; m < month; m++ {
		before += monthDays(year, m)
	}
	length := 365
	if leap(year) {
		length = 366
	}
	return Year(float64(year) + float64(before)/float64(length)), true
}

func monthDays(year, month int) int {
	if month == 2 && leap(year) {
		return 29
	}
	return [...]int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}[month-1]
}

func leap(year int) bool { return year%4 == 0 && (year%100 != 0 || year%400 == 0) }

// Date is the day of the calendar that the decimal year falls on.
func (y Year) Date() (year, month, day int) {
	year = int(math.Floor(float64(y)))
	length := 365.0
	if leap(year) {
		length = 366
	}
	// A hair more, so that the start of a day does not fall to the day before.
	rest := int((float64(y)-float64(year))*length + 1e-6)
	month = 1
	for month < 12 && rest >= monthDays(year, month) {
		rest -= monthDays(year, month)
		month++
	}
	return year, month, min(rest, 30) + 1
}

// ParseYear reads a date, 2026-09-14, or a decimal year, 2026.7. An error is an
// *orient.ParseError.
func ParseYear(text string) (Year, error) {
	s := strings.TrimSpace(text)
	if y, m, ok := strings.Cut(s, "-"); ok {
		m, d, _ := strings.Cut(m, "-")
		year, e1 := number(y)
		month, e2 := number(m)
		day, e3 := number(d)
		if at, ok := YearOf(year, month, day); ok && e1 && e2 && e3 {
			return at, nil
		}
		return 0, dateError(text, "read a day that is in no calendar")
	}
	if s == "" || strings.Trim(s, ".0123456789") != "" {
		return 0, dateError(text, "read no date")
	}
	at, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return 0, dateError(text, "read no date")
	}
	return Year(at), nil
}

func number(s string) (int, bool) {
	n, err := strconv.Atoi(s)
	return n, err == nil && strings.Trim(s, "0123456789") == ""
}

func dateError(text, read string) error {
	return &orient.ParseError{
		Text: text, Pos: 1, Read: read, Would: "write year, month and day, 2026-09-14, or a decimal year, 2026.7", Err: ErrDate,
	}
}
