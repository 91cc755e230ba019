package mistake

import (
	"math"

	"cuesta/orient"
)

// swapped returns the numbers that come of exchanging two neighbouring digits
// of n written with the given number of digits, without n itself and without
// those over the largest one allowed.
func swapped(n, digits, largest int) []int {
	var out []int
	for lo := 1; digits > 1; digits, lo = digits-1, lo*10 {
		a, b := n/lo%10, n/(lo*10)%10
		m := n + (a-b)*lo*10 + (b-a)*lo
		if m != n && m <= largest {
			out = append(out, m)
		}
	}
	return out
}

// misreading is by how many whole degrees a number may have been read wrong
// before its digits were exchanged: each reading is one more prediction.
func misreading(sigma orient.Angle) int { return int(math.Ceil(2.5 * min(sigma.Degrees(), 4))) }

// digits claims two digits exchanged in writing a number that was read as z,
// give or take.
func (b *builder) digits(with kinds, z orient.Azimuth) {
	read := b.e.writtenFrom(z).Degrees()
	n, around, first := int(math.Round(read)), misreading(b.sigma), len(b.claims)
	for m := n - around; m <= n+around; m++ {
		w := claim{sigma: b.sigma}.density(orient.Angle(float64(m)-read) * orient.Degree)
		for _, x := range b.e.exchanged((m + 360) % 360) {
			at := b.e.strikeFrom(orient.AzimuthOf(orient.Angle(x) * orient.Degree))
			b.claims = append(b.claims, claim{with | setOf(DigitsSwapped), w, b.e.turned(at).Angle(), leastSigma})
		}
	}
	scaled(b.claims[first:], priorDigits)
}

// exchanged are the azimuths, in whole degrees, that come of exchanging two
// digits of the azimuth n: of three, or of the two of a quadrant bearing.
func (e Evidence) exchanged(n int) []int {
	if e.Entry.Notation != orient.Quadrant {
		return swapped(n, 3, 359)
	}
	from, way := n/180*180, 1 // north or south, and which way from it
	if n%180 > 90 {
		from, way = from+180, -1
	}
	out := swapped(way*(n-from), 2, 90)
	for i, q := range out {
		out[i] = (from + way*q + 360) % 360
	}
	return out
}
