package gradebook

import (
	"bytes"
	"crypto/sha256"
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"strings"

	"cuesta/quiz/form"
	"cuesta/quiz/grade"
	"cuesta/quiz/item"
)

var (
	//go:embed style.css
	style string
	//go:embed feedback.html
	feedbackText string

	feedbackPage = template.Must(template.New("feedback").Parse(feedbackText))
)

// feedback is what the page of a student shows.
type feedback struct {
	Style               template.CSS
	Quiz, Place         string
	Name, ID, Code      string
	Points, Of, Percent string
	Pass, Tolerance     string
	Closing             string
	Items               []itemFeedback
}

type itemFeedback struct {
	Number             int
	Title, Prompt      string
	Points, Of         string
	State, Class       string
	Picture            template.HTML
	Answered           bool
	Answer, Understood string
	Key, Within        string
	Working            string // where the answer is not right
	Said               []string
	Hints              string
}

// FeedbackName is the file name of the page of a student.
func FeedbackName(id string) string { return form.FileName(id) + ".html" }

// WriteFeedback writes the page of a student: how each answer was understood,
// what was right, and what probably happened where it was not. What is
// remarked on recordings is for the instructor and does not stand here.
func WriteFeedback(to io.Writer, g grade.Graded) error {
	b, s := g.Form.Blueprint, g.Form.Student
	page := feedback{
		Style: template.CSS(style), Quiz: titled(b.Title), Place: b.Place,
		Name: named(s), ID: s.ID, Code: g.Form.Code,
		Points: decimal(g.Points), Of: decimal(g.Of), Percent: percent(g.Points, g.Of),
		Pass: passWords(g), Tolerance: toleranceWords(b), Closing: wordsFor(b).measured + outdoors,
	}
	for i, m := range g.Items {
		page.Items = append(page.Items, itemOf(i, m))
	}
	var text bytes.Buffer
	if err := feedbackPage.Execute(&text, page); err != nil {
		return err
	}
	_, err := to.Write(append(text.Bytes(), seal(text.Bytes())...))
	return err
}

// seal is the last line of a page: what the page above it adds up to.
func seal(page []byte) string {
	return fmt.Sprintf("<!-- cuesta feedback %x -->\n", sha256.Sum256(page))
}

// IsFeedback says whether a file is a page of feedback as WriteFeedback wrote it,
// to the last letter: one that somebody has changed is theirs.
func IsFeedback(text []byte) bool {
	i := bytes.LastIndex(text, []byte("<!-- cuesta feedback "))
	return i >= 0 && string(text[i:]) == seal(text[:i])
}

func titled(s string) string {
	if s == "" {
		return "Quiz"
	}
	return s
}

// named is the name, or the id of who has none.
func named(s form.Student) string {
	if s.Name == "" {
		return s.ID
	}
	return s.Name
}

func passWords(g grade.Graded) string {
	p := g.Form.Blueprint.PassShare
	if p <= 0 {
		return ""
	}
	mark := fmt.Sprintf("the pass mark is %s\u202F%%.", decimal(100*p))
	if g.Passed {
		return "Passed: " + mark
	}
	return "Not passed: " + mark
}

func toleranceWords(b form.Blueprint) string {
	t := b.Tolerance
	return fmt.Sprintf("A strike may be off by %s° of reading and by what %s° of levelling turns it, asin(tan\u00A0%[2]s°\u00A0/\u00A0tan\u00A0dip); a dip by %s°. %s %s",
		decimal(t.Reading.Degrees()), decimal(t.Levelling.Degrees()), decimal(t.Dip.Degrees()), wordsFor(b).tolerance, t.Shares())
}

func itemOf(i int, m grade.Marked) itemFeedback {
	f := itemFeedback{
		Number: i + 1, Title: m.Title, Prompt: m.Item.Prompt(), Points: decimal(m.Points), Of: decimal(m.Of),
		Picture: picture(i, m.Item), Answered: m.Answered, Answer: m.Answer, Key: m.Item.Key(), Hints: hintWords(m),
	}
	if !m.Mark.Refused && strings.TrimRight(m.Mark.Understood, "°%") != strings.TrimSpace(m.Answer) {
		f.Understood = m.Mark.Understood
	}
	f.Within = item.Within(m.Item)
	if w, ok := m.Item.(item.Worked); ok && !m.Mark.Right {
		f.Working = w.Working()
	}
	f.State, f.Class = state(m)
	if st, ok := m.Item.(item.AtStation); ok && st.Station().Mean && m.Given > 1 {
		f.Said = []string{fmt.Sprintf("This is the mean of your %d readings.", m.Given)}
	}
	if m.Mark.Said != f.State+"." && m.Mark.Said != "" {
		f.Said = append(f.Said, strings.Split(m.Mark.Said, "\n")...)
	}
	if v := m.Mark.Verdict; v != nil && m.Plane != nil && v.OtherSide() {
		f.Said = append(f.Said, fmt.Sprintf("The answer dips to the %s, the %s to the %s.",
			m.Plane.Answer.DipDirection().Letters(), surfaceOf(m.Item).Noun(), m.Plane.Truth.DipDirection().Letters()))
	}
	return f
}

// surfaceOf is what is measured: bedding, but for a station of another surface.
func surfaceOf(it item.Item) item.Surface {
	if st, ok := it.(item.AtStation); ok {
		return st.Station().Surface
	}
	return item.Bedding
}

// state is the outcome in a word or two, and the class of the style.
func state(m grade.Marked) (said, class string) {
	switch {
	case !m.Answered:
		return "Not answered", "open"
	case m.Mark.Refused:
		return "Could not be read", "wrong"
	case m.Mark.Right:
		return "Right", "right"
	case m.Mark.Share > 0:
		return "Partly right", "partly"
	}
	return "Not right", "wrong"
}

func hintWords(m grade.Marked) string {
	took := "took nothing off"
	if m.Cost > 0 {
		took = "took off " + form.Points(m.Cost)
	}
	switch {
	case m.Hints == 0:
		return ""
	case m.Hints == 1:
		return "One hint " + took + "."
	}
	return fmt.Sprintf("%d hints %s.", m.Hints, took)
}

func noun(n string) string {
	if n == "1" {
		return "point"
	}
	return "points"
}

// Noun is what the points to be had are called: point, points.
func (f itemFeedback) Noun() string { return noun(f.Of) }

// Noun is likewise of the whole.
func (f feedback) Noun() string { return noun(f.Of) }
