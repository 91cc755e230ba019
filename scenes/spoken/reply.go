package spoken

import (
	"encoding/json"
	"io"
	"math"

	"cuesta/quiz"
	"cuesta/sim"
)

// Reply is what the bench answers to one line.
type Reply struct {
	OK      bool   // the line was understood and carried out
	Said    string // the answer in words
	Seen    sim.Observation
	Verdict *quiz.Verdict // after note
	End     bool          // the bench was closed
}

// replyJSON is a reply as programs read it. Figures are rounded to what can be
// seen: a hundredth of the ring or of a half gap, and the graduations.
type replyJSON struct {
	OK      bool          `json:"ok"`
	Said    string        `json:"said"`
	Tick    sim.Tick      `json:"tick"`
	Round   roundJSON     `json:"round"`
	Tube    *tubeJSON     `json:"tube,omitempty"`
	Dial    dialJSON      `json:"dial"`
	Arc     *arcJSON      `json:"arc,omitempty"`
	Verdict *quiz.Verdict `json:"verdict,omitempty"`
}

type roundJSON struct {
	Right   float64 `json:"right"`
	Forward float64 `json:"forward"`
	Centred bool    `json:"centred"`
}

type tubeJSON struct {
	Off     float64 `json:"off"`
	Centred bool    `json:"centred"`
}

type dialJSON struct {
	North   int  `json:"north"`
	Resting bool `json:"resting"`
}

type arcJSON struct {
	Degrees int      `json:"degrees"`
	Percent *float64 `json:"percent"` // null at 90°, where the grade has no end
}

// WriteJSON writes the reply as one object on one line.
func (r Reply) WriteJSON(w io.Writer) error {
	o := r.Seen
	out := replyJSON{
		OK: r.OK, Said: r.Said, Tick: o.Tick, Verdict: r.Verdict,
		Round: roundJSON{hundredth(o.Round.Right), hundredth(o.Round.Forward), o.Round.Centred},
		Dial:  dialJSON{o.Dial.Degree(), o.Dial.Resting},
	}
	if o.Seat == sim.OnSide {
		out.Tube = &tubeJSON{hundredth(o.Tube.Off), o.Tube.Centred}
		out.Arc = &arcJSON{Degrees: o.Arc.Degree(), Percent: percent(o.Arc)}
	}
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	return e.Encode(out)
}

// percent is the percent scale to the nearest mark, or nil at 90°.
func percent(a sim.Arc) *float64 {
	p := math.Round(a.Percent)
	if math.IsInf(p, 0) || p > 1e6 {
		return nil
	}
	return &p
}

// hundredth rounds to 0.01 and never gives −0.
func hundredth(x float64) float64 { return math.Round(x*100)/100 + 0 }
