package lesson

import (
	"fmt"
	"slices"

	"cuesta/scenes/session"
	"cuesta/sim"
	"cuesta/sim/record"
)

// Player goes through a lesson: forward, back, and aside into live play. A step
// always ends in the same state, bit for bit, however long it was watched: its
// commands come at fixed ticks, the needle and the bubbles then have time to come
// to rest, and after that time at the bench stands still. Make one with
// NewPlayer.
type Player struct {
	lesson   Lesson
	at       int
	ses      *session.Session
	now      standing
	ends     []standing // how the steps reached so far ended
	revealed []bool     // whose answer has been shown since the step began
	script   script
	next     int      // cue of the script
	last     sim.Tick // of the last cue
	told     bool     // the script has come to its end
	idle     int      // ticks since then
	live     bool
}

// standing is what a step has brought about, beside the question it asks.
type standing struct {
	bench   record.Recording
	shown   [Things]bool
	line    int // the step whose line is on the screen
	view    View
	student *Written
}

// NewPlayer begins a lesson: its first step is under way. The error says what in
// the lesson cannot be carried out.
func NewPlayer(l Lesson) (*Player, error) {
	if len(l.Steps) == 0 {
		return nil, fmt.Errorf("%w: there is no step", ErrLesson)
	}
	p := &Player{lesson: l, at: -1, revealed: make([]bool, len(l.Steps)), told: true}
	if err := p.lay(0); err != nil {
		return nil, err
	}
	return p, p.begin(0)
}

// lay puts a fresh bench under the lesson, for the slab that a step brings.
func (p *Player) lay(step int) error {
	plane := p.lesson.Plane
	if s := p.lesson.Steps[step]; s.Plane != nil {
		plane = *s.Plane
	}
	o := session.Options{Plane: &plane, Seed: p.lesson.Seed + uint64(step), RingPreset: true}
	if p.lesson.Declination != 0 {
		o.Field = sim.Field{Declination: p.lesson.Declination, Horizontal: 20e-6}
	}
	ses, err := session.New(o)
	if err == nil {
		p.ses = ses
	}
	return err
}

// begin starts a step on the bench as it stands. A step that plays again asks
// again.
func (p *Player) begin(i int) error {
	s := p.lesson.Steps[i]
	if s.Plane != nil {
		if err := p.lay(i); err != nil {
			return fmt.Errorf("step %d: %w", i+1, err)
		}
		p.now.student = nil
	}
	if s.View == ViewAsItIs {
		s.View = p.now.view
	}
	script, err := rehearse(p.ses.Recording(), s, p.lesson.Seed+uint64(i))
	if err != nil {
		return fmt.Errorf("step %d: %w", i+1, err)
	}
	p.at, p.script, p.next, p.told, p.idle = i, script, 0, false, 0
	p.last, p.revealed[i] = p.ses.World().Tick(), false
	if s.Mistake != "" {
		p.now.student = nil
	}
	p.open(s)
	p.tell()
	return nil
}

// open is what of a step is seen while it is under way.
func (p *Player) open(s Step) {
	for _, t := range s.Hide {
		p.now.shown[t] = false
	}
	for _, t := range s.Show {
		if !t.waits() {
			p.now.shown[t] = true
		}
	}
	if s.Say != "" || s.Ask != "" {
		p.now.line = p.at
	}
	if s.View != ViewAsItIs {
		p.now.view = s.View
	}
}

// waits says that a thing is shown when its step has been told: figures that come
// out of what happens in it.
func (t Thing) waits() bool { return t == Reading || t == Student || t == Ends || t == Numbers }

// tell ends a step whose script is over.
func (p *Player) tell() {
	if p.told || p.next < len(p.script.cues) || p.ses.World().Tick() < p.script.told {
		return
	}
	p.told = true
	for _, t := range p.lesson.Steps[p.at].Show {
		p.now.shown[t] = true
	}
}

// complete brings the step to its end, at rest, and keeps how it ended.
func (p *Player) complete() {
	p.Finish()
	p.ses.Advance(int(p.script.end - p.ses.World().Tick()))
	p.now.bench = p.ses.Recording()
	p.ends = append(p.ends[:p.at], p.now)
}

// restore puts everything back to how step i ended.
func (p *Player) restore(i int) error {
	ses, err := session.Resume(p.ends[i].bench, p.ses.Options())
	if err != nil {
		return err
	}
	p.ses, p.now, p.at, p.told, p.idle, p.live = ses, p.ends[i], i, true, 0, false
	p.script = script{end: ses.World().Tick()}
	p.next = 0
	return nil
}

// Next goes to the next step, from live play too, and says whether there was one.
func (p *Player) Next() (bool, error) {
	if err := p.Return(); err != nil {
		return false, err
	}
	if p.at+1 >= len(p.lesson.Steps) {
		return false, nil
	}
	p.complete()
	return true, p.begin(p.at + 1)
}

// Back goes to the end of the step before, and says whether there was one.
func (p *Player) Back() (bool, error) {
	if p.at == 0 {
		return false, p.Return()
	}
	return true, p.restore(p.at - 1)
}

// Restart begins the lesson anew, as for another class: no answer has been
// shown, and the student measures again.
func (p *Player) Restart() error {
	q, err := NewPlayer(p.lesson)
	if err == nil {
		*p = *q
	}
	return err
}

// Running says whether the script of the step is still being played.
func (p *Player) Running() bool { return !p.told }

// Busy says that the step has still something to do at the bench or to show; a
// needle that only comes to rest is no reason to wait.
func (p *Player) Busy() bool {
	if p.told {
		return false
	}
	return p.next < len(p.script.cues) || slices.ContainsFunc(p.Step().Show, Thing.waits)
}

