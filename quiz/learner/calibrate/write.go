package calibrate

import (
	"bytes"
	"fmt"
	"io"
	"strings"
)

// Write writes the table in words and figures, to be read in a terminal. The
// error is that of the writer.
func (t Table) Write(to io.Writer) error {
	var b bytes.Buffer
	fmt.Fprintf(&b, "%s\n%d simulated students of each kind; %s of the points pass\n", t.Title, t.Students, percent(t.PassShare))
	t.writeScores(&b)
	t.writeNamed(&b)
	t.writeAlike(&b)
	t.writeAccused(&b)
	_, err := to.Write(b.Bytes())
	return err
}

func percent(share float64) string { return fmt.Sprintf("%.0f %%", 100*share) }

func (t Table) writeScores(b *bytes.Buffer) {
	fmt.Fprintf(b, "\nWhat each would score\n  %-26s %8s %8s %8s\n", "student", "mean", "spread", "pass")
	for _, s := range t.Scores {
		fmt.Fprintf(b, "  %-26s %6.1f %% %6.1f %% %6.1f %%\n", s.Learner, 100*s.Mean, 100*s.SD, 100*s.Pass)
	}
}

func (t Table) writeNamed(b *bytes.Buffer) {
	fmt.Fprintf(b, "\nHow often each mistake is named. It can be told in an answer that it makes wrong,\n"+
		"when nothing else would give the same. Found: named, of these. Sound: really made,\n"+
		"of all the answers in which it is named.\n"+
		"  %-26s %8s %8s %8s %8s %8s %8s %8s\n", "mistake", "made", "no harm", "refused", "alike", "told", "found", "sound")
	for _, n := range t.Named {
		fmt.Fprintf(b, "  %-26s %8d %8d %8d %8d %8d %8s %8s\n", n.Kind, n.Made, n.Right, n.Refused, n.Alike, n.Apart,
			shareOr(n.Recall()), shareOr(n.Precision()))
	}
}

func shareOr(share float64, ok bool) string {
	if !ok {
		return "-"
	}
	return fmt.Sprintf("%.1f %%", 100*share)
}

func (t Table) writeAlike(b *bytes.Buffer) {
	b.WriteString("\nWhat the items do not tell apart, as a share of the wrong answers that the mistake\n" +
		"leads to; less than one in ten is left out\n")
	lines := 0
	for i := 0; i < len(t.Alike); {
		n := t.same(i)
		t.writePair(b, t.Alike[i:n])
		i, lines = n, lines+1
	}
	if lines == 0 {
		b.WriteString("  nothing\n")
	}
}

// same is the end of the run, from i on, of rows of one item and mistake.
func (t Table) same(i int) int {
	first := t.Alike[i]
	for i++; i < len(t.Alike); i++ {
		if a := t.Alike[i]; a.Part != first.Part || a.Bare != first.Bare || a.Made != first.Made {
			break
		}
	}
	return i
}

// writePair writes what one mistake in one item is like.
func (t Table) writePair(b *bytes.Buffer, rows []Alike) {
	rivals := make([]string, len(rows))
	for i, r := range rows {
		rivals[i] = fmt.Sprintf("%s (%s)", r.rival(), percent(r.Share))
	}
	how := "also with the readings"
	if rows[0].Bare {
		how = "by the answer alone"
	}
	fmt.Fprintf(b, "  %d %s, %s: %s is like %s\n", rows[0].Part+1, rows[0].Item, how, rows[0].Made, strings.Join(rivals, ", "))
}

func (a Alike) rival() string {
	if a.Slip {
		return "a slip without a name"
	}
	return a.Rival.String()
}

func (t Table) writeAccused(b *bytes.Buffer) {
	b.WriteString("\nHow often students are told of a mistake which they did not make\n")
	for _, a := range t.Accused {
		fmt.Fprintf(b, "  %-26s %6.2f %% of their answers\n", a.Manner, 100*a.Share)
	}
}
