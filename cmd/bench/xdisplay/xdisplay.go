// Package xdisplay tells whether an X display of this machine can be reached,
// with as few imports as will do, for it must be ready before all others.
package xdisplay

import (
	"strings"
	"syscall"
)

// Missing says why no window can be opened, or nothing. A display on another
// machine is taken on trust.
func Missing(display string, answers func(number string) bool) string {
	if display == "" {
		return "DISPLAY is not set"
	}
	host, rest, ok := strings.Cut(display, ":")
	if !ok {
		return "DISPLAY is " + display + "; something like :0 would do"
	}
	number, _, _ := strings.Cut(rest, ".")
	if (host == "" || host == "unix") && !answers(number) {
		return "DISPLAY is " + display + ", and nothing answers there"
	}
	return ""
}

// Answers tries the socket of a display of this machine, in the file system
// and by its abstract name, as X clients do.
func Answers(number string) bool {
	const folder = "/tmp/.X11-unix/X"
	for _, name := range []string{folder + number, "@" + folder + number} {
		s, err := syscall.Socket(syscall.AF_UNIX, syscall.SOCK_STREAM, 0)
		if err != nil {
			return true // let the library try
		}
		err = syscall.Connect(s, &syscall.SockaddrUnix{Name: name})
		syscall.Close(s)
		if err == nil {
			return true
		}
	}
	return false
}
