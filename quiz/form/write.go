package form

import (
	"fmt"
	"io"
	"strings"

	"cuesta/quiz"
	"cuesta/quiz/item"
)

// Write writes the blueprint as TOML that ReadBlueprint takes back. What a part
// shares with the whole blueprint, and what has its default, is left out. Of a
// lab it names the stations and not how they lie; ReadBlueprint refuses it.
func (b Blueprint) Write(to io.Writer) error {
	var w tomlWriter
	w.line("title", quoted(b.Title))
	w.line("notation", quoted(notationWord(b.Notation)))
	w.line("pass", plain(b.PassShare))
	w.lineUnless(b.Minutes == 0, "minutes", plain(b.Minutes))
	w.lineUnless(b.Due == "", "due", b.Due)
	w.line("cautions", fmt.Sprint(b.Cautions))
	w.line("seed", fmt.Sprint(b.Seed))
	w.place(b)
	w.text.WriteString("\n[tolerance]\n")
	w.tolerance(b.Tolerance, quiz.DefaultTolerance)
	for _, p := range b.Parts {
		w.part(p, b)
	}
	_, err := io.WriteString(to, w.text.String())
	return err
}

type tomlWriter struct{ text strings.Builder }

func (w *tomlWriter) line(key, value string) { fmt.Fprintf(&w.text, "%s = %s\n", key, value) }

func (w *tomlWriter) lineUnless(skip bool, key, value string) {
	if !skip {
		w.line(key, value)
	}
}

func (w *tomlWriter) place(b Blueprint) {
	w.text.WriteString("\n[place]\n")
	w.lineUnless(b.Place == "", "name", quoted(b.Place))
	w.lineUnless(b.Site == "", "site", quoted(b.Site))
	w.lineUnless(b.Date == "", "date", quoted(b.Date))
	w.lineUnless(b.RingPreset, "declination", quoted("student"))
}

// tolerance writes what differs from another one.
func (w *tomlWriter) tolerance(t, from quiz.Tolerance) {
	w.lineUnless(t.Reading == from.Reading, "reading", plain(inDegrees(t.Reading)))
	w.lineUnless(t.Levelling == from.Levelling, "levelling", plain(inDegrees(t.Levelling)))
	w.lineUnless(t.Dip == from.Dip, "dip", plain(inDegrees(t.Dip)))
	p, q := t.Partial, from.Partial
	w.lineUnless(p.Strike == q.Strike, "step_strike", plain(inDegrees(p.Strike)))
	w.lineUnless(p.Dip == q.Dip, "step_dip", plain(inDegrees(p.Dip)))
	w.lineUnless(p.Share == q.Share, "step_share", plain(p.Share))
	side := t.Side
	if side == 0 {
		side = quiz.DefaultSide
	}
	w.lineUnless(t.Side == from.Side, "side", plain(side))
}

func (w *tomlWriter) part(p Part, b Blueprint) {
	w.text.WriteString("\n[[item]]\n")
	w.line("kind", quoted(p.Kind))
	w.lineUnless(p.Spec.Station.Name == "", "station", quoted(p.Spec.Station.Name))
	w.line("count", fmt.Sprint(p.Count))
	w.line("points", plain(p.Points))
	w.lineUnless(p.Attempts == 1, "attempts", fmt.Sprint(p.Attempts))
	w.lineUnless(p.HintCost == 0, "hint_cost", plain(p.HintCost))
	w.lineUnless(p.Spec.Notation == b.Notation, "notation", quoted(notationWord(p.Spec.Notation)))
	if p.Spec.DipMin != 0 || p.Spec.DipMax != 0 {
		fmt.Fprintf(&w.text, "dips = [%s, %s]\n", plain(inDegrees(p.Spec.DipMin)), plain(inDegrees(p.Spec.DipMax)))
	}
	if m := p.Spec.Mix; m != (quiz.Mix{}) {
		fmt.Fprintf(&w.text, "mix = { gentle = %s, moderate = %s, steep = %s }\n", plain(m.Gentle), plain(m.Moderate), plain(m.Steep))
	}
	if p.Spec.Tolerance != b.Tolerance {
		w.text.WriteString("[item.tolerance]\n")
		w.tolerance(p.Spec.Tolerance, b.Tolerance)
	}
}

// quoted is a basic string of TOML.
func quoted(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r < ' ' || r == 0x7F:
			fmt.Fprintf(&b, "\\u%04X", r)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// WriteBlind writes a lab as a file of stations that ReadStations takes back,
// without how they lie and without the instructor's notes. The forms of both
// have the same codes, so that what is read with this one is marked with the
// other.
func (b Blueprint) WriteBlind(to io.Writer) error {
	var w tomlWriter
	w.text.WriteString("# A copy for the room: it does not say how the stations lie.\n\n")
	w.line("title", quoted(b.Title))
	w.line("notation", quoted(notationWord(b.Notation)))
	w.line("pass", plain(b.PassShare))
	w.line("cautions", fmt.Sprint(b.Cautions))
	for i, p := range b.Parts {
		if i == 0 {
			w.line("readings", fmt.Sprint(p.Attempts))
			w.lineUnless(!p.Spec.Station.Mean, "counts", quoted("mean"))
		}
	}
	w.place(b)
	w.text.WriteString("\n[tolerance]\n")
	w.tolerance(b.Tolerance, quiz.DefaultTolerance)
	for _, p := range b.Parts {
		w.text.WriteString("\n[[station]]\n")
		w.line("name", quoted(p.Spec.Station.Name))
		w.lineUnless(p.Spec.Station.Words == "", "words", quoted(p.Spec.Station.Words))
		w.lineUnless(p.Spec.Station.Surface == item.Bedding, "surface", quoted(p.Spec.Station.Surface.String()))
		w.line("points", plain(p.Points))
	}
	_, err := io.WriteString(to, w.text.String())
	return err
}
