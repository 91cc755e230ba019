package orient_test

import (
	"math"
	"strings"
	"testing"

	"cuesta/orient"
)

func TestPublishedDeclination(t *testing.T) {
	for _, row := range readPublished(t, "declination.csv") {
		switch row.quantity {
		case "magnetic to true":
			z, d := bearingAndDeclination(t, row)
			row.check(t, orient.TrueFromMagnetic(z, d).Degrees())
		case "true to magnetic":
			z, d := bearingAndDeclination(t, row)
			row.check(t, orient.MagneticFromTrue(z, d).Degrees())
		case "negative example: a published WRONG answer":
			checkWrongSign(t, row)
		case "WMM2025 standard error of declination": // in the package geomag
		default:
			t.Errorf("no check for %+v", row)
		}
	}
}

func bearingAndDeclination(t *testing.T, row published) (orient.Azimuth, orient.Angle) {
	t.Helper()
	n := numbers(t, row.inputs)
	d := deg(n[1])
	if strings.HasSuffix(row.inputs, "W") {
		d = -d
	}
	return az(n[0]), d
}

func checkWrongSign(t *testing.T, row published) {
	z, d := bearingAndDeclination(t, row)
	n := numbers(t, row.expected)
	wrong, right := n[0], n[1]
	got := orient.TrueFromMagnetic(z, d).Degrees()
	if math.Abs(got-right) > 1e-9 || math.Abs(got-wrong) < 1 {
		t.Errorf("%s: got %v, want %v and not %v", row.inputs, got, right, wrong)
	}
}
