package item

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/sim"
)

// ErrSpec is wrapped by every error of Deal and Check.
var ErrSpec = errors.New("no item can be dealt like this")

// Check says what makes the specification impossible for every kind.
func (s Spec) Check() error {
	switch {
	case s.Notation > orient.PoleNotation:
		return fmt.Errorf("%w: there is no notation %d", ErrSpec, s.Notation)
	case !s.Tolerance.IsValid():
		return fmt.Errorf("%w: a tolerance lies from 0° to 90°, a share from 0 to 1", ErrSpec)
	case s.Mix != (quiz.Mix{}) && !s.Mix.IsValid():
		return fmt.Errorf("%w: the shares of the mix must not be negative, and one must be above zero", ErrSpec)
	case !(s.DipMin >= 0 && s.DipMin <= orient.Right && s.DipMax >= 0 && s.DipMax <= orient.Right):
		return fmt.Errorf("%w: dips lie from 0° to 90°", ErrSpec)
	case s.DipMax != 0 && s.DipMin > s.DipMax:
		return fmt.Errorf("%w: the least dip, %v°, is above the greatest, %v°", ErrSpec, s.DipMin.Degrees(), s.DipMax.Degrees())
	case !(s.Declination.Abs() <= orient.Half):
		return fmt.Errorf("%w: the declination lies from -180° to 180°", ErrSpec)
	}
	if err := (sim.Setup{Field: s.Field}).Check(); err != nil {
		return fmt.Errorf("%w: %w", ErrSpec, err)
	}
	return nil
}

// tolerance is the tolerance asked for, or the default.
func (s Spec) tolerance() quiz.Tolerance {
	if s.Tolerance == (quiz.Tolerance{}) {
		return quiz.DefaultTolerance
	}
	return s.Tolerance
}

// dips are the least and greatest dip asked for in whole degrees, within low
// and high; low and high themselves where nothing is asked.
func (s Spec) dips(low, high int) (from, to int, err error) {
	from, to = low, high
	if s.DipMin != 0 {
		from = max(low, int(math.Ceil(s.DipMin.Degrees()-1e-9)))
	}
	if s.DipMax != 0 {
		to = min(high, int(math.Floor(s.DipMax.Degrees()+1e-9)))
	}
	if from > to {
		return 0, 0, fmt.Errorf("%w: this kind needs a whole dip from %d° to %d° within the dips asked for", ErrSpec, low, high)
	}
	return from, to, nil
}

// dip draws a whole dip, even over what is asked for within low and high.
func (s Spec) dip(r *rand.Rand, low, high int) (int, error) {
	from, to, err := s.dips(low, high)
	if err != nil {
		return 0, err
	}
	return from + r.IntN(to-from+1), nil
}

// plane draws a plane in whole degrees: the dip as the mix or the range says,
// the strike even over the circle, one time in six near north.
func (s Spec) plane(r *rand.Rand) (orient.Plane, error) {
	return s.planeBetween(r, 1, 90)
}

// planeBetween draws a plane as plane does, with its dip within low and high.
func (s Spec) planeBetween(r *rand.Rand, low, high int) (orient.Plane, error) {
	from, to, err := s.dips(low, high)
	if err != nil {
		return orient.Plane{}, err
	}
	p := s.Mix.Plane(r).Rounded(orient.Degree)
	even := orient.Angle(from+r.IntN(to-from+1)) * orient.Degree
	if s.DipMin != 0 || s.DipMax != 0 || p.Dip < angle(low) || p.Dip > angle(high) {
		p.Dip = even
	}
	p.Strike = orient.AzimuthOf(angle(azimuth(r)))
	return p, nil
}

// azimuth draws a whole azimuth in [0, 360), one time in six within 12° of
// north, where numbers wrap.
func azimuth(r *rand.Rand) int {
	even, north := r.IntN(360), r.IntN(25)-12
	if r.IntN(6) == 0 {
		return (north + 360) % 360
	}
	return even
}

// signed draws a whole number from low to high with either sign.
func signed(r *rand.Rand, low, high int) int {
	n := low + r.IntN(high-low+1)
	if r.IntN(2) == 0 {
		return -n
	}
	return n
}

// angle is n whole degrees.
func angle(n int) orient.Angle { return orient.Angle(n) * orient.Degree }
