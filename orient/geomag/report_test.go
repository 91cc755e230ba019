package geomag_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"cuesta/orient"
	"cuesta/orient/geomag"
)

// reportRows are the test values of the WMM2025 technical report, by column.
func reportRows(t *testing.T) []map[string]float64 {
	t.Helper()
	f, err := os.Open("testdata/wmm2025_report_table.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	records, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]float64
	for _, record := range records[1:] {
		row := map[string]float64{}
		for i, name := range records[0] {
			row[name], err = strconv.ParseFloat(record[i], 64)
			if err != nil {
				t.Fatal(err)
			}
		}
		rows = append(rows, row)
	}
	return rows
}

func TestReport(t *testing.T) {
	rows := reportRows(t)
	if len(rows) != 12 {
		t.Fatalf("%d rows, want the 12 of the report", len(rows))
	}
	const slack = 1e-9 // a printed value may lie exactly half a unit away
	for _, row := range rows {
		site := geomag.Site{
			Latitude:  orient.Angle(row["lat_deg"]) * orient.Degree,
			Longitude: orient.Angle(row["lon_deg"]) * orient.Degree,
			Height:    row["height_km"] * 1000,
		}
		f, err := geomag.At(site, geomag.Year(row["date"]))
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range []struct {
			name     string
			got      float64
			rounding float64
		}{
			{"X_nT", f.North, 0.05}, {"Y_nT", f.East, 0.05}, {"Z_nT", f.Down, 0.05},
			{"H_nT", f.Horizontal, 0.05}, {"F_nT", f.Total, 0.05},
			{"I_deg", f.Inclination.Degrees(), 0.005}, {"D_deg", f.Declination.Degrees(), 0.005},
			{"dX", f.Yearly.North, 0.05}, {"dY", f.Yearly.East, 0.05}, {"dZ", f.Yearly.Down, 0.05},
			{"dH", f.Yearly.Horizontal, 0.05}, {"dF", f.Yearly.Total, 0.05},
			{"dI_deg_yr", f.Yearly.Inclination.Degrees(), 0.005},
			{"dD_deg_yr", f.Yearly.Declination.Degrees(), 0.005},
		} {
			if want := row[c.name]; math.Abs(c.got-want) > c.rounding+slack {
				t.Errorf("%v: %s = %.4f, want %v", row, c.name, c.got, want)
			}
		}
	}
}
