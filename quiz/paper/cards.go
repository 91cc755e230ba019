package paper

import (
	"fmt"
	"strings"

	"cuesta/quiz"
	"cuesta/quiz/form"
	"cuesta/quiz/item"
	"cuesta/quiz/lab"
	"cuesta/scenes/draw"
	"cuesta/scenes/draw/pdf"
)

// Cards prints a card for each station of a lab, each on a page of its own: its
// name to be read from across the room, what to do, how to write it, room for
// repeated readings, and the cautions. How the stations lie stands nowhere on
// them.
func Cards(b form.Blueprint, s Sheet) ([]byte, error) {
	size := settingOf(s)
	d := pdf.New(size.labOptions(b, "Station cards"))
	for _, p := range b.Parts {
		st := p.Spec.Station
		section{
			name: "Station " + st.Name, left: "Station " + st.Name, middle: b.Title,
			blocks: []block{size.card(b, p)},
		}.paint(d, size)
	}
	return d.Bytes()
}

func (s setting) labOptions(b form.Blueprint, what string) pdf.Options {
	title := what
	if b.Title != "" {
		title = b.Title + ": " + what
	}
	return pdf.Options{Sheet: s.sheet, Title: title, Subject: "Strike and dip", Lang: lang}
}

// Type of a card, in points. The longest names there may be are set in capitals
// that are still legible at 3 m.
const (
	sizeName = 150.0 // the most, in which a letter or two are set
	sizeCard = 11.5
)

// steps are what to do at a station, in five.
func steps(b form.Blueprint, p form.Part) []string {
	write := fmt.Sprintf("Write it below as %s", notationWords[b.Notation])
	if p.Attempts == 1 {
		write += "; then write your reading at the keyboard."
	} else {
		write += fmt.Sprintf(". Lift the instrument off, seat it anew and read again, %s in all; then write your readings at the keyboard.", timesWords(p.Attempts))
	}
	return []string{
		"Look first: which face " + p.Spec.Station.Surface.Face() + ", and is it clean? Keep keys, knives and telephones away from the needle.",
		"Lay your right hand flat on the face, fingers down the dip: the thumb points to the strike end to write.",
		"Strike: seat a long edge on the rock, centre the round level, let the needle rest, read its north end to the degree.",
		"Dip: turn the instrument on its side, edge straight down the dip, centre the tube level, read the degree scale.",
		write,
	}
}

// timesWords is how often.
func timesWords(n int) string {
	words := [...]string{2: "twice", 3: "three times", 4: "four times", 5: "five times", 6: "six times"}
	if n < len(words) {
		return "up to " + words[n]
	}
	return fmt.Sprintf("up to %d times", n)
}

// stack puts pieces one below the other.
type stack struct {
	nodes []node
	y     float64
}

// put adds pieces of a height that stand at the top of their own.
func (k *stack) put(height, gap float64, nodes ...node) {
	for _, n := range nodes {
		n.at.Y += k.y
		k.nodes = append(k.nodes, n)
	}
	k.y += height + gap
}

func (k *stack) paragraph(role pdf.Role, text string, f draw.Font, size, width, gap float64) {
	n, h := paragraph(role, text, f, size, width, draw.Point{})
	k.put(h, gap, n)
}

// card is the card of a station.
func (s setting) card(b form.Blueprint, p form.Part) block {
	var k stack
	w, st := s.column(), p.Spec.Station
	if st.Words == "" {
		st.Words = "The " + st.Surface.Measured() + " beside this card"
	}
	k.put(s.nameplate(st.Name))
	k.paragraph(pdf.Paragraph, capital(st.Words)+".", draw.Bold, sizeCard+3, w, 4)
	k.paragraph(pdf.Paragraph, circumstances(form.Form{Blueprint: b}), draw.Regular, sizeCard, w, 9)
	k.paragraph(pdf.Heading2, "What to do", draw.Bold, sizeCard+1, w, 2)
	list, h := numbered(steps(b, p), sizeCard, w)
	k.put(h, 8, list)
	care := s.cautionBox(lab.Cautions)
	room := s.room() - k.y - 20
	if b.Cautions {
		room -= care.height + 10
	}
	t := readingTable(w, room, p.Attempts)
	k.put(t.height, 10, t.nodes...)
	if b.Cautions {
		k.put(care.height, 0, care.nodes...)
	}
	return block{height: k.y, nodes: k.nodes}
}

// nameplate is the name of the station, as large as it fits.
func (s setting) nameplate(name string) (height, gap float64, n node, frame node, word node) {
	w := s.column()
	size := nameSize(name, w-40)
	h := draw.CapHeight(draw.Bold, size) + 58
	n = node{role: pdf.Heading1, list: &draw.List{W: w, H: h}}
	n.list.Text(draw.Text{S: name, At: draw.Point{X: w / 2, Y: h - 20}, Size: size, Font: draw.Bold, Color: ink, Align: draw.AlignCentre})
	return h, 10, n, boxed(draw.Rect{W: w, H: h}, 1.6, nil),
		node{role: pdf.Paragraph, list: line("Station", draw.Bold, 20, draw.AlignLeft, ink), at: draw.Point{X: 14, Y: 9}}
}

// nameSize is the size of type in which a name fills the width, at most.
func nameSize(name string, width float64) float64 {
	return min(sizeName, width/draw.Measure(draw.Bold, 1, name, 0))
}

