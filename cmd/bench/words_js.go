package main

import (
	"bytes"
	"image"
	"image/png"
	"path"
	"strings"
	"syscall/js"

	"cuesta/orient"
	"cuesta/scenes"
	"cuesta/scenes/draw/raster"
	"cuesta/scenes/session"
	"cuesta/scenes/spoken"
	"cuesta/sim"
)

// openWords runs the bench in words on the page, without drawing, for as long
// as the page stays.
func openWords(o options) error {
	s, err := session.New(session.Options{Tool: sim.Complete, Plane: o.plane, Seed: o.Seed, Notation: orient.AzimuthDip})
	if err != nil {
		return err
	}
	b := spoken.NewBench(s, nil)
	script().Set("line", js.FuncOf(func(_ js.Value, args []js.Value) any { return reply(b, args[0].String()) }))
	tell("words", "The bench in words", b.Welcome())
	select {}
}

// reply answers a line. A picture goes to the downloads.
func reply(b *spoken.Bench, text string) string {
	if strings.EqualFold(strings.TrimSpace(text), spoken.Picture.String()) {
		text += " bench.png"
	}
	if l, err := spoken.Parse(text); err == nil && l.Word == spoken.Picture {
		return picture(b.Session(), l.Text)
	}
	r, told := b.Line(text)
	if !told {
		return ""
	}
	if r.End {
		return "The bench stays open as long as this page does."
	}
	return r.Said
}

// The size of a picture of the bench.
const (
	pictureWidth  = 1280
	pictureHeight = 720
)

// picture paints the bench as it stands and saves it.
func picture(s *session.Session, name string) string {
	name = path.Base(strings.TrimSpace(name))
	if !strings.HasSuffix(strings.ToLower(name), ".png") {
		name += ".png"
	}
	l, err := scenes.Still(s, pictureWidth, pictureHeight, scenes.Settings{})
	if err != nil {
		return "The picture could not be drawn: " + plain(err)
	}
	img := image.NewRGBA(image.Rect(0, 0, pictureWidth, pictureHeight))
	raster.New().Paint(img, l)
	var file bytes.Buffer
	if err := png.Encode(&file, img); err != nil {
		return "The picture could not be drawn: " + plain(err)
	}
	save(name, "image/png", file.Bytes())
	return "The picture is in " + name + ", among your downloads."
}
