package main

import (
	"bufio"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"runtime"
	"strings"
)

// windowPackages is what a program with a window needs on Debian and Ubuntu to
// be built, and to draw without a graphics card. Without ca-certificates Go
// cannot fetch a module.
var windowPackages = []string{
	"ca-certificates", "gcc", "libc6-dev", "libx11-dev", "libxrandr-dev", "libxxf86vm-dev", "libxi-dev",
	"libxcursor-dev", "libxinerama-dev", "libgl-dev", "pkg-config", "libasound2-dev",
	"libgl1-mesa-dri",
}

// testPackages adds a display in memory, and a PDF reader that is no kin of the
// library that writes the sheets.
var testPackages = append(append([]string(nil), windowPackages...), "xvfb", "xauth", "poppler-utils", "libxml2-utils")

// browserPackages is what opens the page as its visitors do.
var browserPackages = []string{"chromium"}

// setUp installs those of the packages that the system lacks.
func setUp(packages []string) error {
	if runtime.GOOS != "linux" {
		return nil
	}
	if !debianLike("/etc/os-release") {
		if _, err := exec.LookPath("gcc"); err != nil {
			return errors.New("a C compiler, pkg-config and the development files of X11, OpenGL and ALSA are needed; on Debian they are:\n  " +
				strings.Join(packages, " "))
		}
		return nil
	}
	missing := lacking(packages, installed(packages))
	if len(missing) == 0 {
		return nil
	}
	return install(missing)
}

// debianLike says whether the system uses Debian's packages.
func debianLike(osRelease string) bool {
	f, err := os.Open(osRelease)
	if err != nil {
		return false
	}
	defer f.Close()
	for s := bufio.NewScanner(f); s.Scan(); {
		name, value, _ := strings.Cut(s.Text(), "=")
		if name != "ID" && name != "ID_LIKE" {
			continue
		}
		for _, id := range strings.Fields(strings.Trim(value, `"'`)) {
			if id == "debian" || id == "ubuntu" {
				return true
			}
		}
	}
	return false
}

// installed asks the package database; a package it does not know is absent
// from the answer.
func installed(packages []string) string {
	args := append([]string{"-W", "-f=${Package} ${db:Status-Status}\n"}, packages...)
	out, _ := exec.Command("dpkg-query", args...).Output() // status 1 when one is unknown
	return string(out)
}

// lacking returns the packages that the listing does not show as installed.
func lacking(packages []string, listing string) []string {
	have := map[string]bool{}
	for _, line := range strings.Split(listing, "\n") {
		if name, status, _ := strings.Cut(line, " "); status == "installed" {
			have[name] = true
		}
	}
	var out []string
	for _, p := range packages {
		if !have[p] {
			out = append(out, p)
		}
	}
	return out
}

// install fetches packages as root or through sudo, or says which line does.
func install(missing []string) error {
	prefix, ok := root()
	if !ok {
		return fmt.Errorf("system packages are missing and this user may not install them; this line does:\n  sudo apt-get install -y %s",
			strings.Join(missing, " "))
	}
	fmt.Printf("installing %s\n", strings.Join(missing, " "))
	// A mirror that cannot be reached leaves the lists of the last time.
	if out, err := apt(prefix, "update", "-q"); err != nil {
		fmt.Fprintf(os.Stderr, "apt-get update: %v\n%s", err, out)
	}
	out, err := apt(prefix, append([]string{"install", "-y", "-q", "--no-install-recommends"}, missing...)...)
	if err != nil {
		return fmt.Errorf("%s\napt-get install failed (%w); this line may show more:\n  apt-get install -y %s",
			out, err, strings.Join(missing, " "))
	}
	return nil
}

// root is the prefix that makes a command run as root, and whether there is
// one that asks nothing.
func root() (prefix []string, ok bool) {
	if os.Geteuid() == 0 {
		return nil, true
	}
	sudo := []string{"sudo", "-n"}
	return sudo, exec.Command(sudo[0], append(sudo[1:], "true")...).Run() == nil
}

func apt(prefix []string, args ...string) ([]byte, error) {
	line := append(append([]string(nil), prefix...), "env", "DEBIAN_FRONTEND=noninteractive", "apt-get")
	line = append(line, args...)
	return exec.Command(line[0], line[1:]...).CombinedOutput()
}
