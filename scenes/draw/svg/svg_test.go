package svg

import (
	"bytes"
	"encoding/xml"
	"image"
	"io"
	"math"
	"strings"
	"testing"

	"cuesta/scenes/draw"
)

var ink = draw.Color{R: 29, G: 38, B: 41, A: 255}

// sample has something of everything.
func sample() *draw.List {
	l := &draw.List{W: 400, H: 300}
	l.FillWith(draw.Fill{Path: draw.Circle(60, 60, 45), Color: ink,
		Gradient: draw.Gradient{Kind: draw.Radial, A: draw.Point{X: 50, Y: 50}, B: draw.Point{X: 53, Y: 54}, To: draw.Color{G: 200, A: 51}}})
	l.FillWith(draw.Fill{Path: draw.Box(draw.Rect{W: 10, H: 10}), Color: ink,
		Gradient: draw.Gradient{Kind: draw.Linear, B: draw.Point{X: 10}, To: draw.Color{A: 255}}})
	l.Stroke(draw.Polyline(false, draw.Point{X: 1, Y: 2}, draw.Point{X: 3, Y: 4}),
		draw.Stroke{Width: 3, Color: draw.Color{R: 255, A: 102}, Dash: []float64{8, 4.5}, Cap: draw.RoundCap, Join: draw.BevelJoin})
	l.Text(draw.Text{S: `a<b & "c" 30°` + "\x01", At: draw.Point{X: 200, Y: 150}, Size: 18, Font: draw.Bold, Color: ink, Align: draw.AlignCentre})
	l.Text(draw.Text{S: "turned", At: draw.Point{X: 40, Y: 280}, Size: 16, Color: ink, Rotate: -math.Pi / 4, Track: 0.1, Align: draw.AlignRight})
	l.Region(draw.Rect{X: 100, Y: 200, W: 200, H: 60})
	l.Fill(draw.Circle(200, 260, 60), ink)
	l.Region(draw.Rect{X: 0, Y: 0, W: 20, H: 20})
	p := l.Open(nil)
	p.Triangle(p.Vertex(draw.Vertex{X: 1, Y: 1, R: 1, G: .5, A: 1}), p.Vertex(draw.Vertex{X: 9, Y: 1, R: 1, G: .5, A: 1}), p.Vertex(draw.Vertex{X: 1, Y: 9, R: 1, G: .5, A: 1}))
	p.Done()
	return l
}

// node is an element as a general XML reader sees it.
type node struct {
	name string
	attr map[string]string
	text string
}

// nodes reads a file strictly to its end.
func nodes(t *testing.T, file []byte) []node {
	t.Helper()
	var out []node
	ids := map[string]bool{}
	d := xml.NewDecoder(bytes.NewReader(file))
	for {
		k, err := d.Token()
		if err == io.EOF {
			return out
		}
		if err != nil {
			t.Fatalf("%v\n%s", err, file)
		}
		switch k := k.(type) {
		case xml.StartElement:
			n := node{name: k.Name.Local, attr: map[string]string{}}
			for _, a := range k.Attr {
				n.attr[a.Name.Local] = a.Value
			}
			if id := n.attr["id"]; id != "" && ids[id] {
				t.Errorf("the id %q stands twice", id)
			} else if id != "" {
				ids[id] = true
			}
			out = append(out, n)
		case xml.CharData:
			if s := string(k); strings.TrimSpace(s) != "" {
				out[len(out)-1].text += s
			}
		}
	}
}

