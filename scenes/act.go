package scenes

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"cuesta/orient"
	"cuesta/scenes/describe"
	"cuesta/scenes/keymap"
	"cuesta/scenes/stage"
	"cuesta/sim"
)

// act carries out what a control does when it is pressed.
func (b *Bench) act(id describe.ID) {
	switch id {
	case idNone, idTitle, idSteps, idRound, idDial, idHinge, idEcho, idVerdict, idHint, idNotice, idPanelTitle, idPanelText:
	case idInstrument, idNotebook, idView:
		b.focus = id
	case idPrimary:
		b.primary()
	case idSecondary:
		b.secondary()
	case idSettings:
		b.open(settingsPanel)
	case idHelp:
		b.open(helpPanel)
	case idClosePanel:
		b.shut()
	case idMore:
		b.open(controlsPanel)
	case idKeypad:
		b.open(keypadPanel)
	case idHall:
		if b.leave != nil {
			b.leave()
		}
	case idWhy:
		b.open(whyPanel)
	case idSetKeys:
		b.open(keysPanel)
	case idUsualKeys:
		b.Choose(b.keys.usual(b.set))
	case idReadOut:
		b.readOut()
	case idPanelMore:
		b.page++
	case idKnob:
		b.knob++
	case idStepCoarse:
		b.step = Coarse
	case idStepNormal:
		b.step = Normal
	case idStepFine:
		b.step = Fine
	case idViewLeft, idViewRight, idViewCloser, idMagnifyLevel, idMagnifyScale, idMagnifyHinge:
		b.view.act(b, id)
	case idShowStrike, idShowArrow, idShowWater, idShowHand, idShowNumbers, idShowYours:
		b.toggle(id)
	default:
		if id >= idPadKey {
			b.padKey(int(id - idPadKey))
			return
		}
		if id >= idKeyRow && id < idKeyRow+describe.ID(keymap.Actions) {
			b.keys.ask(keymap.Action(id - idKeyRow))
			return
		}
		if id >= idSetNotation && id < idHelpLine {
			b.choose(id)
			return
		}
		b.handle(id, b.step.Angle())
	}
}

// handle moves the instrument as a control says, by step.
func (b *Bench) handle(id describe.ID, step orient.Angle) {
	if b.phase != measuring {
		return
	}
	switch id {
	case idSwingLess:
		b.do(sim.Command{Kind: sim.Swing, Angle: -step})
	case idSwingMore:
		b.do(sim.Command{Kind: sim.Swing, Angle: step})
	case idTiltLess:
		b.tilt(-step)
	case idTiltMore:
		b.tilt(step)
	case idLeanLess:
		b.do(sim.Command{Kind: sim.Roll, Angle: -step})
	case idLeanMore:
		b.do(sim.Command{Kind: sim.Roll, Angle: step})
	case idRingLess:
		b.turnRing(-step)
	case idRingMore:
		b.turnRing(step)
	case idTurn:
		b.turnOver()
	case idFlip:
		b.do(sim.Command{Kind: sim.Flip})
	case idTap:
		b.do(sim.Command{Kind: sim.Tap})
	case idCalibrate:
		if b.obs.Seat == sim.OnBack {
			b.do(sim.Command{Kind: sim.Calibrate})
		}
	}
}

// tilt is the second hand: it rolls the plate on its edge and turns the arm
// when the plate is on its side.
func (b *Bench) tilt(a orient.Angle) {
	if b.obs.Seat == sim.OnSide {
		b.do(sim.Command{Kind: sim.Arm, Angle: a})
		return
	}
	b.do(sim.Command{Kind: sim.Roll, Angle: a})
}

func (b *Bench) turnRing(a orient.Angle) {
	if b.set.Declination != DeclinationYours {
		return
	}
	at := (b.obs.Dial.Ring + a).Wrapped()
	tenth := math.Round(at.Degrees()*10) / 10
	b.do(sim.Command{Kind: sim.Ring, Angle: orient.Angle(tenth) * orient.Degree})
}

// turnOver turns the plate from its edge on its side and back. What the dial
// or the arc showed at that moment counts as read.
func (b *Bench) turnOver() {
	if b.atOnce() {
		b.say("There is no other side to turn to: direction and dip are shown at once.")
		return
	}
	b.do(sim.Command{Kind: sim.Read})
	to := sim.OnSide
	if b.obs.Seat == sim.OnSide {
		to = sim.OnEdge
	}
	b.do(sim.Command{Kind: sim.Place, Seat: to})
	b.focus = idInstrument
	b.view.follow(b, b.set.Calm)
}

func (b *Bench) lockOrFree() {
	if b.phase != measuring {
		return
	}
	k := sim.Lock
	if b.obs.Dial.State == sim.NeedleLocked {
		k = sim.Free
	}
	b.do(sim.Command{Kind: k})
}

// primary is the filled button.
func (b *Bench) primary() {
	switch {
	case b.phase != measuring:
		b.next()
	case b.primaryRecords():
		b.record()
	default:
		b.panel = noPanel // the keypad would cover the plate
		b.turnOver()
	}
}

