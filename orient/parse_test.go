package orient_test

import (
	"testing"

	"cuesta/orient"
)

// In this table a plane is given by its right-hand strike and dip.
var readings = []struct {
	text        string
	strike, dip float64
}{
	{"035/30", 35, 30}, {"35/30", 35, 30}, {"035,30", 35, 30}, {"035 30", 35, 30}, {"035;30", 35, 30},
	{"035-30", 35, 30}, {"035 - 30", 35, 30}, {"035 -30", 35, 30}, {"035@30", 35, 30}, {" 035 / 30 ", 35, 30},
	{"035–30", 35, 30}, {"035—30", 35, 30}, {"035−30", 35, 30}, {"035‐30", 35, 30}, {"035‑30", 35, 30},
	{"035⁄30", 35, 30}, {"035∕30", 35, 30}, {"035\\30", 35, 30}, {"０３５／３０", 35, 30},
	{"035°/30°", 35, 30}, {"035º/30º", 35, 30}, {"035˚ 30˚", 35, 30}, {"035° 30°", 35, 30}, {"035 deg / 30 degrees", 35, 30},
	{"035\u00a0/\u202f30", 35, 30}, {"035\t30", 35, 30},

	{"035/30SE", 35, 30}, {"035/30 SE", 35, 30}, {"035/30se", 35, 30}, {"035/30/SE", 35, 30}, {"035/30 (SE)", 35, 30},
	{"035/SE30", 35, 30}, {"035/SE 30", 35, 30}, {"035/30-SE", 35, 30}, {"035/30 to the SE", 35, 30},
	{"035/30 NW", 215, 30}, {"215/30 SE", 35, 30}, {"215/30 NW", 215, 30}, {"035/30 E", 35, 30}, {"035/30 S", 35, 30},
	{"035/30 ESE", 35, 30}, {"035/30 south-east", 35, 30}, {"035/30 southeast", 35, 30}, {"012,78E", 12, 78},
	{"035/30 S.E.", 35, 30}, {"N.35°E., 30° S.E.", 35, 30}, {"30→125 SE", 35, 30}, {"30→125, E", 35, 30},

	{"N35E 30SE", 35, 30}, {"n35e30se", 35, 30}, {"N 35° E, 30° SE", 35, 30}, {"N35°E/30°SE", 35, 30}, {"N35E, SE 30", 35, 30},
	{"N35E 30E", 35, 30}, {"S35W 30SE", 35, 30}, {"N35E–30SE", 35, 30}, {"N-35-E, 30SE", 35, 30}, {"N.35°E. 30°SE.", 35, 30},
	{"N65W, 25S", 115, 25}, {"N65W 25N", 295, 25}, {"S65E 25S", 115, 25}, {"north 35 east, 30 south-east", 35, 30},
	{"N-S, 40W", 180, 40}, {"NS 40E", 0, 40}, {"E-W 30N", 270, 30}, {"N, 30E", 0, 30}, {"NE/30SE", 45, 30}, {"NE-SW 30NW", 225, 30},
	{"N0E 10E", 0, 10}, {"N90E 10S", 90, 10}, {"N90W 10N", 270, 10}, {"S0W 10W", 180, 10}, {"N35E vertical", 35, 90}, {"N35E 90", 35, 90},

	{"30→125", 35, 30}, {"30->125", 35, 30}, {"30 => 125", 35, 30}, {"30-->125", 35, 30}, {"30° ⟶ 125°", 35, 30},
	{"30 to 125", 35, 30}, {"dip 30 toward 125", 35, 30}, {"30→S55E", 35, 30}, {"35 toward N", 270, 35},
	{"dip direction 125, dip 30", 35, 30}, {"dip 30, dip direction 125", 35, 30},

	{"strike 035, dip 30", 35, 30}, {"strike 215, dip 30 to the SE", 35, 30}, {"dip 30, strike 035", 35, 30},
	{"dip 30 to the SE, strike 215", 35, 30}, {"dips 30 SE, striking N35E", 35, 30},

	{"strike/dip 035/30", 35, 30}, {"Strike and dip: 035/30", 35, 30}, {"strike: 035, dip: 30", 35, 30}, {"strike=035 dip=30", 35, 30},
	{"dip direction/dip 125/30", 35, 30}, {"dip/dip direction: 30/125", 35, 30}, {"RHR 035/30", 35, 30},
	{"N 26°15' E, 30° SE", 26.25, 30},

	{"360/30", 0, 30}, {"000/30", 0, 30}, {"0/5", 0, 5}, {"180/30", 180, 30}, {"359/89", 359, 89},
	{"035.5/30.25", 35.5, 30.25}, {"035°30'/26°15'", 35.5, 26.25}, {"035/26°15′", 35, 26.25}, {"035/26° 15’", 35, 26.25},
	{"035/26°15'36\"", 35, 26.26}, {"035/26°15′36″", 35, 26.26}, {"035 / 26 deg 15 min", 35, 26.25},
	{"N35°30'E, 26°15'SE", 35.5, 26.25},

	{"horizontal", 0, 0}, {"Flat", 0, 0}, {"035/00", 0, 0}, {"035/0 SE", 0, 0}, {"035 horizontal", 0, 0}, {"125/00", 0, 0},
	{"035/90", 35, 90}, {"215/90", 215, 90}, {"vertical 035", 35, 90}, {"035 vertical", 35, 90}, {"035/90 SE", 35, 90},
	{"035/90 NW", 215, 90}, {"035/vertical", 35, 90}, {"035/90 vertical", 35, 90},
	{"pole 305/60", 35, 30}, {"305/60 pole", 35, 30}, {"pole 000/90", 0, 0},
}

