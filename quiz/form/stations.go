package form

import (
	"io"
	"strconv"
	"strings"
	"unicode"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/item"
	"cuesta/quiz/written"
)

// LabStation is the kind of the items of a lab.
const LabStation = "lab-station"

// stationsTOML is the shape of a file of stations.
type stationsTOML struct {
	Title     any           `toml:"title"`
	Notation  any           `toml:"notation"`
	Pass      any           `toml:"pass"`
	Cautions  any           `toml:"cautions"`
	Readings  any           `toml:"readings"`
	Counts    any           `toml:"counts"`
	Place     placeTOML     `toml:"place"`
	Tolerance toleranceTOML `toml:"tolerance"`
	Stations  []stationTOML `toml:"station"`
}

type stationTOML struct {
	Name   any `toml:"name"`
	Words  any `toml:"words"`
	What   any `toml:"surface"`
	Plane  any `toml:"plane"`
	Strike any `toml:"strike_uncertainty"`
	Dip    any `toml:"dip_uncertainty"`
	Points any `toml:"points"`
	Note   any `toml:"note"`
}

// Bounds of a file of stations.
const (
	longestStation = 6 // characters of a name, which is read from across the room
	mostStations   = 60
	mostOff        = 20 // degrees that the instructor's own value may be off by
	usualReadings  = 5
)

var stationsFile = written.Kind{Name: "a file of stations", Err: ErrStations, Largest: LargestBlueprint, Table: "station"}

// ReadStations reads a file of stations (TOML): a lab as a blueprint with a
// part for each station. It is as strict as ReadBlueprint, and its errors are
// made the same way. Either every station has its plane, or none: such a copy
// of the file gives nothing away, and what is read with it is marked later.
func ReadStations(from io.Reader) (Blueprint, error) {
	var in stationsTOML
	c, err := readTOML(from, stationsFile, &in)
	if err != nil {
		return Blueprint{}, err
	}
	b := c.stations(in)
	return b, c.Result()
}

// stations checks the whole file.
func (c checker) stations(in stationsTOML) Blueprint {
	b := Blueprint{
		Title:     c.text("title", in.Title),
		Notation:  c.notation("notation", in.Notation, orient.AzimuthDip),
		PassShare: c.Number("pass", in.Pass, 0.5, 0, 1),
		Cautions:  c.Truth("cautions", in.Cautions, true),
		Tolerance: c.tolerance("tolerance", in.Tolerance, quiz.DefaultTolerance),
	}
	if b.Title == "" && in.Title == nil {
		c.Blame("title", "there is no title; write one, such as title = \"Slabs in the lab\"")
	}
	c.place(&b, in.Place)
	part := Part{
		Kind: LabStation, Count: 1,
		Attempts: int(c.Whole("readings", in.Readings, usualReadings, 1, mostAttempts)),
		Spec: item.Spec{
			Notation: b.Notation, Tolerance: b.Tolerance, Declination: b.Field.Declination, Field: b.Field, RingPreset: b.RingPreset,
			Station: item.Station{Mean: c.Word("counts", in.Counts, 0, "last", "mean") == 1},
		},
	}
	switch n := len(in.Stations); {
	case n == 0:
		c.Blame("station", "there is no station; write at least one [[station]] with its name and plane")
	case n > mostStations:
		c.Blame("station."+strconv.Itoa(mostStations), "read %d stations; a lab has at most %d", n, mostStations)
		return b
	}
	seen := map[string]string{}
	for i, s := range in.Stations {
		b.Parts = append(b.Parts, c.station("station."+strconv.Itoa(i), s, part, seen))
	}
	c.keyed(in.Stations)
	return b
}

