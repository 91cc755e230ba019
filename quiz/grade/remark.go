package grade

import (
	"fmt"
	"strings"
)

// Remark is something the instructor should know about a submission. It never
// changes a mark.
type Remark struct {
	Kind   RemarkKind
	Item   int    // from 1; 0 where it is about the whole
	Detail string // whole words to follow the kind, or ""
}

// RemarkKind is what a remark is about.
type RemarkKind uint8

// The kinds of remark.
const (
	NoRecording        RemarkKind = iota // an answer at the bench without a recording
	RecordingUnread                      // the recording is damaged, or too long to be run again
	RecordingElsewhere                   // the recording is of another bench than that of the form
	RecordingDiffers                     // run again, it does not go as it says
	NoReading                            // the recording takes no reading for a part of the answer
	ReadingDiffers                       // no reading in the recording leads to the answer
	OverTime                             // more time between start and finish than allowed
	PastDue                              // finished after the quiz was due
	NotOnRoster                          // a student whom the roster does not name
	RosterDiffers                        // name or extra time are not those of the roster
	NotDealt                             // the key holds no such form for the student
	OtherQuiz                            // another quiz than most of the class, or the one given, was sat
	Remarks            = iota            // the number of kinds
)

var remarkWords = [Remarks]string{
	NoRecording:        "there is no recording of the bench",
	RecordingUnread:    "the recording cannot be run again",
	RecordingElsewhere: "the recording is of another bench",
	RecordingDiffers:   "the recording does not go as it says",
	NoReading:          "the recording takes no reading",
	ReadingDiffers:     "no reading in the recording leads to the answer",
	OverTime:           "took longer than allowed",
	PastDue:            "finished after the quiz was due",
	NotOnRoster:        "not on the roster",
	RosterDiffers:      "the form differs from the roster",
	NotDealt:           "the key holds no such form: it was changed, or is someone else's",
	OtherQuiz:          "another quiz than the rest of the class",
}

// String is the kind in a few words.
func (k RemarkKind) String() string {
	if int(k) >= Remarks {
		return fmt.Sprintf("remark %d", uint8(k))
	}
	return remarkWords[k]
}

// String is the remark in a sentence without its full stop, such as "item 3:
// the recording takes no reading for the dip".
func (r Remark) String() string {
	s := r.Kind.String()
	if r.Detail != "" {
		s += " " + r.Detail
	}
	if r.Item > 0 {
		return fmt.Sprintf("item %d: %s", r.Item, s)
	}
	return s
}

// Remarked joins remarks to one line; those that say the same of several items
// are said once: "items 1, 4: there is no recording of the bench".
func Remarked(rs []Remark) string {
	var out []string
	done := make([]bool, len(rs))
	for i, r := range rs {
		if done[i] {
			continue
		}
		same := []string{fmt.Sprint(r.Item)}
		for j := i + 1; j < len(rs); j++ {
			if q := rs[j]; r.Item > 0 && q.Item > 0 && q.Kind == r.Kind && q.Detail == r.Detail {
				done[j] = true
				same = append(same, fmt.Sprint(q.Item))
			}
		}
		if len(same) == 1 {
			out = append(out, r.String())
			continue
		}
		r.Item = 0
		out = append(out, "items "+strings.Join(same, ", ")+": "+r.String())
	}
	return strings.Join(out, "; ")
}