func TestElements(t *testing.T) {
	got := nodes(t, File(sample(), Options{Title: "Dial <1>", Desc: "A \"dial\" & needle", Prefix: "q1-"}))
	want := []node{
		{"svg", map[string]string{"width": "400", "height": "300", "viewBox": "0 0 400 300", "role": "img", "aria-labelledby": "q1-t q1-d"}, ""},
		{"title", map[string]string{"id": "q1-t"}, "Dial <1>"},
		{"desc", map[string]string{"id": "q1-d"}, `A "dial" & needle`},
		{"radialGradient", map[string]string{"cx": "50", "r": "5", "gradientUnits": "userSpaceOnUse"}, ""},
		{"stop", map[string]string{"offset": "0", "stop-color": "#1d2629"}, ""},
		{"stop", map[string]string{"offset": "1", "stop-color": "#00c800", "stop-opacity": "0.2"}, ""},
		{"path", map[string]string{"fill": "url(#q1-g1)"}, ""},
		{"linearGradient", map[string]string{"x2": "10"}, ""},
		{"stop", nil, ""},
		{"stop", nil, ""},
		{"path", map[string]string{"d": "M0 0L10 0L10 10L0 10Z", "fill": "url(#q1-g2)"}, ""},
		{"path", map[string]string{"d": "M1 2L3 4", "fill": "none", "stroke": "#ff0000", "stroke-opacity": "0.4", "stroke-width": "3",
			"stroke-linecap": "round", "stroke-linejoin": "bevel", "stroke-dasharray": "8 4.5"}, ""},
		{"text", map[string]string{"x": "200", "y": "150", "font-size": "18", "font-weight": "bold", "text-anchor": "middle"}, `a<b & "c" 30°` + "\uFFFD"},
		{"text", map[string]string{"transform": "rotate(-45 40 280)", "letter-spacing": "1.6", "text-anchor": "end"}, "turned"},
		{"clipPath", map[string]string{"id": "q1-c3"}, ""},
		{"rect", map[string]string{"x": "100", "y": "200", "width": "200", "height": "60"}, ""},
		{"g", map[string]string{"clip-path": "url(#q1-c3)"}, ""},
		{"path", map[string]string{"fill": "#1d2629"}, ""},
		{"clipPath", map[string]string{"id": "q1-c4"}, ""},
		{"rect", nil, ""},
		{"g", nil, ""},
		{"path", map[string]string{"d": "M1 1L9 1L1 9Z", "fill": "#ff8000"}, ""},
	}
	if len(got) != len(want) {
		t.Fatalf("%d elements, want %d: %+v", len(got), len(want), got)
	}
	for i, w := range want {
		g := got[i]
		if g.name != w.name || g.text != w.text {
			t.Errorf("element %d is %s %q, want %s %q", i, g.name, g.text, w.name, w.text)
		}
		for name, value := range w.attr {
			if g.attr[name] != value {
				t.Errorf("element %d, %s: %s is %q, want %q", i, g.name, name, g.attr[name], value)
			}
		}
	}
}

// TestOutlines: no text element is left, and the shapes stand where the text
// did.
func TestOutlines(t *testing.T) {
	var paths int
	for _, n := range nodes(t, Element(sample(), Options{Outlines: true})) {
		if n.name == "text" {
			t.Errorf("text is left: %q", n.text)
		}
		if n.name == "path" {
			paths++
		}
		if n.name == "svg" && n.attr["aria-hidden"] != "true" {
			t.Error("a picture without words is not hidden from screen readers")
		}
	}
	if paths != 7 {
		t.Errorf("%d paths, want the 5 shapes and 2 texts", paths)
	}
}

func TestSameBytes(t *testing.T) {
	o := Options{Title: "t"}
	if !bytes.Equal(File(sample(), o), File(sample(), o)) {
		t.Error("the same list gave different bytes")
	}
}

// TestNumbers: what is no number must not break the file.
func TestNumbers(t *testing.T) {
	l := &draw.List{W: math.NaN(), H: math.Inf(1)}
	l.Fill(draw.Circle(math.Inf(-1), math.NaN(), -0.0001), ink)
	if s := string(Element(l, Options{})); strings.Contains(s, "NaN") || strings.Contains(s, "Inf") || strings.Contains(s, "-0 ") {
		t.Error(s)
	}
}

// TestMeshColour: a triangle takes the mean colour of its texture.
func TestMeshColour(t *testing.T) {
	img := image.NewRGBA(image.Rect(0, 0, 2, 1))
	copy(img.Pix, []byte{255, 0, 0, 255, 0, 0, 255, 255})
	l := &draw.List{W: 10, H: 10}
	l.Sprite(&draw.Texture{W: 2, H: 1, Pixels: img}, 0, 0, 1, 1)
	l.Sprite(&draw.Texture{W: 2, H: 1, List: &draw.List{}}, 0, 0, 1, 1)
	var fills []string
	for _, n := range nodes(t, Element(l, Options{})) {
		if n.name == "path" {
			fills = append(fills, n.attr["fill"])
		}
	}
	if got, want := strings.Join(fills, " "), "#800080 #800080"; got != want {
		t.Errorf("the triangles are %s, want %s: the list texture is left out", got, want)
	}
}
