package paper

import (
	"fmt"
	"strconv"

	"cuesta/quiz/form"
	"cuesta/scenes/draw"
	"cuesta/scenes/draw/pdf"
)

// mostColumns is how many questions a table of the marking sheet holds.
const mostColumns = 10

// Marking prints a sheet on which the points of every form are written down:
// a row for each form, a column for each question.
func Marking(forms []form.Form, s Sheet) ([]byte, error) {
	size := settingOf(s)
	d := pdf.New(size.options(forms, "Marking sheet"))
	out := section{left: "Marking sheet", middle: "Keep apart from the forms"}
	out.blocks = append(out.blocks, size.title(forms, "Marking sheet", "Write the points of each question into its column. The number below that of the question is the most there is. "+sharesOf(forms)))
	var sheets []sheetForm
	for _, f := range forms {
		q, err := sheetFormOf(f)
		if err != nil {
			return nil, err
		}
		sheets = append(sheets, q)
	}
	if len(sheets) > 0 {
		questions := sheets[0].questions
		for from := 0; from < len(questions); from += mostColumns {
			to := min(from+mostColumns, len(questions))
			out.blocks = append(out.blocks, size.markingTables(sheets, questions[from:to], to == len(questions))...)
		}
	}
	out.paint(d, size)
	return d.Bytes()
}

// markingTables are the tables for some of the questions, with the sum of all
// in the last.
func (s setting) markingTables(sheets []sheetForm, questions []question, last bool) []block {
	sum := "Sum"
	if last {
		sum = "Sum\n" + number(sheets[0].total())
	}
	cols := markingColumns(questions, sum)
	var rows [][]string
	for _, q := range sheets {
		row := make([]string, len(cols))
		row[0], row[1] = Owner(q.form.Student), q.form.Code
		rows = append(rows, row)
	}
	const heading = 96 // of the sheet, above the first table
	var out []block
	for _, t := range gridTables(cols, rows, s.column(), 22, s.room()-heading) {
		out = append(out, block{height: t.height, nodes: t.nodes})
	}
	return out
}

// markingColumns are name and code, a column for each question, and their sum.
func markingColumns(questions []question, sum string) []column {
	const name, code, total, widest = .215, .178, .095, .07
	one := min(widest, (1-name-code-total)/float64(len(questions)))
	cols := []column{{head: "Name", width: 1 - code - total - one*float64(len(questions))}, {head: "Form", width: code}}
	for _, q := range questions {
		cols = append(cols, column{head: fmt.Sprintf("%d\n%s", q.number, number(q.points)), width: one, align: draw.AlignCentre})
	}
	return append(cols, column{head: sum, width: total, align: draw.AlignCentre})
}

// versionID begins the id of a form that belongs to no student.
const versionID = "version "

// Versions are n students that stand for n versions of a form, which anybody
// may be handed. Their names are left to be written.
func Versions(n int) []form.Student {
	out := make([]form.Student, n)
	for i := range out {
		out[i] = form.Student{ID: versionID + strconv.Itoa(i+1), ExtraTime: 1}
	}
	return out
}

func isVersion(s form.Student) bool {
	return s.Name == "" && len(s.ID) > len(versionID) && s.ID[:len(versionID)] == versionID
}
