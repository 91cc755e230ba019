package scenes

import "cuesta/scenes/spoken"

// readOut says in words what level and scale show, for those who cannot see
// them; it counts as a reading, as a look at the scale does.
func (b *Bench) readOut() {
	if b.phase != measuring {
		return
	}
	b.panel = noPanel // the control stands in a panel where there is little room
	b.read()
	words := spoken.Shown(b.ses)
	if b.alongStrike() {
		words += " " + alongWords
	}
	b.say(words)
}