// Finish plays the rest of the script at once.
func (p *Player) Finish() {
	for !p.told {
		p.play(p.script.told)
	}
}

// Advance lets time pass: the script is played, needle and bubbles come to rest,
// and a step that waits for a while only is followed by the next. It returns the
// commands that were carried out.
func (p *Player) Advance(ticks int) ([]sim.Command, error) {
	ticks = max(ticks, 0)
	if p.live {
		p.ses.Advance(ticks)
		return nil, nil
	}
	first := p.next
	for ticks > 0 && !p.told {
		ticks -= p.playFor(ticks)
	}
	did := p.commands(first)
	if ticks > 0 {
		p.ses.Advance(min(ticks, int(p.script.end-p.ses.World().Tick())))
	}
	return did, p.goOn(ticks)
}

func (p *Player) commands(from int) []sim.Command {
	var did []sim.Command
	for _, e := range p.script.cues[min(from, len(p.script.cues)):p.next] {
		did = append(did, e.Command)
	}
	return did
}

// Long waits of a student at work pass faster, once they have been noticed.
const (
	noticed = 3 * sim.TicksPerSecond / 2
	hurry   = 5
)

// playFor plays at most so many ticks of the script, and says how many it took.
func (p *Player) playFor(ticks int) int {
	at, to := p.ses.World().Tick(), p.script.told
	if p.next < len(p.script.cues) {
		to = p.script.cues[p.next].Tick
	}
	rate := 1
	if p.script.hasten && at-p.last >= noticed {
		rate = hurry
	}
	goal := min(to, at+sim.Tick(ticks*rate))
	if p.script.hasten && rate == 1 {
		goal = min(goal, p.last+noticed)
	}
	p.play(goal)
	return max(1, int(goal-at)/rate)
}

// play brings the bench to a tick and carries out the cues that are due.
func (p *Player) play(to sim.Tick) {
	for p.next < len(p.script.cues) && p.script.cues[p.next].Tick <= to {
		e := p.script.cues[p.next]
		p.ses.Advance(int(e.Tick - p.ses.World().Tick()))
		p.carryOut(e.Command)
		p.next++
		p.last = e.Tick
	}
	p.ses.Advance(int(to - p.ses.World().Tick()))
	p.tell()
}

// carryOut does what was rehearsed, so that no error can come of it.
func (p *Player) carryOut(c sim.Command) {
	if c.Kind != sim.Note {
		_ = p.ses.Do(c)
		return
	}
	if s, err := noted(p.ses, c.Text); err == nil {
		p.now.student = &s
	}
}

// goOn follows a step that waits for a while only.
func (p *Player) goOn(ticks int) error {
	wait := p.lesson.Steps[p.at].Wait
	if !p.told || wait == 0 || ticks <= 0 {
		return nil
	}
	if p.idle += ticks; float64(p.idle) < wait*sim.TicksPerSecond {
		return nil
	}
	p.idle = 0
	if p.Reveal() {
		return nil
	}
	_, err := p.Next()
	return err
}

// Live lets the presenter play with the instrument: the step is brought to its
// end first.
func (p *Player) Live() {
	if !p.live {
		p.complete()
		p.live = true
	}
}

// Return ends live play and puts everything back to how the step stood.
func (p *Player) Return() error {
	if !p.live {
		return nil
	}
	return p.restore(p.at)
}

// IsLive says whether the presenter plays with the instrument.
func (p *Player) IsLive() bool { return p.live }

// Do carries out a command in live play.
func (p *Player) Do(c sim.Command) error {
	if !p.live {
		return fmt.Errorf("lesson: live play has not begun")
	}
	return p.ses.Do(c)
}

// Reveal shows the answer to the question, and says whether there was one to
// show.
func (p *Player) Reveal() bool {
	if !p.Open() {
		return false
	}
	p.Finish()
	p.revealed[p.now.line] = true
	return true
}

// Open says whether a question stands unanswered.
func (p *Player) Open() bool { return p.lined().Ask != "" && !p.revealed[p.now.line] }

// lined is the step whose line is on the screen.
func (p *Player) lined() Step { return p.lesson.Steps[p.now.line] }

// Lesson is what is being played.
func (p *Player) Lesson() Lesson { return p.lesson }

// At is the step that is under way or stands, from 0.
func (p *Player) At() int { return p.at }

// Len is the number of steps.
func (p *Player) Len() int { return len(p.lesson.Steps) }

// Step is the step that is under way or stands.
func (p *Player) Step() Step { return p.lesson.Steps[p.at] }

// Session is the bench under the lesson. Look at it as you like; in live play it
// may be driven.
func (p *Player) Session() *session.Session { return p.ses }

// Shows says whether a thing is to be seen.
func (p *Player) Shows(t Thing) bool { return t < Things && p.now.shown[t] }

// Line is the line on the screen: the question, or what was said last.
func (p *Player) Line() string {
	if ask := p.lined().Ask; ask != "" {
		return ask
	}
	return p.lined().Say
}

// Answer is the answer to the question once it has been revealed, or "".
func (p *Player) Answer() string {
	if p.revealed[p.now.line] {
		return p.lined().Answer
	}
	return ""
}

// View is where the eye was last sent.
func (p *Player) View() View { return p.now.view }

// Written is what the simulated student has written at this slab; false before.
// While a question about it stands unanswered there is the text alone: the class
// says what went wrong before the judge does.
func (p *Player) Written() (Written, bool) {
	switch {
	case p.now.student == nil:
		return Written{}, false
	case p.Open() && p.lined().Mistake != "":
		return Written{Text: p.now.student.Text}, true
	}
	return *p.now.student, true
}
