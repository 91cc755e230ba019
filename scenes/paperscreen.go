package scenes

import (
	"math"

	"cuesta/orient"
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// paperScreen is a form as it stands on the screen.
type paperScreen struct {
	key     paperKey
	made    bool
	lay     layout
	tree    describe.Tree
	zones   [zoneCount]zone
	figure  draw.Texture
	figured figureKey
	beside  bool      // the figure has a column of its own
	room    draw.Rect // of the figure, or empty where it is not on the screen
}

type paperKey struct {
	w, h, scale  float64
	set          Settings
	at, caret    int
	text, said   string
	given        string
	caretOn      bool
	review, more bool
	pad, fresh   bool
	large        bool
	page         int
	done         string
	focus        describe.ID
	hints        int
	flagged      bool
	left         int
	remaining    string
	manner       manner
}

// figureKey is what the figure was last painted for.
type figureKey struct {
	at    int
	w, h  float64
	th    theme.Name
	plane orient.Plane
}

func (s *paperScreen) keyOf(p *Paper) paperKey {
	taken, _, _ := p.sit.Hints(p.at)
	words, _ := p.sit.Remaining()
	return paperKey{
		w: p.frame.W, h: p.frame.H, scale: p.frame.Scale, set: p.set, at: p.at, caret: p.note.caret,
		text: p.note.String(), said: p.said, given: p.sit.Given(p.at), caretOn: p.caretOn(), review: p.review, more: p.more, pad: p.pad, fresh: p.fresh, large: p.large, page: p.page, done: p.done,
		focus: p.focus, hints: len(taken), flagged: p.sit.Flagged(p.at), left: p.sit.Left(p.at), remaining: words, manner: p.manner,
	}
}

func (p *Paper) caretOn() bool {
	return p.focus == idNotebook && p.open() && (p.set.Calm || p.blink < caretTicks)
}

func (s *paperScreen) build(p *Paper) {
	k := s.keyOf(p)
	if s.made && k == s.key {
		return
	}
	m := pageMaker{p: p, s: s, sketch: sketch{th: theme.Of(p.set.Theme), zones: &s.zones}}
	m.make()
	s.key, s.made = s.keyOf(p), true // focus and page may have moved to what is on the screen
}

func (s *paperScreen) picture(p *Paper, l *draw.List) {
	l.Reset(p.frame.W, p.frame.H)
	for _, z := range [...]zoneName{sheetZone, columnZone, stripZone, barZone} {
		zone := &s.zones[z]
		if zone.texture.W == 0 {
			continue
		}
		l.Region(zone.rect)
		l.Sprite(&zone.texture, zone.rect.X, zone.rect.Y, 1, 1)
		if r := s.room; s.figure.W > 0 && r.W > 0 && within(r, zone.rect) {
			l.Sprite(&s.figure, math.Round(r.X+(r.W-float64(s.figure.W))/2), math.Round(r.Y+(r.H-float64(s.figure.H))/2), 1, 1)
		}
	}
}

func within(r, in draw.Rect) bool {
	return r.X >= in.X-.75 && r.Y >= in.Y-.75 && r.X+r.W <= in.X+in.W+.75 && r.Y+r.H <= in.Y+in.H+.75
}
