package lab

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"cuesta/orient"
	"cuesta/quiz/form"
	"cuesta/quiz/item"
	"cuesta/quiz/sitting"
)

// Why something is not taken. The room is then as it was.
var (
	ErrNobody    = errors.New("nobody has been named")
	ErrNowhere   = errors.New("no station has been named")
	ErrStudent   = errors.New("there is no such student")
	ErrStation   = errors.New("there is no such station")
	ErrRefused   = errors.New("this could not be read")
	ErrReadings  = errors.New("the station has been read as often as it may be")
	ErrNothing   = errors.New("there is nothing to take back")
	ErrOtherFile = errors.New("these readings were written with another file of stations or another roster, or with these before they were changed")
)

// Options is how a room is run.
type Options struct {
	Roster   []form.Student // who may write; empty lets anyone
	Folder   string         // for journals; it must be there
	Withhold bool           // nothing is said about right or wrong
	Now      func() string  // RFC 3339, or ""
	// Keep takes the submission of a student after each change, when the entry
	// is safe in the journal already.
	Keep func(form.Submission) error
}

// Room is one keyboard or screen at which a class writes its readings. Several
// may share a folder. Make one with NewRoom; it is not safe for use by several
// goroutines at once.
type Room struct {
	lab     form.Blueprint
	options Options
	items   []item.AtStation
	student form.Student
	at      int // station, or −1
	journal *sitting.Journal
}

// NewRoom opens a room. A lab whose stations lie unknown withholds its verdicts
// whatever is asked for. What an earlier run kept, but could not hand on, is
// handed on now.
func NewRoom(lab form.Blueprint, o Options) (*Room, error) {
	o.Withhold = o.Withhold || !lab.Keyed()
	if o.Withhold {
		lab = blind(lab)
	}
	r := &Room{lab: lab, options: o, at: -1}
	f, err := lab.Fixed(form.Student{ID: "room"})
	if err != nil {
		return nil, err
	}
	for i := range f.Items {
		it, err := f.Item(i)
		if err != nil {
			return nil, err
		}
		st, ok := it.(item.AtStation)
		if !ok {
			return nil, fmt.Errorf("%w: item %d is no station", form.ErrStations, i+1)
		}
		r.items = append(r.items, st)
	}
	return r, r.handOn()
}

// blind is the lab without how its stations lie, so that nothing can tell.
func blind(lab form.Blueprint) form.Blueprint {
	lab.Parts = slices.Clone(lab.Parts)
	for i := range lab.Parts {
		s := &lab.Parts[i].Spec.Station
		*s = item.Station{Name: s.Name, Words: s.Words, Surface: s.Surface, Mean: s.Mean}
	}
	return lab
}

// Lab is the blueprint; it knows how the stations lie only where verdicts are
// given.
func (r *Room) Lab() form.Blueprint { return r.lab }

// Withholds says whether verdicts are left for later.
func (r *Room) Withholds() bool { return r.options.Withhold }

// Roster is who may write; empty is anyone.
func (r *Room) Roster() []form.Student { return r.options.Roster }

// Len is the number of stations.
func (r *Room) Len() int { return len(r.items) }

// Item is station i, from 0, as a question.
func (r *Room) Item(i int) item.AtStation { return r.items[i] }

// Names are the names of the stations.
func (r *Room) Names() []string {
	names := make([]string, len(r.items))
	for i, it := range r.items {
		names[i] = it.Station().Name
	}
	return names
}

// StationNamed finds a station by its name, whatever its capitals.
func (r *Room) StationNamed(name string) (int, bool) {
	for i, it := range r.items {
		if strings.EqualFold(it.Station().Name, name) {
			return i, true
		}
	}
	return 0, false
}

// GoTo goes to a station. The error wraps ErrStation and says what would do.
func (r *Room) GoTo(name string) error {
	i, ok := r.StationNamed(name)
	if !ok {
		return fmt.Errorf("%w: %q; the stations are %s", ErrStation, short(name), strings.Join(r.Names(), ", "))
	}
	r.at = i
	return nil
}

// Station is where the student reads.
func (r *Room) Station() (i int, ok bool) { return max(r.at, 0), r.at >= 0 }

// StudentNamed finds a student by id, or by the whole name, whatever the
// capitals. Without a roster everyone has the id that is written, in small
// letters. The error wraps ErrStudent and says what would do.
func (r *Room) StudentNamed(name string) (form.Student, error) {
	name = strings.TrimSpace(name)
	if len(r.options.Roster) == 0 {
		id := strings.ToLower(name)
		if id == "" || form.FileName(id) != id {
			return form.Student{}, fmt.Errorf("%w: %q; an id is made of letters a to z, figures, dots and hyphens, such as a17", ErrStudent, short(name))
		}
		return form.Student{ID: id, ExtraTime: 1}, nil
	}
	var ids []string
	for _, s := range r.options.Roster {
		if strings.EqualFold(s.ID, name) || strings.EqualFold(s.Name, name) {
			return s, nil
		}
		ids = append(ids, s.ID)
	}
	would := fmt.Sprintf("the roster has %d ids, such as %s", len(ids), ids[0])
	if n := near(strings.ToLower(name), lower(ids)); n != "" {
		would = "perhaps " + n + " was meant"
	}
	return form.Student{}, fmt.Errorf("%w: %q; %s", ErrStudent, short(name), would)
}

