package qti

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/form"
	"cuesta/quiz/item"
)

// blueprint asks every kind there is.
func blueprint() form.Blueprint {
	b := form.Blueprint{Title: "Tarn Fell & Ostby: <all kinds>", Tolerance: quiz.DefaultTolerance, PassShare: .5, Seed: 5}
	for _, k := range item.Kinds() {
		b.Parts = append(b.Parts, form.Part{Kind: k.Name(), Count: 1, Points: 2, Attempts: 1,
			Spec: item.Spec{Tolerance: quiz.DefaultTolerance, Mix: quiz.DefaultMix}})
	}
	return b
}

func packed(t *testing.T, variants int) (map[string][]byte, []byte, []string) {
	t.Helper()
	var b bytes.Buffer
	left, err := Package(&b, blueprint(), variants)
	if err != nil {
		t.Fatal(err)
	}
	r, err := zip.NewReader(bytes.NewReader(b.Bytes()), int64(b.Len()))
	if err != nil {
		t.Fatal(err)
	}
	files := map[string][]byte{}
	for _, f := range r.File {
		if _, twice := files[f.Name]; twice {
			t.Errorf("%s stands in the package twice", f.Name)
		}
		rc, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		data, err := io.ReadAll(rc)
		if err != nil {
			t.Fatal(err)
		}
		files[f.Name] = data
	}
	return files, b.Bytes(), left
}

// node is an element of a document that was read back.
type node struct {
	XMLName  xml.Name
	Attrs    []xml.Attr `xml:",any,attr"`
	Children []node     `xml:",any"`
	Text     string     `xml:",chardata"`
}

