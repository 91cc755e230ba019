// Package display says whether a window can be opened on this machine, before
// a program that would fail without one is started.
package display

import (
	"errors"
	"fmt"
	"net"
	"os"
	"runtime"
	"strconv"
	"strings"
	"time"
)

// ErrNone is returned where the system has no display at all.
var ErrNone = errors.New("there is no display")

// Check returns nil when a window can be opened. Windows and macOS always have
// a display; elsewhere DISPLAY must name an X server that answers.
func Check() error {
	switch runtime.GOOS {
	case "windows", "darwin":
		return nil
	}
	name := os.Getenv("DISPLAY")
	if name == "" {
		return fmt.Errorf("%w (DISPLAY is not set)", ErrNone)
	}
	network, address, err := addressOf(name)
	if err != nil {
		return err
	}
	conn, err := dial(network, address)
	if err != nil {
		return fmt.Errorf("%w (DISPLAY is %s, and nothing answers there)", ErrNone, name)
	}
	return conn.Close()
}

// dial tries the abstract socket of the same name too, as X clients do.
func dial(network, address string) (net.Conn, error) {
	const patience = 2 * time.Second
	conn, err := net.DialTimeout(network, address, patience)
	if err != nil && network == "unix" && runtime.GOOS == "linux" {
		return net.DialTimeout(network, "@"+address, patience)
	}
	return conn, err
}

// addressOf turns [host]:number[.screen] into the address of the X server: a
// socket in the file system without a host, else a port from 6000.
func addressOf(name string) (network, address string, err error) {
	host, rest, ok := cutLast(name, ":")
	number, _, _ := strings.Cut(rest, ".")
	n, bad := strconv.ParseUint(number, 10, 16)
	if !ok || bad != nil || n > 65535-6000 {
		return "", "", fmt.Errorf("%w (DISPLAY is %q; something like :0 would do)", ErrNone, name)
	}
	if host == "" || host == "unix" {
		return "unix", fmt.Sprintf("/tmp/.X11-unix/X%d", n), nil
	}
	return "tcp", net.JoinHostPort(strings.Trim(host, "[]"), strconv.FormatUint(6000+n, 10)), nil
}

func cutLast(s, sep string) (before, after string, found bool) {
	i := strings.LastIndex(s, sep)
	if i < 0 {
		return s, "", false
	}
	return s[:i], s[i+len(sep):], true
}
