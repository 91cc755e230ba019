package scenes

import (
	"strings"
	"testing"

	"cuesta/quiz/item"
)

// The word that a question asks for can be written by pointer alone, once.
func TestOverturnedIsWrittenByPointerAlone(t *testing.T) {
	m := newMemory(t, 6)
	p := NewPaper(m, Settings{})
	k := sheetHands{p, 390, 844}
	k.press()
	key := padKeyOf(t, overturnedSign)
	asked := 0
	for i, it := range m.items {
		p.goTo(i)
		p.pad = false
		k.press()
		if a := it.Ask(); a.Kind == item.AskChoice || !p.open() {
			continue
		}
		k.click(t, idKeypad)
		if has := p.Description().Find(key) != nil; has != it.Ask().WayUp {
			t.Errorf("%s: the key of the word is there: %v, want %v", it.Kind().Name(), has, it.Ask().WayUp)
		}
		if !it.Ask().WayUp {
			continue
		}
		asked++
		for _, r := range "230" {
			k.click(t, padKeyOf(t, string(r)))
		}
		k.click(t, key)
		k.click(t, key)
		if got := p.note.String(); !strings.HasSuffix(got, "230 overturned") {
			t.Errorf("%s: the field holds %q", it.Kind().Name(), got)
		}
	}
	if asked == 0 {
		t.Fatal("no question asks for the word")
	}
}
