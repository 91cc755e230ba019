package form_test

import (
	"fmt"
	"strings"

	"cuesta/quiz/form"
)

func ExampleDeal() {
	b, err := form.ReadBlueprint(strings.NewReader(`title = "First quiz"
[[item]]
kind = "measure-slab"
count = 2
dips = [20, 60]
`))
	if err != nil {
		fmt.Println(err)
		return
	}
	students, err := form.ReadRoster(strings.NewReader("id,name,extra_time\ntf01,Ada Moss,\ntf02,Bram Fell,1.25\n"))
	if err != nil {
		fmt.Println(err)
		return
	}
	class, err := form.Deal(b, students, form.Options{Seed: 7})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range class.Forms {
		first, _ := f.Item(0)
		fmt.Printf("%s has %d items; the first is right as %s\n", f.Student.Name, len(f.Items), first.Key())
	}
	fmt.Println("equally difficult:", class.Spread <= form.MostSpread)
	// Output:
	// Ada Moss has 2 items; the first is right as 027/47
	// Bram Fell has 2 items; the first is right as 096/22
	// equally difficult: true
}
