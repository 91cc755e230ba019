package record

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strconv"

	"cuesta/orient"
	"cuesta/sim"
)

// The format and its version.
const (
	format  = "recording"
	version = 1
)

// The lines of the file. Pointers mark what a kind of line may leave out.

type head struct {
	Cuesta  string `json:"cuesta"`
	Version int    `json:"version"`
	Setup   setup  `json:"setup"`
	Hash    string `json:"hash"`
}

type setup struct {
	Seed        uint64  `json:"seed"`
	Strike      float64 `json:"strike"`
	Dip         float64 `json:"dip"`
	Overturned  bool    `json:"overturned,omitempty"`
	Declination float64 `json:"declination"`
	Inclination float64 `json:"inclination"`
	Horizontal  float64 `json:"horizontal"`
	Ring        float64 `json:"ring"`
	Balance     string  `json:"balance"`
	Tool        string  `json:"tool"`
}

type line struct {
	Tick int64    `json:"tick"`
	Do   string   `json:"do"`
	Seat string   `json:"seat,omitempty"`
	Turn *float64 `json:"turn,omitempty"`
	Text *string  `json:"text,omitempty"`
	Hash string   `json:"hash"`
}

type tail struct {
	End  int    `json:"end"`
	Tick int64  `json:"tick"`
	Hash string `json:"hash"`
	Seen seen   `json:"seen"`
}

type seen struct {
	Seat    string  `json:"seat"`
	Seated  string  `json:"seated"`
	Right   float64 `json:"right"`
	Forward float64 `json:"forward"`
	Off     float64 `json:"off"`
	North   float64 `json:"north"`
	Arm     float64 `json:"arm"`

	Hinge     float64 `json:"hinge"`
	Direction float64 `json:"direction"`
	Dip       float64 `json:"dip"`
}

// encode is the one way a line is written.
func encode(v any) []byte {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		panic("record: a state that is not finite: " + err.Error())
	}
	return bytes.TrimSuffix(b.Bytes(), []byte("\n"))
}

func hexOf(h uint64) string { return fmt.Sprintf("%016x", h) }

func hashOf(s string) (uint64, bool) {
	h, err := strconv.ParseUint(s, 16, 64)
	return h, err == nil && hexOf(h) == s
}

func headOf(r Recording) head {
	s := r.Setup
	return head{Cuesta: format, Version: version, Hash: hexOf(r.Start), Setup: setup{
		Seed:        s.Seed,
		Strike:      s.Plane.Strike.Angle().Radians(),
		Dip:         s.Plane.Dip.Radians(),
		Overturned:  s.Plane.Overturned,
		Declination: s.Field.Declination.Radians(),
		Inclination: s.Field.Inclination.Radians(),
		Horizontal:  s.Field.Horizontal,
		Ring:        s.Ring.Radians(),
		Balance:     s.Balance.String(),
		Tool:        s.Tool.String(),
	}}
}

// setup is the set-up of the line, unchecked but for its words.
func (h head) setup() (sim.Setup, bool) {
	b, ok := sim.BalanceOf(h.Setup.Balance)
	tool, known := sim.ToolOf(h.Setup.Tool)
	return sim.Setup{
		Seed: h.Setup.Seed,
		Plane: orient.Plane{
			Strike:     orient.Azimuth(h.Setup.Strike),
			Dip:        orient.Angle(h.Setup.Dip),
			Overturned: h.Setup.Overturned,
		},
		Field: sim.Field{
			Declination: orient.Angle(h.Setup.Declination),
			Inclination: orient.Angle(h.Setup.Inclination),
			Horizontal:  h.Setup.Horizontal,
		},
		Ring:    orient.Angle(h.Setup.Ring),
		Balance: b,
		Tool:    tool,
	}, ok && known
}

func lineOf(e Entry) line {
	l := line{Tick: int64(e.Tick), Do: e.Command.Kind.String(), Hash: hexOf(e.Hash)}
	switch c := e.Command; {
	case c.Kind.Turns():
		turn := c.Angle.Radians()
		l.Turn = &turn
	case c.Kind == sim.Place:
		l.Seat = c.Seat.String()
	case c.Kind == sim.Note:
		l.Text = &c.Text
	}
	return l
}

func tailOf(r Recording) tail {
	s := r.End.Seen
	return tail{End: len(r.Entries), Tick: int64(r.End.Tick), Hash: hexOf(r.End.Hash), Seen: seen{
		Seat: s.Seat.String(), Seated: s.Seated.String(),
		Right: s.Right, Forward: s.Forward, Off: s.Off, North: s.North, Arm: s.Arm,
		Hinge: s.Hinge, Direction: s.Direction, Dip: s.Dip,
	}}
}

// seen is what the line says was seen, and whether its words are known.
func (t tail) seen() (Seen, bool) {
	seat, ok := sim.SeatOf(t.Seen.Seat)
	side, known := sim.SideOf(t.Seen.Seated)
	return Seen{
		Seat: seat, Seated: side,
		Right: t.Seen.Right, Forward: t.Seen.Forward, Off: t.Seen.Off, North: t.Seen.North, Arm: t.Seen.Arm,
		Hinge: t.Seen.Hinge, Direction: t.Seen.Direction, Dip: t.Seen.Dip,
	}, ok && known
}
