package item

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"strconv"
	"strings"
	"sync"
	"testing"

	"cuesta/orient"
	"cuesta/quiz"
)

// deals is how many random items of each kind the properties are held to.
const deals = 2000

// specOf is a random specification: every notation, places of either
// declination, mixes, ranges of dips and tolerances.
func specOf(r *rand.Rand) Spec {
	s := Spec{
		Notation:   orient.Notation(r.IntN(4)),
		Tolerance:  []quiz.Tolerance{{}, quiz.DefaultTolerance, quiz.SteppedTolerance}[r.IntN(3)],
		Mix:        []quiz.Mix{{}, quiz.GentleOnly, quiz.SteepOnly}[r.IntN(3)],
		RingPreset: r.IntN(2) == 0,
	}
	if r.IntN(3) == 0 {
		s.Declination = angle(signed(r, 0, 25))
	}
	if r.IntN(4) == 0 {
		s.DipMin, s.DipMax = angle(5+r.IntN(20)), angle(30+r.IntN(50))
	}
	return s
}

// deal is an item and what it was dealt from.
type deal struct {
	it   Item
	spec Spec
	seed uint64
}

// dealt are the random items of each kind, the same for every property.
var dealt = func() map[Kind]func() ([]deal, error) {
	m := map[Kind]func() ([]deal, error){}
	for _, k := range kinds {
		m[k] = sync.OnceValues(func() ([]deal, error) { return dealAll(k) })
	}
	return m
}()

func dealAll(k Kind) ([]deal, error) {
	r := rand.New(rand.NewPCG(7, 11))
	var out []deal
	for range deals {
		d := deal{spec: specOf(r), seed: r.Uint64()}
		var err error
		if d.it, err = k.Deal(d.spec, source(d.seed)); err != nil {
			return nil, fmt.Errorf("%+v, seed %d: %w", d.spec, d.seed, err)
		}
		out = append(out, d)
	}
	return out, nil
}

// each holds the items of every kind to the property.
func each(t *testing.T, property func(t *testing.T, it Item, s Spec, seed uint64)) {
	for _, k := range Kinds() {
		t.Run(k.Name(), func(t *testing.T) {
			t.Parallel()
			ds, err := dealt[k]()
			if err != nil {
				t.Fatalf("got %v, want items", err)
			}
			for _, d := range ds {
				if property(t, d.it, d.spec, d.seed); t.Failed() {
					t.Fatalf("spec %+v, seed %d: %s key %s", d.spec, d.seed, d.it.Prompt(), d.it.Key())
				}
			}
		})
	}
}

func source(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, 0x9e3779b97f4a7c15)) }

func TestTheKeyIsRight(t *testing.T) {
	each(t, func(t *testing.T, it Item, _ Spec, _ uint64) {
		if m := it.Mark(it.Key(), Evidence{}); !m.Right || m.Share != 1 || m.Refused || m.Understood == "" || m.Said == "" || len(m.Mistakes) != 0 {
			t.Errorf("got %+v, want right with the full share", m)
		}
	})
}

func TestTheSameSeedDealsTheSameItem(t *testing.T) {
	each(t, func(t *testing.T, it Item, s Spec, seed uint64) {
		again, err := it.Kind().Deal(s, source(seed))
		if err != nil || !reflect.DeepEqual(it, again) {
			t.Errorf("got %+v, %v, want %+v", again, err, it)
		}
	})
}

func TestNearIsReflexiveAndSymmetric(t *testing.T) {
	last := map[Kind]Item{}
	foreign, err := readDial{}.Deal(Spec{}, source(1))
	if err != nil {
		t.Fatal(err)
	}
	var mu sync.Mutex
	near := map[Kind]int{}
	each(t, func(t *testing.T, it Item, _ Spec, _ uint64) {
		mu.Lock()
		defer mu.Unlock()
		k := it.Kind()
		before, ok := last[k]
		if last[k] = it; !ok {
			return
		}
		if !it.Near(it) || it.Near(before) != before.Near(it) {
			t.Errorf("near %t, %t, %t of %+v and %+v, want true and the same", it.Near(it), it.Near(before), before.Near(it), it, before)
		}
		if k != foreign.Kind() && (it.Near(foreign) || foreign.Near(it)) {
			t.Errorf("near an item of another kind")
		}
		if it.Near(before) {
			near[k]++
		}
		if got := near[k]; got > deals/10 {
			t.Errorf("got %d of %d near the one before, want at most a tenth", got, deals)
		}
	})
}

func TestDifficultyIsAShare(t *testing.T) {
	each(t, func(t *testing.T, it Item, _ Spec, _ uint64) {
		if d := it.Difficulty(); !(d >= 0 && d <= 1) {
			t.Errorf("got %v, want from 0 to 1", d)
		}
	})
}

