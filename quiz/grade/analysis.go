package grade

import (
	"cmp"
	"slices"

	"cuesta/quiz/form"
	"cuesta/quiz/item"
	"cuesta/quiz/mistake"
)

// Analysis is how a class did, and how well each item did its work. Whoever
// left an item out has no points for it and counts as wrong (common practice).
type Analysis struct {
	Students  int
	Passed    int
	Shares    []float64 // of all points, one a student
	Mean      Stat      // of the shares
	Deviation Stat
	KR20      Stat // items as right or wrong
	Alpha     Stat // with partial marks
	Items     []ItemAnalysis
	Mistakes  []MistakeCount // the most frequent first
	Planes    []PlaneResult  // measured at the bench or at stations
}

// ItemAnalysis is one item over the class.
type ItemAnalysis struct {
	Number     int // from 1
	Kind       string
	Title      string
	Answered   int
	Difficulty Stat // mean share of the points, hints not counted
	Right      Stat // proportion of the class that had it wholly right
	Biserial   Stat // right or wrong against the total of points
	Rest       Stat // likewise, against the total without this item
}

// MistakeCount is how often a mistake was named.
type MistakeCount struct {
	Kind   mistake.Kind
	Alone  int // as the one explanation
	Shared int // beside others that explain the answer as well
}

// Analyse looks at results of one quiz.
func Analyse(b form.Blueprint, rs []Result) Analysis {
	a := Analysis{Students: len(rs)}
	rights, shares := make([][]float64, len(rs)), make([][]float64, len(rs))
	var totals []float64
	for i, r := range rs {
		if r.Passed {
			a.Passed++
		}
		totals = append(totals, r.Points)
		a.Shares = append(a.Shares, ratio(r.Points, r.Of))
		for _, it := range r.Items {
			rights[i] = append(rights[i], oneOrNone(it.Right))
			shares[i] = append(shares[i], it.Share)
			if it.Plane != nil {
				a.Planes = append(a.Planes, *it.Plane)
			}
		}
	}
	a.Mean, a.Deviation = Mean(a.Shares), Deviation(a.Shares)
	a.KR20, a.Alpha = Reliability(rights), Reliability(shares)
	for j, part := range b.Slots() {
		a.Items = append(a.Items, itemOver(b.Parts[part], j, rs, totals))
	}
	a.Mistakes = mistakesIn(rs)
	return a
}

func itemOver(p form.Part, j int, rs []Result, totals []float64) ItemAnalysis {
	it := ItemAnalysis{Number: j + 1, Kind: p.Kind, Title: p.Kind}
	if k, ok := item.KindNamed(p.Kind); ok {
		it.Title = k.Title()
	}
	if s := p.Spec.Station; s.Name != "" {
		it.Title = "Station " + s.Name
	}
	var shares, right, rest []float64
	for i, r := range rs {
		one := r.Items[j]
		shares, right = append(shares, one.Share), append(right, oneOrNone(one.Right))
		rest = append(rest, totals[i]-one.Points)
		if one.Answered {
			it.Answered++
		}
	}
	it.Difficulty, it.Right = Difficulty(shares), Difficulty(right)
	it.Biserial, it.Rest = PointBiserial(right, totals), PointBiserial(right, rest)
	return it
}

func mistakesIn(rs []Result) []MistakeCount {
	var counts [mistake.Kinds]MistakeCount
	for _, r := range rs {
		for _, it := range r.Items {
			for _, m := range it.Mistakes {
				if m.Alone {
					counts[m.Kind].Alone++
				} else {
					counts[m.Kind].Shared++
				}
			}
		}
	}
	var out []MistakeCount
	for k, c := range counts {
		if c.Kind = mistake.Kind(k); c.Alone+c.Shared > 0 {
			out = append(out, c)
		}
	}
	slices.SortStableFunc(out, func(x, y MistakeCount) int {
		return cmp.Or(cmp.Compare(y.Alone+y.Shared, x.Alone+x.Shared), cmp.Compare(y.Alone, x.Alone))
	})
	return out
}

func oneOrNone(right bool) float64 {
	if right {
		return 1
	}
	return 0
}

func ratio(a, b float64) float64 {
	if b == 0 {
		return 0
	}
	return a / b
}
