package item

import (
	"testing"

	"cuesta/orient"
	"cuesta/quiz"
)

// The first is worked by hand: tan 74° = 3.487, sin 25° = 0.4226; their product
// 1.474 is the tangent of 55.8°. 46° is a grade of 103.6 %.
func TestWorking(t *testing.T) {
	azimuth := func(x float64) orient.Azimuth { return orient.AzimuthOf(deg(x)) }
	for _, c := range []struct {
		it   Worked
		want string
	}{
		{newApparent(plane(30, 74), azimuth(55), false, Spec{}), "tan 74° × sin 25° = 1.47, which is tan 56°"},
		{newApparent(plane(30, 74), azimuth(185), false, Spec{}), "tan 74° × sin 25° = 1.47, which is tan 56°"},
		{newApparent(plane(30, 74), azimuth(55), true, Spec{}), "tan 56° / sin 25° = 3.51, which is tan 74°"},
		{newGrade(46, false, Spec{}), "100 × tan 46° = 104 %"},
		{newGrade(40, true, Spec{}), "40 / 100 = 0.40, which is tan 22°"},
		{newDeclination(35, 12, false, Spec{}), "035° + 12° = 047°"},
		{newDeclination(5, -12, false, Spec{}), "005° − 12° + 360° = 353°"},
		{newDeclination(355, -12, true, Spec{}), "355° + 12° − 360° = 007°"},
	} {
		if got := c.it.Working(); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
		if m := c.it.Mark(c.it.Key(), Evidence{}); !m.Right {
			t.Errorf("%s is not the right answer", c.it.Key())
		}
	}
}

func TestWithin(t *testing.T) {
	for _, c := range []struct {
		it   Item
		want string
	}{
		{newGrade(46, false, Spec{}), "± 2 %"},
		{newDeclination(35, 12, false, Spec{}), "± 0.5°"},
		{newApparent(plane(30, 74), orient.AzimuthOf(deg(55)), false, Spec{}), "± 1°"},
		{symbolOf(plane(35, 30), Spec{}), "strike ± 5°, dip ± 0.5°"},
		{slabItem{planar: planar{truth: plane(35, 9.7), tolerance: quiz.DefaultTolerance}}, "strike ± 7.8°, dip ± 3°"}, // 2° + asin(tan 1° / tan 9.7°) = 7.86°
		{symbolOf(orient.Plane{}, Spec{}), "dip ± 0.5°"},
	} {
		if got := Within(c.it); got != c.want {
			t.Errorf("%s\ngot %q, want %q", c.it.Prompt(), got, c.want)
		}
	}
}
