package paper

import (
	"cmp"
	"fmt"
	"math"
	"strconv"
	"strings"

	"cuesta/orient"
	"cuesta/quiz/form"
)

// notationWords say how to write a plane.
var notationWords = [...]string{
	orient.AzimuthDip:   "right-hand strike and dip, such as 035/30",
	orient.Quadrant:     "quadrant bearing of the strike, then the dip with its letters, such as N35E 30SE",
	orient.DirectionDip: "dip direction and dip, such as 125/30",
	orient.PoleNotation: "trend and plunge of the pole, such as 305/60",
}

// cautions are the usual ones (common practice).
var cautions = []string{
	"Outdoors, stay off unstable faces and out from under them; mind cliffs, road cuts, quarries, tides and heat.",
	"Wear a helmet and eye protection where rock can fall or is hammered, and never work alone.",
	"A slab is heavy: leave it where it is, see that it rests firmly before you lean on it, and keep hands and feet from under it.",
	"Local access rules and codes come first; a licensed practitioner judges whatever bears on safety or building. What is read at a simulator is never data for design.",
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// declination in words, to the tenth of a degree.
func declination(a orient.Angle) string {
	d := math.Round(a.Degrees()*10) / 10
	switch {
	case d > 0:
		return fmt.Sprintf("Declination %s° east", number(d))
	case d < 0:
		return fmt.Sprintf("Declination %s° west", number(-d))
	}
	return "Declination 0°"
}

// declined says whether the declination is one that can be set.
func declined(b form.Blueprint) bool { return math.Abs(b.Field.Declination.Degrees()) >= .05 }

// declinedAt is whose declination it is, "" where it is none that can be set.
func declinedAt(b form.Blueprint) string {
	if !declined(b) {
		return ""
	}
	return cmp.Or(b.Place, "the place of this quiz")
}

// SlabDeclination is whose declination a form gives for slabs that are measured
// in a room, and how much it is in words; ok is false where it gives none or has
// no such slab.
func SlabDeclination(f form.Form) (place, words string, ok bool) {
	q, err := sheetFormOf(f)
	place = declinedAt(f.Blueprint)
	if err != nil || place == "" || !q.atBench() {
		return "", "", false
	}
	return place, strings.TrimPrefix(declination(f.Blueprint.Field.Declination), "Declination "), true
}

// circumstances are the place, the declination and the time allowed.
func circumstances(f form.Form) string {
	b := f.Blueprint
	s := declination(b.Field.Declination)
	if b.RingPreset {
		s += ", set on the dial"
	} else if declined(b) {
		s += ", not set on the dial"
	}
	if b.Place != "" {
		s = b.Place + ". " + s
	}
	if m := b.Minutes * max(1, f.Student.ExtraTime); m > 0 {
		s += fmt.Sprintf(". Time: %s minutes", number(math.Ceil(m)))
	}
	return s + "."
}

// howToWrite are the rules for answers.
func howToWrite(b form.Blueprint, total float64) string {
	return "Write planes as " + notationWords[b.Notation] + ", unless a question asks for something else. " +
		"Azimuths have three digits, dips two. In all there are " + form.Points(total) + "."
}