// station reads one station into a copy of a part.
func (c checker) station(path string, in stationTOML, p Part, seen map[string]string) Part {
	st := &p.Spec.Station
	st.Name = c.stationName(path, in.Name, seen)
	st.Words = c.text(path+".words", in.Words)
	st.Surface = item.Surface(c.Word(path+".surface", in.What, 0, item.Surfaces()...))
	st.Note = c.text(path+".note", in.Note)
	st.Strike = c.angle(path+".strike_uncertainty", in.Strike, 0, mostOff)
	st.Dip = c.angle(path+".dip_uncertainty", in.Dip, 0, mostOff)
	p.Points = c.Number(path+".points", in.Points, 1, 0, mostPoints)
	st.Plane, st.Known = c.plane(path+".plane", in.Plane, p.Spec.Notation)
	if st.Plane.Overturned && !st.Surface.HasWayUp() {
		c.Blame(path+".plane", "plane: a %s has no way up; leave out \"overturned\"", st.Surface.Noun())
	}
	if in.Plane == nil && (in.Strike != nil || in.Dip != nil) {
		c.Blame(path, "station %s: it has an uncertainty but no plane; write both, such as plane = \"035/30\"", shortened(st.Name))
	}
	return p
}

// stationName reads a name that is read from across the room and typed a
// hundred times: short, in one piece, and unlike the others.
func (c checker) stationName(path string, v any, seen map[string]string) string {
	if v == nil {
		c.Blame(path, "name: there is none; write the letter or number on its card, such as name = \"A\"")
		return ""
	}
	if n, ok := v.(int64); ok {
		v = strconv.FormatInt(n, 10)
	}
	name, ok := v.(string)
	if !ok || !isStationName(name) {
		c.Blame(path+".name", "name: read %s; write one word of at most %d letters and figures, such as \"A\" or \"3\"", shown(v), longestStation)
		return ""
	}
	low := strings.ToLower(name)
	if before, twice := seen[low]; twice {
		c.Blame(path+".name", "name: read %s, which names another station too (%s); every station has a name of its own", shown(name), before)
	}
	seen[low] = name
	return name
}

// isStationName says whether s is a short name of letters, figures and hyphens.
func isStationName(s string) bool {
	n := 0
	for _, r := range s {
		if n++; n > longestStation || !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '-' {
			return false
		}
	}
	return n > 0
}

// plane reads how a slab lies, in any notation.
func (c checker) plane(path string, v any, n orient.Notation) (p orient.Plane, known bool) {
	if v == nil {
		return p, false
	}
	text, ok := v.(string)
	if !ok {
		c.Blame(path, "plane: read %s; write it in quotes, such as plane = \"035/30\"", shown(v))
		return p, false
	}
	e, err := orient.Parse(text, n)
	if err != nil {
		c.Blame(path, "plane: %v", err)
		return p, false
	}
	e.Plane.Strike = orient.AzimuthOf(degrees(inDegrees(e.Plane.Strike.Angle())))
	e.Plane.Dip = degrees(inDegrees(e.Plane.Dip))
	return e.Plane, true
}

// keyed notes where some stations have a plane and others have not.
func (c checker) keyed(in []stationTOML) {
	with := 0
	for _, s := range in {
		if s.Plane != nil {
			with++
		}
	}
	for i, s := range in {
		if s.Plane == nil && with > 0 {
			c.Blame("station."+strconv.Itoa(i), "plane: there is none; write how the slab lies, such as plane = \"035/30\", or leave it out at every station for a copy that gives nothing away")
		}
	}
}

// Keyed says whether it is known how every station of a lab lies.
func (b Blueprint) Keyed() bool {
	for _, p := range b.Parts {
		if !p.Spec.Station.Known {
			return false
		}
	}
	return len(b.Parts) > 0
}

// Fixed is the form of a student of a lab, where every student has the same
// items. In memory it holds how the stations lie; as a file it does not.
func (b Blueprint) Fixed(s Student) (Form, error) {
	s.ExtraTime = max(1, s.ExtraTime)
	if err := s.check(); err != nil {
		return Form{}, err
	}
	settled, err := b.settled()
	if err != nil {
		return Form{}, err
	}
	f := Form{Blueprint: settled, Student: s, Items: make([]Dealt, len(b.Parts))}
	for i, p := range b.Parts {
		settled.Parts[i].Spec.Station = p.Spec.Station
		f.Items[i].Part = i
	}
	f.Code = codeOf(f)
	return f, nil
}
