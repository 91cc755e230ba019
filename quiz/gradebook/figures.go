package gradebook

import (
	"fmt"
	"strings"

	"cuesta/quiz/grade"
	"cuesta/quiz/mistake"
	"cuesta/scenes/draw"
)

// Figure is a figure of the report: what it is called, what it shows in words,
// and how to read it.
type Figure struct {
	Name    string // for file names and ids
	Title   string
	Alt     string
	Caption string
	List    *draw.List
}

// Figures are the figures of a report, in order. Those for which there is
// nothing to show are left out.
func Figures(r grade.Report) []Figure {
	a := r.Analysis
	if a.Students == 0 {
		return nil
	}
	fs := []Figure{scoresFigure(r), itemsFigure(a)}
	if len(a.Mistakes) > 0 {
		fs = append(fs, mistakesFigure(a))
	}
	if len(a.Planes) > 0 {
		fs = append(fs, errorsFigure(r), polesFigure(a))
	}
	return fs
}

const figureWidth = 840

// scoresFigure is the histogram of the shares.
func scoresFigure(r grade.Report) Figure {
	const bins, left, right, top, height = 10, 56, 16, 44, 180
	counts := scoreBins(r.Analysis.Shares, bins)
	most := 1
	for _, n := range counts {
		most = max(most, n)
	}
	s := newSheet(figureWidth, top+height+62)
	w := (s.W - left - right) / bins
	at := func(share float64) float64 { return left + share*w*bins }
	bar := func(n int) float64 { return height * float64(n) / float64(most) }
	for i, n := range counts {
		s.box(left+float64(i)*w+3, top+height-bar(n), w-6, bar(n), s.t.Water)
	}
	pass := r.Blueprint.PassShare
	marked := pass > 0 && pass < 1
	if marked {
		s.passMark(at(pass), top-40, top+height)
	}
	for i, n := range counts {
		if n > 0 {
			x, text := left+(float64(i)+0.5)*w, fmt.Sprint(n)
			if marked {
				x = beside(x, at(pass), text)
			}
			s.label(x, top+height-bar(n)-11, text, draw.AlignCentre)
		}
	}
	s.line(left, top+height, s.W-right, top+height, 1, s.t.FieldLine)
	for i := range bins + 1 {
		s.tick(at(float64(i)/bins), top+height+15, fmt.Sprint(i*100/bins), draw.AlignCentre)
	}
	s.label(left+w*bins/2, top+height+44, "percent of the points", draw.AlignCentre)
	s.upright(20, top+height/2, "students")
	return Figure{
		Name: "scores", Title: "Scores", List: s.List,
		Alt:     scoresAlt(counts),
		Caption: "How many students earned which part of the points; each bar counts from its left edge to just under its right one, the last includes 100.",
	}
}

// passMark is a dashed line with its name above the figures of the bars, on the
// side where there is room.
func (s sheet) passMark(x, top, bottom float64) {
	s.line(x, top, x, bottom, 2, s.t.Ink, 6, 4)
	const name = "pass mark"
	if x-8-roomy*draw.Measure(draw.Bold, labelSize, name, 0) > 0 {
		s.head(x-8, top+6, name, draw.AlignRight)
	} else {
		s.head(x+8, top+6, name, draw.AlignLeft)
	}
}

// beside is x, or so far to a side of the line that it does not run through the
// text.
func beside(x, line float64, text string) float64 {
	room := roomy*draw.Measure(draw.Regular, labelSize, text, 0)/2 + 6
	switch off := x - line; {
	case off >= 0 && off < room:
		return line + room
	case off < 0 && off > -room:
		return line - room
	}
	return x
}

func scoreBins(shares []float64, bins int) []int {
	counts := make([]int, bins)
	for _, x := range shares {
		counts[max(0, min(bins-1, int(x*float64(bins)+1e-9)))]++
	}
	return counts
}

func scoresAlt(counts []int) string {
	var parts []string
	for i, n := range counts {
		if n > 0 {
			parts = append(parts, fmt.Sprintf("%d from %d to %d percent", n, i*10, i*10+10))
		}
	}
	return "Histogram of the scores. Students: " + strings.Join(parts, ", ") + "."
}

// lowBiserial is the point-biserial under which an item is worth a second look
// (common practice).
const lowBiserial = 0.2