// numbered is a list with figures.
func numbered(items []string, size, w float64) (node, float64) {
	const indent = 20.0
	list := node{role: pdf.Bullets}
	y := 0.0
	for i, t := range items {
		text, h := prose(t, draw.Regular, size, w-indent, ink)
		l := line(fmt.Sprintf("%d ", i+1), draw.Bold, size, draw.AlignLeft, ink)
		l.Append(text, draw.Affine{A: 1, D: 1, E: indent})
		l.W, l.H = w, h
		list.kids = append(list.kids, bullet(l, draw.Point{Y: y}))
		y += h + 3
	}
	return list, y
}

// readingTable is room for so many readings, or as many as fit.
func readingTable(w, room float64, readings int) answer {
	const row = 21.0
	cols := []column{
		{head: "Reading", width: .13}, {head: "North end of the needle (°)", width: .27}, {head: "Dip (°)", width: .14},
		{head: "Dips towards", width: .18}, {head: "Written", width: .28},
	}
	empty := gridTable(cols, nil, w, row, true)
	var rows [][]string
	for i := 1; i <= readings && empty.height+row*float64(i) <= room; i++ {
		rows = append(rows, []string{fmt.Sprint(i), "", "", "", ""})
	}
	return gridTable(cols, rows, w, row, true)
}

// StationKey prints the true values of a lab, with what they may be off by and
// what a reading may be off by for full marks, for the instructor alone.
func StationKey(b form.Blueprint, s Sheet) ([]byte, error) {
	size := settingOf(s)
	d := pdf.New(size.labOptions(b, "True values"))
	f, err := b.Fixed(form.Student{ID: "key"})
	if err != nil {
		return nil, err
	}
	out := section{left: "True values", middle: "Keep apart from the students"}
	var k stack
	k.paragraph(pdf.Heading1, b.Title+": true values", draw.Bold, sizeTitle, size.column(), 4)
	k.paragraph(pdf.Paragraph, circumstances(f)+" "+counting(b), draw.Regular, sizeText, size.column(), 0)
	out.blocks = append(out.blocks, block{height: k.y, nodes: k.nodes})
	cols := []column{
		{head: "Station", width: .12}, {head: "True value", width: .19}, {head: "Strike, dip may be off by", width: .17},
		{head: "Full marks within: strike, dip", width: .19}, {head: "Points", width: .09, align: draw.AlignRight}, {head: "What it is; note", width: .24},
	}
	var rows [][]string
	for i, p := range b.Parts {
		it, err := f.Item(i)
		if err != nil {
			return nil, err
		}
		rows = append(rows, stationRow(it.(item.AtStation), p.Points))
	}
	for _, t := range gridTables(cols, rows, size.column(), 0, size.room()-k.y-20) {
		out.blocks = append(out.blocks, block{height: t.height, nodes: t.nodes})
	}
	out.blocks = append(out.blocks, size.why(b), size.cautionBox(lab.Cautions))
	out.paint(d, size)
	return d.Bytes()
}

func stationRow(it item.AtStation, points float64) []string {
	st, t := it.Station(), it.Tolerance()
	strike := fmt.Sprintf("± %.1f°", t.Strike(st.Plane.Dip).Degrees())
	if st.Plane.Dip < quiz.NoStrikeBelow {
		strike = "not asked"
	}
	about := st.Words
	if st.Surface != item.Bedding {
		about = strings.Trim(st.Surface.String()+"; "+about, "; ")
	}
	if st.Note != "" {
		if about != "" {
			about += "; "
		}
		about += st.Note
	}
	return []string{
		st.Name, it.Key(), fmt.Sprintf("± %s°, ± %s°", number(st.Strike.Degrees()), number(st.Dip.Degrees())),
		fmt.Sprintf("%s, ± %.1f°", strike, t.Dip.Degrees()), number(points), about,
	}
}

// counting says how readings are marked.
func counting(b form.Blueprint) string {
	which := "the last reading of a student"
	if len(b.Parts) > 0 && b.Parts[0].Spec.Station.Mean {
		which = "the mean of a student's readings"
	}
	return "At each station " + which + " is marked."
}

// why is the formula of the tolerance.
func (s setting) why(b form.Blueprint) block {
	t := b.Tolerance
	text := fmt.Sprintf("A strike may be off by %[1]s° of reading, by what %[2]s° of levelling turns it at the gentlest dip that your own value leaves, "+
		"asin(tan %[2]s° / tan (dip − its uncertainty)), and by what your strike may be off by; a dip by %[3]s° and by what your dip may be off by. "+
		"They add, because the worst case of two careful people is that both are off, to opposite sides.",
		number(t.Reading.Degrees()), number(t.Levelling.Degrees()), number(t.Dip.Degrees()))
	var k stack
	k.paragraph(pdf.Heading2, "How wide, and why", draw.Bold, sizeHead, s.column(), 2)
	k.paragraph(pdf.Paragraph, text, draw.Regular, sizeText, s.column(), 5)
	k.paragraph(pdf.Paragraph, "To find your own uncertainty, measure each slab at least five times, seating the instrument anew each time, and take half of the range of the strikes and of the dips. "+
		"Iron and wiring in the room turn a needle: measure with the instruments that the students use, and again when a table has been moved.", draw.Regular, sizeText, s.column(), 0)
	return block{height: k.y, nodes: k.nodes}
}
