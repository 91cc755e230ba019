package gradebook

import (
	"fmt"
	"math"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/grade"
	"cuesta/scenes/draw"
)

// mostMarks is how many readings a figure shows; of more it shows every nth.
const mostMarks = 1000

// thinned returns every nth plane, so that no more than mostMarks are left,
// and n.
func thinned(ps []grade.PlaneResult) ([]grade.PlaneResult, int) {
	n := (len(ps) + mostMarks - 1) / mostMarks
	if n <= 1 {
		return ps, 1
	}
	var out []grade.PlaneResult
	for i := 0; i < len(ps); i += n {
		out = append(out, ps[i])
	}
	return out, n
}

func thinnedWords(n int) string {
	if n == 1 {
		return ""
	}
	return fmt.Sprintf(" Of so many readings one in %d is drawn.", n)
}

// errorPlot maps dips and strike errors to the figure.
type errorPlot struct {
	sheet
	x, y, w, h float64
	most       orient.Angle // the error at the upper edge
}

func (p errorPlot) at(dip, off orient.Angle) draw.Point {
	return draw.Point{X: p.x + p.w*float64(dip/orient.Right), Y: p.y + p.h/2*(1-float64(off/p.most))}
}

// errorsFigure is the error of each strike against the dip of its bed, with
// the error that the levelling tolerance leads to and the whole tolerance.
func errorsFigure(r grade.Report) Figure {
	t := tolerance(r)
	ps, n := thinned(r.Analysis.Planes)
	s := newSheet(figureWidth, 440)
	p := errorPlot{s, 72, 40, s.W - 72 - 20, 330, mostShown(ps)}
	p.grid()
	p.band(t)
	outside := 0
	for _, q := range ps {
		if !q.StrikeAsked {
			continue
		}
		if q.LineError.Abs() > p.most {
			outside++
		}
		p.reading(q)
	}
	s.legend(p.x+4, 16)
	return Figure{
		Name: "strike-errors", Title: "Errors of strike against dip", List: s.List,
		Alt: errorsAlt(r.Analysis.Planes, t),
		Caption: fmt.Sprintf("Each mark is one strike that was measured: how far its line lay from the true one, clockwise up. "+
			"The dashed curve is the error asin(tan τ / tan d) of an edge that was off level by τ = %s° on a bed of dip d; the shaded band adds the reading tolerance of %s° and is what earns the full mark.%s%s%s",
			decimal(t.Levelling.Degrees()), decimal(t.Reading.Degrees()), wordsFor(r.Blueprint).band, edgeWords(outside, p.most), thinnedWords(n)),
	}
}

func edgeWords(outside int, most orient.Angle) string {
	if outside == 0 {
		return ""
	}
	return fmt.Sprintf(" Marks at the upper and lower edge lie farther off than %.0f° (%d).", most.Degrees(), outside)
}

// tolerance is that of the bench items, or of the whole quiz.
func tolerance(r grade.Report) quiz.Tolerance {
	for _, p := range r.Blueprint.Parts {
		if p.Kind == "measure-slab" && p.Spec.Tolerance != (quiz.Tolerance{}) {
			return p.Spec.Tolerance
		}
	}
	if r.Blueprint.Tolerance == (quiz.Tolerance{}) {
		return quiz.DefaultTolerance
	}
	return r.Blueprint.Tolerance
}

// mostShown is the error the figure reaches to: 20° at least, and what holds
// three in four, up to 90°.
func mostShown(ps []grade.PlaneResult) orient.Angle {
	for _, m := range []orient.Angle{20, 30, 45, 60} {
		out, all := 0, 0
		for _, q := range ps {
			if q.StrikeAsked {
				all++
				if q.LineError.Abs() > m*orient.Degree {
					out++
				}
			}
		}
		if 4*out <= all {
			return m * orient.Degree
		}
	}
	return orient.Right
}

func (p errorPlot) grid() {
	for d := 0; d <= 90; d += 15 {
		x := p.at(orient.Angle(d)*orient.Degree, 0).X
		p.line(x, p.y, x, p.y+p.h, 1, p.t.Line)
		p.tick(x, p.y+p.h+15, fmt.Sprintf("%d°", d), draw.AlignCentre)
	}
	step := int(math.Round(p.most.Degrees())) / 4
	if step%5 != 0 {
		step = int(math.Round(p.most.Degrees())) / 3
	}
	for e := -int(math.Round(p.most.Degrees())); e <= int(math.Round(p.most.Degrees())); e += step {
		y := p.at(0, orient.Angle(e)*orient.Degree).Y
		p.line(p.x, y, p.x+p.w, y, 1, p.t.Line)
		p.tick(p.x-8, y, signedDegrees(e), draw.AlignRight)
	}
	zero := p.at(0, 0).Y
	p.line(p.x, zero, p.x+p.w, zero, 1.5, p.t.FieldLine)
	p.label(p.x+p.w/2, p.y+p.h+44, "true dip", draw.AlignCentre)
	p.upright(16, p.y+p.h/2, "error of the strike")
}

func signedDegrees(e int) string {
	switch {
	case e > 0:
		return fmt.Sprintf("+%d°", e)
	case e < 0:
		return fmt.Sprintf("−%d°", -e)
	}
	return "0°"
}

// band is the tolerance, and the curve of the levelling error in it.
func (p errorPlot) band(t quiz.Tolerance) {
	var upper, lower, errUp, errDown []draw.Point
	clip := func(a orient.Angle) orient.Angle { return min(a, p.most) }
	for i := range 361 {
		d := orient.Angle(i) / 4 * orient.Degree
		all, off := clip(t.Strike(d)), clip(t.Strike(d)-t.Reading)
		upper, lower = append(upper, p.at(d, all)), append(lower, p.at(d, -all))
		errUp, errDown = append(errUp, p.at(d, off)), append(errDown, p.at(d, -off))
	}
	area := append([]draw.Point(nil), upper...)
	for i := len(lower) - 1; i >= 0; i-- {
		area = append(area, lower[i])
	}
	p.Fill(draw.Polyline(true, area...), faded(p.t.Water, 0.22))
	edge := draw.Stroke{Width: 1.5, Color: p.t.WaterInk, Join: draw.RoundJoin}
	p.Stroke(draw.Polyline(false, upper...), edge)
	p.Stroke(draw.Polyline(false, lower...), edge)
	curve := draw.Stroke{Width: 1.5, Color: p.t.Ink, Join: draw.RoundJoin, Dash: []float64{6, 4}}
	p.Stroke(draw.Polyline(false, errUp...), curve)
	p.Stroke(draw.Polyline(false, errDown...), curve)
}

func (p errorPlot) reading(q grade.PlaneResult) {
	at := p.at(q.Truth.Dip, max(-p.most, min(p.most, q.LineError)))
	p.mark(q.Right, at.X, at.Y)
}

func errorsAlt(ps []grade.PlaneResult, t quiz.Tolerance) string {
	inside, asked := 0, 0
	var off []float64
	for _, q := range ps {
		if !q.StrikeAsked {
			continue
		}
		asked++
		off = append(off, q.LineError.Abs().Degrees())
		if q.LineError.Abs() <= t.Strike(q.Truth.Dip)+1e-9 {
			inside++
		}
	}
	if asked == 0 {
		return "A plot of strike errors against dip; no strike was measured."
	}
	return fmt.Sprintf("A plot of %d strike errors against the true dip, with the tolerance that widens towards gentle dips. %d strikes lie inside the tolerance; the median error is %s°.",
		asked, inside, decimal(median(off)))
}
