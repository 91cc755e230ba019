package learner

import (
	"regexp"
	"strconv"
	"strings"

	"cuesta/quiz/item"
	"cuesta/quiz/mistake"
)

// wrongSum is the number that a mistake makes of a question in words. The
// student reads the question and no more.
func wrongSum(it item.Item, k mistake.Kind) (float64, bool) {
	right, asked := it.Ask().Value, it.Prompt()
	switch it.Kind().Name() {
	case "right-hand-end":
		n, ok := wrongAzimuth(int(right), k)
		return float64(n), ok
	case "dip-direction":
		return wrongDirection(right, asked, k)
	case "apply-declination":
		return wrongDeclination(right, asked, k)
	}
	return 0, false
}

// wrongDirection goes the other way round, or leaves the number as it is.
func wrongDirection(right float64, asked string, k mistake.Kind) (float64, bool) {
	given, ok := firstNumber(asked)
	switch {
	case ok && k == mistake.DirectionForStrike:
		return given, true
	case k == mistake.OtherEnd:
		return right + 180, true
	}
	return 0, false
}

// wrongDeclination leaves the declination out, or takes it the wrong way or
// twice. What is right tells how it should have been taken.
func wrongDeclination(right float64, asked string, k mistake.Kind) (float64, bool) {
	given, ok := firstNumber(asked)
	by := right - given
	switch {
	case !ok:
	case k == mistake.DeclinationNotSet:
		return given, true
	case k == mistake.DeclinationWrongSign:
		return given - by, true
	case k == mistake.DeclinationTwice:
		return right + by, true
	}
	return 0, false
}

var threeDigits = regexp.MustCompile(`\b(\d{3})°`)

// firstNumber is the azimuth that the question gives.
func firstNumber(asked string) (float64, bool) {
	m := threeDigits.FindStringSubmatch(strings.ReplaceAll(asked, "\n", " "))
	if m == nil {
		return 0, false
	}
	x, err := strconv.ParseFloat(m[1], 64)
	return x, err == nil
}
