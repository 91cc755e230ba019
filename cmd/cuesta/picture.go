package main

import (
	"image"
	"image/png"
	"io"

	bench "cuesta/scenes"
	"cuesta/scenes/draw/raster"
	"cuesta/scenes/session"
)

// The size of a picture of the bench.
const (
	pictureWidth  = 1280
	pictureHeight = 720
)

// picture paints the bench as it stands, without a display.
func picture(w io.Writer, s *session.Session) error {
	l, err := bench.Still(s, pictureWidth, pictureHeight, bench.Settings{})
	if err != nil {
		return err
	}
	img := image.NewRGBA(image.Rect(0, 0, pictureWidth, pictureHeight))
	raster.New().Paint(img, l)
	return png.Encode(w, img)
}
