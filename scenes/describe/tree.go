// Package describe holds what a screen is in words: roles, names, values and
// the order of the focus. Every front end that does not draw reads it, and the
// keyboard moves along it.
package describe

// Role says what a node is to a person.
type Role uint8

// The roles. They are those of WAI-ARIA where it has one.
const (
	Group Role = iota
	Heading
	Label
	Image
	Button
	Field
	Toggle
	Choice // one of several: radio
	Status // told when it changes, without moving the focus
	Line   // of a text that is gone through line by line: listitem
)

// Rect is a place on the screen in pixels, y down.
type Rect struct{ X, Y, W, H float64 }

// Contains says whether (x, y) lies in the rectangle.
func (r Rect) Contains(x, y float64) bool {
	return x >= r.X && y >= r.Y && x < r.X+r.W && y < r.Y+r.H
}

// Node is one thing on the screen.
type Node struct {
	ID        ID
	Role      Role
	Name      string // what it is called, in words
	Value     string // what it holds or shows now, in words
	Keys      string // the key that works it, in words, or ""
	Group     string // the name of the group of controls it belongs to, or ""
	Focusable bool
	Disabled  bool
	On        bool  // for Toggle and Choice
	Writes    Signs // of a Field: what belongs into it
	Again     int   // of a Status: rises when the same words are told once more
	Bounds    Rect
	Children  []Node
}

// Signs are what belongs into a field, so that a device without keys can offer
// those that are wanted.
type Signs uint8

// The kinds.
const (
	AnySigns Signs = iota
	Decimals       // a number, of figures and a point
)

// ID tells nodes of one scene apart; each scene has its own list.
type ID uint16

// Tree is the description of a whole screen.
type Tree struct {
	Root   Node
	Focus  ID   // the node that has the keyboard, or 0
	Acting bool // something is being done, and will be told before what has come of it
}

// Order returns the focusable, enabled nodes in reading order.
func (t *Tree) Order() []*Node {
	var out []*Node
	t.Root.walk(func(n *Node) {
		if n.Focusable && !n.Disabled {
			out = append(out, n)
		}
	})
	return out
}

// Find returns the node with the ID, or nil.
func (t *Tree) Find(id ID) *Node {
	var found *Node
	t.Root.walk(func(n *Node) {
		if n.ID == id && id != 0 {
			found = n
		}
	})
	return found
}

func (n *Node) walk(f func(*Node)) {
	f(n)
	for i := range n.Children {
		n.Children[i].walk(f)
	}
}
