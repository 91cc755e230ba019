package gradebook

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"strconv"

	"cuesta/quiz/form"
	"cuesta/quiz/grade"
)

// WriteGrades writes the grades of a class as CSV after RFC 4180: lines ended
// by CR LF, one header, values quoted where they must be; UTF-8 without a mark at
// its head, which only some spreadsheets want and other programs take for a part
// of the first name. Students on the
// roster without a submission have a line without points. Texts that a
// spreadsheet would take for a formula are made harmless. The error is that of
// the writer.
func WriteGrades(to io.Writer, r grade.Report) error {
	w := csv.NewWriter(to)
	w.UseCRLF = true
	n := widest(r.Results)
	head := []string{"id", "name", "class", "form", "points", "of", "percent", "passed", "finished", "answered"}
	for i := range n {
		head = append(head, fmt.Sprintf("item_%d", i+1))
	}
	if err := w.Write(append(head, "remarks")); err != nil {
		return err
	}
	left := leftOut(r.Doubles)
	for _, s := range r.Results {
		if err := w.Write(gradeRow(s, r.Done(s), n, left[s.ID])); err != nil {
			return err
		}
	}
	for _, s := range r.Missing {
		if err := w.Write(missingRow(s, n)); err != nil {
			return err
		}
	}
	w.Flush()
	return w.Error()
}

func widest(rs []grade.Result) int {
	n := 0
	for _, r := range rs {
		n = max(n, len(r.Items))
	}
	return n
}

// leftOut says for each student which submissions do not count.
func leftOut(ds []grade.Double) map[string]string {
	left := map[string]string{}
	for _, d := range ds {
		if left[d.ID] != "" {
			left[d.ID] += ", "
		}
		left[d.ID] += d.Left
	}
	return left
}

func gradeRow(r grade.Result, done string, n int, left string) []string {
	row := []string{
		form.Harmless(r.ID), form.Harmless(r.Name), form.Harmless(r.Class), form.Harmless(r.Code),
		decimal(r.Points), decimal(r.Of), percent(r.Points, r.Of), yes(r.Passed), form.Harmless(done),
		fmt.Sprintf("%d of %d", r.Answered(), len(r.Items)),
	}
	for i := range n {
		cell := ""
		if i < len(r.Items) {
			cell = decimal(r.Items[i].Points)
		}
		row = append(row, cell)
	}
	remarks := grade.Remarked(r.Remarks)
	if left != "" {
		if remarks != "" {
			remarks += "; "
		}
		remarks += "handed in more than once: " + left + " does not count"
	}
	return append(row, form.Harmless(remarks))
}

func missingRow(s form.Student, n int) []string {
	row := make([]string, 11+n)
	row[0], row[1], row[2] = form.Harmless(s.ID), form.Harmless(s.Name), form.Harmless(s.Class)
	row[10+n] = "no submission"
	return row
}

// decimal is a number to the hundredth, without zeros that say nothing.
func decimal(x float64) string {
	return strconv.FormatFloat(math.Round(x*100)/100+0, 'f', -1, 64)
}

func percent(part, whole float64) string {
	if whole == 0 {
		return ""
	}
	return strconv.FormatFloat(math.Round(1000*part/whole)/10+0, 'f', -1, 64)
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}
