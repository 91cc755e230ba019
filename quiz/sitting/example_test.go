package sitting_test

import (
	"fmt"
	"strings"

	"cuesta/quiz/form"
	"cuesta/quiz/sitting"
)

func ExampleSitting_Do() {
	b, err := form.ReadBlueprint(strings.NewReader("title = \"First quiz\"\n[[item]]\nkind = \"read-dial\"\ncount = 2\nattempts = 2\n"))
	if err != nil {
		fmt.Println(err)
		return
	}
	class, err := form.Deal(b, []form.Student{{ID: "tf01", Name: "Ada Moss"}}, form.Options{Seed: 7})
	if err != nil {
		fmt.Println(err)
		return
	}
	s, err := sitting.New(class.Forms[0], "2026-09-14T09:00:00Z")
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, e := range []sitting.Entry{
		{Do: sitting.Answer, Item: 0, Text: "35"},
		{Do: sitting.Answer, Item: 0, Text: "036"},
		{Do: sitting.Answer, Item: 0, Text: "037"},
		{Do: sitting.Undo},
	} {
		if err := s.Do(e); err != nil {
			fmt.Println("not taken:", err)
		}
	}
	text, _ := s.Written(0)
	fmt.Println("stands:", text, "open:", len(s.Open()))
	// Output:
	// not taken: the item has been answered as often as it may be
	// stands: 35 open: 1
}
