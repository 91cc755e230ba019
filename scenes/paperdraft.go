package scenes

import (
	"fmt"
	"strings"
)

// draft is what is written for question i, can be kept and is not, or "".
func (p *Paper) draft(i int) string {
	text := p.drafts[i]
	if i == p.at {
		text = strings.TrimSpace(p.note.String())
	}
	if p.done != "" || text == p.sit.Given(i) || p.sit.Left(i) == 0 {
		return ""
	}
	return text
}

// putAside lays by what is written and not kept, until one comes back.
func (p *Paper) putAside() {
	if p.drafts == nil {
		p.drafts = map[int]string{}
	}
	p.drafts[p.at] = p.draft(p.at)
}

// unkept says what is left unkept at question i, or "".
func (p *Paper) unkept(i int) string {
	if text := p.draft(i); text != "" {
		return fmt.Sprintf("Question %d: %s is not kept yet.", i+1, text)
	}
	return ""
}
