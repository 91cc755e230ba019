package learner

import (
	"errors"
	"fmt"
	"math"

	"cuesta/orient"
	"cuesta/quiz/mistake"
	"cuesta/sim"
)

// write puts a strike, read at the end the edge pointed to, and a dip down in
// the notation of the course, with the mistakes there are of writing.
func (d *desk) write(h *hands, s sim.Setup, z orient.Azimuth, dip orient.Angle) string {
	notation := d.part.Spec.Notation
	if d.makes(mistake.WrongLetters) || d.makes(mistake.LettersContradict) {
		notation = orient.Quadrant // the one that needs letters
	}
	if d.makes(mistake.Complement) {
		dip = orient.Right - dip
	}
	switch notation {
	case orient.DirectionDip:
		z = z.Add(orient.Right)
	case orient.PoleNotation:
		z, dip = z.Add(-orient.Right), orient.Right-dip
	case orient.AzimuthDip, orient.Quadrant:
	}
	n := d.misnumber(whole(z.Angle()), tenth(s.Field.Declination), notation)
	if notation == orient.Quadrant {
		return d.bearing(n, whole(dip), d.falling(h))
	}
	a, b := n, whole(dip)
	if d.makes(mistake.StrikeDipSwapped) {
		a, b = b, a
	}
	return fmt.Sprintf("%03d/%02d", a, b)
}

func whole(a orient.Angle) int { return int(math.Round(a.Degrees())) }

// misnumber is the azimuth n as the learner writes it.
func (d *desk) misnumber(n int, declination orient.Angle, notation orient.Notation) int {
	if d.Manner != Mistaken {
		return n % 360
	}
	switch d.Mistake {
	case mistake.SouthEnd:
		n += 180
	case mistake.DirectionForStrike:
		if n += 90; notation == orient.DirectionDip {
			n += 180
		}
	case mistake.EastWest:
		n = 360 - n
	case mistake.DeclinationTwice:
		n += whole(declination) + 360
	case mistake.DigitsSwapped:
		if notation != orient.Quadrant { // which has digits of its own
			return exchanged(n % 360)
		}
	case mistake.OtherEnd, mistake.WrongLetters, mistake.DeclinationNotSet, mistake.DeclinationWrongSign,
		mistake.DeclinationMisset, mistake.LevelNotCentred, mistake.NeedleMoving, mistake.NeedleRubbing,
		mistake.NeedleLocked, mistake.NeedleSticking, mistake.EdgeNotDownDip, mistake.BodyLeaning,
		mistake.TubeNotCentred, mistake.PercentScale, mistake.Complement, mistake.StrikeDipSwapped, mistake.LettersContradict,
		mistake.NotCalibrated:
	}
	return n % 360
}

// exchanged is n with its last two digits exchanged.
func exchanged(n int) int { return n/100*100 + n%10*10 + n/10%10 }

// falling is the direction in which the rock falls away, as seen.
func (d *desk) falling(h *hands) orient.Azimuth {
	return orient.AzimuthOf(orient.Atan2(h.down.X, h.down.Y))
}

// bearing writes a quadrant bearing: the north end, and letters of the side.
func (d *desk) bearing(n, dip int, falls orient.Azimuth) string {
	z := orient.AzimuthOf(orient.Angle(n) * orient.Degree)
	switch {
	case d.makes(mistake.WrongLetters):
		falls = falls.Opposite()
	case d.makes(mistake.LettersContradict):
		falls = z
	}
	if z.Degrees() > 90 && z.Degrees() <= 270 {
		z = z.Opposite()
	}
	text := d.turned(z.Quadrant()) + fmt.Sprintf(" %02d%s", dip, falls.Letters())
	if _, err := orient.Parse(text, orient.Quadrant); errors.Is(err, orient.ErrLetters) && !d.makes(mistake.LettersContradict) {
		d.made = append(d.made, mistake.LettersContradict) // it comes of the wrong number
	}
	return text
}

// turned exchanges the digits of a quadrant bearing, of who does.
func (d *desk) turned(bearing string) string {
	if !d.makes(mistake.DigitsSwapped) || len(bearing) != 4 {
		return bearing
	}
	return bearing[:1] + bearing[2:3] + bearing[1:2] + bearing[3:]
}
