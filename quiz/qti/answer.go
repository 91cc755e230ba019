package qti

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"cuesta/orient"
	"cuesta/quiz/item"
)

// part is one box of an answer: a number, a text or a choice, and the share of
// the mark it earns.
type part struct {
	ID     string
	Label  string
	Unit   string
	Base   string // float, string, identifier
	Right  string
	Number []window // float: any of these is right
	Texts  []string // string: any of these, in any case
	Share  float64
}

// window is a number and what it may be off by.
type window struct{ Value, Off float64 }

// choice is one answer of several.
type choice struct{ ID, Text string }

// partsOf says how an item is answered in a learning system, or ok false where
// it cannot be.
func partsOf(it item.Item) (parts []part, choices []choice, ok bool) {
	a := it.Ask()
	if _, bench := it.(item.AtBench); bench {
		return nil, nil, false
	}
	switch a.Kind {
	case item.AskNumber:
		return []part{number("RESPONSE", a.Label, a.Unit, a.Value, a.Tolerance, a.Wraps, 1)}, nil, true
	case item.AskChoice:
		for i, c := range a.Choices {
			choices = append(choices, choice{letter(i), c})
		}
		return []part{{ID: "RESPONSE", Base: "identifier", Right: letter(a.Right), Share: 1}}, choices, true
	case item.AskPlane, item.AskLine:
		parts = planeParts(it, a.Notation)
		return parts, nil, parts != nil
	case item.AskSymbol:
	}
	return nil, nil, false
}

func letter(i int) string { return string(rune('A' + i)) }

// number is a box for a number. On a circle the numbers a turn away are the
// same: 359 is 1° off 000.
func number(id, label, unit string, v, off float64, wraps bool, share float64) part {
	p := part{ID: id, Label: label, Unit: unit, Base: "float", Right: plain(v), Number: []window{{v, off}}, Share: share}
	if wraps {
		p.Number = append(p.Number, window{v - 360, off}, window{v + 360, off})
	}
	return p
}

// plain writes a number as a person would, without exponent.
func plain(x float64) string {
	return strconv.FormatFloat(math.Round(x*1e6)/1e6+0, 'f', -1, 64)
}

// planeParts asks for a plane in the notation its key is written in.
func planeParts(it item.Item, n orient.Notation) []part {
	e, err := orient.Parse(it.Key(), n)
	if err != nil || !e.HasStrike {
		return nil
	}
	az, dip := reach(it, e)
	switch e.Notation {
	case orient.Quadrant:
		return []part{{ID: "RESPONSE", Label: "Strike and dip as a quadrant bearing", Base: "string", Right: it.Key(), Texts: bearings(it, e), Share: 1}}
	case orient.DirectionDip:
		return []part{
			direction("DIRECTION", "Dip direction", e.Plane.DipDirection(), az, e.Plane.Dip),
			number("DIP", "Dip", "°", e.Plane.Dip.Degrees(), dip, false, .5)}
	case orient.PoleNotation:
		p := e.Plane.Pole()
		return []part{
			direction("TREND", "Trend of the pole", p.Trend, az, e.Plane.Dip),
			number("PLUNGE", "Plunge of the pole", "°", p.Plunge.Degrees(), dip, false, .5)}
	case orient.AzimuthDip:
	}
	return []part{
		direction("STRIKE", "Right-hand strike", e.Plane.Strike, az, e.Plane.Dip),
		number("DIP", "Dip", "°", e.Plane.Dip.Degrees(), dip, false, .5)}
}

// direction is a box for the direction of a plane. A vertical one has no side:
// half a turn away is right too.
func direction(id, label string, z orient.Azimuth, off float64, dip orient.Angle) part {
	p := number(id, label, "°", z.Degrees(), off, true, .5)
	if dip == orient.Right {
		p.Number = append(p.Number, number(id, label, "°", z.Opposite().Degrees(), off, true, .5).Number...)
	}
	return p
}

// reach finds by trying what the item lets azimuth and dip be off by, so that
// the package marks as the program does. In degrees, to 0.25°.
func reach(it item.Item, e orient.Entry) (az, dip float64) {
	try := func(turn, steeper orient.Angle) bool {
		p := orient.Plane{Strike: e.Plane.Strike.Add(turn), Dip: e.Plane.Dip + steeper, Overturned: e.Plane.Overturned}
		if p.Dip < 0 || p.Dip > orient.Right {
			return false
		}
		return it.Mark(orient.Format(p, e.Notation), item.Evidence{}).Right
	}
	const step = orient.Degree / 4
	most := func(try func(orient.Angle) bool) float64 {
		n := 0
		for n < 180 && try(orient.Angle(n+1)*step) && try(-orient.Angle(n+1)*step) {
			n++
		}
		return float64(n) / 4
	}
	az = most(func(a orient.Angle) bool { return try(a, 0) })
	dip = most(func(a orient.Angle) bool { return try(0, a) || beyond(e.Plane.Dip+a) })
	return az, dip
}

// beyond says that a dip cannot be written at all.
func beyond(d orient.Angle) bool { return d < 0 || d > orient.Right }

// bearings are the usual ways to write the plane as a quadrant bearing, from
// either end of its strike.
func bearings(it item.Item, e orient.Entry) []string {
	dip := fmt.Sprintf("%02.0f", e.Plane.Dip.Degrees())
	written := orient.Format(e.Plane, orient.Quadrant)
	side := strings.TrimSpace(written[strings.LastIndexAny(written, "0123456789")+1:])
	var out []string
	for _, end := range []orient.Azimuth{e.Plane.Strike, e.Plane.Strike.Opposite()} {
		b := end.Quadrant()
		for _, form := range []string{"%s %s%s", "%s/%s%s", "%s %s %s", "%s, %s%s", "%s,%s%s", "%s/%s %s", "%s%s%s"} {
			text := fmt.Sprintf(form, b, dip, side)
			if it.Mark(text, item.Evidence{}).Right {
				out = append(out, text)
			}
		}
	}
	if len(out) == 0 {
		out = []string{it.Key()}
	}
	return out
}
