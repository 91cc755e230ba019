package browse

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/chromedp/cdproto/accessibility"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// Node is one thing in the accessibility tree: what a screen reader is told of
// it, and nothing else.
type Node struct {
	Role, Name, Value, Description string
	Keys                           string // aria-keyshortcuts
	Checked                        bool   // checked or pressed
	Disabled, Focusable, Focused   bool

	backend cdp.BackendNodeID
}

// String is the node as a line.
func (n Node) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s %q", n.Role, n.Name)
	for _, w := range []struct {
		on   bool
		word string
	}{{n.Value != "", fmt.Sprintf(" = %q", n.Value)}, {n.Description != "", fmt.Sprintf(" (%s)", n.Description)},
		{n.Checked, " on"}, {n.Disabled, " disabled"}, {n.Focused, " focused"}} {
		if w.on {
			b.WriteString(w.word)
		}
	}
	return b.String()
}

// Tree is the accessibility tree of a page in reading order.
type Tree []Node

// String is the tree, a node a line.
func (t Tree) String() string {
	var b strings.Builder
	for _, n := range t {
		b.WriteString(n.String() + "\n")
	}
	return b.String()
}

// Tree asks the browser for the accessibility tree.
func (t *Tab) Tree() (Tree, error) {
	r, err := chromedp.Call(t.ctx, accessibility.GetFullAXTree, accessibility.GetFullAXTreeParams{})
	if err != nil {
		return nil, err
	}
	byID := map[accessibility.NodeID]*accessibility.Node{}
	for _, n := range r.Nodes {
		byID[n.NodeID] = n
	}
	var out Tree
	var walk func(n *accessibility.Node, above string)
	walk = func(n *accessibility.Node, above string) {
		if n == nil {
			return
		}
		if !n.Ignored {
			one := nodeOf(n)
			if one.Role == "InlineTextBox" {
				return
			}
			if one.Role != "StaticText" || one.Name != above {
				out = append(out, one)
			}
			above = one.Name
		}
		for _, c := range n.ChildIDs {
			walk(byID[c], above)
		}
	}
	if len(r.Nodes) > 0 {
		walk(r.Nodes[0], "")
	}
	return out, nil
}

func nodeOf(n *accessibility.Node) Node {
	out := Node{Role: textOf(n.Role), Name: textOf(n.Name), Value: textOf(n.Value), Description: textOf(n.Description),
		backend: n.BackendDOMNodeID}
	for _, p := range n.Properties {
		on := textOf(p.Value) == "true"
		switch p.Name {
		case accessibility.PropertyNameKeyshortcuts:
			out.Keys = textOf(p.Value)
		case accessibility.PropertyNameChecked, accessibility.PropertyNamePressed:
			out.Checked = on
		case accessibility.PropertyNameDisabled:
			out.Disabled = on
		case accessibility.PropertyNameFocusable:
			out.Focusable = on
		case accessibility.PropertyNameFocused:
			out.Focused = on
		}
	}
	return out
}

// textOf is a value of the tree in words.
func textOf(v *accessibility.Value) string {
	if v == nil || len(v.Value) == 0 {
		return ""
	}
	var s string
	if json.Unmarshal([]byte(v.Value), &s) == nil {
		return s
	}
	return string(v.Value)
}

// ErrNotThere is returned for a node the tree does not hold.
var ErrNotThere = errors.New("not in the accessibility tree")

// Find returns the node of a role whose name is or begins as given.
func (t Tree) Find(role, name string) (Node, error) {
	for _, whole := range []bool{true, false} {
		i := slices.IndexFunc(t, func(n Node) bool {
			return n.Role == role && (n.Name == name || !whole && strings.HasPrefix(n.Name, name))
		})
		if i >= 0 {
			return t[i], nil
		}
	}
	return Node{}, fmt.Errorf("%w: %s %q", ErrNotThere, role, name)
}

// Says says whether the tree holds words anywhere.
func (t Tree) Says(words string) bool {
	return slices.ContainsFunc(t, func(n Node) bool {
		return strings.Contains(n.Name, words) || strings.Contains(n.Value, words) || strings.Contains(n.Description, words)
	})
}

// Focused is the node that has the keyboard; the page itself does not count.
func (t Tree) Focused() (Node, bool) {
	for _, n := range t {
		if n.Focused && n.Role != "RootWebArea" {
			return n, true
		}
	}
	return Node{}, false
}

// Press does to a node what a screen reader does when it is told to press it.
func (t *Tab) Press(n Node) error {
	if n.Disabled {
		return fmt.Errorf("%s cannot be pressed", n)
	}
	return t.on(n, `function () { this.click(); }`)
}

// Focus gives a node the keyboard.
func (t *Tab) Focus(n Node) error {
	_, err := chromedp.Call(t.ctx, dom.Focus, dom.FocusParams{BackendNodeID: n.backend})
	return err
}

// Write makes a text field hold a text, as speech and Braille input do.
func (t *Tab) Write(n Node, text string) error {
	quoted, err := json.Marshal(text)
	if err != nil {
		return err
	}
	return t.on(n, `function () {
		this.focus();
		this.value = `+string(quoted)+`;
		this.dispatchEvent(new InputEvent("input", {bubbles: true, inputType: "insertReplacementText", data: this.value}));
	}`)
}

// on runs a function with a node as this.
func (t *Tab) on(n Node, function string) error {
	r, err := chromedp.Call(t.ctx, dom.ResolveNode, dom.ResolveNodeParams{BackendNodeID: n.backend})
	if err != nil {
		return fmt.Errorf("%s: %w", n, err)
	}
	_, err = chromedp.Call(t.ctx, runtime.CallFunctionOn,
		runtime.CallFunctionOnParams{FunctionDeclaration: function, ObjectID: r.Object.ObjectID})
	return err
}

// Until asks for the tree until it is as wanted.
func (t *Tab) Until(what string, yes func(Tree) bool) (Tree, error) {
	var last Tree
	err := Await(what, 40*time.Second, func() (bool, error) {
		tree, err := t.Tree()
		if err != nil {
			return false, err
		}
		last = tree
		return yes(tree), nil
	})
	if err != nil {
		err = fmt.Errorf("%w; the tree is:\n%s", err, last)
	}
	return last, err
}

// Box is where a node is on the screen, in CSS pixels.
func (t *Tab) Box(n Node) (x, y, w, h float64, err error) {
	r, err := chromedp.Call(t.ctx, dom.ResolveNode, dom.ResolveNodeParams{BackendNodeID: n.backend})
	if err != nil {
		return 0, 0, 0, 0, fmt.Errorf("%s: %w", n, err)
	}
	const f = `function () { const r = this.getBoundingClientRect(); return [r.x, r.y, r.width, r.height]; }`
	yes := true
	v, err := chromedp.Call(t.ctx, runtime.CallFunctionOn,
		runtime.CallFunctionOnParams{FunctionDeclaration: f, ObjectID: r.Object.ObjectID, ReturnByValue: &yes})
	if err != nil {
		return 0, 0, 0, 0, err
	}
	var b [4]float64
	err = json.Unmarshal([]byte(v.Result.Value), &b)
	return b[0], b[1], b[2], b[3], err
}
