package geomag

import (
	"fmt"
	"strconv"
	"strings"
	"sync"

	"cuesta/assets"
)

// degree is the highest degree and order of the model.
const degree = 12

// pair is the coefficient of the cosine and of the sine of one term, in nT.
type pair struct{ g, h float64 }

// table holds the term of degree n and order m at [n][m].
type table [degree + 1][degree + 1]pair

// Model is a set of spherical harmonic coefficients (Schmidt semi-normalised)
// at an epoch, with their change a year. The zero value has no field at all.
type Model struct {
	epoch  Year
	main   table
	change table
}

// span is how long a model holds from its epoch, in years.
const span = 5

// WMM2025 is the World Magnetic Model 2025, read once from the embedded file.
func WMM2025() *Model { return embedded() }

var embedded = sync.OnceValue(func() *Model {
	m, err := Load(assets.FieldCoefficients)
	if err != nil {
		panic("geomag: embedded coefficients: " + err.Error())
	}
	return m
})

// Load reads a coefficient file: a heading that starts with the epoch, then
// one line for each term, n m g h and the yearly changes of g and h, up to a
// line of nines. Terms beyond degree 12, missing or written twice are errors.
func Load(text string) (*Model, error) {
	lines := strings.Split(text, "\n")
	m := &Model{}
	epoch, err := strconv.ParseFloat(firstField(lines[0]), 64)
	if err != nil {
		return nil, fmt.Errorf("line 1: read %q where the epoch stands: %w", firstField(lines[0]), err)
	}
	m.epoch = Year(epoch)
	var seen [degree + 1][degree + 1]bool
	for i, line := range lines[1:] {
		if strings.HasPrefix(line, "9999") {
			break
		}
		if strings.TrimSpace(line) == "" {
			continue
		}
		if err := m.term(line, &seen); err != nil {
			return nil, fmt.Errorf("line %d: %w", i+2, err)
		}
	}
	if err := complete(&seen); err != nil {
		return nil, err
	}
	return m, nil
}

func firstField(line string) string {
	if f := strings.Fields(line); len(f) > 0 {
		return f[0]
	}
	return ""
}

func (m *Model) term(line string, seen *[degree + 1][degree + 1]bool) error {
	var n, o int
	var main, change pair
	if _, err := fmt.Sscan(line, &n, &o, &main.g, &main.h, &change.g, &change.h); err != nil {
		return fmt.Errorf("read %q: want n m g h and two yearly changes: %w", line, err)
	}
	if n < 1 || n > degree || o < 0 || o > n {
		return fmt.Errorf("read the term n %d, m %d: want 1 ≤ n ≤ %d and 0 ≤ m ≤ n", n, o, degree)
	}
	if seen[n][o] {
		return fmt.Errorf("read the term n %d, m %d a second time", n, o)
	}
	seen[n][o] = true
	m.main[n][o], m.change[n][o] = main, change
	return nil
}

func complete(seen *[degree + 1][degree + 1]bool) error {
	for n := 1; n <= degree; n++ {
		for m := 0; m <= n; m++ {
			if !seen[n][m] {
				return fmt.Errorf("the term n %d, m %d is missing", n, m)
			}
		}
	}
	return nil
}

// at is the table of coefficients at a date.
func (m *Model) at(y Year) *table {
	t := m.main
	years := float64(y - m.epoch)
	for n := range t {
		for o := range t[n] {
			t[n][o].g += years * m.change[n][o].g
			t[n][o].h += years * m.change[n][o].h
		}
	}
	return &t
}
