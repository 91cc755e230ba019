package orient_test

import (
	"errors"
	"strings"
	"testing"

	"cuesta/orient"
)

func TestParseRefuses(t *testing.T) {
	for _, c := range []struct {
		text string
		kind error
		pos  int
		says string
	}{
		{"", orient.ErrIncomplete, 1, "there is no azimuth"},
		{"035", orient.ErrIncomplete, 4, "there is no dip"},
		{"035/", orient.ErrIncomplete, 5, "035/30"},
		{"N35E", orient.ErrIncomplete, 5, "N35E 30SE"},
		{"N35", orient.ErrIncomplete, 4, "without its E or W"},
		{"vertical", orient.ErrIncomplete, 1, "035/90"},
		{"dip 30", orient.ErrIncomplete, 7, "30→125"},
		{"N35E 30", orient.ErrSide, 8, "30SE or 30NW"},

		{"400/30", orient.ErrAzimuth, 1, "was read as the azimuth; an azimuth lies from 0 to 360; write three digits"},
		{"03530", orient.ErrAzimuth, 1, "was read as the azimuth; an azimuth lies from 0 to 360; write three digits"},
		{"-35/30", orient.ErrAzimuth, 1, "minus"},
		{"−35/30", orient.ErrAzimuth, 1, "minus"},
		{"035/95", orient.ErrDip, 5, ": 95 was read as the dip; a dip lies from 0 to 90; write it in two digits, such as 035/30"},
		{"35/95", orient.ErrDip, 4, "write it in two digits, such as 035/30, or 095/35 if 95 is the azimuth"},
		{"30/262", orient.ErrDip, 4, "262/30 if 262 is the azimuth"},
		{"pole 305/95", orient.ErrDip, 10, "95 was read as the plunge; a plunge lies from 0 to 90"},
		{"125/95", orient.ErrDip, 5, "from 0 to 90"},
		{"125→30", orient.ErrDip, 1, "125"},
		{"035/-30", orient.ErrDip, 5, "minus"},
		{"035/30 vertical", orient.ErrDip, 5, "another dip"},
		{"vertical horizontal", orient.ErrDip, 1, "both"},

		{"N95E 30SE", orient.ErrQuadrant, 2, "only goes to 90"},
		{"N35S 30SE", orient.ErrQuadrant, 4, "E or W"},
		{"N35 30SE", orient.ErrQuadrant, 5, "E or W"},
		{"N-E 30SE", orient.ErrQuadrant, 3, "opposite"},

		{"040/30NE", orient.ErrLetters, 7, "SE or NW"},
		{"040/30SW", orient.ErrLetters, 7, "SE or NW"},
		{"N40E 30NE", orient.ErrLetters, 8, "SE or NW"},
		{"350/30 SE", orient.ErrLetters, 8, "E or W"},
		{"010/30 N", orient.ErrLetters, 8, "E or W"},
		{"125/30 SE", orient.ErrLetters, 8, "30→125"},
		{"30→125 NW", orient.ErrLetters, 8, "beside a dip towards 125"},

		{"035/30'", orient.ErrNumber, 5, "minutes without degrees"},
		{"035/26°75'", orient.ErrNumber, 8, "0 to 59"},
		{"035/26.5°15'", orient.ErrNumber, 10, "0 to 59"},

		{"hello", orient.ErrWords, 1, `"hello"`},
		{"NaN/30", orient.ErrWords, 1, `"NaN"`},
		{"035/30/20", orient.ErrWords, 8, "one azimuth and one dip"},
		{"035,5/30", orient.ErrWords, 7, "one azimuth and one dip"},
		{"035/30 SE 5", orient.ErrWords, 11, `"5"`},
		{"035/?", orient.ErrWords, 5, `"?"`},
		{"٠٣٥/30", orient.ErrWords, 1, "the sign"},
		{"/30", orient.ErrWords, 1, "where the azimuth belongs"},
		{"\xff", orient.ErrWords, 1, "the sign"},
	} {
		_, err := orient.Parse(c.text, orient.AzimuthDip)
		var p *orient.ParseError
		if !errors.Is(err, c.kind) || !errors.As(err, &p) {
			t.Errorf("%q: got %v, want %v", c.text, err, c.kind)
			continue
		}
		if p.Pos != c.pos || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%q: got character %d, %v; want character %d and %q", c.text, p.Pos, err, c.pos, c.says)
		}
		if p.Text != c.text || p.Read == "" || p.Would == "" || strings.ContainsAny(err.Error(), "\n\r") || strings.HasPrefix(p.Read, "read ") {
			t.Errorf("%q: %+v is not one whole line in plain words", c.text, p)
		}
	}
}

// TestLetters tries the four corners against every whole strike: a bed that
// strikes into a quadrant never dips into it, and every strike has a side
// for its own nearest letters.
func TestLetters(t *testing.T) {
	for s := 0; s < 360; s++ {
		strike := az(float64(s))
		for _, side := range []orient.Azimuth{strike.Add(orient.Right), strike.Add(-orient.Right)} {
			p := mustParse(t, strike.String()+"/30"+side.Letters())
			if off := p.DipDirection().From(side).Abs(); off > deg(1e-9) {
				t.Errorf("%s/30%s dips to %s, want %s", strike, side.Letters(), p.DipDirection(), side)
			}
		}
		along := map[bool][]string{true: {"NE", "SW"}, false: {"SE", "NW"}}[s%180 < 90]
		if s%90 == 0 {
			continue
		}
		for _, letters := range along {
			if _, err := orient.Parse(strike.String()+"/30"+letters, orient.AzimuthDip); !errors.Is(err, orient.ErrLetters) {
				t.Errorf("%s/30%s: got %v, want a refusal", strike, letters, err)
			}
		}
	}
}

func TestLongTextIsClipped(t *testing.T) {
	_, err := orient.Parse(strings.Repeat("x", 5000), orient.AzimuthDip)
	if err == nil || len([]rune(err.Error())) > 400 {
		t.Fatalf("got a message of %d characters", len([]rune(err.Error())))
	}
}
