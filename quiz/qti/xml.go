package qti

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"strings"
)

// sheet is an XML document being written. Elements are closed in the order
// they were opened.
type sheet struct {
	b     bytes.Buffer
	stack []string
}

func document() *sheet {
	s := &sheet{}
	s.b.WriteString(`<?xml version="1.0" encoding="UTF-8"?>` + "\n")
	return s
}

// open begins an element; attributes are name and value in turn.
func (s *sheet) open(name string, attributes ...string) {
	s.indent()
	s.tag(name, attributes)
	s.b.WriteString(">\n")
	s.stack = append(s.stack, name)
}

// close ends the innermost n elements.
func (s *sheet) close(n int) {
	for range n {
		name := s.stack[len(s.stack)-1]
		s.stack = s.stack[:len(s.stack)-1]
		s.indent()
		fmt.Fprintf(&s.b, "</%s>\n", name)
	}
}

// empty writes an element without content.
func (s *sheet) empty(name string, attributes ...string) {
	s.indent()
	s.tag(name, attributes)
	s.b.WriteString("/>\n")
}

// text writes an element that holds text only.
func (s *sheet) text(name, text string, attributes ...string) {
	s.indent()
	s.tag(name, attributes)
	fmt.Fprintf(&s.b, ">%s</%s>\n", escaped(text), name)
}

func (s *sheet) indent() { s.b.WriteString(strings.Repeat("  ", len(s.stack))) }

func (s *sheet) tag(name string, attributes []string) {
	if len(attributes)%2 != 0 {
		panic("qti: an attribute of " + name + " has no value")
	}
	fmt.Fprintf(&s.b, "<%s", name)
	for i := 0; i < len(attributes); i += 2 {
		fmt.Fprintf(&s.b, ` %s="%s"`, attributes[i], escaped(attributes[i+1]))
	}
}

func escaped(s string) string {
	var b bytes.Buffer
	xml.EscapeText(&b, []byte(s)) // a buffer takes everything
	return b.String()
}

// bytes is the finished document.
func (s *sheet) bytes() []byte {
	if len(s.stack) > 0 {
		panic("qti: " + s.stack[len(s.stack)-1] + " is still open")
	}
	return s.b.Bytes()
}
