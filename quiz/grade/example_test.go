package grade_test

import (
	"fmt"

	"cuesta/quiz/grade"
)

// Five students; those with high totals had the item right.
func ExamplePointBiserial() {
	item := []float64{1, 1, 1, 0, 0}
	total := []float64{9, 8, 7, 6, 3}
	fmt.Println(grade.PointBiserial(item, total))
	fmt.Println(grade.PointBiserial([]float64{1, 1, 1, 1, 1}, total))
	// Output:
	// 0.83
	// undefined (all right)
}

// Four students and three items, each right or wrong.
func ExampleReliability() {
	fmt.Println(grade.Reliability([][]float64{{1, 1, 1}, {1, 1, 0}, {1, 0, 0}, {0, 0, 0}}))
	// Output: 0.75
}
