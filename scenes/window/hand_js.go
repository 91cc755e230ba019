package window

import (
	"encoding/json"
	"syscall/js"
	"time"

	"cuesta/scenes/input"
)

// hand gathers what was done on the page since the last frame. The page's
// script notes every event down as it comes, so that none is lost however long
// a frame takes; polling would lose a key that is tapped between two frames.
type hand struct {
	clock  clock
	events []pageEvent
	in     pageInput
	manner *manner // nil before the first frame
}

func (h *hand) frame(w, hgt, scale float64) input.Frame {
	h.events = h.events[:0]
	if text := thePage.drain(); text != "" {
		if err := json.Unmarshal([]byte(text), &h.events); err != nil {
			panic("window: the page handed over no events: " + err.Error())
		}
	}
	thePage.seen += h.in.take(h.events, thePage.scale())
	if h.manner == nil {
		h.manner = &manner{touch: tapsOnly()}
	}
	return input.Frame{W: w, H: hgt, Scale: scale, Ticks: h.clock.ticks(time.Now()), Touch: h.manner.learn(h.in.presses, h.in.pointers),
		Presses: h.in.presses, Pointers: h.in.pointers, Acts: h.in.acts}
}

// tapsOnly says that the device has no pointer but a finger (Media Queries 4,
// pointer and hover).
func tapsOnly() bool {
	if ask := js.Global().Get("matchMedia"); ask.Type() == js.TypeFunction {
		return ask.Invoke("(pointer: coarse) and (hover: none)").Get("matches").Truthy()
	}
	return false
}