func TestAskAgreesWithTheKey(t *testing.T) {
	each(t, func(t *testing.T, it Item, _ Spec, _ uint64) {
		switch a := it.Ask(); a.Kind {
		case AskNumber:
			got := it.Mark(strconv.FormatFloat(a.Value, 'f', -1, 64), Evidence{})
			if !got.Right || !(a.Tolerance > 0) || a.Label == "" || a.Unit == "" {
				t.Errorf("got %+v for %+v, want right", got, a)
			}
			askEdges(t, it, a)
		case AskChoice:
			askChoices(t, it, a)
		case AskPlane, AskSymbol:
			if _, err := orient.Parse(it.Key(), a.Notation); err != nil || a.Label == "" {
				t.Errorf("got %v, want a key that reads as a plane", err)
			}
		case AskLine:
			t.Errorf("no kind asks for a line")
		}
	})
}

// askEdges holds the tolerance to both of its edges.
func askEdges(t *testing.T, it Item, a Ask) {
	for _, off := range []float64{-a.Tolerance, a.Tolerance} {
		x := a.Value + off
		if a.Wraps {
			x = wrap(x)
		}
		if x >= 0 {
			if m := it.Mark(fmt.Sprint(x), Evidence{}); !m.Right {
				t.Errorf("%v off: got %+v, want right", off, m)
			}
		}
		if x = x + off/10; !a.Wraps && x >= 0 {
			if m := it.Mark(fmt.Sprint(x), Evidence{}); m.Right {
				t.Errorf("%v off: got right, want wrong", off*1.1)
			}
		}
	}
	if a.Wraps {
		if m := it.Mark(fmt.Sprint(wrap(a.Value+180)), Evidence{}); m.Right || m.Share != 0 || m.Refused {
			t.Errorf("the opposite: got %+v, want wrong", m)
		}
	}
}

func askChoices(t *testing.T, it Item, a Ask) {
	if a.Right < 0 || a.Right >= len(a.Choices) || len(a.Choices) < 3 || a.Choices[a.Right] != it.Key() {
		t.Errorf("got %+v, want %s among them", a, it.Key())
		return
	}
	seen := map[string]bool{}
	for i, c := range a.Choices {
		if seen[strings.ToLower(c)] {
			t.Errorf("%q is offered twice", c)
		}
		seen[strings.ToLower(c)] = true
		for _, typed := range []string{string(rune('a' + i)), string(rune('A'+i)) + ")", strings.ToUpper(c)} {
			if m := it.Mark(typed, Evidence{}); m.Right != (i == a.Right) || m.Refused || m.Understood == "" || m.Said == "" {
				t.Errorf("%q: got %+v, want right %t", typed, m, i == a.Right)
			}
		}
	}
}

// mistaken are the wrong answers that a kind knows, as they would be typed,
// with the reason it should give.
func (q quantity) mistaken() map[string]reason {
	out := map[string]reason{}
	for _, s := range q.slips {
		if q.apart(s.value, q.value) > q.full && (q.exact || q.apart(s.value, q.value) > q.wide) {
			out[q.write(s.value)] = s.reason
		}
	}
	return out
}

func (p planar) mistaken() map[string]reason {
	out := map[string]reason{}
	for _, s := range p.slips {
		if !alike(s.plane, p.truth, p.tolerance) {
			out[orient.Format(s.plane, p.notation)] = s.reason
		}
	}
	return out
}

func TestKnownMistakesAreWrongAndNamed(t *testing.T) {
	each(t, func(t *testing.T, it Item, _ Spec, _ uint64) {
		known, ok := it.(interface{ mistaken() map[string]reason })
		if !ok {
			t.Fatalf("the kind knows no mistakes")
		}
		for typed, why := range known.mistaken() {
			m := it.Mark(typed, Evidence{})
			if m.Right || m.Share == 1 || m.Refused || m.Understood == "" || m.Said == "" {
				t.Errorf("%s: got %+v, want wrong", typed, m)
			}
			if why.known && !holds(m.Mistakes, why.kind) {
				t.Errorf("%s: got %+v, want %v", typed, m.Mistakes, why.kind)
			}
			if !why.known && !strings.Contains(strings.ToLower(m.Said), strings.ToLower(why.words)) {
				t.Errorf("%s: got %q, want %q", typed, m.Said, why.words)
			}
			for _, f := range m.Mistakes {
				if !(f.Probability > 0 && f.Probability <= 1) || f.Said == "" {
					t.Errorf("%s: got %+v, want a probability and words", typed, f)
				}
			}
		}
	})
}

// stands says whether the key stands by itself in a text.
func stands(text, key string) bool {
	for i := 0; ; {
		at := strings.Index(text[i:], key)
		if at < 0 {
			return false
		}
		from, to := i+at, i+at+len(key)
		before := from > 0 && wordy(text[from-1])
		after := to < len(text) && wordy(text[to]) && wordy(key[len(key)-1])
		if !before && !after {
			return true
		}
		i = from + 1
	}
}

