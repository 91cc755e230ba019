package form

import (
	"strconv"
	"time"

	"github.com/pelletier/go-toml/v2"

	"cuesta/orient"
	"cuesta/orient/geomag"
	"cuesta/quiz"
	"cuesta/quiz/item"
	"cuesta/sim"
)

// Bounds of a blueprint.
const (
	MostItems    = 200
	mostParts    = 100
	mostPoints   = 1000
	mostAttempts = 20
	mostMinutes  = 1440
	mostSeed     = 1<<53 - 1 // so that every reader of JSON keeps it whole
)

// blueprint checks the whole file.
func (c checker) blueprint(in blueprintTOML) Blueprint {
	b := Blueprint{
		Title:     c.text("title", in.Title),
		Notation:  c.notation("notation", in.Notation, orient.AzimuthDip),
		PassShare: c.Number("pass", in.Pass, 0.5, 0, 1),
		Minutes:   c.Number("minutes", in.Minutes, 0, 0, mostMinutes),
		Due:       c.due(in.Due),
		Cautions:  c.Truth("cautions", in.Cautions, true),
		Seed:      uint64(c.Whole("seed", in.Seed, 1, 0, mostSeed)),
		Tolerance: c.tolerance("tolerance", in.Tolerance, quiz.DefaultTolerance),
	}
	if b.Title == "" && in.Title == nil {
		c.Blame("title", "there is no title; write one, such as title = \"First quiz\"")
	}
	c.place(&b, in.Place)
	c.parts(&b, in.Items)
	return b
}

func (c checker) notation(path string, v any, def orient.Notation) orient.Notation {
	return orient.Notation(c.Word(path, v, int(def), notations[:]...))
}

// due is a moment: a TOML date-time with its zone, or the same as text.
func (c checker) due(v any) string {
	switch d := v.(type) {
	case nil:
		return ""
	case time.Time:
		return d.Format(time.RFC3339)
	case string:
		if t, err := time.Parse(time.RFC3339, d); err == nil {
			return t.Format(time.RFC3339)
		}
	}
	c.Blame("due", "due: read %s; write a day and time with its zone, such as 2026-10-02T17:00:00+01:00", shown(v))
	return ""
}

func (c checker) tolerance(path string, in toleranceTOML, def quiz.Tolerance) quiz.Tolerance {
	return quiz.Tolerance{
		Reading:   c.angle(path+".reading", in.Reading, def.Reading, 45),
		Levelling: c.angle(path+".levelling", in.Levelling, def.Levelling, 45),
		Dip:       c.angle(path+".dip", in.Dip, def.Dip, 45),
		Partial: quiz.Partial{
			Strike: c.angle(path+".step_strike", in.StepStrike, def.Partial.Strike, 90),
			Dip:    c.angle(path+".step_dip", in.StepDip, def.Partial.Dip, 90),
			Share:  c.Number(path+".step_share", in.StepShare, def.Partial.Share, 0, 1),
		},
		Side: c.side(path+".side", in.Side, def.Side),
	}
}

// side reads the share of the side; the usual one is 0, as in a tolerance that
// says nothing of it.
func (c checker) side(path string, v any, def float64) float64 {
	if v == nil {
		return def
	}
	s := c.Number(path, v, quiz.DefaultSide, quiz.LeastSide, quiz.MostSide)
	if s == quiz.DefaultSide {
		return 0
	}
	return s
}

// place reads where and when, and from it the field of the Earth.
func (c checker) place(b *Blueprint, in placeTOML) {
	b.Place = c.text("place.name", in.Name)
	b.Site = c.text("place.site", in.Site)
	b.Date = c.date(in.Date)
	b.RingPreset = c.Word("place.declination", in.Declination, 0, "preset", "student") == 0
	switch {
	case b.Site == "" && b.Date != "":
		c.Blame("place.date", "date: there is a date but no site; write both, such as site = \"54.4,-2.9,350\"")
	case b.Site != "" && in.Date == nil:
		c.Blame("place.site", "site: there is a site but no date; write both, such as date = 2026-09-14")
	case b.Site != "" && b.Date != "":
		c.field(b)
	}
}

// date takes a day as TOML writes it, the same as text, or a decimal year.
func (c checker) date(v any) string {
	switch d := v.(type) {
	case toml.LocalDate:
		return d.String()
	case float64:
		return plain(d)
	case time.Time:
		return d.Format(time.DateOnly)
	}
	return c.text("place.date", v)
}

