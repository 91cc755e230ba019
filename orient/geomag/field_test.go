package geomag_test

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"cuesta/orient"
	"cuesta/orient/geomag"
)

func site(lat, lon, metres float64) geomag.Site {
	return geomag.Site{
		Latitude: orient.Angle(lat) * orient.Degree, Longitude: orient.Angle(lon) * orient.Degree, Height: metres,
	}
}

func mustAt(t testing.TB, s geomag.Site, y geomag.Year) geomag.Field {
	t.Helper()
	f, err := geomag.At(s, y)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// TestPolesAreContinuous compares the exact poles with places a metre away.
func TestPolesAreContinuous(t *testing.T) {
	const metre = 90.0 / 1e7 // degrees of latitude
	for _, lat := range []float64{90, -90} {
		for _, lon := range []float64{0, 45, 137, 180, -90, 360} {
			at := mustAt(t, site(lat, lon, 0), 2026)
			near := mustAt(t, site(math.Copysign(90-metre, lat), lon, 0), 2026)
			for _, c := range []struct{ got, want float64 }{
				{at.North, near.North}, {at.East, near.East}, {at.Down, near.Down}, {at.Yearly.East, near.Yearly.East},
			} {
				if math.IsNaN(c.got) || math.Abs(c.got-c.want) > 0.05 {
					t.Errorf("%v, %v: %v at the pole, %v a metre away", lat, lon, c.got, c.want)
				}
			}
		}
	}
}

// TestYearlyChange compares the rates with a difference over a short time.
func TestYearlyChange(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := site(rapid.Float64Range(-80, 80).Draw(t, "lat"), rapid.Float64Range(-180, 180).Draw(t, "lon"),
			rapid.Float64Range(0, 5000).Draw(t, "height"))
		const h = 1e-3
		y := geomag.Year(rapid.Float64Range(2025.1, 2029.9).Draw(t, "year"))
		a, errA := geomag.At(s, y-h)
		b, errB := geomag.At(s, y+h)
		f, err := geomag.At(s, y)
		if err := errors.Join(errA, errB, err); err != nil {
			t.Fatal(err)
		}
		for _, c := range []struct {
			name            string
			a, b, rate, tol float64
		}{
			{"horizontal", a.Horizontal, b.Horizontal, f.Yearly.Horizontal, 1e-3},
			{"total", a.Total, b.Total, f.Yearly.Total, 1e-3},
			{"declination", 0, b.Declination.Radians() - a.Declination.Radians(), f.Yearly.Declination.Radians(), 1e-5},
			{"inclination", a.Inclination.Radians(), b.Inclination.Radians(), f.Yearly.Inclination.Radians(), 1e-6},
		} {
			diff := math.Remainder((c.b - c.a), 2*math.Pi)
			if c.name == "horizontal" || c.name == "total" {
				diff = c.b - c.a
			}
			if got := diff / (2 * h); math.Abs(got-c.rate) > c.tol {
				t.Fatalf("%+v %v: %s changes by %v a year, want %v", s, y, c.name, got, c.rate)
			}
		}
	})
}

// TestFullTurn: longitudes a turn apart are one place.
func TestFullTurn(t *testing.T) {
	a, b := mustAt(t, site(-80, 240, 0), 2025), mustAt(t, site(-80, -120, 0), 2025)
	if math.Abs(a.North-b.North)+math.Abs(a.East-b.East)+math.Abs(a.Down-b.Down) > 1e-6 {
		t.Errorf("240 E gives %+v, 120 W gives %+v", a, b)
	}
}

// TestDeclinationError holds √(0.26² + (5417/H)²) degrees (WMM2025 technical
// report, as two implementations quote it).
func TestDeclinationError(t *testing.T) {
	for _, c := range []struct{ h, want float64 }{
		{20000, math.Hypot(0.26, 5417.0/20000)}, {6000, math.Hypot(0.26, 5417.0/6000)}, {1e12, 0.26}, {0, 180}, {1, 180},
	} {
		if got := geomag.DeclinationError(c.h).Degrees(); math.Abs(got-c.want) > 1e-6 {
			t.Errorf("H %v nT: %v°, want %v°", c.h, got, c.want)
		}
	}
	f := mustAt(t, site(46.6, 8, 0), 2026)
	if f.DeclinationError != geomag.DeclinationError(f.Horizontal) {
		t.Error("the field carries another error")
	}
}

func TestCaution(t *testing.T) {
	for _, c := range []struct {
		lat, lon float64
		year     geomag.Year
		want     geomag.Caution
	}{
		{46, 8, 2025, 0}, {46, 8, 2029.999, 0},
		{46, 8, 2024.99, geomag.OutOfDate}, {46, 8, 2030, geomag.OutOfDate}, {46, 8, 2060, geomag.OutOfDate},
		{86, 140, 2026, geomag.NoNeedle}, {80, -100, 2026, geomag.WeakNeedle}, {-64, 136, 2026, geomag.NoNeedle},
		{86, 140, 2031, geomag.NoNeedle | geomag.OutOfDate},
	} {
		f := mustAt(t, site(c.lat, c.lon, 0), c.year)
		if f.Caution != c.want {
			t.Errorf("%v, %v in %v (H %.0f nT): caution %b, want %b", c.lat, c.lon, c.year, f.Horizontal, f.Caution, c.want)
		}
		want := 0
		for b := c.want; b != 0; b &= b - 1 {
			want++
		}
		if got := len(f.Caution.Words()); got != want {
			t.Errorf("%d sentences, want %d", got, want)
		}
	}
}

func TestNonsense(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		s    geomag.Site
		y    geomag.Year
		kind error
	}{
		{site(91, 0, 0), 2026, geomag.ErrSite}, {site(-90.01, 0, 0), 2026, geomag.ErrSite}, {site(nan, 0, 0), 2026, geomag.ErrSite},
		{site(0, 361, 0), 2026, geomag.ErrSite}, {site(0, -181, 0), 2026, geomag.ErrSite}, {site(0, nan, 0), 2026, geomag.ErrSite},
		{site(0, 0, 1e6), 2026, geomag.ErrSite}, {site(0, 0, -2e4), 2026, geomag.ErrSite}, {site(0, 0, nan), 2026, geomag.ErrSite},
		{site(0, 0, 0), 1800, geomag.ErrDate}, {site(0, 0, 0), 3000, geomag.ErrDate}, {site(0, 0, 0), geomag.Year(nan), geomag.ErrDate},
		{site(0, 0, 0), 0, geomag.ErrDate}, {site(0, math.Inf(1), 0), 2026, geomag.ErrSite},
	} {
		if f, err := geomag.At(c.s, c.y); !errors.Is(err, c.kind) {
			t.Errorf("%+v, %v: got %+v, %v", c.s, c.y, f, err)
		}
	}
}

func BenchmarkAt(b *testing.B) {
	s := site(46.6, 8, 1500)
	for b.Loop() {
		mustAt(b, s, 2026.7)
	}
}
