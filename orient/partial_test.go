package orient_test

import (
	"errors"
	"testing"

	"cuesta/orient"
)

func TestUnderstood(t *testing.T) {
	for _, c := range []struct {
		text   string
		assume orient.Notation
		want   string
	}{
		{"035/30", orient.AzimuthDip, "Strike 035°, dip 30° to the SE."},
		{"035/30SE", orient.AzimuthDip, "Strike 035°, dip 30° to the SE."},
		{"215/30 SE", orient.AzimuthDip, "Strike 035° (written from the other end, 215°), dip 30° to the SE."},
		{"N35E 30SE", orient.AzimuthDip, "Strike 035° (written N35E), dip 30° to the SE."},
		{"N-S, 40W", orient.AzimuthDip, "Strike 180° (written N-S), dip 40° to the W."},
		{"125/30", orient.AzimuthDip, "Strike 125°, dip 30° to the SW."},
		{"125/30", orient.DirectionDip, "Dip direction 125°, dip 30°, so strike 035°."},
		{"30→125", orient.AzimuthDip, "Dip direction 125°, dip 30°, so strike 035°."},
		{"pole 305/60", orient.AzimuthDip, "Pole 305/60, so strike 035°, dip 30° to the SE."},
		{"horizontal", orient.AzimuthDip, "Horizontal: no strike."},
		{"035/00", orient.AzimuthDip, "Horizontal: no strike."},
		{"035/90", orient.AzimuthDip, "Strike 035°, vertical."},
		{"125/90", orient.DirectionDip, "Dip direction 125°, vertical, so strike 035°."},
		{"035/30 overturned", orient.AzimuthDip, "Strike 035°, dip 30° to the SE. Overturned."},
		{"035/26°15'", orient.AzimuthDip, "Strike 035°, dip 26.25° to the SE."},
	} {
		e, err := orient.Parse(c.text, c.assume)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		if got := e.Understood(); got != c.want {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
}

func TestParsePartial(t *testing.T) {
	for _, c := range []struct {
		text   string
		assume orient.Notation
		want   string // "" while nothing is understood yet
	}{
		{"", orient.AzimuthDip, ""}, {"0", orient.AzimuthDip, ""}, {"03", orient.AzimuthDip, ""},
		{"036", orient.AzimuthDip, "Strike 036°, dips to the SE side. The dip is still missing."},
		{"036/", orient.AzimuthDip, "Strike 036°, dips to the SE side. The dip is still missing."},
		{"36/", orient.AzimuthDip, "Strike 036°, dips to the SE side. The dip is still missing."},
		{"36 ", orient.AzimuthDip, "Strike 036°, dips to the SE side. The dip is still missing."},
		{"36°", orient.AzimuthDip, "Strike 036°, dips to the SE side. The dip is still missing."},
		{"036/3", orient.AzimuthDip, "Strike 036°, dip 03° to the SE."},
		{"036/30", orient.AzimuthDip, "Strike 036°, dip 30° to the SE."},
		{"036 NW", orient.AzimuthDip, "Strike 216° (written from the other end, 036°), dips to the NW side. The dip is still missing."},
		{"126/", orient.DirectionDip, "Dip direction 126°, so strike 036°. The dip is still missing."},
		{"306/", orient.PoleNotation, "The pole trends 306°. Its plunge is still missing."},
		{"N", orient.Quadrant, ""}, {"NE", orient.Quadrant, ""},
		{"NE/", orient.Quadrant, "Strike 045° (written N45E). The dip and its side are still missing."},
		{"N36", orient.Quadrant, ""},
		{"N36E", orient.Quadrant, "Strike 036° (written N36E). The dip and its side are still missing."},
		{"N36E 30", orient.Quadrant, "Strike 036° (written N36E), dip 30°. The side it dips to is still missing."},
		{"N36E 30S", orient.Quadrant, "Strike 036° (written N36E), dip 30° to the SE."},
		{"vertical", orient.AzimuthDip, ""},
		{"30→", orient.AzimuthDip, ""},
	} {
		e, err := orient.ParsePartial(c.text, c.assume)
		switch {
		case c.want == "" && !errors.Is(err, orient.ErrIncomplete):
			t.Errorf("%q: got %+v, %v; want ErrIncomplete", c.text, e, err)
		case c.want != "" && err != nil:
			t.Errorf("%q: %v", c.text, err)
		case c.want != "" && e.Understood() != c.want:
			t.Errorf("%q: %q, want %q", c.text, e.Understood(), c.want)
		}
		_, whole := orient.Parse(c.text, c.assume)
		if err == nil && e.DipMissing != (whole != nil) {
			t.Errorf("%q: DipMissing %v, but Parse says %v", c.text, e.DipMissing, whole)
		}
	}
}

func TestParsePartialRefuses(t *testing.T) {
	for text, kind := range map[string]error{
		"400/": orient.ErrAzimuth, "036/95": orient.ErrDip, "040/30NE": orient.ErrLetters, "x": orient.ErrWords, "N95E": orient.ErrQuadrant,
	} {
		if e, err := orient.ParsePartial(text, orient.AzimuthDip); !errors.Is(err, kind) {
			t.Errorf("%q: got %+v, %v; want %v", text, e, err, kind)
		}
	}
}