func wordy(c byte) bool {
	return c >= '0' && c <= '9' || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == '/'
}

func TestNothingGivesTheAnswerAway(t *testing.T) {
	each(t, func(t *testing.T, it Item, _ Spec, _ uint64) {
		key := it.Key()
		for _, text := range append(it.Hints(), it.Prompt(), it.Alt()) {
			if stands(strings.ToLower(text), strings.ToLower(key)) {
				t.Errorf("%q gives %q away", text, key)
			}
		}
	})
}

func TestEveryItemIsWhole(t *testing.T) {
	each(t, func(t *testing.T, it Item, s Spec, _ uint64) {
		if it.Prompt() == "" || it.Key() == "" || len(it.Hints()) < 2 {
			t.Errorf("got %q, %q, %q, want words", it.Prompt(), it.Key(), it.Hints())
		}
		if (it.Figure() == nil) != (it.Alt() == "") {
			t.Errorf("got figure %v and alt %q, want both or none", it.Figure(), it.Alt())
		}
		for _, text := range append(it.Hints(), it.Prompt(), it.Alt()) {
			if strings.Contains(text, "%!") || strings.Contains(text, "  ") || strings.Contains(text, "NaN") {
				t.Errorf("got %q, want plain words", text)
			}
		}
		if b, ok := it.(AtBench); ok {
			if err := b.Setup().Check(); err != nil {
				t.Errorf("got %v, want a bench", err)
			}
		}
	})
}

func TestUnreadableAnswersAreExplained(t *testing.T) {
	each(t, func(t *testing.T, it Item, _ Spec, _ uint64) {
		for _, typed := range []string{"", " ", "?", "NaN", "1e999", "-1e5", "0x1F", strings.Repeat("9", 5000), "\xff\xfe"} {
			if m := it.Mark(typed, Evidence{}); !m.Refused || m.Right || m.Share != 0 || m.Said == "" || m.Understood == "" {
				t.Errorf("%.20q: got %+v, want a refusal with its reason", typed, m)
			}
		}
	})
}

func TestKindsAreNamedApart(t *testing.T) {
	names, titles := map[string]bool{}, map[string]bool{}
	for _, k := range Kinds() {
		if names[k.Name()] || titles[k.Title()] || k.Name() != strings.ToLower(k.Name()) || strings.ContainsAny(k.Name(), " _.") || k.Title() == "" {
			t.Errorf("got %q, %q, want a name and a title of its own", k.Name(), k.Title())
		}
		names[k.Name()], titles[k.Title()] = true, true
		if got, ok := KindNamed(k.Name()); !ok || got != k {
			t.Errorf("%s: got %v, want the kind", k.Name(), got)
		}
	}
	if _, ok := KindNamed("hammer"); ok {
		t.Error("got a kind named hammer, want none")
	}
}

func TestImpossibleSpecificationsAreRefused(t *testing.T) {
	nan := orient.Angle(math.NaN())
	for _, s := range []Spec{
		{Notation: 9},
		{Tolerance: quiz.Tolerance{Dip: -1}},
		{Mix: quiz.Mix{Gentle: -1}},
		{DipMin: nan},
		{DipMin: 50 * orient.Degree, DipMax: 40 * orient.Degree},
		{Declination: nan},
		{Declination: orient.Full},
	} {
		for _, k := range Kinds() {
			if it, err := k.Deal(s, source(1)); err == nil || it != nil {
				t.Errorf("%s, %+v: got %v, %v, want an error", k.Name(), s, it, err)
			}
		}
	}
}

func FuzzMark(f *testing.F) {
	for i, typed := range []string{"035", "35°", "N35E", "26°15'", "58 %", "b", "to the east", "035/30", "30→125", "N35E 30SE", "−5", "1,5"} {
		f.Add(uint8(i), uint64(i), typed)
	}
	f.Fuzz(func(t *testing.T, kind uint8, seed uint64, typed string) {
		k := kinds[int(kind)%len(kinds)]
		it, err := k.Deal(specOf(source(seed)), source(seed))
		if err != nil {
			t.Fatal(err)
		}
		m := it.Mark(typed, Evidence{})
		if !(m.Share >= 0 && m.Share <= 1) || m.Right && m.Share != 1 || m.Refused && m.Share != 0 || m.Said == "" || m.Understood == "" {
			t.Errorf("%s, %q: got %+v, want a whole mark", k.Name(), typed, m)
		}
	})
}

func (c choice) mistaken() map[string]reason {
	out := map[string]reason{}
	for i, o := range c.options {
		if i != c.right {
			out[o.words] = o.reason
		}
	}
	return out
}
