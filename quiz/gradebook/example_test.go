package gradebook_test

import (
	"fmt"
	"os"

	"cuesta/quiz/form"
	"cuesta/quiz/grade"
	"cuesta/quiz/gradebook"
)

// A name that a spreadsheet would take for a formula is made harmless.
func ExampleWriteGrades() {
	err := gradebook.WriteGrades(os.Stdout, grade.Report{
		Results: []grade.Result{{ID: "tf01", Name: "=2+2", Points: 3.5, Of: 4, Passed: true, Items: []grade.ItemResult{{Points: 3.5}}}},
		Missing: []form.Student{{ID: "tf02", Name: "Bo, Reed"}},
	})
	if err != nil {
		fmt.Println(err)
	}
	// Output:
	// id,name,class,form,points,of,percent,passed,finished,item_1,remarks
	// tf01,'=2+2,,,3.5,4,87.5,yes,,3.5,
	// tf02,"Bo, Reed",,,,,,,,,no submission
}
