package main

import (
	"syscall/js"

	"cuesta/assets"
	"cuesta/scenes"
)

// script is what the page's own script offers the program: the object cuesta.
func script() js.Value { return js.Global().Get("cuesta") }

// tell calls a function of the page's script, where there is one.
func tell(name string, args ...any) {
	if s := script(); s.Truthy() && s.Get(name).Type() == js.TypeFunction {
		s.Call(name, args...)
	}
}

// save hands a file to the browser's downloads.
func save(name, kind string, data []byte) { tell("save", name, kind, bytesOf(data)) }

func bytesOf(data []byte) js.Value {
	bytes := js.Global().Get("Uint8Array").New(len(data))
	js.CopyBytesToJS(bytes, data)
	return bytes
}

// typeface lends the page the program's own, so that it need not be loaded
// twice.
func typeface() {
	tell("typeface", bytesOf(assets.Regular), "normal")
	tell("typeface", bytesOf(assets.Bold), "bold")
}

// wish is what the person asked the browser for, in all pages: it is taken up
// where nothing has been chosen here yet.
func wish(s scenes.Settings) scenes.Settings {
	media := func(query string) bool {
		return js.Global().Call("matchMedia", query).Get("matches").Truthy()
	}
	dark := media("(prefers-color-scheme: dark)")
	switch {
	case media("(forced-colors: active)"), media("(prefers-contrast: more)"):
		s.Theme = contrastTheme(dark)
	case dark:
		s.Theme = darkTheme
	}
	s.Calm = s.Calm || media("(prefers-reduced-motion: reduce)")
	return s
}
