package gradebook

import (
	"fmt"
	"html/template"

	"cuesta/quiz/item"
	"cuesta/scenes/draw/svg"
	"cuesta/scenes/figure"
	"cuesta/scenes/theme"
)

// pictureWidth is the width of the figure of an item.
const pictureWidth = 340

// picture is the figure of item i, or nothing.
func picture(i int, it item.Item) template.HTML {
	f := it.Figure()
	if f == nil {
		return ""
	}
	l := figure.Of(f, pictureWidth, theme.Of(theme.Light))
	if len(l.Items) == 0 {
		return ""
	}
	return template.HTML(svg.Element(l, svg.Options{Title: "Figure of the question", Desc: it.Alt(), Prefix: fmt.Sprintf("i%d-", i+1)}))
}
