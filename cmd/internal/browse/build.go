package browse

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// Build builds the browser program of this module into an existing folder, as
// anyone does who puts it on a server.
func Build(dir string) error {
	root, err := moduleRoot()
	if err != nil {
		return err
	}
	c := exec.Command("go", "run", "./cmd/dev", "web", dir)
	c.Dir = root
	c.Env = append(os.Environ(), "PWD="+root)
	if said, err := c.CombinedOutput(); err != nil {
		return fmt.Errorf("%s\nthe browser program could not be built: %w", said, err)
	}
	return nil
}

// moduleRoot is the folder of go.mod.
func moduleRoot() (string, error) {
	out, err := exec.Command("go", "env", "GOMOD").Output()
	if err != nil {
		return "", fmt.Errorf("go env: %w", err)
	}
	return filepath.Dir(strings.TrimSpace(string(out))), nil
}