// primaryRecords says that the filled button records the note; before that it
// turns the plate.
func (b *Bench) primaryRecords() bool {
	return b.complete || b.obs.Seat == sim.OnSide || b.atOnce() || b.text != "" && !b.strikeWritten
}

func (b *Bench) next() {
	b.seed++
	b.try(b.deal(nil))
	b.save()
}

func (b *Bench) secondary() {
	b.panel = noPanel // the control stands in a panel where there is little room
	switch {
	case b.exam != nil:
		b.exam.back()
	case b.phase == measuring:
		b.phase = shown
		b.show(allOverlays)
		b.focus = idPrimary
	case b.phase == judged && !b.verdict.Right:
		b.again()
	case b.reveal.Any():
		b.reveal = stage.Overlays{}
	default:
		b.show(allOverlays)
	}
}

// again begins anew on the same plane: strike first, so the plate stands on its
// edge.
func (b *Bench) again() {
	if b.obs.Seat == sim.OnSide {
		b.do(sim.Command{Kind: sim.Place, Seat: sim.OnEdge})
	}
	b.begin()
	b.reveal = stage.Overlays{}
}

// show lays the true plane over the rock. From then on nothing is graded.
func (b *Bench) show(o stage.Overlays) {
	b.reveal = o
	b.ses.Reveal()
}

func (b *Bench) toggle(id describe.ID) {
	if b.phase == measuring {
		return
	}
	flip := func(on *bool) { *on = !*on }
	switch id {
	case idShowStrike:
		flip(&b.reveal.Strike)
	case idShowArrow:
		flip(&b.reveal.Arrow)
	case idShowWater:
		flip(&b.reveal.Water)
	case idShowHand:
		flip(&b.reveal.Hand)
	case idShowNumbers:
		flip(&b.reveal.Numbers)
	case idShowYours:
		flip(&b.reveal.Yours)
		return
	}
	b.ses.Reveal()
}

// record grades what stands in the notebook.
func (b *Bench) record() {
	if b.text == "" {
		b.echo = "Type the reading first: " + b.example() + "."
		b.focus = idNotebook
		return
	}
	if b.exam != nil {
		b.hand()
		return
	}
	counts := b.ses.Counts()
	v, err := b.ses.Note(b.text)
	if err != nil {
		b.echo = plainError(err)
		b.focus = idNotebook
		return
	}
	b.issued = append(b.issued, sim.Command{Kind: sim.Note, Text: b.text})
	b.verdict, b.phase = v, judged
	b.answer = b.entryPlane()
	b.focus, b.panel = idPrimary, noPanel // the keypad would cover the verdict
	if counts {
		b.tally = b.tally.Add(b.ses.Truth(), v)
		b.save()
	}
}

// hand gives the note to the form. It must read as a plane; whether it is right
// is not said.
func (b *Bench) hand() {
	if _, err := orient.Parse(b.text, b.set.Notation); err != nil {
		b.echo = plainError(err)
		b.focus = idNotebook
		return
	}
	b.do(sim.Command{Kind: sim.Note, Text: b.text})
	var recording strings.Builder
	if err := b.ses.Recording().Write(&recording); err != nil {
		b.say(err.Error())
		return
	}
	b.try(b.exam.record(b.text, recording.String()))
}

func (b *Bench) entryPlane() orient.Plane {
	e, err := orient.Parse(b.text, b.set.Notation)
	if err != nil {
		return orient.Plane{}
	}
	return e.Plane
}

// example is how a reading looks in the notation in use.
func (b *Bench) example() string {
	return [...]string{"such as 035/30", "such as N35E 30SE", "such as 125/30"}[min(int(b.set.Notation), 2)]
}

// edited takes note of a change in the notebook.
func (b *Bench) edited() {
	b.text, b.caret = b.note.String(), b.note.caret
	b.blink = 0
	e, err := orient.ParsePartial(b.text, b.set.Notation)
	switch {
	case b.text == "" || err != nil:
		b.echo, b.complete, b.strikeWritten = "", false, false
	default:
		b.echo = e.Understood()
		b.complete, b.strikeWritten = !e.DipMissing, true
	}
}

// typed writes r into the notebook and takes the reading as it stands.
func (b *Bench) typed(r rune) {
	if b.phase != measuring || !b.note.insert(r) {
		return
	}
	b.focus = idNotebook
	b.edited()
	b.read()
}

// read takes the reading as it stands.
func (b *Bench) read() { b.do(sim.Command{Kind: sim.Read}) }

func plainError(err error) string {
	var p *orient.ParseError
	if errors.As(err, &p) {
		return p.Error()
	}
	return err.Error()
}

func declinationWords(d orient.Angle) string {
	side := "E"
	if d < 0 {
		side = "W"
	}
	return fmt.Sprintf("%.3g° %s", d.Abs().Degrees(), side)
}
