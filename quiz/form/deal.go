package form

import (
	"errors"
	"fmt"
	"math"

	"cuesta/quiz/item"
)

// MostSpread is the bound on how far parallel forms may differ in difficulty:
// the sum of Item.Difficulty over the items of a form, of which each lies in
// [0, 1]. A quarter is what separates a bed of 10° from one of 32°, in one item
// of the form.
const MostSpread = 0.25

// ErrRoom is wrapped by a *RoomError.
var ErrRoom = errors.New("not enough different planes")

// RoomError says that not every student of a class can have a plane of their
// own for an item.
type RoomError struct {
	Item          int // from 1
	Kind          string
	Class         string
	Fit, Students int
}

// Error says how many students fit, and what would do.
func (e *RoomError) Error() string {
	class := "the class"
	if e.Class != "" {
		class = "class " + shortened(e.Class)
	}
	return fmt.Sprintf("%v: for item %d (%s) only %d of the %d students of %s can have a plane of their own within the tolerance; "+
		"widen its dips, narrow the tolerance, or give the roster a column class with smaller groups",
		ErrRoom, e.Item, e.Kind, e.Fit, e.Students, class)
}

// Unwrap is ErrRoom.
func (e *RoomError) Unwrap() error { return ErrRoom }

// Options is how a class is dealt.
type Options struct {
	Seed     uint64                // of all that is drawn
	Kept     []Form                // dealt before from the same blueprint and seed: they stay, and others keep apart from them
	Progress func(done, total int) // called now and then with the students dealt, or nil
}

// Dealing is what was dealt.
type Dealing struct {
	Forms  []Form  // one a student, in the order of the roster
	Spread float64 // greatest difference between two forms, of the sum of Item.Difficulty
	Shared []Shared
}

// Shared tells of an item with fewer answers than the class has students: some
// students share an answer, and as few as possible.
type Shared struct {
	Item     int // from 1
	Class    string
	Students int // that share their answer with another one
}

// ErrKept says that a form to be kept is not of the blueprint and the seed.
var ErrKept = errors.New("a form that was dealt before is not of this blueprint and seed")

// Deal deals a form to every student. The same blueprint, roster and seed give
// the same forms. A roster with another student in it gives others; who is to
// keep the form that was dealt before stands in Options.Kept.
//
// Within a class two students never share a plane within the tolerance for the
// same item (Item.Near); where there are too few planes the error is a
// *RoomError. Items that ask for a number or a choice may have fewer answers
// than a class has students; their answers are shared out evenly, and
// Dealing.Shared says so.
//
// Parallel forms are equally difficult: the sum of Item.Difficulty is the
// measure. The items of a class are drawn first, for each place on the form as
// many as there are students, then shared out so that who has a hard item in
// one place has an easier one in another; last, single items are drawn again
// until every form lies within half of MostSpread of what the blueprint gives
// on average. Where a blueprint leaves no room for that, as one with a single
// item may, Dealing.Spread is greater than MostSpread.
func Deal(b Blueprint, roster []Student, o Options) (Dealing, error) {
	b, err := b.settled()
	if err != nil {
		return Dealing{}, fmt.Errorf("%w: %w", ErrBlueprint, err)
	}
	if err := checkRoster(roster); err != nil {
		return Dealing{}, err
	}
	b.Seed = o.Seed
	d := dealer{blueprint: b, slots: b.Slots(), options: o, students: len(roster)}
	if err := d.keep(o.Kept); err != nil {
		return Dealing{}, err
	}
	if len(d.slots) == 0 || len(d.slots) > MostItems {
		return Dealing{}, fmt.Errorf("%w: a form has from 1 to %d items; this one has %d", ErrBlueprint, MostItems, len(d.slots))
	}
	return d.deal(roster)
}

func checkRoster(roster []Student) error {
	if len(roster) == 0 {
		return wrong(ErrRoster, "it names no student")
	}
	seen := make(map[string]bool, len(roster))
	for i, s := range roster {
		if s.ExtraTime == 0 {
			s.ExtraTime = 1
		}
		if err := s.check(); err != nil {
			return wrong(ErrRoster, "student %d: %v", i+1, err)
		}
		if seen[s.ID] {
			return wrong(ErrRoster, "the id %s stands there twice", shortened(s.ID))
		}
		seen[s.ID] = true
	}
	return nil
}

