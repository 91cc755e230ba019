package lab_test

import (
	"fmt"
	"os"
	"strings"

	"cuesta/quiz/form"
	"cuesta/quiz/lab"
)

// One keyboard serves a class: who, where, and what was read.
func Example() {
	stations, err := form.ReadStations(strings.NewReader(lab.Example()))
	if err != nil {
		fmt.Println(err)
		return
	}
	folder, err := os.MkdirTemp("", "lab")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer os.RemoveAll(folder)
	room, err := lab.NewRoom(stations, lab.Options{Folder: folder, Now: func() string { return "" }})
	if err != nil {
		fmt.Println(err)
		return
	}
	defer room.Close()
	if err := room.Call("a17"); err != nil {
		fmt.Println(err)
	}
	if err := room.GoTo("B"); err != nil {
		fmt.Println(err)
	}
	for _, text := range []string{"262/65", "N82E 63 NW"} {
		r, err := room.Note(text)
		if err != nil {
			fmt.Println(err)
		}
		fmt.Println(strings.Join(room.Told(r), "\n"))
	}
	// Output:
	// reading 1 of 5: "262/65", understood as strike 262°, dip 65° to the N.
	// Right: strike and dip are within what a careful reading allows.
	// reading 2 of 5: "N82E 63 NW", understood as strike 262° (written N82E), dip 63° to the N.
	// 2 readings: mean 262/64, scatter 1.0°, the farthest 1.0° from the mean. The mean counts, 262/64.
	// Right: strike and dip are within what a careful reading allows.
}
