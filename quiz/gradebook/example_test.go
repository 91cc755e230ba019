package gradebook_test

import (
	"fmt"
	"strings"

	"cuesta/quiz/form"
	"cuesta/quiz/grade"
	"cuesta/quiz/gradebook"
)

// A name that a spreadsheet would take for a formula is made harmless.
func ExampleWriteGrades() {
	var text strings.Builder
	err := gradebook.WriteGrades(&text, grade.Report{
		Results: []grade.Result{{ID: "tf01", Name: "=2+2", Points: 3.5, Of: 4, Passed: true, Items: []grade.ItemResult{{Points: 3.5, Answered: true}}}},
		Missing: []form.Student{{ID: "tf02", Name: "Bo, Reed"}},
	})
	if err != nil {
		fmt.Println(err)
	}
	fmt.Print(strings.ReplaceAll(text.String(), "\r\n", "\n"))
	// Output:
	// id,name,class,form,points,of,percent,passed,finished,answered,item_1,remarks
	// tf01,'=2+2,,,3.5,4,87.5,yes,,1 of 1,3.5,
	// tf02,"Bo, Reed",,,,,,,,,,no submission
}
