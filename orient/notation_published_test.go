package orient_test

import (
	"errors"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"cuesta/orient"
)

func TestPublishedNotation(t *testing.T) {
	for _, row := range readPublished(t, "notation.csv") {
		t.Run(row.quantity+" "+row.inputs, func(t *testing.T) { checkNotation(t, row) })
	}
}

func checkNotation(t *testing.T, row published) {
	switch row.quantity {
	case "same plane":
		checkSamePlane(t, row)
	case "pole (trend/plunge)":
		if got := orient.Format(mustParse(t, row.inputs), orient.PoleNotation); got != row.expected {
			t.Errorf("pole of %s is %s, want %s", row.inputs, got, row.expected)
		}
	case "quadrant to azimuth":
		checkQuadrants(t, row)
	case "impossible letters":
		checkImpossible(t)
	case "either end":
		checkEitherEnd(t)
	case "right-hand convention":
		rapid.Check(t, dropsToTheRight)
	case "dip direction/dip":
		checkDirectionDigits(t, row)
	default:
		t.Errorf("no check for %+v", row)
	}
}

func checkSamePlane(t *testing.T, row published) {
	p := mustParse(t, row.inputs)
	parts := strings.Split(row.expected, ";")
	if q := mustParse(t, parts[0]); p != q {
		t.Errorf("%s is %v, %s is %v", row.inputs, p, parts[0], q)
	}
	row.expected = parts[1]
	row.check(t, p.DipDirection().Degrees(), p.Dip.Degrees())
}

func checkQuadrants(t *testing.T, row published) {
	want := strings.Split(row.expected, "; ")
	for i, q := range strings.Split(row.inputs, "; ") {
		e, err := orient.Parse(q+" vertical", orient.AzimuthDip)
		if err != nil {
			t.Fatal(err)
		}
		if got := e.Written.String(); got != want[i] {
			t.Errorf("%s is %s, want %s", q, got, want[i])
		}
		if got := e.Written.Quadrant(); got != q {
			t.Errorf("%s is written %s, want %s", want[i], got, q)
		}
	}
}

func checkImpossible(t *testing.T) {
	for _, letters := range []string{"NE", "SW"} {
		_, err := orient.Parse("040/30"+letters, orient.AzimuthDip)
		if !errors.Is(err, orient.ErrLetters) || !strings.Contains(err.Error(), "SE or NW") {
			t.Errorf("040/30%s: got %v, want a refusal that offers SE or NW", letters, err)
		}
	}
	if p := mustParse(t, "040/30SE"); p != orient.PlaneOf(deg(40), deg(30)) {
		t.Errorf("040/30SE is %v", p)
	}
	if p := mustParse(t, "040/30NW"); p != orient.PlaneOf(deg(220), deg(30)) {
		t.Errorf("040/30NW is %v", p)
	}
}

func checkEitherEnd(t *testing.T) {
	p, q := mustParse(t, "008/12E"), mustParse(t, "188/12E")
	if p != q || p != orient.PlaneOf(deg(8), deg(12)) {
		t.Errorf("008/12E is %v and 188/12E is %v, want one plane that strikes 008", p, q)
	}
}

// dropsToTheRight: looking along the strike, the surface drops to the right.
func dropsToTheRight(t *rapid.T) {
	p := inclined(t)
	right := p.Strike.Add(orient.Right).Vec()
	d := p.DownDip()
	if across := d.X*right.X + d.Y*right.Y; across <= 0 || d.Z >= 0 {
		t.Fatalf("%v goes down along %v", p, d)
	}
}

func checkDirectionDigits(t *testing.T, row published) {
	for _, text := range []string{"178/56", "026/27"} {
		if !strings.Contains(row.expected, text) {
			t.Errorf("%s is not an example of the row", text)
		}
		p := mustParseAs(t, text, orient.DirectionDip)
		if got := orient.Format(p, orient.DirectionDip); got != text {
			t.Errorf("%s comes back as %s", text, got)
		}
	}
}
