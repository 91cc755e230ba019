package orient_test

import (
	"strings"
	"testing"

	"cuesta/orient"
)

func TestPublishedPlanes(t *testing.T) {
	checks := map[string]func(*testing.T, published){
		"plane from two apparent dips":                 checkTwoApparentDips,
		"line of intersection":                         checkIntersection,
		"fold hinge, interlimb angle, axial surface":   checkFold,
		"pitch of a bed in the fold profile plane":     checkPitch,
		"pole of the plane through two lines":          checkThroughLines,
		"true thickness per 100 of flat outcrop width": checkThickness,
		"dip from outcrop width":                       checkOutcrop,
	}
	for _, row := range readPublished(t, "planes.csv") {
		check, ok := checks[row.quantity]
		if !ok {
			t.Errorf("no check for %+v", row)
			continue
		}
		t.Run(row.quantity+" "+row.inputs, func(t *testing.T) { check(t, row) })
	}
}

func checkTwoApparentDips(t *testing.T, row published) {
	in := numbers(t, row.inputs)
	p, ok := orient.PlaneThrough(lineOf(in[1], in[0]), lineOf(in[3], in[2]))
	if !ok {
		t.Fatal("no plane")
	}
	want := numbers(t, row.expected) // either end with letters, then right-hand
	row.expected = strings.Join(strings.Fields(row.expected)[5:], " ")
	row.check(t, p.Strike.Degrees(), p.Dip.Degrees())
	if want[0] != want[2]-180 || p.DipDirection().Letters() != "N" {
		t.Errorf("%v, want the ends %v and %v and a dip to the N", p, want[0], want[2])
	}
}

func checkIntersection(t *testing.T, row published) {
	assume := orient.AzimuthDip
	if strings.Contains(row.inputs, "(dip direction/dip)") {
		assume = orient.DirectionDip
	}
	text := strings.TrimPrefix(row.inputs, "planes ")
	text, _, _ = strings.Cut(text, " (")
	first, second, _ := strings.Cut(text, " and ")
	l, ok := orient.Intersection(mustParseAs(t, first, assume), mustParseAs(t, second, assume))
	if !ok {
		t.Fatal("no line")
	}
	row.check(t, l.Trend.Degrees(), l.Plunge.Degrees())
}

func checkFold(t *testing.T, row published) {
	p, q := mustParse(t, "N40E,80SE"), mustParse(t, "N60W,50NE")
	hinge, ok := orient.Hinge(p, q)
	axial, ok2 := orient.AxialPlane(p, q)
	if !ok || !ok2 {
		t.Fatal("no fold")
	}
	want := mustParse(t, "N74E,71NW")
	row.expected = "48 51 89 " + orient.Format(want, orient.AzimuthDip)
	row.check(t, hinge.Plunge.Degrees(), hinge.Trend.Degrees(), orient.InterlimbAngle(p, q).Degrees(),
		axial.Strike.Degrees(), axial.Dip.Degrees())
}

func checkPitch(t *testing.T, row published) {
	profile := orient.PlaneOfPole(lineOf(340, 40))
	bed := mustParse(t, "N23E,50NW")
	l, ok := orient.Intersection(profile, bed)
	if !ok {
		t.Fatal("no line")
	}
	row.check(t, profile.Pitch(l).Degrees())
	if got := l.Trend.Letters(); got != "SW" {
		t.Errorf("the bed goes down to the %s in the profile, want SW", got)
	}
}

func checkThroughLines(t *testing.T, row published) {
	in := numbers(t, row.inputs)
	p, ok := orient.PlaneThrough(lineOf(in[0], in[1]), lineOf(in[2], in[3]))
	if !ok {
		t.Fatal("no plane")
	}
	row.check(t, p.Pole().Trend.Degrees(), p.Pole().Plunge.Degrees())
}

func checkThickness(t *testing.T, row published) {
	var got []float64
	for _, d := range numbers(t, row.inputs) {
		got = append(got, orient.TrueThickness(100, deg(d)))
	}
	row.check(t, got...)
}

func checkOutcrop(t *testing.T, row published) {
	const arcmin = 1.0 / 60
	row.tolerance = "0.016667"
	if row.within(t) > arcmin+1e-6 {
		t.Fatal("the tolerance is one minute of arc")
	}
	row.check(t, orient.DipOfOutcrop(orient.TrueThickness(0.5, deg(20)), 1).Degrees())
}
