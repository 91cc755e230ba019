package main

import (
	"image"
	"strings"

	bench "cuesta/scenes"
	"cuesta/scenes/draw"
	"cuesta/scenes/draw/raster"
	"cuesta/scenes/input"
	"cuesta/scenes/lesson"
	"cuesta/sim"
)

// The size of a picture of a step: sharp on paper at a third of a page's width.
const (
	stepWidth  = 960
	stepHeight = 540
)

// picturesOf plays a lesson on the screen of a lecture, without a display, and
// keeps every step as it stands when all has come to rest.
func picturesOf(l lesson.Lesson) ([]stepPicture, error) {
	lecture, err := bench.NewLecture(l, bench.LectureOptions{Settings: bench.Settings{Calm: true}})
	if err != nil {
		return nil, err
	}
	defer lecture.Close()
	painter := raster.New()
	out := make([]stepPicture, len(l.Steps))
	for i := range out {
		if i > 0 {
			lecture.Update(screenful(input.Press{Key: input.PageDown}))
		}
		lecture.Player().Finish()
		for range settled {
			f := screenful()
			f.Ticks = sim.TicksPerSecond / 10
			lecture.Update(f)
		}
		var pic draw.List
		lecture.Picture(&pic)
		img := image.NewRGBA(image.Rect(0, 0, stepWidth, stepHeight))
		painter.Paint(img, &pic)
		out[i] = stepPicture{img, strings.Join(lecture.Player().Told(), " ")}
		lecture.Player().Reveal() // what is open would come first
	}
	return out, nil
}

// settled is how many tenths of a second the bubbles and the screen get.
const settled = 20

// screenful is one frame at the size of the pictures.
func screenful(p ...input.Press) input.Frame {
	return input.Frame{W: stepWidth, H: stepHeight, Scale: 1, Presses: p}
}
