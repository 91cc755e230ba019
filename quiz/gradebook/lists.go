package gradebook

import (
	"fmt"
	"slices"
	"strings"

	"cuesta/quiz/grade"
)

// list is a table of what an instructor should look at.
type list struct {
	Title, Note string
	Head        []string
	Rows        [][]string
	More        string
	Names       string // in place of rows
}

// longestList is how many rows a list of the report has.
const longestList = 60

// lists are those that have rows.
func lists(r grade.Report) []list {
	var out []list
	for _, l := range []list{refusedList(r), openList(r), doubleList(r), lateList(r), rosterList(r), recordingList(r), missingList(r)} {
		if n := len(l.Rows); n > longestList {
			l.Rows, l.More = l.Rows[:longestList], fmt.Sprintf("And %d more; the table of grades has them all.", n-longestList)
		}
		if len(l.Rows) > 0 || l.Names != "" {
			out = append(out, l)
		}
	}
	return out
}

func refusedList(r grade.Report) list {
	l := list{
		Title: "Refused", Head: []string{"File", "Reason"},
		Note: "Nothing in these files was marked. Ask for a damaged file again.",
	}
	for _, f := range r.Refused {
		l.Rows = append(l.Rows, []string{f.Source, f.Reason})
	}
	return l
}

func missingList(r grade.Report) list {
	l := list{Title: "Missing", Note: "On the roster, but without a submission that could be read."}
	var names []string
	for _, s := range r.Missing[:min(longestList, len(r.Missing))] {
		names = append(names, strings.TrimSpace(s.Name+" ("+s.ID+")"))
	}
	l.Names = strings.Join(names, ", ")
	if more := len(r.Missing) - len(names); more > 0 {
		l.Names += fmt.Sprintf(", and %d more; the table of grades has them all", more)
	}
	return l
}

// openList is of those with stations of a lab still to take.
func openList(r grade.Report) list {
	l := list{Title: "Not through yet", Head: []string{"Id", "Name", "Stations"}, Note: "Stations without a reading earn nothing."}
	for _, s := range r.Results {
		if wordsFor(r.Blueprint) == labWords && s.Answered() < len(s.Items) {
			l.Rows = append(l.Rows, []string{s.ID, s.Name, fmt.Sprintf("%d of %d", s.Answered(), len(s.Items))})
		}
	}
	return l
}

func doubleList(r grade.Report) list {
	l := list{
		Title: "Handed in more than once", Head: []string{"Id", "Name", "Counts", "Left out"},
		Note: "The submission finished last counts.",
	}
	for _, d := range r.Doubles {
		l.Rows = append(l.Rows, []string{d.ID, d.Name, d.Counts, d.Left})
	}
	return l
}

func lateList(r grade.Report) list {
	return remarkList(r, list{Title: "Late", Note: "By the clock of the machine that was used; no points were taken off."},
		grade.OverTime, grade.PastDue)
}

func rosterList(r grade.Report) list {
	return remarkList(r, list{Title: "Not as on the roster or in the key", Note: "Marked all the same; those who sat another quiz are left out of the figures."},
		grade.NotOnRoster, grade.RosterDiffers, grade.NotDealt, grade.OtherQuiz)
}

func recordingList(r grade.Report) list {
	return remarkList(r, list{Title: "Recordings", Note: "What the recordings of the bench do not bear out. It changed no mark."},
		grade.NoRecording, grade.RecordingUnread, grade.RecordingElsewhere, grade.RecordingDiffers, grade.NoReading, grade.ReadingDiffers)
}

// remarkList adds a row for each student who has a remark of the kinds.
func remarkList(r grade.Report, l list, kinds ...grade.RemarkKind) list {
	l.Head = []string{"Id", "Name", "Remarks"}
	for _, s := range r.Results {
		var of []grade.Remark
		for _, m := range s.Remarks {
			if slices.Contains(kinds, m.Kind) {
				of = append(of, m)
			}
		}
		if len(of) > 0 {
			l.Rows = append(l.Rows, []string{s.ID, s.Name, grade.Remarked(of)})
		}
	}
	return l
}

// Remarked is how many results have a remark.
func Remarked(r grade.Report) int {
	n := 0
	for _, s := range r.Results {
		if len(s.Remarks) > 0 {
			n++
		}
	}
	return n
}
