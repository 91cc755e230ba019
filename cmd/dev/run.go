package main

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"runtime"

	"cuesta/cmd/internal/display"
)

// run opens the bench in a window, or serves it where there is no display.
// Further words go to the bench.
func run(args []string) error {
	if err := display.Check(); err != nil {
		fmt.Printf("%v: the bench is built for the browser instead.\n", err)
		return serve(os.Stdout)
	}
	if err := setUp(windowPackages); err != nil {
		return err
	}
	dir, err := os.MkdirTemp("", "cuesta-bench-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	program := filepath.Join(dir, programName("bench"))
	if said, err := quiet(goCommand("build", "-o", program, "./cmd/bench"))(); err != nil {
		return fmt.Errorf("%s\nthe bench could not be built: %w", said, err)
	}
	return attached(exec.Command(program, args...))
}

// programName adds what the system wants at the end of a program's name.
func programName(name string) string {
	if runtime.GOOS == "windows" {
		return name + ".exe"
	}
	return name
}

// attached runs a command with this program's own input and output.
func attached(c *exec.Cmd) error {
	c.Stdin, c.Stdout, c.Stderr = os.Stdin, os.Stdout, os.Stderr
	return c.Run()
}

// serve builds the browser program into a temporary folder and serves it to
// this machine alone until it is interrupted.
func serve(out *os.File) error {
	dir, err := os.MkdirTemp("", "cuesta-web-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	if err := buildWeb(dir); err != nil {
		return err
	}
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return fmt.Errorf("no port could be had on 127.0.0.1: %w", err)
	}
	fmt.Fprintf(out, "The bench is at http://%s/ on this machine. Ctrl-C ends it.\n", listener.Addr())
	return untilInterrupted(&http.Server{Handler: http.FileServer(http.Dir(dir))}, listener)
}

func untilInterrupted(server *http.Server, listener net.Listener) error {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	go func() {
		<-ctx.Done()
		server.Close()
	}()
	err := server.Serve(listener)
	if errors.Is(err, http.ErrServerClosed) {
		return nil
	}
	return err
}
