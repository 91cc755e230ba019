package window

import (
	_ "embed"

	"github.com/hajimehoshi/ebiten/v2"
)

//go:embed mix2.kage
var mix2 []byte

//go:embed mix4.kage
var mix4 []byte

// mixer draws meshes whose texture is larger than its picture, mixing 2×2 or
// 4×4 places of the texture for a pixel.
type mixer struct {
	two, four *ebiten.Shader
	options   ebiten.DrawTrianglesShaderOptions
}

func (m *mixer) draw(dst *ebiten.Image, vs []ebiten.Vertex, is []uint16, src *ebiten.Image, taps int) {
	s := &m.four
	text := mix4
	if taps == 2 {
		s, text = &m.two, mix2
	}
	if *s == nil {
		var err error
		if *s, err = ebiten.NewShader(text); err != nil {
			panic("window: a built-in shader is broken: " + err.Error())
		}
	}
	m.options.Images[0] = src
	dst.DrawTrianglesShader(vs, is, *s, &m.options)
}
