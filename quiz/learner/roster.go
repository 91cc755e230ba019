package learner

import (
	"fmt"
	"strings"

	"cuesta/quiz/form"
)

// inClass is how many students of a made-up roster share a class.
const inClass = 30

// Roster is a made-up roster of n students in classes of thirty, with given
// names and family names of own in ever new pairs. It needs at least one
// student of its own.
func Roster(own []form.Student, n int) []form.Student {
	roster := make([]form.Student, n)
	for i := range roster {
		given, _, _ := strings.Cut(own[i%len(own)].Name, " ")
		_, family, _ := strings.Cut(own[(i+i/len(own))%len(own)].Name, " ")
		roster[i] = form.Student{
			ID:        fmt.Sprintf("s%05d", i+1),
			Name:      strings.TrimSpace(given + " " + family),
			ExtraTime: own[i%len(own)].ExtraTime,
			Class:     fmt.Sprintf("c%04d", i/inClass+1),
		}
	}
	return roster
}
