package draw

// Over lays one plain mesh over the whole picture as it stands, across all its
// regions. Each region gets it as its last item, so that a painter that clips
// to regions shows the whole of it.
func (l *List) Over(draw func(*Pen)) {
	items, n := len(l.Items), len(l.Meshes)
	p := l.Open(nil)
	draw(&p)
	p.Done()
	if len(l.Meshes) == n {
		return
	}
	mesh := Item{OpMesh, n}
	l.Items = l.Items[:items]
	var out []Item
	for i, it := range l.Items {
		if it.Op == OpRegion && i > 0 {
			out = append(out, mesh)
		}
		out = append(out, it)
	}
	l.Items = append(append(l.Items[:0], out...), mesh)
}
