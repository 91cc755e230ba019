package item

import (
	"math/rand/v2"
	"testing"

	"cuesta/orient"
	"cuesta/quiz/mistake"
)

// answer is something typed, and how it should be marked.
type answer struct {
	typed string
	right bool
	kind  mistake.Kind // named, where known
	known bool
}

func right(typed string) answer                 { return answer{typed: typed, right: true} }
func wrong(typed string) answer                 { return answer{typed: typed} }
func named(typed string, k mistake.Kind) answer { return answer{typed: typed, kind: k, known: true} }
func plane(strike, dip float64) orient.Plane    { return orient.PlaneOf(deg(strike), deg(dip)) }
func deg(x float64) orient.Angle                { return orient.Angle(x) * orient.Degree }

// holdTo marks the answers.
func holdTo(t *testing.T, it Item, answers ...answer) {
	t.Helper()
	for _, a := range answers {
		m := it.Mark(a.typed, Evidence{})
		if m.Right != a.right || m.Refused {
			t.Errorf("%s\n%q: got %+v, want right %t", it.Prompt(), a.typed, m, a.right)
		}
		if a.known && !holds(m.Mistakes, a.kind) {
			t.Errorf("%s\n%q: got %+v, want %v", it.Prompt(), a.typed, m.Mistakes, a.kind)
		}
	}
}

// seen deals n items and says how often each property was seen.
func seen(t *testing.T, k Kind, s Spec, n int, properties map[string]func(Item) bool) {
	t.Helper()
	r := rand.New(rand.NewPCG(5, 9))
	counts := map[string]int{}
	for range n {
		it, err := k.Deal(s, r)
		if err != nil {
			t.Fatal(err)
		}
		for name, ok := range properties {
			if ok(it) {
				counts[name]++
			}
		}
	}
	for name := range properties {
		if got := counts[name]; got < n/100 {
			t.Errorf("%s: got %d of %d, want at least a hundredth", name, got, n)
		}
	}
}
