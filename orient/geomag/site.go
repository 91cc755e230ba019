package geomag

import (
	"errors"
	"strconv"
	"strings"

	"cuesta/orient"
)

// Site is a place: geodetic latitude in [−π/2, π/2], north positive, longitude
// in [−π, 2π], east positive, and height in metres above the WGS 84
// ellipsoid, in [−12 000, 850 000].
type Site struct {
	Latitude, Longitude orient.Angle
	Height              float64
}

// ErrSite is what every error about a place wraps.
var ErrSite = errors.New("not a place on the Earth")

const (
	lowest  = -12_000
	highest = 850_000
)

// hair is the rounding that a latitude of exactly 90° may carry.
const hair = 1e-12

func (s Site) check() error {
	switch {
	case !(s.Latitude.Abs() <= orient.Right+hair):
		return siteError("latitude", s.Latitude.Degrees(), "give −90 to 90 degrees, north positive")
	case !(s.Longitude >= -orient.Half-hair && s.Longitude <= orient.Full+hair):
		return siteError("longitude", s.Longitude.Degrees(), "give −180 to 360 degrees, east positive")
	case !(s.Height >= lowest && s.Height <= highest):
		return siteError("height", s.Height, "give −12000 to 850000 metres above the ellipsoid")
	}
	return nil
}

func siteError(what string, got float64, would string) error {
	text := strconv.FormatFloat(got, 'f', -1, 64)
	return &orient.ParseError{
		Text: text, Pos: 1, Read: "read " + text + " as the " + what, Would: would, Err: ErrSite,
	}
}

// ParseSite reads LAT,LON or LAT,LON,METRES: decimal degrees, with a sign or
// with a letter behind, such as 51.5,-0.1 or 51.5N,0.1W,35. An error is an
// *orient.ParseError.
func ParseSite(text string) (Site, error) {
	parts := strings.Split(text, ",")
	if len(parts) < 2 || len(parts) > 3 {
		return Site{}, &orient.ParseError{
			Text: text, Pos: 1, Read: "read no latitude and longitude with a comma between them",
			Would: siteExample, Err: ErrSite,
		}
	}
	r := siteReader{text: text, pos: 1}
	s := Site{
		Latitude:  r.angle(parts[0], "latitude", "N", "S", 90, 90),
		Longitude: r.angle(parts[1], "longitude", "E", "W", 180, 360),
	}
	if len(parts) == 3 {
		s.Height = r.height(parts[2])
	}
	return s, r.err
}

const siteExample = "write latitude and longitude in degrees, and metres if you wish, such as 46.6,8.0,1500"

// siteReader keeps the first error and where in the text it is.
type siteReader struct {
	text string
	pos  int
	err  error
}

func (r *siteReader) angle(part, what, plus, minus string, most, wrapped float64) orient.Angle {
	number, sign := strings.ToUpper(strings.TrimSpace(part)), 1.0
	if n, ok := strings.CutSuffix(number, minus); ok {
		number, sign = n, -1
	} else {
		number = strings.TrimSuffix(number, plus)
	}
	number = strings.TrimSuffix(strings.TrimSpace(number), "°")
	deg, ok := r.number(number)
	deg *= sign
	if !ok || deg < -most || deg > wrapped {
		r.fail(part, what, "write degrees from −"+strconv.Itoa(int(most))+" to "+strconv.Itoa(int(wrapped))+
			", such as 46.6,8.0 or 46.6,8.0,1500")
	}
	r.pos += len([]rune(part)) + 1
	return orient.Angle(deg) * orient.Degree
}

func (r *siteReader) height(part string) float64 {
	number := strings.TrimSpace(part)
	if n, ok := strings.CutSuffix(strings.ToLower(number), "m"); ok {
		number = strings.TrimSpace(n)
	}
	metres, ok := r.number(number)
	if !ok || metres < lowest || metres > highest {
		r.fail(part, "height", "give metres above the ellipsoid from −12000 to 850000")
	}
	return metres
}

// number refuses the words that ParseFloat would take: Inf, NaN, hexadecimal.
func (r *siteReader) number(s string) (float64, bool) {
	s = strings.NewReplacer("−", "-", "–", "-").Replace(s)
	if s == "" || strings.Trim(s, "+-.0123456789") != "" {
		return 0, false
	}
	x, err := strconv.ParseFloat(s, 64)
	return x, err == nil
}

func (r *siteReader) fail(part, what, would string) {
	if r.err == nil {
		r.err = &orient.ParseError{
			Text: r.text, Pos: r.pos, Read: "read " + strconv.Quote(part) + " as the " + what, Would: would, Err: ErrSite,
		}
	}
}
