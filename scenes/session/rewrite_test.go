package session_test

import (
	"testing"

	"cuesta/orient"
	"cuesta/scenes/session"
)

// Every plane of whole degrees is the same one after it has been rewritten, from
// every notation to every other and back.
func TestRewrittenIsTheSamePlane(t *testing.T) {
	written := []orient.Notation{orient.AzimuthDip, orient.Quadrant, orient.DirectionDip}
	for strike := range 360 {
		for _, dip := range []int{0, 1, 30, 45, 89, 90} {
			p := orient.PlaneOf(orient.Angle(strike)*orient.Degree, orient.Angle(dip)*orient.Degree)
			p.Overturned = strike%2 == 1
			for _, from := range written {
				text := orient.Format(p, from)
				before, err := orient.Parse(text, from)
				if err != nil {
					t.Fatal(err)
				}
				for _, to := range written {
					s, ok := session.Rewritten(text, from, to)
					after, err := orient.Parse(s, to)
					if !ok || err != nil || after.Plane.AngleTo(before.Plane) > 1e-6 || after.Plane.Overturned != before.Plane.Overturned {
						t.Errorf("%s from %v to %v: %q, %v, %v", text, from, to, s, ok, err)
					}
					if again, _ := session.Rewritten(s, to, from); again != text && dip < 90 { // a vertical bed keeps no end in quadrants
						t.Errorf("%s from %v to %v and back: %q", text, from, to, again)
					}
				}
			}
		}
	}
}

func TestWhatIsNoWholePlaneIsNotRewritten(t *testing.T) {
	for _, text := range []string{"", "12", "120", "120/", "N60W 30", "no plane"} {
		if s, ok := session.Rewritten(text, orient.AzimuthDip, orient.DirectionDip); ok || s != text {
			t.Errorf("%q: %q, %v", text, s, ok)
		}
	}
}
