package spoken

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/mistake"
	"cuesta/scenes/session"
	"cuesta/sim"
)

// Painter draws the scene of a practice as it stands, as PNG.
type Painter func(w io.Writer, s *session.Session) error

// Bench answers lines. Make one with New; it is not safe for use by several
// goroutines at once.
type Bench struct {
	ses     *session.Session
	painter Painter
}

// NewBench is the spoken front end of a practice. Without a painter there are
// no pictures.
func NewBench(s *session.Session, p Painter) *Bench { return &Bench{ses: s, painter: p} }

// Session is the practice at the bench.
func (b *Bench) Session() *session.Session { return b.ses }

// moving is the bench time that a line takes that moves something.
const moving = sim.TicksPerSecond

// Line carries out one line. An empty line and a remark have no reply: told is
// then false.
func (b *Bench) Line(text string) (r Reply, told bool) {
	l, err := Parse(text)
	if err != nil {
		return b.refuse(err.Error()), true
	}
	if l.Word == Nothing {
		return Reply{}, false
	}
	return b.do(l), true
}

func (b *Bench) do(l Line) Reply {
	switch l.Word {
	case Seat, Swing, Roll, Arm, Flip, Ring, Tap, Lock, Free, Calibrate:
		return b.move(l)
	case Wait:
		b.ses.Advance(l.Ticks)
		return b.say(waited(l.Ticks) + " " + b.state())
	case Look:
		return b.say(look(b.ses, b.seen()))
	case Bubble:
		return b.say(bubble(b.seen()))
	case Read:
		return b.read()
	case Note:
		return b.note(l.Text)
	case Picture:
		return b.picture(l.Text)
	case Reveal:
		b.ses.Reveal()
		return b.say(b.truth())
	case New:
		return b.next(l)
	case Help:
		return b.say(help(l.Text))
	case Quit:
		r := b.say("The bench is closed.")
		r.End = true
		return r
	case Nothing:
	}
	return b.say("")
}

// Command is what a line that moves something, or takes a reading, does to the
// world; for other lines it is idle.
func (l Line) Command() sim.Command {
	c := sim.Command{Seat: l.Seat, Angle: l.Angle}
	switch l.Word {
	case Seat:
		c.Kind = sim.Place
	case Swing:
		c.Kind = sim.Swing
	case Roll:
		c.Kind = sim.Roll
	case Arm:
		c.Kind = sim.Arm
	case Flip:
		c.Kind = sim.Flip
	case Ring:
		c.Kind = sim.Ring
	case Tap:
		c.Kind = sim.Tap
	case Lock:
		c.Kind = sim.Lock
	case Free:
		c.Kind = sim.Free
	case Calibrate:
		c.Kind = sim.Calibrate
	case Read:
		c.Kind = sim.Read
	case Nothing, Wait, Look, Bubble, Note, Picture, Reveal, New, Help, Quit:
	}
	return c
}

// move carries out a line that moves something and lets a second pass.
func (b *Bench) move(l Line) Reply {
	from, before := b.ses.World().Pose(), b.seen()
	if err := b.ses.Do(l.Command()); err != nil {
		return b.refuse(sorry(l, err))
	}
	b.ses.Advance(moving)
	m := moveOf(l.Command(), from, b.ses.World().Pose(), before, b.seen())
	return b.say(m.words() + m.became(before) + m.stopped() + " " + b.state())
}

// sorry says in words why the world refused a line.
func sorry(l Line, err error) string {
	switch {
	case errors.Is(err, sim.ErrNotOnSide):
		return "The arm is turned with the instrument on its side: seat side puts it there."
	case errors.Is(err, sim.ErrFlat):
		return "Flat on the rock the instrument cannot be rolled."
	case errors.Is(err, sim.ErrNotFlat):
		return "The sensor is calibrated with the instrument flat on the rock: seat flat puts it there."
	case errors.Is(err, sim.ErrSeat):
		return "The instrument on this bench does not have " + partFor(l.Seat) + "; seat edge and seat side would do."
	}
	return "That could not be done: " + err.Error() + "."
}

