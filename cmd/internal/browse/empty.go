package browse

import (
	"compress/gzip"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
)

// emptyProgram is the least a page of the window library can be.
const emptyProgram = `package main

import "github.com/hajimehoshi/ebiten/v2"

type game struct{}

func (game) Update() error              { return nil }
func (game) Draw(*ebiten.Image)         {}
func (game) Layout(w, h int) (int, int) { return w, h }

func main() {
	if err := ebiten.RunGame(game{}); err != nil {
		panic(err)
	}
}
`

// emptyPage loads a program in the way that costs least: compiled while it
// comes in.
const emptyPage = `<!DOCTYPE html>
<html lang="en">
<head><meta charset="utf-8"><title>empty</title></head>
<body>
<script src="wasm_exec.js"></script>
<script>
"use strict";
(async function () {
  const answer = await fetch("empty.wasm.gz");
  const body = answer.body.pipeThrough(new DecompressionStream("gzip"));
  const wasm = new Response(body, {headers: {"Content-Type": "application/wasm"}});
  const go = new Go();
  const source = await WebAssembly.instantiateStreaming(wasm, go.importObject);
  await go.run(source.instance);
})();
</script>
</body>
</html>
`

// BuildEmpty builds a page that shows nothing into an existing folder, with
// the support file of the Go that builds it.
func BuildEmpty(dir, support string) error {
	root, err := moduleRoot()
	if err != nil {
		return err
	}
	scratch, err := os.MkdirTemp("", "cuesta-empty-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(scratch)
	source, wasm := filepath.Join(scratch, "empty.go"), filepath.Join(scratch, "empty.wasm")
	if err := os.WriteFile(source, []byte(emptyProgram), 0o644); err != nil {
		return err
	}
	c := exec.Command("go", "build", "-trimpath", "-ldflags=-s -w", "-o", wasm, source)
	c.Dir = root
	c.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if said, err := c.CombinedOutput(); err != nil {
		return fmt.Errorf("%s\nthe empty page could not be built: %w", said, err)
	}
	js, err := os.ReadFile(support)
	if err != nil {
		return err
	}
	return errors.Join(
		os.WriteFile(filepath.Join(dir, "index.html"), []byte(emptyPage), 0o644),
		os.WriteFile(filepath.Join(dir, "wasm_exec.js"), js, 0o644),
		pack(wasm, filepath.Join(dir, "empty.wasm.gz")))
}

// pack compresses a file as far as gzip goes.
func pack(from, to string) error {
	data, err := os.ReadFile(from)
	if err != nil {
		return err
	}
	f, err := os.Create(to)
	if err != nil {
		return err
	}
	z, err := gzip.NewWriterLevel(f, gzip.BestCompression)
	if err != nil {
		return err
	}
	_, err = z.Write(data)
	return errors.Join(err, z.Close(), f.Close())
}
