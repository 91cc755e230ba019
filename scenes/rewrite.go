package scenes

import (
	"cuesta/orient"
	"cuesta/scenes/session"
)

// rewriting is a change of notation that has rewritten the notebook.
type rewriting struct {
	depth int // of what the field keeps, with what stood there before
	from  orient.Notation
}

// rewrite lets what stands in the notebook mean the same after a change of
// notation, or says that it will not.
func (b *Bench) rewrite(was orient.Notation) {
	now := b.set.Notation
	if was == now || b.text == "" || b.rewrittenFrom(now) && b.takeBack() {
		return
	}
	text, ok := session.Rewritten(b.text, was, now)
	switch {
	case !ok && readsOtherwise(b.text, was, now):
		b.say(b.text + " stays as it is and is read as a " + firstNumber(now) + " now.")
	case ok && text != b.text:
		b.note.keep()
		b.note.set(text)
		b.rewritten = append(b.rewritten, rewriting{len(b.note.past), was})
		b.say("Rewritten as " + text + ": the same plane.")
	}
}

// rewrittenFrom says that the last change in the notebook was that of a
// notation.
func (b *Bench) rewrittenFrom(n orient.Notation) bool {
	at := len(b.rewritten) - 1
	return at >= 0 && b.rewritten[at].depth == len(b.note.past) && b.rewritten[at].from == n
}

// takeBack goes back one change in the notebook. What was rewritten stands there
// again, in its notation.
func (b *Bench) takeBack() bool {
	if at := len(b.rewritten) - 1; at >= 0 && b.rewrittenFrom(b.rewritten[at].from) {
		b.set.Notation = b.rewritten[at].from
		b.ses.Write(b.set.Notation)
		b.rewritten = b.rewritten[:at]
		b.note.undo()
		b.say("Again " + b.note.String() + ", in its notation.")
		b.edited()
		b.save()
		return true
	}
	if !b.note.undo() {
		return false
	}
	b.edited()
	return true
}

// readsOtherwise says that what is not yet a plane means another one in the new
// notation.
func readsOtherwise(text string, was, now orient.Notation) bool {
	if (was == orient.DirectionDip) == (now == orient.DirectionDip) {
		return false
	}
	before, err := orient.ParsePartial(text, was)
	after, again := orient.ParsePartial(text, now)
	return err != nil || again != nil || before != after
}

// firstNumber is what the first number of a plane is called.
func firstNumber(n orient.Notation) string {
	if n == orient.DirectionDip {
		return "dip direction"
	}
	return "strike"
}
