package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"

	"github.com/spf13/cobra"

	"cuesta/orient"
	"cuesta/orient/geomag"
)

type fieldTeller struct {
	env
	site, date string
	json       bool
}

func fieldCommand(e env) *cobra.Command {
	f := &fieldTeller{env: e}
	cmd := &cobra.Command{
		Use:   "field --site LAT,LON[,METRES] --date YYYY-MM-DD",
		Short: "The magnetic field at a place and date",
		Long: "Tells declination, inclination and intensities of the Earth's main field, their\n" +
			"yearly change and the standard error of the declination, from the World\n" +
			"Magnetic Model 2025. It knows nothing of local rock and iron.",
		Example: "  cuesta field --site 46.6,8.0,1500 --date 2026-09-14\n" +
			"  cuesta field --site -33.9,18.4 --date 2027.5 --json",
		Args: noWords,
		RunE: func(*cobra.Command, []string) error { return f.run() },
	}
	cmd.Flags().StringVar(&f.site, "site", "", "latitude, longitude in degrees and metres above the ellipsoid")
	cmd.Flags().StringVar(&f.date, "date", "", "day, or decimal year")
	cmd.Flags().BoolVar(&f.json, "json", false, "one JSON object a line")
	return cmd
}

func (f *fieldTeller) run() error {
	if f.site == "" || f.date == "" {
		return misreadf("read no place or no date; write both, such as --site 46.6,8.0,1500 --date 2026-09-14")
	}
	site, err := geomag.ParseSite(f.site)
	if err != nil {
		return fmt.Errorf("--site %w", err)
	}
	year, err := geomag.ParseYear(f.date)
	if err != nil {
		return fmt.Errorf("--date %w", err)
	}
	field, err := geomag.At(site, year)
	if err != nil {
		return err
	}
	for _, w := range field.Caution.Words() {
		fmt.Fprintln(f.err, w)
	}
	return f.write(field)
}

func (f *fieldTeller) write(field geomag.Field) error {
	var out bytes.Buffer
	if f.json {
		if err := json.NewEncoder(&out).Encode(fieldObjectOf(field)); err != nil {
			return err
		}
	} else {
		writeField(&out, field)
	}
	_, err := f.out.Write(out.Bytes())
	return err
}

func writeField(out *bytes.Buffer, f geomag.Field) {
	c := f.Yearly
	fmt.Fprintf(out, "%-12s %11s %+9.2f° a year   standard error %.2f°\n", "declination",
		lettered(f.Declination, "E", "W"), rounded(c.Declination.Degrees(), 2), f.DeclinationError.Degrees())
	fmt.Fprintf(out, "%-12s %11s %+9.2f° a year\n", "inclination",
		lettered(f.Inclination, "down", "up"), rounded(c.Inclination.Degrees(), 2))
	for _, l := range [...]struct {
		label      string
		value, per float64
	}{
		{"north", f.North, c.North}, {"east", f.East, c.East}, {"down", f.Down, c.Down},
		{"horizontal", f.Horizontal, c.Horizontal}, {"total", f.Total, c.Total},
	} {
		fmt.Fprintf(out, "%-12s %8.0f nT %+9.1f nT a year\n", l.label, rounded(l.value, 0), rounded(l.per, 1))
	}
}

// lettered writes the size of an angle with a word for its sign.
func lettered(a orient.Angle, plus, minus string) string {
	if math.Round(a.Degrees()*100) < 0 {
		plus = minus
	}
	return fmt.Sprintf("%.2f° %s", a.Abs().Degrees(), plus)
}

// fieldObject is the line of field --json: degrees and nanotesla.
type fieldObject struct {
	Declination      float64 `json:"declination"`
	Inclination      float64 `json:"inclination"`
	North            float64 `json:"north"`
	East             float64 `json:"east"`
	Down             float64 `json:"down"`
	Horizontal       float64 `json:"horizontal"`
	Total            float64 `json:"total"`
	DeclinationError float64 `json:"declination_error"`
	DeclinationYear  float64 `json:"declination_per_year"`
	InclinationYear  float64 `json:"inclination_per_year"`
	NorthYear        float64 `json:"north_per_year"`
	EastYear         float64 `json:"east_per_year"`
	DownYear         float64 `json:"down_per_year"`
	HorizontalYear   float64 `json:"horizontal_per_year"`
	TotalYear        float64 `json:"total_per_year"`
}

func fieldObjectOf(f geomag.Field) fieldObject {
	deg := func(a orient.Angle) float64 { return rounded(a.Degrees(), 6) }
	nT := func(x float64) float64 { return rounded(x, 3) }
	c := f.Yearly
	return fieldObject{
		Declination: deg(f.Declination), Inclination: deg(f.Inclination),
		North: nT(f.North), East: nT(f.East), Down: nT(f.Down),
		Horizontal: nT(f.Horizontal), Total: nT(f.Total),
		DeclinationError: deg(f.DeclinationError),
		DeclinationYear:  deg(c.Declination), InclinationYear: deg(c.Inclination),
		NorthYear: nT(c.North), EastYear: nT(c.East), DownYear: nT(c.Down),
		HorizontalYear: nT(c.Horizontal), TotalYear: nT(c.Total),
	}
}

// rounded cuts x to a number of decimals, so that rounding noise is not shown,
// nor the sign of a zero.
func rounded(x float64, decimals int) float64 {
	p := math.Pow10(decimals)
	return math.Round(x*p)/p + 0
}
