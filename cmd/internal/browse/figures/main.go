// Command figures measures the page in Chromium and prints one "name value" a
// line. It is a program of its own so that cmd/dev, which sets a fresh machine
// up, need not be built with all that drives a browser.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"time"

	"cuesta/cmd/internal/browse"
)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "figures takes wasm_exec.js of the Go in use; go run ./cmd/dev bench starts it")
		os.Exit(2)
	}
	if err := pageFigures(os.Stdout, os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// pageFigures are the weight of the page on its way to a visitor, the time to
// its first frame, as it opens and straight on the bench, over that of an empty
// page of the window library, loaded for the first time turn by turn, and the frames a second of both at 640×360, ours
// with needle and bubble moving. The empty page is built as anyone builds one.
func pageFigures(out io.Writer, support string) error {
	dir, err := os.MkdirTemp("", "cuesta-page-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	full, empty := filepath.Join(dir, "page"), filepath.Join(dir, "empty")
	if err := errors.Join(os.Mkdir(full, 0o755), os.Mkdir(empty, 0o755)); err != nil {
		return err
	}
	if err := errors.Join(browse.Build(full), browse.BuildEmpty(empty, support)); err != nil {
		return err
	}
	n, err := browse.Weight(full)
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "page_bytes_compressed %d\n", n)
	return onPages(out, full, empty)
}

// onPages takes the times of both pages in Chromium.
func onPages(out io.Writer, full, empty string) error {
	ours, err := browse.Serve(full)
	if err != nil {
		return err
	}
	defer ours.Close()
	bare, err := browse.Serve(empty)
	if err != nil {
		return err
	}
	defer bare.Close()
	b, err := browse.Start(browse.Software)
	if err != nil {
		return err
	}
	defer b.Close()
	const rounds, long = 5, 4 * time.Second
	for _, start := range [...]struct{ name, at string }{{"first_frame", ""}, {"first_frame_bench", "bench"}} {
		first, empty, err := browse.Starts(b, ours.URL(start.at), bare.URL(""), rounds)
		if err != nil {
			return err
		}
		fmt.Fprintf(out, "%[1]s_s %.2[2]f\n%[1]s_empty_s %.2[3]f\n%[1]s_ratio %.2[4]f\n", start.name, first, empty, first/empty)
	}
	rate, err := browse.Rate(b, ours.URL("bench"), long, browse.Swing())
	if err != nil {
		return err
	}
	rateEmpty, err := browse.Rate(b, bare.URL(""), long, browse.Rest)
	fmt.Fprintf(out, "page_fps_640x360 %.1f\npage_fps_640x360_empty %.1f\n", rate, rateEmpty)
	return err
}
