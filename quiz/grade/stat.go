package grade

import (
	"math"
	"strconv"
)

// Stat is a figure that some classes do not have.
type Stat struct {
	Value     float64
	Undefined string // why there is none, in a few words; "" where there is one
}

// Defined says whether there is a figure.
func (s Stat) Defined() bool { return s.Undefined == "" }

// String is the figure to two decimals, or why there is none.
func (s Stat) String() string {
	if !s.Defined() {
		return "undefined (" + s.Undefined + ")"
	}
	return strconv.FormatFloat(s.Value+0, 'f', 2, 64)
}

func undefined(why string) Stat { return Stat{Undefined: why} }

// Mean is the mean; of nothing it is undefined.
func Mean(x []float64) Stat {
	if len(x) == 0 {
		return undefined("nobody answered")
	}
	sum := 0.0
	for _, v := range x {
		sum += v
	}
	return Stat{Value: sum / float64(len(x))}
}

// Deviation is the standard deviation of a whole class: the root of the mean
// square about the mean, with n below and not n − 1.
func Deviation(x []float64) Stat {
	if len(x) == 0 {
		return undefined("nobody answered")
	}
	return Stat{Value: math.Sqrt(variance(x))}
}

// Difficulty is the p of item analysis: the mean share of its points that an
// item earned, in [0, 1]; for items that are right or wrong the proportion who
// had it right. A low p is a hard item.
func Difficulty(shares []float64) Stat { return Mean(shares) }

// PointBiserial is the correlation of an item with a total, in [−1, 1]: how
// well the item tells strong students from weak ones. For items that are right
// or wrong it is the point-biserial coefficient
//
//	r = (M₁ − M₀)/σ · √(p(1 − p))
//
// with M₁ and M₀ the mean totals of those who had it right and wrong, σ the
// standard deviation of all totals with n below. With partial marks it is
// Pearson's r. It is undefined where all have the same mark or the same total.
// It panics where the two have different lengths.
func PointBiserial(item, total []float64) Stat {
	if len(item) != len(total) {
		panic("grade: an item and its totals must have the same length")
	}
	switch {
	case len(item) < 2:
		return undefined("fewer than two students")
	case constant(item):
		return undefined(sameMark(item[0]))
	case constant(total):
		return undefined("all totals are the same")
	}
	mi, mt := Mean(item).Value, Mean(total).Value
	sum := 0.0
	for i := range item {
		sum += (item[i] - mi) * (total[i] - mt)
	}
	r := sum / float64(len(item)) / math.Sqrt(variance(item)*variance(total))
	return Stat{Value: max(-1, min(1, r))}
}

func sameMark(m float64) string {
	switch m {
	case 0:
		return "all wrong"
	case 1:
		return "all right"
	}
	return "all have the same mark"
}

func constant(x []float64) bool {
	for _, v := range x {
		if v != x[0] {
			return false
		}
	}
	return true
}

func variance(x []float64) float64 {
	m, sum := Mean(x).Value, 0.0
	for _, v := range x {
		sum += (v - m) * (v - m)
	}
	return sum / float64(len(x))
}