func TestParse(t *testing.T) {
	for _, c := range readings {
		e, err := orient.Parse(c.text, orient.AzimuthDip)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		want := orient.PlaneOf(deg(c.strike), deg(c.dip))
		if off := (e.Plane.Strike.From(want.Strike)).Abs() + (e.Plane.Dip - want.Dip).Abs(); off > deg(1e-9) {
			t.Errorf("%q is %v, want %v/%v", c.text, orient.Format(e.Plane, orient.AzimuthDip), c.strike, c.dip)
		}
		if e.HasStrike != (c.dip != 0) || e.DipMissing || e.SideMissing {
			t.Errorf("%q: %+v", c.text, e)
		}
	}
}

func TestParseAssume(t *testing.T) {
	for _, c := range []struct {
		text     string
		assume   orient.Notation
		notation orient.Notation
		strike   float64
	}{
		{"125/30", orient.AzimuthDip, orient.AzimuthDip, 125},
		{"125/30", orient.Quadrant, orient.AzimuthDip, 125},
		{"125/30", orient.DirectionDip, orient.DirectionDip, 35},
		{"305/60", orient.PoleNotation, orient.PoleNotation, 35},
		{"125/30 SE", orient.DirectionDip, orient.DirectionDip, 35},
		{"035/30 SE", orient.DirectionDip, orient.AzimuthDip, 35},
		{"215/30 SE", orient.DirectionDip, orient.AzimuthDip, 35},
		{"045/30 E", orient.DirectionDip, orient.AzimuthDip, 45},
		{"strike 125, dip 30", orient.DirectionDip, orient.AzimuthDip, 125},
		{"vertical 035", orient.DirectionDip, orient.AzimuthDip, 35},
		{"125/90", orient.DirectionDip, orient.DirectionDip, 35},
		{"N35E 30SE", orient.DirectionDip, orient.Quadrant, 35},
		{"N35E 90", orient.DirectionDip, orient.Quadrant, 35},
		{"30→125", orient.AzimuthDip, orient.DirectionDip, 35},
		{"035/30 SE", orient.PoleNotation, orient.AzimuthDip, 35},
	} {
		e, err := orient.Parse(c.text, c.assume)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		if got := e.Plane.Strike.String(); e.Notation != c.notation || got != az(c.strike).String() {
			t.Errorf("%q, assume %d: notation %d, strike %s; want %d, %v", c.text, c.assume, e.Notation, got, c.notation, c.strike)
		}
	}
}

func TestParseKeepsWhatWasWritten(t *testing.T) {
	for _, c := range []struct {
		text, written, letters string
	}{
		{"215/30 se", "215", "SE"}, {"S35W 30SE", "215", "SE"}, {"N65W, 25S", "295", "S"}, {"125/30", "125", ""},
		{"30→125", "125", ""}, {"W-E 30N", "270", "N"}, {"035/30 south-east", "035", "SE"}, {"360/30", "000", ""},
	} {
		e, err := orient.Parse(c.text, orient.AzimuthDip)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		if e.Written.String() != c.written || e.Letters != c.letters {
			t.Errorf("%q: written %s, letters %q; want %s, %q", c.text, e.Written, e.Letters, c.written, c.letters)
		}
	}
}

func TestParseOverturned(t *testing.T) {
	for _, text := range []string{"035/30 SE overturned", "overturned 035/30", "N35E 30SE, Overturned", "035/30 OT", "125/30 overturned"} {
		if p := mustParse(t, text); !p.Overturned {
			t.Errorf("%q is not overturned", text)
		}
	}
	if p := mustParse(t, "035/30 upright"); p.Overturned {
		t.Error("upright reads as overturned")
	}
}
