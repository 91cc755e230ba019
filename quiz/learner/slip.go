package learner

import (
	"fmt"
	"math"
	"strconv"

	"cuesta/orient"
	"cuesta/quiz/item"
	"cuesta/quiz/mistake"
)

// wrong is the answer of someone who makes a mistake, before any scatter: a
// number, or a plane in the words of the key.
type wrong struct {
	number float64
	plane  string
}

// slip is the answer of someone who makes the mistake of the learner on an
// item without a bench; false where it cannot be made there.
func (d *desk) slip() (string, bool) {
	if d.Manner != Mistaken {
		return "", false
	}
	w, ok := wrongAt(d.it, d.Mistake)
	switch {
	case !ok:
		return "", false
	case w.plane != "":
		return d.plane(w.plane), true
	}
	return d.number(d.it.Ask(), w.number), true
}

// wrongAt is the answer that a mistake makes of an item without a bench, where
// it can be made there. Choices have no answers of their own.
func wrongAt(it item.Item, k mistake.Kind) (wrong, bool) {
	a := it.Ask()
	if a.Kind == item.AskPlane || a.Kind == item.AskSymbol {
		text, ok := wrongPlane(it.Key(), k)
		return wrong{plane: text}, ok && text != it.Key() && canTurn(it, k)
	}
	if a.Kind != item.AskNumber {
		return wrong{}, false
	}
	var x float64
	var ok bool
	switch f := it.Figure().(type) {
	case item.DialFigure:
		x, ok = wrongDial(a.Value, f, k)
	case item.ArcFigure:
		x, ok = wrongArc(a, f, k)
	case item.LevelFigure, item.MapFigure, item.BlockFigure, item.NetFigure, item.TableFigure, nil:
		x, ok = wrongSum(it, k)
	}
	return wrong{number: x}, ok
}

// canTurn says whether a plane on paper invites the mistake: the dip of a
// symbol stands there as a number, and readings that are averaged have their
// side and their numbers already.
func canTurn(it item.Item, k mistake.Kind) bool {
	switch it.Figure().(type) {
	case item.MapFigure:
		return k != mistake.Complement
	case item.TableFigure:
		return k == mistake.OtherEnd
	case item.DialFigure, item.ArcFigure, item.LevelFigure, item.BlockFigure, item.NetFigure, nil:
	}
	return true
}

// wrongDial is what is read off a dial instead of the azimuth asked for. Who
// is asked for the rear end and takes the number at the needle gives the other
// end.
func wrongDial(right float64, f item.DialFigure, k mistake.Kind) (float64, bool) {
	rear := math.Abs(math.Remainder(right-(f.Ring-f.Needle).Degrees(), 360)) > 90
	switch {
	case k == mistake.SouthEnd && !rear, k == mistake.OtherEnd && rear:
		return right + 180, true
	case k == mistake.EastWest:
		return 360 - right, true
	}
	return 0, false
}

// wrongArc is what is read off the arc instead of the angle or the slope.
func wrongArc(a item.Ask, f item.ArcFigure, k mistake.Kind) (float64, bool) {
	switch {
	case k == mistake.PercentScale && a.Unit == "%":
		return f.Arm.Degrees(), true
	case k == mistake.PercentScale:
		return 100 * f.Arm.Tan(), true
	case k == mistake.Complement && a.Unit != "%":
		return 90 - f.Arm.Degrees(), true
	}
	return 0, false
}

// wrongPlane is the key with a mistake in it. A quadrant bearing rests on its
// letters, which only their own mistake can get wrong.
func wrongPlane(key string, k mistake.Kind) (string, bool) {
	var azimuth, dip int
	if n, _ := fmt.Sscanf(key, "%d/%d", &azimuth, &dip); n == 2 {
		azimuth, ok := wrongAzimuth(azimuth, k)
		if k == mistake.Complement {
			dip, ok = 90-dip, true
		}
		return fmt.Sprintf("%03d/%02d", azimuth, dip), ok
	}
	e, err := orient.Parse(key, orient.Quadrant)
	if err != nil || !e.HasStrike {
		return "", false
	}
	p := e.Plane
	switch k {
	case mistake.WrongLetters:
		p.Strike = p.Strike.Opposite()
	case mistake.Complement:
		p.Dip = orient.Right - p.Dip
	default:
		n, ok := wrongAzimuth(whole(p.Strike.Angle()), k)
		if !ok || k == mistake.OtherEnd {
			return "", false
		}
		p.Strike = orient.AzimuthOf(degrees(n))
	}
	return orient.Format(p, orient.Quadrant), true
}

// wrongAzimuth is an azimuth with a mistake in it.
func wrongAzimuth(n int, k mistake.Kind) (int, bool) {
	switch k {
	case mistake.OtherEnd:
		return (n + 180) % 360, true
	case mistake.DirectionForStrike:
		return (n + 90) % 360, true
	case mistake.EastWest:
		return (360 - n) % 360, true
	}
	return n, false
}

// Rivals are the mistakes that lead to the answer of k on an item without a
// bench; ok is false where k cannot be made there, or leads to a right answer.
func Rivals(it item.Item, k mistake.Kind) (rivals []mistake.Kind, ok bool) {
	w, ok := wrongAt(it, k)
	if !ok || it.Mark(w.text(it.Ask()), item.Evidence{}).Right {
		return nil, false
	}
	for o := range mistake.Kind(mistake.Kinds) {
		if v, can := wrongAt(it, o); can && o != k && w.like(v, it.Ask()) {
			rivals = append(rivals, o)
		}
	}
	return rivals, true
}

// text is the wrong answer as it would be written.
func (w wrong) text(a item.Ask) string {
	if w.plane != "" {
		return w.plane
	}
	return strconv.FormatFloat(onCircle(a, w.number), 'f', -1, 64)
}

// like says that two wrong answers cannot be told from each other.
func (w wrong) like(v wrong, a item.Ask) bool {
	off := math.Abs(w.number - v.number)
	if a.Wraps {
		off = math.Abs(math.Remainder(w.number-v.number, 360))
	}
	return w.plane == v.plane && off <= a.Tolerance
}

// onCircle takes an azimuth to [0, 360) and leaves other numbers alone.
func onCircle(a item.Ask, x float64) float64 {
	if a.Wraps {
		return orient.AzimuthOf(orient.Angle(x) * orient.Degree).Degrees()
	}
	return x
}
