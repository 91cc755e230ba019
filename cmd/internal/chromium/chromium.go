// Package chromium finds the browser in which the page is tested.
package chromium

import (
	"errors"
	"fmt"
	"os/exec"
)

// programs are the names under which it goes.
var programs = []string{"chromium", "chromium-browser", "google-chrome", "chrome"}

// ErrNone is returned where it is not installed.
var ErrNone = errors.New("chromium is not installed")

// Find returns the path of the program, or ErrNone.
func Find() (string, error) {
	for _, p := range programs {
		if path, err := exec.LookPath(p); err == nil {
			return path, nil
		}
	}
	return "", fmt.Errorf("%w; on Debian it is the package chromium", ErrNone)
}