func partFor(s sim.Seat) string {
	switch s {
	case sim.OnLid:
		return "a lid"
	case sim.OnBack:
		return "a sensor in its back"
	case sim.OnEdge, sim.OnSide:
	}
	return "a part for that"
}

// read takes the reading: its pose is kept for the judge.
func (b *Bench) read() Reply {
	if err := b.ses.Do(sim.Command{Kind: sim.Read}); err != nil {
		return b.refuse(sorry(Line{Word: Read}, err))
	}
	return b.say(reading(b.seen()))
}

// note writes an answer down and tells the verdict.
func (b *Bench) note(text string) Reply {
	entry, _ := orient.Parse(text, b.ses.Options().Notation)
	counts := b.ses.Counts()
	v, err := b.ses.Note(text)
	if errors.Is(err, session.ErrShown) {
		return b.refuse("Not graded: the true plane has been shown. Type new for the next plane.")
	}
	if err != nil {
		return b.refuseNote(err)
	}
	r := b.say(entry.Understood() + " " + strings.TrimSpace(v.Said+" "+v.Figures()) + practice(counts) + " Type new for the next plane.")
	r.Verdict = &v
	return r
}

// practice tells of an answer that does not count.
func practice(counts bool) string {
	if counts {
		return ""
	}
	return " This one is for practice; the first answer counts."
}

// refuseNote says why an answer is no plane; where the reason is probable it
// comes as a verdict too.
func (b *Bench) refuseNote(err error) Reply {
	r := b.refuse(sentence(err.Error()))
	var refused *session.Refused
	if errors.As(err, &refused) && refused.Hint != nil {
		r.Verdict = &quiz.Verdict{Of: 1, Mistakes: []mistake.Finding{*refused.Hint}, Said: r.Said}
	}
	return r
}

// sentence ends a remark with a full stop.
func sentence(s string) string {
	if strings.HasSuffix(s, ".") || strings.HasSuffix(s, "?") {
		return s
	}
	return s + "."
}

// next lays another plane on the bench: that of the seed given, or of the seed
// that follows the last one.
func (b *Bench) next(l Line) Reply {
	seed := b.ses.Seed() + 1
	if l.Given {
		seed = l.Seed
	}
	if err := b.ses.Next(seed); err != nil {
		return b.refuse("That could not be done: " + sentence(err.Error()))
	}
	return b.say(fmt.Sprintf("A new plane, from seed %d.%s %s", seed, b.ringWords(), look(b.ses, b.seen())))
}

func (b *Bench) seen() sim.Observation { return b.ses.World().Observe() }

func (b *Bench) say(text string) Reply { return Reply{OK: true, Said: text, Seen: b.seen()} }

func (b *Bench) refuse(text string) Reply { return Reply{Said: text, Seen: b.seen()} }

// Welcome says where one is and what to do next.
func (b *Bench) Welcome() string {
	var w strings.Builder
	o := b.ses.Options()
	if o.Plane != nil {
		fmt.Fprintf(&w, "The bench in words. The plane you chose lies before you; the instrument stands on it as seed %d says.", b.ses.Seed())
	} else {
		fmt.Fprintf(&w, "The bench in words. A plane from seed %d lies before you: find its strike and dip.", b.ses.Seed())
	}
	if o.Place != "" {
		w.WriteString(" Place: " + sentence(o.Place))
	}
	w.WriteString(b.ringWords())
	w.WriteString("\nlook says where everything is; swing and roll bring the bubble into the ring; help lists the lines.")
	return w.String()
}

// ringWords says that the declination is the student's to set, if it is.
func (b *Bench) ringWords() string {
	d := b.ses.Declination()
	if b.ses.Options().RingPreset || d == 0 {
		return ""
	}
	if short(d) == "0" {
		return " The declination here is 0 to the tenth of a degree; the dial needs no setting."
	}
	return " The declination here is " + eastWest(d) + " and the dial is not set to it: ring sets it."
}