// itemsFigure has a row for each item: how hard it was, and how well it told
// strong students from weak ones.
func itemsFigure(a grade.Analysis) Figure {
	const row, top, labels, gap, bar = 30, 52, 330, 76, 180
	s := newSheet(figureWidth, top+float64(len(a.Items))*row+18)
	p0, r0 := float64(labels), float64(labels+bar+gap)
	bottom := s.H - 14
	s.head(p0, 12, "Difficulty p", draw.AlignLeft)
	s.head(r0, 12, "Point-biserial", draw.AlignLeft)
	for i, v := range []string{"0", "0.5", "1"} {
		x := p0 + float64(i)*bar/2
		s.line(x, top-4, x, bottom, 1, s.t.Line)
		s.tick(x, top-16, v, draw.AlignCentre)
	}
	for i, v := range []string{"−1", "0", "1"} {
		x := r0 + float64(i)*bar/2
		s.line(x, top-4, x, bottom, 1, s.t.Line)
		s.tick(x, top-16, v, draw.AlignCentre)
	}
	for i, it := range a.Items {
		y := top + (float64(i)+0.5)*row
		s.label(labels-16, y, fit(fmt.Sprintf("%d  %s", it.Number, it.Title), labelSize, labels-20), draw.AlignRight)
		s.difficulty(it.Difficulty, p0, y, bar)
		s.biserial(it.Biserial, r0, y, bar)
	}
	return Figure{
		Name: "items", Title: "Items: difficulty and discrimination", List: s.List, Alt: itemsAlt(a),
		Caption: "Difficulty p is the mean share of the points that an item earned: short bars are hard items. " +
			"The point-biserial says how well an item tells strong students from weak ones; a hollow mark stands where it is below 0.2 and the item is worth a second look (common practice).",
	}
}

func (s sheet) difficulty(v grade.Stat, x, y, w float64) {
	if !v.Defined() {
		s.tick(x, y, "undefined", draw.AlignLeft)
		return
	}
	s.box(x, y-8, w*v.Value, 16, s.t.Water)
	s.line(x, y-8, x, y+8, 1, s.t.FieldLine)
	s.label(x+w+12, y, v.String(), draw.AlignLeft)
}

func (s sheet) biserial(v grade.Stat, x, y, w float64) {
	if !v.Defined() {
		s.tick(x+w/2, y, "undefined", draw.AlignCentre)
		return
	}
	at := x + w*(1+v.Value)/2
	s.line(x+w/2, y, at, y, 3, s.t.WaterInk)
	s.Fill(draw.Circle(at, y, 6), s.t.WaterInk)
	if v.Value < lowBiserial {
		s.Fill(draw.Circle(at, y, 4), s.t.Field)
	}
	s.label(x+w+12, y, signed(v), draw.AlignLeft)
}

// signed is the figure with a proper minus sign.
func signed(v grade.Stat) string { return strings.Replace(v.String(), "-", "−", 1) }

func itemsAlt(a grade.Analysis) string {
	var parts []string
	for _, it := range a.Items {
		parts = append(parts, fmt.Sprintf("item %d: p %s, point-biserial %s", it.Number, it.Difficulty, signed(it.Biserial)))
	}
	return "Two columns of bars, one row an item. " + strings.Join(parts, "; ") + "."
}

// mistakeLabels is the room of the names, the longest of which fits.
const mistakeLabels = 350

// mistakesFigure counts the mistakes by kind.
func mistakesFigure(a grade.Analysis) Figure {
	const row, top, labels, right = 30, 40, mistakeLabels, 70
	s := newSheet(figureWidth, top+float64(len(a.Mistakes))*row+8)
	most := 1
	for _, m := range a.Mistakes {
		most = max(most, m.Alone+m.Shared)
	}
	per := (s.W - labels - right) / float64(most)
	s.box(labels, 6, 16, 16, s.t.Water)
	s.tick(labels+24, 14, "named alone", draw.AlignLeft)
	s.box(labels+160, 6, 16, 16, faded(s.t.Water, 0.25))
	s.frame(labels+160.5, 6.5, 15, 15, s.t.WaterInk)
	s.tick(labels+184, 14, "named beside another that fits as well", draw.AlignLeft)
	for i, m := range a.Mistakes {
		y := top + (float64(i)+0.5)*row
		s.label(labels-16, y, fit(mistakeName(m.Kind.String()), labelSize, labels-20), draw.AlignRight)
		w, v := per*float64(m.Alone), per*float64(m.Shared)
		s.box(labels, y-8, w, 16, s.t.Water)
		if v > 0 {
			s.box(labels+w, y-8, v, 16, faded(s.t.Water, 0.25))
			s.frame(labels+w+0.5, y-7.5, max(v-1, 0), 15, s.t.WaterInk)
		}
		s.label(labels+w+v+10, y, fmt.Sprint(m.Alone+m.Shared), draw.AlignLeft)
	}
	s.line(labels, top, labels, s.H-6, 1, s.t.FieldLine)
	return Figure{
		Name: "mistakes", Title: "Mistakes by kind", List: s.List, Alt: mistakesAlt(a),
		Caption: "What probably happened in answers that were not right. Where two explanations fit equally well both are counted, in the light part of the bar.",
	}
}

// mistakeName is the name of a kind in words.
func mistakeName(kind string) string {
	if kind == mistake.DirectionForStrike.String() {
		return "Strike and dip direction exchanged" // which of them depends on the notation
	}
	s := strings.ReplaceAll(kind, "-", " ")
	return strings.ToUpper(s[:1]) + s[1:]
}

func mistakesAlt(a grade.Analysis) string {
	var parts []string
	for _, m := range a.Mistakes {
		part := fmt.Sprintf("%s %d", mistakeName(m.Kind.String()), m.Alone+m.Shared)
		if m.Shared > 0 {
			part += fmt.Sprintf(", of these %d beside another", m.Shared)
		}
		parts = append(parts, part)
	}
	return "Bars of how often each mistake was named: " + strings.Join(parts, "; ") + "."
}
