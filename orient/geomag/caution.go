package geomag

// Caution is a set of reasons to trust a field less.
type Caution uint8

// The reasons. The limits of 6000 and 2000 nT are those of the zones around
// the magnetic poles in the model's report (from memory).
const (
	OutOfDate  Caution = 1 << iota // the date lies outside the years of the model
	WeakNeedle                     // horizontal field under 6000 nT: use a needle with care
	NoNeedle                       // horizontal field under 2000 nT: do not trust a needle
)

const (
	careBelow  = 6000
	trustBelow = 2000
)

func (m *Model) caution(f Field, y Year) Caution {
	var c Caution
	if y < m.epoch || y >= m.epoch+span {
		c |= OutOfDate
	}
	switch {
	case f.Horizontal < trustBelow:
		c |= NoNeedle
	case f.Horizontal < careBelow:
		c |= WeakNeedle
	}
	return c
}

// Words says each reason in a sentence of its own.
func (c Caution) Words() []string {
	var words []string
	for _, r := range [...]struct {
		flag Caution
		said string
	}{
		{OutOfDate, "The date lies outside 2025.0 to 2030.0, the years the field model is made for; the values are carried on in a straight line."},
		{WeakNeedle, "Near a magnetic pole the horizontal field is weak (under 6000 nT): a needle is slow and its azimuth uncertain."},
		{NoNeedle, "Near a magnetic pole the horizontal field is too weak (under 2000 nT) to trust a needle at all."},
	} {
		if c&r.flag != 0 {
			words = append(words, r.said)
		}
	}
	return words
}
