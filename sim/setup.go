package sim

import (
	"errors"
	"fmt"
	"math"

	"cuesta/orient"
)

// ErrSetup is wrapped by every error of New.
var ErrSetup = errors.New("no bench can be set up like this")

// Setup is everything a bench starts from. Equal set-ups give equal benches.
type Setup struct {
	Seed    uint64       // of the pose the bench starts in
	Plane   orient.Plane // the rock surface
	Field   Field
	Ring    orient.Angle // declination already set on the dial, east positive
	Balance Balance      // the zone the needle's counterweight was set for
	Tool    Tool         // the instrument on the bench
}

// Field is the magnetic field at the bench. The zero value stands for the
// teaching default: declination 0 and 20 µT horizontal, level field.
type Field struct {
	Declination orient.Angle // east positive
	Inclination orient.Angle // down positive, in (−π/2, π/2)
	Horizontal  float64      // tesla, above zero unless the whole field is zero
}

// teachingField is the horizontal field of the zero Field, in tesla.
const teachingField = 20e-6

// strongest is the strongest horizontal field a bench takes, in tesla: far
// above any place on Earth (at most 42 µT), so that a slip of units is caught.
const strongest = 1e-3

// orDefault returns the teaching default for the zero value.
func (f Field) orDefault() Field {
	if f == (Field{}) {
		return Field{Horizontal: teachingField}
	}
	return f
}

// Vertical is the vertical field in tesla, down positive.
func (f Field) Vertical() float64 { return f.Horizontal * f.Inclination.Tan() }

// check says what makes the field impossible.
func (f Field) check() error {
	switch {
	case f == Field{}:
		return nil
	case !finite(f.Declination) || f.Declination.Abs() > orient.Half:
		return fmt.Errorf("%w: the declination is %v°; it lies between -180° and 180°", ErrSetup, f.Declination.Degrees())
	case !finite(f.Inclination) || f.Inclination.Abs() >= orient.Right:
		return fmt.Errorf("%w: the inclination of the field is %v°; it lies between -90° and 90°", ErrSetup, f.Inclination.Degrees())
	case !(f.Horizontal > 0 && f.Horizontal <= strongest):
		return fmt.Errorf("%w: the horizontal field is %v T; it lies above 0 and below %v T", ErrSetup, f.Horizontal, strongest)
	}
	return nil
}

// Check says what makes the set-up impossible; the error wraps ErrSetup.
func (s Setup) Check() error {
	strike := s.Plane.Strike.Angle()
	switch {
	case !finite(strike) || strike < 0 || strike >= orient.Full:
		return fmt.Errorf("%w: the strike is %v°; it lies from 0° to below 360°", ErrSetup, strike.Degrees())
	case !finite(s.Plane.Dip) || s.Plane.Dip < 0 || s.Plane.Dip > orient.Right:
		return fmt.Errorf("%w: the dip is %v°; it lies from 0° to 90°", ErrSetup, s.Plane.Dip.Degrees())
	case !finite(s.Ring) || s.Ring.Abs() > orient.Half:
		return fmt.Errorf("%w: the ring is set to %v°; it lies between -180° and 180°", ErrSetup, s.Ring.Degrees())
	case s.Balance > BalancedSouth:
		return fmt.Errorf("%w: there is no balance %d", ErrSetup, s.Balance)
	case s.Tool > Complete:
		return fmt.Errorf("%w: there is no instrument %d", ErrSetup, s.Tool)
	}
	return s.Field.check()
}

func finite(a orient.Angle) bool {
	return !math.IsNaN(a.Radians()) && !math.IsInf(a.Radians(), 0)
}

// Balance is the magnetic zone the counterweight of the needle was set for. A
// needle used far from its zone tips off the horizontal and drags on the
// glass, even in a level case.
type Balance uint8

// The balances. The vertical fields of the zones are design assumptions, round
// figures for middle latitudes and the magnetic equator.
const (
	BalancedHere    Balance = iota // for this bench
	BalancedNorth                  // 45 µT downwards
	BalancedEquator                // none
	BalancedSouth                  // 45 µT upwards
)

// vertical is the vertical field, in tesla, the needle is balanced for where
// the vertical field is here.
func (b Balance) vertical(here float64) float64 {
	switch b {
	case BalancedHere:
		return here
	case BalancedNorth:
		return 45e-6
	case BalancedEquator:
		return 0
	case BalancedSouth:
		return -45e-6
	}
	return here
}

// Tool is the instrument on the bench: what it has beside its plate, which can
// always be seated on an edge and on its side.
type Tool uint8

// The instruments.
const (
	Plain    Tool = iota // the plate alone
	Lidded               // with a hinged lid
	Sensing              // with a sensor in its back
	Complete             // with both
)

// Takes says whether the instrument can be seated so.
func (t Tool) Takes(s Seat) bool {
	switch s {
	case OnEdge, OnSide:
		return true
	case OnLid:
		return t == Lidded || t == Complete
	case OnBack:
		return t == Sensing || t == Complete
	}
	return false
}
