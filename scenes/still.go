package scenes

import (
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/scenes/session"
)

// Still draws a practice as it stands, as the bench would show it in a window
// of the size: for a front end that has no window.
func Still(s *session.Session, w, h float64, set Settings) (*draw.List, error) {
	b, err := NewBench(BenchOptions{Session: s})
	if err != nil {
		return nil, err
	}
	keep := b.set
	b.set.Theme, b.set.Text = set.Theme, set.Text
	b.set.Notation = keep.Notation
	b.Update(input.Frame{W: w, H: h, Scale: 1})
	var l draw.List
	b.Picture(&l)
	return &l, nil
}
