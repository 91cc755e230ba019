package scenes

import (
	"cuesta/scenes/describe"
	"cuesta/scenes/keymap"
	"cuesta/sim"
)

// stripItem is a control of the strip: one button, or a stepper of two halves with
// its name between.
type stripItem struct {
	parts []widget
	width float64
}

// items are the controls that belong under the rock now.
func (m *maker) items() []stripItem {
	if m.b.phase != measuring {
		return m.overlayItems()
	}
	return append(m.knobs(), m.switches()...)
}

// knobs are the steppers. Each half tells the key that does the same.
func (m *maker) knobs() []stripItem {
	k := m.b.set.keysFor
	less, more := k(keymap.Lift), k(keymap.Lower)
	if m.b.liftsWithMore() {
		less, more = more, less
	}
	half := func(id describe.ID, name, keys string) widget { return widget{id: id, name: name, keys: keys} }
	out := []stripItem{m.stepper("Swing", half(idSwingLess, "Swing anticlockwise", k(keymap.SwingLess)), half(idSwingMore, "Swing clockwise", k(keymap.SwingMore)))}
	switch m.b.obs.Seat {
	case sim.OnSide:
		out = append(out,
			m.stepper("Arm", half(idTiltLess, "Turn the arm towards the edge", less), half(idTiltMore, "Turn the arm away from the edge", more)),
			m.stepper("Lean", half(idLeanLess, "Lean the face left side down", k(keymap.LeanLess)), half(idLeanMore, "Lean the face right side down", k(keymap.LeanMore))))
	case sim.OnLid:
		out = append(out, m.stepper("Hinge", half(idTiltLess, "Close the hinge", less), half(idTiltMore, "Open the hinge", more)))
	case sim.OnEdge:
		out = append(out, m.stepper("Roll", half(idTiltLess, "Roll left side down", less), half(idTiltMore, "Roll right side down", more)))
	case sim.OnBack:
	}
	if m.b.set.Declination == DeclinationYours && m.b.obs.Seat != sim.OnSide {
		out = append(out, m.stepper("Ring", half(idRingLess, "Turn the ring towards west", k(keymap.RingLess)), half(idRingMore, "Turn the ring towards east", k(keymap.RingMore))))
	}
	return out
}

// switches are the steps and the single acts.
func (m *maker) switches() []stripItem {
	k := m.b.set.keysFor
	out := []stripItem{m.choice([]widget{
		{id: idStepCoarse, group: "Size of step", name: "Steps of 10°", text: "10°", on: m.b.step == Coarse, keys: k(keymap.StepSize)},
		{id: idStepNormal, group: "Size of step", name: "Steps of 1°", text: "1°", on: m.b.step == Normal, keys: k(keymap.StepSize)},
		{id: idStepFine, group: "Size of step", name: "Steps of 0.1°", text: "0.1°", on: m.b.step == Fine, keys: k(keymap.StepSize)},
	})}
	turn := widget{id: idTurn, group: "Plate", name: "Turn the plate on its side", text: "On its side", keys: k(keymap.TurnOver)}
	if m.b.obs.Seat == sim.OnSide {
		turn.name, turn.text = "Turn the plate back on its edge", "On its edge"
	}
	if m.b.obs.Seat == sim.OnBack {
		out = append(out, m.button(widget{id: idCalibrate, group: "Plate", name: "Calibrate the sensor", text: "Calibrate", keys: k(keymap.Calibrate)}))
	}
	if !m.b.atOnce() {
		out = append(out, m.button(turn))
	}
	out = append(out, m.button(widget{id: idFlip, group: "Plate", name: "Turn the plate end for end", text: "End for end", keys: k(keymap.Flip)}))
	if m.b.obs.Seat == sim.OnEdge || m.b.obs.Seat == sim.OnLid {
		out = append(out, m.button(widget{id: idTap, group: "Plate", name: "Tap the case", text: "Tap", keys: k(keymap.Tap)}))
	}
	return out
}

func (m *maker) overlayItems() []stripItem {
	r := m.b.reveal
	ws := []widget{
		{id: idShowWater, name: "Water line", text: "Water", on: r.Water, keys: m.b.sign("1")},
		{id: idShowStrike, name: "Strike line", text: "Strike line", on: r.Strike, keys: m.b.sign("2")},
		{id: idShowArrow, name: "Dip arrow, down the dip", text: "Dip arrow", on: r.Arrow, keys: m.b.sign("3")},
		{id: idShowHand, name: "Right hand on the slab", text: "Right hand", on: r.Hand, keys: m.b.sign("4")},
		{id: idShowNumbers, name: "True numbers", value: m.numbers(), text: "Numbers", on: r.Numbers, keys: m.b.sign("5")},
	}
	if m.b.phase == judged {
		ws = append(ws, widget{id: idShowYours, name: "Yours: the plane you wrote", text: "Yours", on: r.Yours, keys: m.b.sign("6")})
	}
	var out []stripItem
	for _, w := range ws {
		w.role, w.group = describe.Toggle, "Answer on the rock"
		out = append(out, m.choice([]widget{w}))
	}
	return out
}

// numbers are the true numbers in words, while they are shown.
func (m *maker) numbers() string {
	if !m.b.reveal.Numbers {
		return ""
	}
	return m.b.truth()
}

// strip places the rows under the rock.
func (m *maker) strip() {
	z := &m.s.zones[stripZone]
	z.rect, z.ground = m.lay.Strip, tableGround
	if m.lay.Strip.H > 0 {
		m.putRows(m.rows)
	}
}
