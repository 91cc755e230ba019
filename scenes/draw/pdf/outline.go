package pdf

import (
	"fmt"
	"strings"
)

// outline adds the bookmarks (ISO 32000-1, 12.3.3) as one flat list.
func (d *Document) outline(f *file) error {
	if len(d.marks) == 0 {
		return nil
	}
	top := f.add()
	first := f.last + 1
	for i, m := range d.marks {
		n := f.add()
		var way strings.Builder
		if i > 0 {
			fmt.Fprintf(&way, " /Prev %d 0 R", n-1)
		}
		if i < len(d.marks)-1 {
			fmt.Fprintf(&way, " /Next %d 0 R", n+1)
		}
		f.set(n, "<</Title %s /Parent %d 0 R%s /Dest [%d 0 R /Fit]>>", textString(m.text), top, way.String(), pageObject(m.page))
	}
	f.set(top, "<</Type /Outlines /First %d 0 R /Last %d 0 R /Count %d>>", first, f.last, len(d.marks))
	return f.extend(f.root, fmt.Sprintf("/Outlines %d 0 R", top))
}
