package window

import (
	"encoding/json"
	"hash/maphash"
	"math"

	"cuesta/scenes/describe"
)

// mirrored is the description of a screen as the page takes it.
type mirrored struct {
	Seen  int         `json:"seen"`  // events of the page that the screen knows of
	Focus describe.ID `json:"focus"` // the control that has the keyboard, or 0
	Say   []string    `json:"say,omitempty"`
	Root  part        `json:"root"`
}

// part is one node. Box is its place in pixels of the page.
type part struct {
	ID       describe.ID `json:"id,omitempty"`
	Role     string      `json:"role"`
	Name     string      `json:"name,omitempty"`
	Value    string      `json:"value,omitempty"`
	Keys     string      `json:"keys,omitempty"`
	Group    string      `json:"group,omitempty"`
	Can      bool        `json:"can,omitempty"` // have the focus
	Disabled bool        `json:"disabled,omitempty"`
	On       bool        `json:"on,omitempty"`
	Writes   string      `json:"writes,omitempty"` // the inputmode of a field (HTML, 6.8.7)
	Box      [4]float64  `json:"box"`
	Parts    []part      `json:"parts,omitempty"`
}

// roleOnPage names a role for the page.
func roleOnPage(r describe.Role) string {
	switch r {
	case describe.Group:
		return "group"
	case describe.Heading:
		return "heading"
	case describe.Label:
		return "label"
	case describe.Image:
		return "image"
	case describe.Button:
		return "button"
	case describe.Field:
		return "field"
	case describe.Toggle:
		return "toggle"
	case describe.Choice:
		return "choice"
	case describe.Status:
		return "status"
	case describe.Line:
		return "line"
	}
	return "group"
}

// partOf is a node for the page; scale is how many device pixels a pixel of the
// page has.
func partOf(n *describe.Node, scale float64) part {
	b := n.Bounds
	p := part{ID: n.ID, Role: roleOnPage(n.Role), Name: n.Name, Value: n.Value, Keys: n.Keys, Group: n.Group,
		Can: n.Focusable, Disabled: n.Disabled, On: n.On,
		Box: [4]float64{tenth(b.X / scale), tenth(b.Y / scale), tenth(b.W / scale), tenth(b.H / scale)}}
	if n.Role == describe.Field {
		p.Writes = [...]string{describe.AnySigns: "text", describe.Decimals: "decimal"}[n.Writes]
	}
	for i := range n.Children {
		p.Parts = append(p.Parts, partOf(&n.Children[i], scale))
	}
	return p
}

func tenth(x float64) float64 { return math.Round(x*10) / 10 }

// mirrorOf is a screen as the page takes it, as JSON.
func mirrorOf(t *describe.Tree, seen int, say []string, scale float64) ([]byte, error) {
	return json.Marshal(mirrored{seen, t.Focus, say, partOf(&t.Root, scale)})
}

// markOf differs, as good as always, where two descriptions do.
func markOf(h *maphash.Hash, t *describe.Tree) uint64 {
	h.Reset()
	numbers(h, uint64(t.Focus))
	mark(h, &t.Root)
	return h.Sum64()
}

func mark(h *maphash.Hash, n *describe.Node) {
	for _, s := range [...]string{n.Name, n.Value, n.Keys, n.Group} {
		h.WriteString(s)
		h.WriteByte(0xff)
	}
	h.WriteByte(byte(n.Writes))
	flags := byte(n.Role) << 3
	for i, on := range [...]bool{n.Focusable, n.Disabled, n.On} {
		if on {
			flags |= 1 << i
		}
	}
	h.WriteByte(flags)
	numbers(h, uint64(n.ID), math.Float64bits(n.Bounds.X), math.Float64bits(n.Bounds.Y),
		math.Float64bits(n.Bounds.W), math.Float64bits(n.Bounds.H), uint64(len(n.Children)))
	for i := range n.Children {
		mark(h, &n.Children[i])
	}
}

func numbers(h *maphash.Hash, ns ...uint64) {
	for _, n := range ns {
		var b [8]byte
		for i := range b {
			b[i] = byte(n >> (8 * i))
		}
		h.Write(b[:])
	}
}
