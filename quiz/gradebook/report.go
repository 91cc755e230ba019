package gradebook

import (
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"strings"

	"cuesta/quiz/grade"
	"cuesta/scenes/draw/svg"
)

//go:embed report.html
var reportText string

var reportPage = template.Must(template.New("report").Parse(reportText))

// page is what the report shows.
type page struct {
	Style       template.CSS
	Quiz, Place string
	Summary     []summary
	Reliability string
	Lists       []list
	Figures     []shown
	Students    []studentRow
	Omitted     string
	Nothing     string // where there is nothing to look at
	Closing     string
}

type summary struct {
	Name, Value string
	Small       bool
}

type shown struct {
	Figure
	Table *table
}

// Picture is the figure as a part of a page.
func (s shown) Picture() template.HTML {
	return template.HTML(svg.Element(s.List, svg.Options{Title: s.Title, Desc: s.Alt, Prefix: s.Name + "-"}))
}

type studentRow struct {
	ID, Name, Page          string
	Points, Percent, Passed string
	Remarks                 string
}

// mostRows is how many students the report lists; a larger class is in the
// table of grades.
const mostRows = 500

// WriteReport writes the report on a class as a page. The names of students
// link to their pages of feedback in the folder given, relative to the report;
// with "" they do not.
func WriteReport(to io.Writer, r grade.Report, feedback string) error {
	return reportPage.Execute(to, pageOf(r, feedback))
}

// pageOf gathers what the report shows.
func pageOf(r grade.Report, feedback string) page {
	p := page{
		Style: template.CSS(style), Quiz: titled(r.Blueprint.Title), Place: r.Blueprint.Place,
		Summary: summaryOf(r), Reliability: reliabilityWords(r.Analysis), Lists: lists(r), Nothing: wordsFor(r.Blueprint).nothing, Closing: wordsFor(r.Blueprint).closing,
	}
	for _, f := range Figures(r) {
		p.Figures = append(p.Figures, shown{f, tableOf(f, r)})
	}
	if len(r.Results) > mostRows {
		p.Omitted = fmt.Sprintf("The class has %d submissions; the table of grades lists every student.", len(r.Results))
	} else {
		p.Students = studentRows(r, feedback)
	}
	return p
}

func studentRows(r grade.Report, folder string) []studentRow {
	var rows []studentRow
	for _, s := range r.Results {
		row := studentRow{
			ID: s.ID, Name: s.Name, Points: decimal(s.Points) + " of " + decimal(s.Of), Percent: percent(s.Points, s.Of),
			Passed: yes(s.Passed), Remarks: grade.Remarked(s.Remarks),
		}
		if folder != "" {
			row.Page = folder + "/" + FeedbackName(s.ID)
		}
		rows = append(rows, row)
	}
	return rows
}

func summaryOf(r grade.Report) []summary {
	a := r.Analysis
	out := []summary{{"Submissions marked", fmt.Sprint(len(r.Results)), false}}
	if n := len(r.Results) + len(r.Missing); len(r.Missing) > 0 {
		out[0].Value += fmt.Sprintf(" of %d", n)
	}
	if a.Students == 0 {
		return out
	}
	out = append(out, summary{"Mean score", percentOf(a.Mean), false}, summary{"Standard deviation", percentOf(a.Deviation), false})
	if p := r.Blueprint.PassShare; p > 0 {
		out = append(out, summary{fmt.Sprintf("Passed, from %s\u202F%%", decimal(100*p)), fmt.Sprintf("%d of %d", a.Passed, a.Students), false})
	}
	return append(out,
		summary{"KR-20", signed(a.KR20), !a.KR20.Defined()}, summary{"Alpha", signed(a.Alpha), !a.Alpha.Defined()})
}

func percentOf(s grade.Stat) string {
	if !s.Defined() {
		return s.String()
	}
	return fmt.Sprintf("%.1f\u202F%%", 100*s.Value)
}

// reliabilityWords says what the two figures mean and what they do not.
func reliabilityWords(a grade.Analysis) string {
	const meaning = "KR-20 says how far the items agree with one another, counted as right or wrong; alpha does the same with partial marks. " +
		"Both grow with the number of items, and a quiz on many skills has lower ones than a drill on a single skill."
	if a.Students < 30 {
		return meaning + fmt.Sprintf(" With %d students every figure here is rough.", a.Students)
	}
	return meaning
}

func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
