package gradebook

import (
	"fmt"

	"cuesta/orient"
	"cuesta/quiz/form"
	"cuesta/quiz/grade"
	"cuesta/quiz/item"
)

// table holds the numbers of a figure.
type table struct {
	Title  string
	Head   []cell
	Rows   [][]cell
	Stacks bool // it is words: on a narrow screen its cells stand one below the other
}

type cell struct {
	Text   string
	Number bool
}

func words(s string) cell  { return cell{Text: s} }
func count(n int) cell     { return cell{fmt.Sprint(n), true} }
func number(s string) cell { return cell{s, true} }

// tableOf is the table that belongs to a figure, or nil.
func tableOf(f Figure, r grade.Report) *table {
	switch f.Name {
	case "items":
		return itemTable(r.Analysis)
	case "mistakes":
		return mistakeTable(r)
	case "strike-errors":
		return dipTable(r)
	}
	return nil
}

func itemTable(a grade.Analysis) *table {
	t := &table{
		Title: "Items. Right is the part of the class that had the item wholly right; rest is the point-biserial against the total without the item.",
		Head: []cell{number("Item"), words("Question"), number("Answered"), number("p"), number("Right"),
			number("Point-biserial"), number("Rest")},
	}
	for _, it := range a.Items {
		t.Rows = append(t.Rows, []cell{count(it.Number), words(it.Title), count(it.Answered), number(it.Difficulty.String()),
			number(it.Right.String()), number(signed(it.Biserial)), number(signed(it.Rest))})
	}
	return t
}

func mistakeTable(r grade.Report) *table {
	t := &table{
		Title: "Mistakes, and what to tell the class.", Stacks: true,
		Head: []cell{words("What probably happened"), number("Alone"), number("Beside another"), words("What helps")},
	}
	s := surfaceIn(r.Blueprint)
	for _, m := range r.Analysis.Mistakes {
		what, advice := m.Kind.Words(r.Blueprint.Notation)
		t.Rows = append(t.Rows, []cell{words(s.In(capital(what))), count(m.Alone), count(m.Shared), words(s.In(advice))})
	}
	return t
}

// surfaceIn is what is measured throughout: bedding, but in a lab whose stations
// are all of one other surface.
func surfaceIn(b form.Blueprint) item.Surface {
	for _, p := range b.Parts {
		if p.Spec.Station.Surface != b.Parts[0].Spec.Station.Surface {
			return item.Bedding
		}
	}
	if len(b.Parts) == 0 {
		return item.Bedding
	}
	return b.Parts[0].Spec.Station.Surface
}

// dipTable sums the errors up by the steps of dip in which they differ.
func dipTable(r grade.Report) *table {
	t := &table{
		Title: "Errors at the " + wordsFor(r.Blueprint).where + " by dip. The tolerance is that in the middle of the range." + wordsFor(r.Blueprint).band,
		Head: []cell{words("True dip"), number("Slabs"), number("Median strike error"), number("Strike tolerance"),
			number("Median dip error"), number("Right")},
	}
	steps := []int{0, 10, 20, 30, 45, 60, 75, 90}
	for i := range len(steps) - 1 {
		from, to := orient.Angle(steps[i])*orient.Degree, orient.Angle(steps[i+1])*orient.Degree
		if row := dipRow(r, from, to); row != nil {
			t.Rows = append(t.Rows, row)
		}
	}
	return t
}

func dipRow(r grade.Report, from, to orient.Angle) []cell {
	var strikes, dips []float64
	right := 0
	for _, q := range r.Analysis.Planes {
		if q.Truth.Dip < from || q.Truth.Dip >= to && to < orient.Right {
			continue
		}
		if q.StrikeAsked {
			strikes = append(strikes, q.LineError.Abs().Degrees())
		}
		dips = append(dips, q.DipError.Abs().Degrees())
		if q.Right {
			right++
		}
	}
	if len(dips) == 0 {
		return nil
	}
	strike := "none asked"
	if len(strikes) > 0 {
		strike = degrees(median(strikes))
	}
	return []cell{
		words(fmt.Sprintf("%.0f° to %.0f°", from.Degrees(), to.Degrees())), count(len(dips)), number(strike),
		number(degrees(tolerance(r).Strike((from + to) / 2).Degrees())), number(degrees(median(dips))), count(right),
	}
}

func degrees(x float64) string { return fmt.Sprintf("%.1f°", x) }
