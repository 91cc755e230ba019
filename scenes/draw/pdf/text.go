package pdf

import (
	"math"

	"cuesta/scenes/draw"
)

// text writes a line of text, each sign where the other painters put it.
func (p painter) text(t *draw.Text) {
	if t.S == "" || t.Size <= 0 {
		return
	}
	p.alpha(t.Color.A)
	p.color(t.Color, "rg")
	sin, cos := math.Sincos(t.Rotate)
	for _, piece := range t.Pieces() {
		k := p.embedded(piece.Face)
		at := p.m.At(draw.Point{X: t.At.X + cos*piece.Start, Y: t.At.Y + sin*piece.Start})
		p.put("BT /" + k.name + " ")
		p.float(t.Size * p.m.Scale())
		p.put(" Tf ")
		p.direction(cos, sin)
		p.points("Tm", at)
		p.put("[<")
		for i, r := range piece.Signs {
			if gap := piece.Gaps[i]; i > 0 && gap != 0 {
				p.put("> ")
				p.digits(-1000*gap, 10)
				p.put(" <")
			}
			p.sign(k, r)
		}
		p.put(">] TJ ET\n")
	}
}

// direction writes the first four numbers of the text matrix: the baseline as
// m turns it, y up.
func (p painter) direction(cos, sin float64) {
	x, y := p.m.A*cos+p.m.C*sin, p.m.B*cos+p.m.D*sin
	n := math.Hypot(x, y)
	if n == 0 {
		n = 1
	}
	x, y = x/n, y/n
	for _, v := range [...]float64{x, -y, y, x} {
		p.digits(v, 1e5)
		p.put(" ")
	}
}

// replacement stands for signs outside the basic plane, which the library
// cannot write.
const replacement = '\uFFFD'

const hexDigits = "0123456789ABCDEF"

func (p painter) sign(k *font, r rune) {
	if r > 0xFFFF {
		r = replacement
	}
	k.signs[r] = true
	p.content = append(p.content, hexDigits[r>>12&15], hexDigits[r>>8&15], hexDigits[r>>4&15], hexDigits[r&15])
}
