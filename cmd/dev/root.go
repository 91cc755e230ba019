package main

import (
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// toModuleRoot changes to the folder of cuesta's go.mod, wherever inside the
// checkout the program was started.
func toModuleRoot() error {
	out, err := exec.Command("go", "list", "-m", "-f", "{{.Path}} {{.Dir}}").Output()
	if err != nil {
		return errors.New("no Go module here: start this inside a clone of cuesta")
	}
	path, dir, _ := strings.Cut(strings.TrimSpace(string(out)), " ")
	if path != "cuesta" {
		return errors.New("this is the module " + path + ": start this inside a clone of cuesta")
	}
	return os.Chdir(dir)
}

// goCommand is the go tool with version stamping off: a checkout owned by
// another user, as on build machines, would stop it otherwise.
func goCommand(args ...string) *exec.Cmd {
	c := exec.Command("go", args...)
	c.Env = append(os.Environ(), "GOFLAGS="+strings.TrimSpace(os.Getenv("GOFLAGS")+" -buildvcs=false"))
	return c
}

// wasmCommand is the go tool for the browser. The environment is cut down to
// what the tool needs: programs under Node get a small, fixed space for it.
func wasmCommand(args ...string) *exec.Cmd {
	c := goCommand(args...)
	c.Env = append(keepNeeded(c.Env), "GOOS=js", "GOARCH=wasm")
	return c
}

func keepNeeded(env []string) []string {
	var out []string
	for _, e := range env {
		name, value, _ := strings.Cut(e, "=")
		switch up := strings.ToUpper(name); {
		case len(value) > 1000 && up != "PATH":
		case strings.HasPrefix(up, "GO"), strings.HasSuffix(up, "_PROXY"), strings.HasPrefix(up, "SSL_CERT"),
			up == "PATH", up == "HOME", up == "TMPDIR", up == "XDG_CACHE_HOME", up == "USERPROFILE",
			up == "LOCALAPPDATA", up == "APPDATA", up == "TEMP", up == "SYSTEMROOT":
			out = append(out, e)
		}
	}
	return out
}

// goroot is the folder of the Go installation.
func goroot() (string, error) {
	out, err := exec.Command("go", "env", "GOROOT").Output()
	return strings.TrimSpace(string(out)), err
}

// wasmSupport is the path of a file that Go ships for programs in WebAssembly.
func wasmSupport(name string) (string, error) {
	root, err := goroot()
	if err != nil {
		return "", err
	}
	p := filepath.Join(root, "lib", "wasm", name)
	_, err = os.Stat(p)
	return p, err
}
