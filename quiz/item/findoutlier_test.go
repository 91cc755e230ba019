package item

import (
	"testing"

	"cuesta/orient"
	"cuesta/orient/sphere"
	"cuesta/quiz/mistake"
)

func TestFindOutlier(t *testing.T) {
	planes := []orient.Plane{plane(35, 30), plane(37, 31), plane(215, 30), plane(34, 29), plane(36, 30)}
	m := planeSlip{plane(215, 30), catalogued(mistake.OtherEnd, orient.AzimuthDip)}
	it := newOutlier(plane(35, 30), planes, 2, m, orient.AzimuthDip)
	holdTo(t, it, right("reading 3"), right("3"), right("c"), wrong("reading 1"), wrong("a"), wrong("5"))
}

// The outlier lies further from the mean of the others than any of them, by
// far.
func TestTheOutlierStandsOut(t *testing.T) {
	for n := range orient.Notation(4) {
		seen(t, findOutlier{}, Spec{Notation: n}, 400, map[string]func(Item) bool{"stands out": func(it Item) bool {
			o := it.(outlierItem)
			own, others := spread(t, o, readInField(n))
			if own < 2*others || own < deg(8) {
				t.Errorf("%v: the outlier lies %.1f° off, the others up to %.1f°: %v", n, own.Degrees(), others.Degrees(), o.readings)
			}
			return true
		}})
	}
}

// spread is how far the outlier and the furthest of the others lie from the
// mean of the others.
func spread(t *testing.T, it outlierItem, n orient.Notation) (own, others orient.Angle) {
	var planes []orient.Plane
	for _, text := range it.readings {
		e, err := orient.Parse(text, n)
		if err != nil {
			t.Fatalf("%s: %v", text, err)
		}
		planes = append(planes, e.Plane)
	}
	rest := append(append([]orient.Plane(nil), planes[:it.right]...), planes[it.right+1:]...)
	mean, _ := sphere.MeanPlane(rest)
	for _, p := range rest {
		others = max(others, mean.AngleTo(p))
	}
	return mean.AngleTo(planes[it.right]), others
}

func TestOutliersOfEveryPlaceAreDealt(t *testing.T) {
	properties := map[string]func(Item) bool{}
	for i := range 6 {
		properties[numbered(i)] = func(it Item) bool { return it.Key() == numbered(i) }
	}
	seen(t, findOutlier{}, Spec{}, 1000, properties)
}
