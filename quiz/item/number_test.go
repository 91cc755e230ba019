package item

import (
	"math"
	"strings"
	"testing"
)

func TestNumbersAreReadAsPeopleWriteThem(t *testing.T) {
	azimuth := bearing("azimuth", 35, exact, none)
	dip := slope("dip", 30, exact, none)
	percent := quantity{unit: "%", most: 1000}
	for _, c := range []struct {
		q    quantity
		text string
		want float64
	}{
		{azimuth, "035", 35}, {azimuth, " 35 ", 35}, {azimuth, "35°", 35}, {azimuth, "35º", 35},
		{azimuth, "35 degrees", 35}, {azimuth, "35 deg", 35}, {azimuth, "+35", 35}, {azimuth, "35.5", 35.5},
		{azimuth, "35,5", 35.5}, {azimuth, "35°15'", 35.25}, {azimuth, "35° 15′ 36″", 35.26}, {azimuth, "360", 360},
		{azimuth, "N35E", 35}, {azimuth, "n 35 e", 35}, {azimuth, "S10W", 190}, {azimuth, "NW", 315},
		{azimuth, "west", 270}, {azimuth, "0", 0}, {azimuth, "N", 0}, {azimuth, "South", 180}, {azimuth, "S10°W", 190},
		{dip, "90", 90}, {dip, "7°", 7}, {dip, ".5", 0.5},
		{percent, "58%", 58}, {percent, "58 %", 58}, {percent, "58 per cent", 58}, {percent, "58 percent", 58}, {percent, "58", 58},
	} {
		got, err := c.q.read(c.text)
		if err != nil || math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%q: got %v, %v, want %v", c.text, got, err, c.want)
		}
	}
}

func TestNumbersAreRefusedWithTheReason(t *testing.T) {
	azimuth := bearing("azimuth", 35, exact, none)
	dip := slope("dip", 30, exact, none)
	percent := quantity{unit: "%", most: 1000}
	for _, c := range []struct {
		q    quantity
		text string
		want string
	}{
		{azimuth, "", "nothing was written"},
		{azimuth, "361", "from 000 to 360"},
		{azimuth, "-5", "below zero"},
		{azimuth, "−5", "below zero"},
		{azimuth, "thirty", "not a number"},
		{azimuth, "1e2", "not a number"},
		{azimuth, "0x10", "not a number"},
		{azimuth, "Inf", "not a number"},
		{azimuth, "35 40", "not a number"},
		{azimuth, "35°75'", "minutes below 60"},
		{azimuth, "35°15'90\"", "seconds below 60"},
		{azimuth, "35°15", "minutes below 60"},
		{azimuth, "N95E", "only goes to 90"},
		{azimuth, "N35E 30SE", "one azimuth"}, {azimuth, "N35E 30", "one azimuth"}, {azimuth, "strike", "one azimuth"}, {azimuth, "sideways", "one azimuth"},
		{azimuth, "58%", "degrees are asked for"},
		{dip, "91", "more than 90"},
		{dip, "N", "not a number"},
		{percent, "30°", "a percentage is asked for"},
		{percent, strings.Repeat("1", 300), "more than 1000"},
		{percent, strings.Repeat("1", 401), "longer"},
	} {
		if got, err := c.q.read(c.text); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%.20q: got %v, %v, want %q", c.text, got, err, c.want)
		}
	}
}

func TestNorthIsOnePlace(t *testing.T) {
	q := bearing("azimuth", 359, 2*exact, none)
	for text, want := range map[string]bool{"358": true, "359": true, "360": true, "0": true, "000": true, "001": false, "357": false} {
		if got := q.Mark(text, Evidence{}).Right; got != want {
			t.Errorf("%s for 359 within 1: got %t, want %t", text, got, want)
		}
	}
}
