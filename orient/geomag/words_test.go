package geomag_test

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"cuesta/orient/geomag"
)

func TestParseSite(t *testing.T) {
	for _, c := range []struct {
		text     string
		lat, lon float64
		height   float64
	}{
		{"46.6,8.0", 46.6, 8, 0}, {"46.6,8.0,1500", 46.6, 8, 1500}, {" -33.9 , 18.4 , 20 m ", -33.9, 18.4, 20},
		{"33.9S,18.4E", -33.9, 18.4, 0}, {"51.5n,0.1w,35", 51.5, -0.1, 35}, {"−80,240", -80, 240, 0}, {"90,0", 90, 0, 0},
		{"46.6°N, 8.0°E, -50", 46.6, 8, -50}, {"-90,360", -90, 360, 0}, {"+10,-180", 10, -180, 0},
	} {
		s, err := geomag.ParseSite(c.text)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		if math.Abs(s.Latitude.Degrees()-c.lat)+math.Abs(s.Longitude.Degrees()-c.lon)+math.Abs(s.Height-c.height) > 1e-9 {
			t.Errorf("%q is %v, %v, %v", c.text, s.Latitude.Degrees(), s.Longitude.Degrees(), s.Height)
		}
	}
	for _, text := range []string{
		"", "46", "46,", ",8", "46,8,", "46,8,1,2", "91,0", "0,361", "0,-181", "nan,0", "0x10,0", "1e1,0", "46,8,1e9", "46,8,900000", "N,E", "46W,8",
	} {
		if s, err := geomag.ParseSite(text); !errors.Is(err, geomag.ErrSite) {
			t.Errorf("%q: got %+v, %v", text, s, err)
		}
	}
}

func TestParseYear(t *testing.T) {
	for _, c := range []struct {
		text string
		want float64
	}{
		{"2026-01-01", 2026}, {"2026-12-31", 2026 + 364.0/365}, {"2028-12-31", 2028 + 365.0/366}, {"2028-02-29", 2028 + 59.0/366},
		{"2026.5", 2026.5}, {"2026", 2026}, {" 2027-7-2 ", 2027 + 182.0/365},
	} {
		if y, err := geomag.ParseYear(c.text); err != nil || math.Abs(float64(y)-c.want) > 1e-9 {
			t.Errorf("%q is %v, %v; want %v", c.text, y, err, c.want)
		}
	}
	for _, text := range []string{
		"", "soon", "2026-02-29", "2026-13-01", "2026-00-10", "2026-1", "2026-01-32", "2026-01-01-01", "-5", "2026-+1-01", "2.0.2", "1e3", "NaN",
	} {
		if y, err := geomag.ParseYear(text); !errors.Is(err, geomag.ErrDate) {
			t.Errorf("%q: got %v, %v", text, y, err)
		}
	}
}

func TestDateUndoesYearOf(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y, m, d := rapid.IntRange(1900, 2100).Draw(t, "y"), rapid.IntRange(1, 12).Draw(t, "m"), rapid.IntRange(1, 28).Draw(t, "d")
		at, ok := geomag.YearOf(y, m, d)
		if gy, gm, gd := at.Date(); !ok || gy != y || gm != m || gd != d {
			t.Fatalf("%d-%d-%d comes back as %d-%d-%d", y, m, d, gy, gm, gd)
		}
	})
}

func FuzzParseSite(f *testing.F) {
	for _, text := range []string{"46.6,8.0,1500", "33.9S,18.4E", "−80,240", ",,", "\xff,°"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, err := geomag.ParseSite(text)
		if err != nil {
			return
		}
		if _, err := geomag.At(s, 2026); err != nil {
			t.Fatalf("%q is %+v: %v", text, s, err)
		}
	})
}

func FuzzParseYear(f *testing.F) {
	for _, text := range []string{"2026-09-14", "2026.7", "-", "2026-", "....", "99999999999999999999"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if y, err := geomag.ParseYear(text); err == nil && math.IsNaN(float64(y)) {
			t.Fatalf("%q is not a number", text)
		}
	})
}