// dealer deals one blueprint.
type dealer struct {
	blueprint Blueprint
	slots     []int // the part of each place on the form
	options   Options
	kept      map[string]Form // by the id of the student
	students  int
	done      int
	target    float64 // sum of difficulties that the blueprint gives on average
}

// drawn is an item and the seed it came from.
type drawn struct {
	seed uint64
	item item.Item
}

func (d *dealer) deal(roster []Student) (Dealing, error) {
	var err error
	if d.target, err = d.average(); err != nil {
		return Dealing{}, err
	}
	out := Dealing{Forms: make([]Form, len(roster))}
	least, most := math.Inf(1), math.Inf(-1)
	for _, group := range classes(roster) {
		g, err := d.class(group.name, d.keptOf(roster, group))
		if err != nil {
			return Dealing{}, err
		}
		out.Shared = append(out.Shared, g.shared()...)
		for i, at := range group.members {
			if kept, ok := d.kept[roster[at].ID]; ok {
				out.Forms[at] = kept
			} else {
				out.Forms[at] = d.form(roster[at], g.items[i])
			}
			least, most = min(least, g.sum(i)), max(most, g.sum(i))
		}
	}
	out.Spread = most - least
	return out, distinct(out.Forms)
}

// keep takes in the forms that stay.
func (d *dealer) keep(forms []Form) error {
	d.kept = make(map[string]Form, len(forms))
	for _, f := range forms {
		same := f
		same.Blueprint = d.blueprint
		if f.Code != codeOf(same) {
			return fmt.Errorf("%w: that of %s", ErrKept, shortened(f.Student.ID))
		}
		d.kept[f.Student.ID] = f
	}
	return nil
}

// keptOf are the forms of a group that stay, nil for a student who has none.
func (d *dealer) keptOf(roster []Student, g group) []*Form {
	out := make([]*Form, len(g.members))
	for i, at := range g.members {
		if f, ok := d.kept[roster[at].ID]; ok {
			out[i] = &f
		}
	}
	return out
}

// form is the form of a student.
func (d *dealer) form(s Student, items []drawn) Form {
	s.ExtraTime = max(1, s.ExtraTime)
	f := Form{Blueprint: d.blueprint, Student: s, Items: make([]Dealt, len(items))}
	for i, it := range items {
		f.Items[i] = Dealt{Part: d.slots[i], Seed: it.seed}
	}
	f.Code = codeOf(f)
	return f
}

// distinct says whether every form has a code of its own.
func distinct(forms []Form) error {
	seen := make(map[string]bool, len(forms))
	for _, f := range forms {
		if seen[f.Code] {
			return fmt.Errorf("two forms would have the code %s; deal with another seed", f.Code)
		}
		seen[f.Code] = true
	}
	return nil
}

// group is a class of the roster.
type group struct {
	name    string
	members []int // places in the roster
}

// classes are the classes in the order in which the roster names them first.
func classes(roster []Student) []group {
	at := map[string]int{}
	var groups []group
	for i, s := range roster {
		g, ok := at[s.Class]
		if !ok {
			g = len(groups)
			at[s.Class] = g
			groups = append(groups, group{name: s.Class})
		}
		groups[g].members = append(groups[g].members, i)
	}
	return groups
}

// averageDraws is how many items of a part are drawn for its average.
const averageDraws = 256

// average is the sum of difficulties that the blueprint gives on average.
func (d *dealer) average() (float64, error) {
	sum := 0.0
	for i, p := range d.blueprint.Parts {
		seeds := seedsOf(d.options.Seed, "average", i)
		part := 0.0
		for range averageDraws {
			it, err := ItemOf(p, seeds.next())
			if err != nil {
				return 0, fmt.Errorf("%w: %w", ErrBlueprint, err)
			}
			part += it.Difficulty()
		}
		sum += float64(p.Count) * part / averageDraws
	}
	return sum, nil
}
