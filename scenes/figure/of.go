package figure

import (
	"cuesta/quiz/item"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// Of draws the figure of an item, width units wide; the list says how high it
// came out. It fills no ground: figures stand on paper or on the panel of a
// theme. A nil figure, or a width that is not positive, gives an empty list.
func Of(f item.Figure, width float64, th *theme.Theme) *draw.List {
	l := &draw.List{}
	if !(width > 0) {
		return l
	}
	l.W = width
	switch f := f.(type) {
	case nil:
		l.W = 0
	case item.DialFigure:
		dialPicture(l, th, f.Needle, f.Ring)
	case item.ArcFigure:
		arcPicture(l, th, f.Arm)
	case item.LevelFigure:
		levelPicture(l, th, f.Right, f.Forward)
	case item.MapFigure:
		mapPicture(l, th, f)
	case item.BlockFigure:
		blockPicture(l, th, f)
	case item.NetFigure:
		netPicture(l, th, f)
	case item.TableFigure:
		tablePicture(l, th, f)
	}
	return l
}
