package paper

import "math"

// evenly fills as few pages as can be, each as full as the others as far as that
// goes, and spreads the blocks of a page a little where there is room.
func (s section) evenly(room float64) [][]placed {
	var out [][]placed
	breaks := s.breaks(room)
	for from := 0; from < len(s.blocks); {
		blocks := s.blocks[from:breaks[from]]
		from = breaks[from]
		gap := blockGap
		if n := len(blocks) - 1; n > 0 {
			gap += max(0, min(blockGap, (room-stacked(blocks))/float64(n)))
		}
		var page []placed
		y := marginTop
		for _, b := range blocks {
			page = append(page, placed{b, y})
			y += b.height + gap
		}
		out = append(out, page)
	}
	return out
}

// stacked is the height of blocks one below the other.
func stacked(blocks []block) float64 {
	h := blockGap * float64(len(blocks)-1)
	for _, b := range blocks {
		h += b.height
	}
	return h
}

// filled is how blocks may lie on pages: on how many, and the squares of what is
// left empty on each. Of two that are as good the first pages hold more.
type filled struct {
	pages int
	empty float64
}

func (f filled) asGood(g filled) bool {
	return f.pages < g.pages || f.pages == g.pages && f.empty <= g.empty
}

// breaks says for each block where the page ends that begins with it.
func (s section) breaks(room float64) []int {
	n := len(s.blocks)
	ends, best := make([]int, n), make([]filled, n+1)
	for i := n - 1; i >= 0; i-- {
		best[i] = filled{pages: math.MaxInt}
		for j := i + 1; j <= n; j++ {
			left := room - stacked(s.blocks[i:j])
			if left < 0 && j > i+1 {
				break
			}
			left = max(0, left)
			if f := (filled{best[j].pages + 1, best[j].empty + left*left}); f.asGood(best[i]) {
				ends[i], best[i] = j, f
			}
		}
	}
	return ends
}
