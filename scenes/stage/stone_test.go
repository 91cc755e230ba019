package stage

import (
	"bytes"
	"testing"

	"cuesta/scenes/draw"
)

// Where pictures follow each other the stone comes at once and sharp soon after:
// at last it is the stone that a single picture shows.
func TestARoughStoneBecomesTheStone(t *testing.T) {
	p := planeOf(35, 30)
	q := params(p, level(p))
	var l draw.List
	alone, live := New(), New()
	alone.Draw(&l, q)
	want := alone.stone.texture
	l.Live = true
	first := 0
	for n := 1; ; n++ {
		l.Reset(928, 664)
		live.Draw(&l, q)
		got := live.stone.texture
		if n == 1 {
			first = got.W * got.H
		}
		if got.W == want.W {
			if !bytes.Equal(got.Pixels.Pix, want.Pixels.Pix) {
				t.Error("the stone that was made bit by bit differs")
			}
			if n < 10 {
				t.Errorf("the stone was made in %d pictures, want at least 10", n)
			}
			break
		}
		if n > 300 {
			t.Fatal("the stone stayed rough for 300 pictures")
		}
	}
	if most := want.W * want.H / 5; first > most {
		t.Errorf("the first stone has %d pixels, want at most %d", first, most)
	}
	if live.stone.rough != nil || live.stone.finer != nil {
		t.Error("the stone is still being made")
	}
}

// One picture by itself shows all there is, whatever came before it.
func TestALonePictureIsNeverRough(t *testing.T) {
	p := planeOf(35, 30)
	q := params(p, level(p))
	st := New()
	var l draw.List
	l.Live = true
	st.Draw(&l, q)
	l.Live = false
	l.Reset(928, 664)
	st.Draw(&l, q)
	if st.stone.px != st.stone.key.px {
		t.Errorf("painted with %g pixels per cm, want %g", st.stone.px, st.stone.key.px)
	}
}