func (n node) attr(name string) string {
	for _, a := range n.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func (n node) find(name string) (out []node) {
	if n.XMLName.Local == name {
		out = append(out, n)
	}
	for _, c := range n.Children {
		out = append(out, c.find(name)...)
	}
	return out
}

func parsed(t *testing.T, data []byte) node {
	t.Helper()
	var n node
	if err := xml.Unmarshal(data, &n); err != nil {
		t.Fatal(err)
	}
	return n
}

// TestShapesOfTheStandard holds the package to the rows "QTI 3" of the table of
// published values: namespaces, schema and version, resource type (1EdTech QTI
// 3.0 and its examples).
func TestShapesOfTheStandard(t *testing.T) {
	files, _, _ := packed(t, 3)
	m := parsed(t, files["imsmanifest.xml"])
	if m.XMLName.Space != "http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1" {
		t.Errorf("manifest: got namespace %q", m.XMLName.Space)
	}
	if s, v := m.find("schema")[0].Text, m.find("schemaversion")[0].Text; s != "QTI Package" || v != "3.0.0" {
		t.Errorf("got schema %q version %q, want QTI Package 3.0.0", s, v)
	}
	items := 0
	for _, r := range m.find("resource") {
		if _, ok := files[r.attr("href")]; !ok {
			t.Errorf("resource %s: no file %s", r.attr("identifier"), r.attr("href"))
		}
		if r.attr("type") != "imsqti_item_xmlv3p0" {
			continue
		}
		items++
		it := parsed(t, files[r.attr("href")])
		if it.XMLName.Space != "http://www.imsglobal.org/xsd/imsqtiasi_v3p0" || it.attr("identifier") != r.attr("identifier") {
			t.Errorf("%s: got %v %q", r.attr("href"), it.XMLName, it.attr("identifier"))
		}
	}
	if items < 12 {
		t.Errorf("got %d items, want at least 12", items)
	}
}

func TestEveryReferenceLeadsSomewhere(t *testing.T) {
	files, _, _ := packed(t, 2)
	m := parsed(t, files["imsmanifest.xml"])
	ids, listed := map[string]bool{}, map[string]bool{"imsmanifest.xml": true}
	for _, r := range m.find("resource") {
		if ids[r.attr("identifier")] {
			t.Errorf("identifier %s stands twice", r.attr("identifier"))
		}
		ids[r.attr("identifier")] = true
		for _, f := range r.find("file") {
			listed[f.attr("href")] = true
		}
	}
	for _, d := range m.find("dependency") {
		if !ids[d.attr("identifierref")] {
			t.Errorf("dependency on %s, which is no resource", d.attr("identifierref"))
		}
	}
	for name, data := range files {
		if !listed[name] {
			t.Errorf("%s is not in the manifest", name)
		}
		for _, img := range parsed(t, data).find("img") {
			if _, ok := files[path.Join(path.Dir(name), img.attr("src"))]; !ok || img.attr("alt") == "" {
				t.Errorf("%s: figure %q with text %q", name, img.attr("src"), img.attr("alt"))
			}
		}
	}
	for _, sec := range parsed(t, files["test.xml"]).find("qti-assessment-section") {
		if n := len(sec.find("qti-assessment-item-ref")); n != 2 || sec.find("qti-selection")[0].attr("select") != "1" {
			t.Errorf("section %s: %d variants, select %q", sec.attr("identifier"), n, sec.find("qti-selection")[0].attr("select"))
		}
	}
}

func TestSameQuizSameBytes(t *testing.T) {
	_, a, _ := packed(t, 3)
	_, b, left := packed(t, 3)
	if !bytes.Equal(a, b) {
		t.Error("two packages of the same quiz differ")
	}
	if got := strings.Join(left, "\n"); !strings.Contains(got, "measure-slab") || !strings.Contains(got, "draw-symbol") {
		t.Errorf("left out: got %q, want the bench and the drawing named", got)
	}
}

// score runs the response processing of an item: the few operators the package
// uses, as QTI 3.0 defines them.
func score(t *testing.T, it node, answers map[string]string) float64 {
	right, total := map[string]string{}, 0.0
	for _, d := range it.find("qti-response-declaration") {
		right[d.attr("identifier")] = d.find("qti-value")[0].Text
	}
	var truth func(node) bool
	truth = func(n node) bool {
		switch n.XMLName.Local {
		case "qti-and":
			for _, c := range n.Children {
				if !truth(c) {
					return false
				}
			}
			return true
		case "qti-or":
			for _, c := range n.Children {
				if truth(c) {
					return true
				}
			}
			return false
		case "qti-not":
			return !truth(n.Children[0])
		case "qti-is-null":
			return answers[n.Children[0].attr("identifier")] == ""
		case "qti-equal":
			x, err := strconv.ParseFloat(answers[n.Children[0].attr("identifier")], 64)
			v, _ := strconv.ParseFloat(n.Children[1].Text, 64)
			off, _ := strconv.ParseFloat(n.attr("tolerance"), 64)
			if n.attr("tolerance-mode") != "absolute" {
				t.Fatalf("tolerance mode %q", n.attr("tolerance-mode"))
			}
			return err == nil && x >= v-off && x <= v+off
		case "qti-string-match":
			return strings.EqualFold(answers[n.Children[0].attr("identifier")], n.Children[1].Text)
		case "qti-match":
			return answers[n.Children[0].attr("identifier")] == right[n.Children[1].attr("identifier")]
		}
		t.Fatalf("operator %s", n.XMLName.Local)
		return false
	}
	for _, c := range it.find("qti-response-if") {
		if truth(c.Children[0]) {
			v, _ := strconv.ParseFloat(c.find("qti-base-value")[len(c.find("qti-base-value"))-1].Text, 64)
			total += v
		}
	}
	return total
}

func TestKeysEarnTheWholeMark(t *testing.T) {
	files, _, _ := packed(t, 4)
	for name, data := range files {
		if !strings.HasPrefix(name, "items/") {
			continue
		}
		it := parsed(t, data)
		answers := map[string]string{}
		for _, d := range it.find("qti-response-declaration") {
			answers[d.attr("identifier")] = d.find("qti-value")[0].Text
		}
		if got := score(t, it, answers); got != 1 {
			t.Errorf("%s: the key earns %v, want 1", name, got)
		}
		if got := score(t, it, map[string]string{}); got != 0 {
			t.Errorf("%s: no answer earns %v, want 0", name, got)
		}
	}
}

func TestNumbersMeetAtNorth(t *testing.T) {
	q := question{id: "Q", item: anItem(t, "dip-direction"), parts: []part{number("RESPONSE", "azimuth", "°", 359, 2, true, 1)}}
	it := parsed(t, q.xml())
	for answer, want := range map[string]float64{"359": 1, "357": 1, "356.9": 0, "0": 1, "360": 1, "1": 1, "361": 1, "1.1": 0, "-1": 1, "179": 0, "": 0, "north": 0} {
		if got := score(t, it, map[string]string{"RESPONSE": answer}); got != want {
			t.Errorf("359 within 2, answered %q: got %v, want %v", answer, got, want)
		}
	}
}

// TestPackageMarksAsTheProgram compares the package's marking of numbers with
// the item's own, near and far from the key.
func TestPackageMarksAsTheProgram(t *testing.T) {
	for _, k := range item.Kinds() {
		for seed := range uint64(40) {
			spec := item.Spec{Tolerance: quiz.DefaultTolerance, Mix: quiz.DefaultMix}
			it, err := k.Deal(spec, rand.New(rand.NewPCG(seed, 1)))
			if err != nil {
				t.Fatal(err)
			}
			q, ok := newQuestion("Q", it)
			if !ok || it.Ask().Kind != item.AskNumber {
				continue
			}
			n := parsed(t, q.xml())
			for _, off := range []float64{0, .9, -.9, 1.1, -1.1, 10, 180} {
				x := it.Ask().Value + off*it.Ask().Tolerance
				text := strconv.FormatFloat(x, 'f', 6, 64)
				want := it.Mark(text, item.Evidence{})
				if got := score(t, n, map[string]string{"RESPONSE": text}) == 1; got != want.Right && !want.Refused {
					t.Errorf("%s %q for %s: package says %v, program %v", k.Name(), text, it.Key(), got, want.Right)
				}
			}
		}
	}
}

func anItem(t *testing.T, kind string) item.Item {
	t.Helper()
	k, ok := item.KindNamed(kind)
	if !ok {
		k = item.Kinds()[1]
	}
	it, err := k.Deal(item.Spec{Tolerance: quiz.DefaultTolerance, Mix: quiz.DefaultMix}, rand.New(rand.NewPCG(1, 1)))
	if err != nil {
		t.Fatal(err)
	}
	return it
}

// TestPlanesAreAskedInTheirNotation: a form that could be two, 125/30, is asked
// for by the name of the right one.
func TestPlanesAreAskedInTheirNotation(t *testing.T) {
	first := map[orient.Notation]string{orient.AzimuthDip: "STRIKE", orient.DirectionDip: "DIRECTION", orient.PoleNotation: "TREND", orient.Quadrant: "RESPONSE"}
	seen := map[orient.Notation]int{}
	k, _ := item.KindNamed("convert-notation")
	for seed := range uint64(200) {
		it, err := k.Deal(item.Spec{Tolerance: quiz.DefaultTolerance, Mix: quiz.DefaultMix}, rand.New(rand.NewPCG(seed, 1)))
		if err != nil {
			t.Fatal(err)
		}
		n := it.Ask().Notation
		q, ok := newQuestion("Q", it)
		if !ok || q.parts[0].ID != first[n] {
			t.Fatalf("%s %q: got %+v, want %s first", it.Prompt(), it.Key(), q.parts, first[n])
		}
		if seen[n]++; len(q.parts) == 2 {
			for _, p := range q.parts {
				if !strings.Contains(it.Key(), fmt.Sprintf("%02.0f", p.Number[0].Value)) {
					t.Errorf("%s: %s is %v", it.Key(), p.ID, p.Number[0].Value)
				}
			}
		}
	}
	if len(seen) != 4 {
		t.Errorf("seen %v, want all four notations", seen)
	}
}

func TestBearingsAreTakenInTheirUsualForms(t *testing.T) {
	k, _ := item.KindNamed("convert-notation")
	seen := 0
	for seed := range uint64(200) {
		it, err := k.Deal(item.Spec{Notation: orient.Quadrant, Tolerance: quiz.DefaultTolerance, Mix: quiz.DefaultMix}, rand.New(rand.NewPCG(seed, 1)))
		if err != nil {
			t.Fatal(err)
		}
		q, ok := newQuestion("Q", it)
		if !ok || q.parts[0].Base != "string" {
			continue
		}
		seen++
		n := parsed(t, q.xml())
		for _, form := range q.parts[0].Texts {
			if score(t, n, map[string]string{"RESPONSE": strings.ToLower(form)}) != 1 || !it.Mark(form, item.Evidence{}).Right {
				t.Errorf("%s: %q is not taken", it.Key(), form)
			}
		}
		if len(q.parts[0].Texts) < 6 {
			t.Errorf("%s: only %q are taken", it.Key(), q.parts[0].Texts)
		}
	}
	if seen < 10 {
		t.Errorf("only %d quadrant answers among 200", seen)
	}
}

// TestIndependentReader lets xmllint (libxml2) read every document.
func TestIndependentReader(t *testing.T) {
	lint, err := exec.LookPath("xmllint")
	if err != nil {
		t.Fatal("xmllint is missing: apt-get install libxml2-utils, as go run ./cmd/dev test does")
	}
	files, _, _ := packed(t, 2)
	dir := t.TempDir()
	var names []string
	for name, data := range files {
		to := filepath.Join(dir, strings.ReplaceAll(name, "/", "-"))
		if err := os.WriteFile(to, data, 0o600); err != nil {
			t.Fatal(err)
		}
		names = append(names, to)
	}
	if out, err := exec.Command(lint, append([]string{"--noout", "--nonet"}, names...)...).CombinedOutput(); err != nil {
		t.Errorf("%v: %s", err, out)
	}
}

func TestVariantsOutOfRange(t *testing.T) {
	for _, n := range []int{0, -1, MostVariants + 1} {
		if _, err := Package(io.Discard, blueprint(), n); err == nil {
			t.Errorf("%d variants: got no error", n)
		}
	}
	b := blueprint()
	b.Parts = b.Parts[:1] // the bench alone
	if _, err := Package(io.Discard, b, 1); err == nil || !strings.Contains(fmt.Sprint(err), "learning system") {
		t.Errorf("nothing to pack: got %v", err)
	}
}

// What the program takes a package takes too: either end of a vertical bed; and
// it asks for no word where only numbers can be written.
func TestAVerticalBedHasBothItsEnds(t *testing.T) {
	k, _ := item.KindNamed("read-symbol")
	seen := 0
	for seed := range uint64(200) {
		it, err := k.Deal(item.Spec{}, rand.New(rand.NewPCG(seed, 1)))
		if err != nil {
			t.Fatal(err)
		}
		q, ok := newQuestion("q", it)
		if !ok {
			continue
		}
		if body := string(q.xml()); strings.Contains(body, "write overturned") || !strings.Contains(body, "Which plane does the symbol") {
			t.Fatalf("%s: the question asks for a word: %s", it.Key(), body)
		}
		e, err := orient.Parse(it.Key(), orient.AzimuthDip)
		if err != nil {
			t.Fatal(err)
		}
		ends := map[string]bool{}
		for _, w := range q.parts[0].Number {
			ends[orient.AzimuthOf(orient.Angle(w.Value)*orient.Degree).String()] = true
		}
		want := 1
		if e.Plane.Dip == orient.Right {
			want = 2
			seen++
		}
		if len(ends) != want {
			t.Errorf("%s: got the directions %v, want %d", it.Key(), ends, want)
		}
	}
	if seen == 0 {
		t.Error("no vertical bed was dealt")
	}
}
