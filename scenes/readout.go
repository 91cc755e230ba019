package scenes

import "cuesta/scenes/spoken"

// readOut says in words what level and scale show, for those who cannot see
// them; it counts as a reading, as a look at the scale does. The words come with the
// next frame, so that the same words are said again when they are asked for
// again.
func (b *Bench) readOut() {
	if b.phase != measuring {
		return
	}
	b.read()
	b.again = spoken.Shown(b.ses)
}