// near is the id that was probably meant: one of the same signs in another
// order, as hurried fingers write it, or one that is nearly the same.
func near(name string, ids []string) string {
	for _, id := range ids {
		if sorted(id) == sorted(name) {
			return id
		}
	}
	return form.Nearest(name, ids)
}

func sorted(s string) string {
	signs := []rune(s)
	slices.Sort(signs)
	return string(signs)
}

func lower(words []string) []string {
	out := make([]string, len(words))
	for i, w := range words {
		out[i] = strings.ToLower(w)
	}
	return out
}

// short is a text cut to what can be read in a sentence.
func short(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}

// Call makes a student the one who writes now. Nothing is written to the disk
// for it.
func (r *Room) Call(name string) error {
	s, err := r.StudentNamed(name)
	if err != nil {
		return err
	}
	if err := r.shut(); err != nil {
		return err
	}
	r.student = s
	return r.open(false)
}

// Dismiss leaves nobody at the keyboard; the station stays.
func (r *Room) Dismiss() error {
	r.student = form.Student{}
	return r.shut()
}

// Student is who writes now.
func (r *Room) Student() (s form.Student, ok bool) { return r.student, r.student.ID != "" }

func (r *Room) path(s form.Student) string {
	return filepath.Join(r.options.Folder, form.FileName(s.ID)+sitting.Ending)
}

// open opens the journal of the student; without begin only one that is there.
func (r *Room) open(begin bool) error {
	if _, err := os.Lstat(r.path(r.student)); errors.Is(err, fs.ErrNotExist) && !begin {
		return nil
	}
	j, err := r.journalOf(r.student)
	if err != nil {
		r.student = form.Student{}
		return err
	}
	r.journal = j
	return nil
}

func (r *Room) journalOf(s form.Student) (*sitting.Journal, error) {
	f, err := r.lab.Fixed(s)
	if err != nil {
		return nil, err
	}
	j, err := sitting.Open(r.path(s), f, r.options.Now())
	if errors.Is(err, sitting.ErrJournal) {
		return nil, fmt.Errorf("%w: %s: %w", ErrOtherFile, r.path(s), err)
	}
	return j, err
}

// shut closes the journal, so that another screen may go on with it.
func (r *Room) shut() error {
	j := r.journal
	if r.journal = nil; j == nil {
		return nil
	}
	return j.Close()
}

// Close closes the room; everything has been kept already.
func (r *Room) Close() error { return r.shut() }

// do takes an entry of the student. Another screen may have written to the same
// journal in the meantime; then it is read again.
func (r *Room) do(e sitting.Entry) error {
	e.At = r.options.Now()
	if r.journal == nil {
		if err := r.open(true); err != nil {
			return err
		}
	}
	err := r.journal.Do(e)
	if errors.Is(err, sitting.ErrShared) {
		if err = errors.Join(r.shut(), r.open(true)); err == nil {
			err = r.journal.Do(e)
		}
	}
	return err
}

// keep hands the submission of the student on.
func (r *Room) keep() error {
	if r.options.Keep == nil {
		return nil
	}
	return r.options.Keep(r.journal.Submission())
}

// handOn hands on the submission of everyone who has a journal in the folder.
func (r *Room) handOn() error {
	if r.options.Keep == nil {
		return nil
	}
	return r.each(func(j *sitting.Journal) error { return r.options.Keep(j.Submission()) })
}

// each visits the journals in the folder, in the order of the roster, or of
// their names.
func (r *Room) each(visit func(*sitting.Journal) error) error {
	students := r.options.Roster
	if len(students) == 0 {
		paths, err := filepath.Glob(filepath.Join(escaped(r.options.Folder), "*"+sitting.Ending))
		if err != nil {
			return err
		}
		for _, p := range paths {
			students = append(students, form.Student{ID: strings.TrimSuffix(filepath.Base(p), sitting.Ending), ExtraTime: 1})
		}
	}
	for _, s := range students {
		if _, err := os.Lstat(r.path(s)); err != nil {
			continue
		}
		j, err := r.journalOf(s)
		if err != nil {
			return err
		}
		if err := errors.Join(visit(j), j.Close()); err != nil {
			return err
		}
	}
	return nil
}

// escaped is a folder in which nothing is taken for a pattern.
func escaped(folder string) string {
	return strings.NewReplacer(`[`, `[[]`, `*`, `[*]`, `?`, `[?]`).Replace(folder)
}

// planes are those that can be read among texts.
func planes(texts []string, n orient.Notation) []orient.Plane {
	var out []orient.Plane
	for _, t := range texts {
		if e, err := orient.Parse(t, n); err == nil {
			out = append(out, e.Plane)
		}
	}
	return out
}
