// Package geomag reckons the main magnetic field of the Earth at a place and
// date from the World Magnetic Model 2025 (NOAA NCEI and British Geological
// Survey), which holds from 2025.0 to 2030.0.
//
// Intensities are in nanotesla, in the local frame north, east, down at the
// WGS 84 ellipsoid. Declination is positive when magnetic north lies east of
// true north, inclination when the field points down. The main field knows
// nothing of local rock, iron or solar storms; the standard error of the
// declination allows for them as the model's report does.
package geomag
