package item

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"cuesta/orient"
)

// longest is how many bytes an answer may have.
const longest = 400

// Why an answer was not read as a number.
var (
	errEmpty  = errors.New("nothing was written")
	errLong   = errors.New("this is longer than any answer can be")
	errNumber = errors.New("this is not a number")
)

// refused is the mark of an answer that could not be read.
func refused(err error) Mark {
	words := err.Error()
	return Mark{
		Refused: true, Understood: words,
		Said: "This could not be read: " + words + ".",
	}
}

// signs turns the many ways of writing signs into one.
var signs = strings.NewReplacer(
	"−", "-", "–", "-", "—", "-", "‐", "-", "‑", "-", "º", "°", "˚", "°",
	"′", "'", "’", "'", "‘", "'", "″", `"`, "”", `"`, "“", `"`, "''", `"`, "٪", "%", "％", "%",
	"\u00a0", " ", "\u2009", " ", "\u202f", " ",
	"degrees", "°", "degree", "°", "deg", "°", "percent", "%", "per cent", "%",
)

// read reads a number: digits, at most one point or comma, minutes and seconds
// behind a degree sign, and the unit or none.
func (q quantity) read(answer string) (float64, error) {
	if len(answer) > longest {
		return 0, errLong
	}
	text := strings.TrimSpace(signs.Replace(strings.ToLower(answer)))
	if text == "" {
		return 0, errEmpty
	}
	if q.wraps && (text[0] == 'n' || text[0] == 's' || text[0] == 'e' || text[0] == 'w') {
		return quadrant(answer)
	}
	x, err := q.amount(text)
	if err != nil {
		return 0, err
	}
	return x, q.possible(x)
}

// amount reads the number with its unit.
func (q quantity) amount(text string) (float64, error) {
	switch {
	case strings.HasSuffix(text, "%") && q.unit != "%":
		return 0, errors.New("this is a percentage, and degrees are asked for")
	case strings.ContainsAny(text, `°'"`) && q.unit == "%":
		return 0, errors.New("these are degrees, and a percentage is asked for")
	}
	if degrees, rest, ok := strings.Cut(text, "°"); ok {
		return sexagesimal(degrees, rest)
	}
	return decimal(strings.TrimSuffix(text, "%"))
}

// sexagesimal reads what stands before and behind the degree sign.
func sexagesimal(degrees, rest string) (float64, error) {
	x, err := decimal(degrees)
	if err != nil || strings.TrimSpace(rest) == "" {
		return x, err
	}
	minutes, rest, ok := strings.Cut(rest, "'")
	m, err := decimal(minutes)
	if !ok || err != nil || m >= 60 {
		return 0, fmt.Errorf("%w: behind the degrees stand minutes below 60, such as 26°15'", errNumber)
	}
	s := 0.0
	if seconds, ok := strings.CutSuffix(strings.TrimSpace(rest), `"`); ok {
		if s, err = decimal(seconds); err != nil || s >= 60 {
			return 0, fmt.Errorf("%w: behind the minutes stand seconds below 60", errNumber)
		}
	} else if strings.TrimSpace(rest) != "" {
		return 0, fmt.Errorf("%w: nothing may stand behind the minutes but seconds", errNumber)
	}
	if x < 0 {
		return 0, errNegative
	}
	return x + m/60 + s/3600, nil
}

// decimal reads plain digits with at most one point or comma and a sign.
func decimal(text string) (float64, error) {
	text = strings.TrimSpace(text)
	digits := strings.Replace(text, ",", ".", 1)
	for i, c := range digits {
		if (c < '0' || c > '9') && c != '.' && !(i == 0 && (c == '-' || c == '+')) {
			return 0, fmt.Errorf("%w: %s", errNumber, strconv.Quote(clip(text)))
		}
	}
	x, err := strconv.ParseFloat(digits, 64)
	if err != nil || math.IsInf(x, 0) || math.IsNaN(x) {
		return 0, fmt.Errorf("%w: %s", errNumber, strconv.Quote(clip(text)))
	}
	return x, nil
}

var errNegative = errors.New("this number is below zero; write it without a minus sign")

// possible says why x cannot be an answer at all.
func (q quantity) possible(x float64) error {
	switch {
	case x < 0:
		return errNegative
	case x > q.most && q.wraps:
		return errors.New("an azimuth goes from 000 to 360")
	case x > q.most:
		return fmt.Errorf("this is more than %v %s, the most there can be", q.most, q.unit)
	}
	return nil
}

// quadrant reads an azimuth written as a quadrant bearing or a point of the
// compass.
func quadrant(answer string) (float64, error) {
	e, err := orient.ParsePartial(strings.TrimSpace(answer)+"/45", orient.AzimuthDip)
	var at *orient.ParseError
	switch {
	case errors.As(err, &at) && !errors.Is(err, orient.ErrQuadrant):
		return 0, fmt.Errorf("%w: one azimuth is asked for, such as 035 or N35E", errNumber)
	case err != nil:
		return 0, fmt.Errorf("%w: %s; %s", errNumber, at.Read, at.Would)
	case e.Letters != "" || e.Notation != orient.Quadrant:
		return 0, fmt.Errorf("%w: one azimuth is asked for, such as 035 or N35E", errNumber)
	}
	return e.Written.Degrees(), nil
}

// clip shortens what is repeated from an answer.
func clip(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		return string(r[:most]) + "…"
	}
	return s
}
