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
// Further words go to the bench. An interrupt ends what is going on and leaves
// nothing behind.
func run(args []string) error {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	dir, err := os.MkdirTemp("", "cuesta-run-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	if none := display.Check(); none != nil {
		fmt.Printf("%v: the bench is built for the browser instead; the first time takes a minute or two.\n", none)
		err = serve(ctx, dir)
	} else {
		err = show(dir, args)
	}
	if ctx.Err() != nil {
		return nil
	}
	return err
}

// show builds the window program into a folder and runs it.
func show(dir string, args []string) error {
	if err := setUp(windowPackages); err != nil {
		return err
	}
	fmt.Println("The bench is being built; the first time takes a minute or two.")
	program, err := buildBench(dir)
	if err != nil {
		return err
	}
	return attached(exec.Command(program, args...))
}

func buildBench(dir string) (program string, err error) {
	program = filepath.Join(dir, programName("bench"))
	if said, err := quiet(goCommand("build", "-o", program, "./cmd/bench"))(); err != nil {
		return "", fmt.Errorf("%s\nthe bench could not be built: %w", said, err)
	}
	return program, nil
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

// serve builds the browser program into a folder and serves it to this machine
// alone until it is interrupted.
func serve(ctx context.Context, dir string) error {
	if err := buildWeb(dir); err != nil {
		return err
	}
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return fmt.Errorf("no port could be had on 127.0.0.1: %w", err)
	}
	fmt.Printf("The bench is at http://%s/ on this machine. Ctrl-C ends it.\n", listener.Addr())
	server := &http.Server{Handler: http.FileServer(http.Dir(dir))}
	go func() {
		<-ctx.Done()
		server.Close()
	}()
	if err := server.Serve(listener); !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return nil
}
