package grade

// Reliability is how far a quiz agrees with itself: one row a student, one
// column an item. For marks of 0 and 1 it is KR-20,
//
//	k/(k − 1) · (1 − Σ p(1 − p)/σ²)
//
// with k items, p their difficulties and σ² the variance of the totals with n
// below (G. F. Kuder & M. W. Richardson 1937, Psychometrika 2:151–160, formula
// 20, from memory). With partial marks the variance of each item takes the
// place of p(1 − p), and it is coefficient alpha. It is at most 1 and may be
// negative; it is undefined with fewer than two items or students and where
// all totals are the same. It panics where rows differ in length.
func Reliability(rows [][]float64) Stat {
	if len(rows) < 2 {
		return undefined("fewer than two students")
	}
	k := len(rows[0])
	if k < 2 {
		return undefined("fewer than two items")
	}
	totals := make([]float64, len(rows))
	items := make([][]float64, k)
	for i, row := range rows {
		if len(row) != k {
			panic("grade: all students must have the same number of items")
		}
		for j, v := range row {
			totals[i] += v
			items[j] = append(items[j], v)
		}
	}
	if constant(totals) {
		return undefined("all totals are the same")
	}
	within := 0.0
	for _, col := range items {
		within += variance(col)
	}
	n := float64(k)
	return Stat{Value: n / (n - 1) * (1 - within/variance(totals))}
}
