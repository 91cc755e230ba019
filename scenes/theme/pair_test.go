package theme

import (
	"reflect"
	"testing"

	"cuesta/scenes/draw"
)

// numbered is a palette in which every colour is another one.
func numbered(flat bool) (*Theme, map[draw.Color]string) {
	t := &Theme{Flat: flat}
	names := map[draw.Color]string{}
	v := reflect.ValueOf(t).Elem()
	for i := range v.NumField() {
		if c, ok := v.Field(i).Addr().Interface().(*draw.Color); ok {
			*c = rgb(uint32(i + 1))
			names[*c] = v.Type().Field(i).Name
		}
	}
	return t, names
}

// A colour that joins the palette must join a pair, or be called an ornament
// with a reason.
func TestEveryColourIsPairedOrAnOrnament(t *testing.T) {
	for _, flat := range []bool{false, true} {
		th, names := numbered(flat)
		if len(names) < 40 {
			t.Fatalf("got %d colours, want the whole palette", len(names))
		}
		for _, p := range th.Pairs() {
			delete(names, p.Ink)
			delete(names, p.Under)
		}
		for _, c := range th.Ornaments() {
			delete(names, c)
		}
		for _, left := range names {
			t.Errorf("flat %v: %s is in no pair and no ornament", flat, left)
		}
	}
}

func TestNoPairIsListedTwiceOrIsOneColour(t *testing.T) {
	th, _ := numbered(false)
	words := map[string]bool{}
	for _, p := range th.Pairs() {
		if p.Ink == p.Under {
			t.Errorf("%s: a colour on itself", p.What)
		}
		if words[p.What] {
			t.Errorf("%s: listed twice", p.What)
		}
		words[p.What] = true
	}
}
