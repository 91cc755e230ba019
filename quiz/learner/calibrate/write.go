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
	t.writeShort(&b)
	t.writeScores(&b)
	t.writeWords(&b)
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

// writeWords says what the names of the mistakes stand for.
func (t Table) writeWords(b *bytes.Buffer) {
	if len(t.Named) == 0 {
		return
	}
	b.WriteString("\nThe mistakes in words\n")
	for _, n := range t.Named {
		what, _ := n.Kind.Words(t.Notation)
		fmt.Fprintf(b, "  %-26s %s\n", n.Kind, what)
	}
}

// writeShort draws the conclusion.
func (t Table) writeShort(b *bytes.Buffer) {
	for i, c := range t.Short() {
		if i == 0 {
			b.WriteString("\nIn short\n")
		}
		end := "."
		if len(c.Kinds) > 0 {
			end = ":"
		}
		fmt.Fprintf(b, "  %s%s\n", c.Said, end)
		for _, k := range c.Kinds {
			what, _ := k.Words(t.Notation)
			fmt.Fprintf(b, "    - %s\n", what)
		}
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
	for i := 0; i < len(t.Alike); {
		if i == 0 || !t.together(i-1, i) {
			fmt.Fprintf(b, "  %s\n", t.Alike[i].heading())
		}
		n := t.same(i)
		fmt.Fprintf(b, "    %-26s like %s\n", t.Alike[i].Made, rivals(t.Alike[i:n]))
		i = n
	}
	if len(t.Alike) == 0 {
		b.WriteString("  nothing\n")
	}
}

// together says that two rows stand under one heading.
func (t Table) together(i, j int) bool {
	return t.Alike[i].Part == t.Alike[j].Part && t.Alike[i].Bare == t.Alike[j].Bare
}

// same is the end of the run, from i on, of rows of one item and mistake.
func (t Table) same(i int) int {
	n := i + 1
	for n < len(t.Alike) && t.together(i, n) && t.Alike[n].Made == t.Alike[i].Made {
		n++
	}
	return n
}

// heading names the item, and what the mistakes are judged by.
func (a Alike) heading() string {
	by := "with the readings of its recording"
	if a.Bare {
		by = "by the answer alone, as on paper"
	}
	return fmt.Sprintf("%d %s, %s", a.Part+1, a.Item, by)
}

// rivals are what a mistake is like.
func rivals(rows []Alike) string {
	all := make([]string, len(rows))
	for i, r := range rows {
		all[i] = fmt.Sprintf("%s (%s)", r.rival(), percent(r.Share))
	}
	return strings.Join(all, ", ")
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
