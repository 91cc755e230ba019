package sim

import (
	"cuesta/orient"
)

// Setup is everything a bench starts from. Equal set-ups give equal benches.
type Setup struct {
	Seed  uint64
	Plane orient.Plane
	Field Field
	Ring  orient.Angle // declination already set on the dial
}

// Field is the magnetic field at the bench. The zero value stands for the
// teaching default: declination 0 and 20 µT horizontal, level field.
type Field struct {
	Declination orient.Angle // east positive
	Inclination orient.Angle // down positive
	Horizontal  float64      // tesla
}