func (c checker) field(b *Blueprint) {
	site, err := geomag.ParseSite(b.Site)
	if err != nil {
		c.Blame("place.site", "site: %v", err)
	}
	year, yerr := geomag.ParseYear(b.Date)
	if yerr != nil {
		c.Blame("place.date", "date: %v", yerr)
	}
	if err != nil || yerr != nil {
		return
	}
	f, err := geomag.At(site, year)
	if err != nil {
		c.Blame("place.site", "site: %v", err)
		return
	}
	if f.Horizontal < 1 {
		c.Blame("place.site", "site: a needle has no direction at a magnetic pole; choose another place")
		return
	}
	b.Field = settledField(sim.Field{Declination: f.Declination, Inclination: f.Inclination, Horizontal: f.Horizontal * 1e-9})
}

// settledField is a field as it comes back from a file, bit for bit.
func settledField(f sim.Field) sim.Field {
	return sim.Field{
		Declination: degrees(inDegrees(f.Declination)), Inclination: degrees(inDegrees(f.Inclination)),
		Horizontal: nanotesla(inNanotesla(f.Horizontal)),
	}
}

func (c checker) parts(b *Blueprint, in []itemTOML) {
	switch {
	case len(in) == 0:
		c.Blame("item", "there is no item; write at least one [[item]] with its kind")
	case len(in) > mostParts:
		c.Blame("item.100", "read %d items; a blueprint has at most %d, each with a count", len(in), mostParts)
		return
	}
	total := 0
	for i, it := range in {
		path := "item." + strconv.Itoa(i)
		p := c.part(path, it, *b)
		if total += p.Count; total > MostItems && total-p.Count <= MostItems {
			c.Blame(path+".count", "count: with this item a form has %d items; it has at most %d", total, MostItems)
		}
		b.Parts = append(b.Parts, p)
	}
}

func (c checker) part(path string, in itemTOML, b Blueprint) Part {
	before := c.Count()
	p := Part{
		Kind:     c.kind(path, in.Kind),
		Count:    int(c.Whole(path+".count", in.Count, 1, 1, MostItems)),
		Points:   c.Number(path+".points", in.Points, 1, 0, mostPoints),
		Attempts: int(c.Whole(path+".attempts", in.Attempts, 1, 1, mostAttempts)),
		HintCost: c.Number(path+".hint_cost", in.HintCost, 0, 0, 1),
		Spec: item.Spec{
			Notation:  c.notation(path+".notation", in.Notation, b.Notation),
			Tolerance: c.tolerance(path+".tolerance", in.Tolerance, b.Tolerance),
			Mix:       c.mix(path+".mix", in.Mix),
		},
	}
	p.Spec.DipMin, p.Spec.DipMax = c.dips(path+".dips", in.Dips)
	p.Spec.Declination, p.Spec.Field, p.Spec.RingPreset = b.Field.Declination, b.Field, b.RingPreset
	if c.Count() == before && p.Kind != "" {
		c.tryOut(path, p)
	}
	return p
}

// kind reads the name of a kind.
func (c checker) kind(path string, v any) string {
	names := kindNames()
	if v == nil {
		c.Blame(path, "kind: there is none; write one of %s", listed(names))
		return ""
	}
	i := c.Word(path+".kind", v, -1, names...)
	if i < 0 {
		return ""
	}
	return names[i]
}

func kindNames() []string {
	var names []string
	for _, k := range item.Kinds() {
		names = append(names, k.Name())
	}
	return names
}

func (c checker) mix(path string, in mixTOML) quiz.Mix {
	if in == (mixTOML{}) {
		return quiz.Mix{}
	}
	m := quiz.Mix{
		Gentle:   c.Number(path+".gentle", in.Gentle, 0, 0, 1000),
		Moderate: c.Number(path+".moderate", in.Moderate, 0, 0, 1000),
		Steep:    c.Number(path+".steep", in.Steep, 0, 0, 1000),
	}
	if m == (quiz.Mix{}) {
		c.Blame(path, "mix: it deals no plane; write a share above 0, such as mix = { gentle = 1, steep = 1 }")
	}
	return m
}

// dips reads a range of dips: two numbers of degrees.
func (c checker) dips(path string, v any) (from, to orient.Angle) {
	if v == nil {
		return 0, 0
	}
	l, ok := v.([]any)
	if !ok || len(l) != 2 {
		c.Blame(path, "dips: read %s; write the least and the greatest dip in degrees, such as dips = [10, 60]", shown(v))
		return 0, 0
	}
	before := c.Count()
	from = c.angle(path+".0", l[0], 0, 90)
	to = c.angle(path+".1", l[1], 0, 90)
	if c.Count() == before && from >= to {
		c.Blame(path, "dips: read %s to %s; the first must be the smaller one", shown(l[0]), shown(l[1]))
	}
	return from, to
}

// tryDraws is how many items of a part are dealt to see that it can be met.
const tryDraws = 4

// tryOut deals a few items, so that an impossible part is told before class.
func (c checker) tryOut(path string, p Part) {
	for seed := range uint64(tryDraws) {
		if _, err := ItemOf(p, seed); err != nil {
			c.Blame(path, "%s: %v", p.Kind, err)
			return
		}
	}
}
