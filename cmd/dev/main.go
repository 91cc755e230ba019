// Command dev sets up a machine for cuesta and runs, checks, measures and
// builds it. It needs Go and nothing else; what the system lacks it installs
// on Debian and Ubuntu, and names elsewhere.
package main

import (
	"errors"
	"fmt"
	"os"
	"strings"
)

const usage = `usage: go run ./cmd/dev COMMAND

  run        sets up, builds and opens the bench; without a display, serves
             the browser program on this machine and prints its address
  test       sets up and runs every check
  bench      measures: one "name value" a line
  web DIR    builds the browser program into a folder (--force replaces files)
`

// errUsage stands for words that were not understood; the exit status is 2.
var errUsage = errors.New("usage")

func main() {
	err := dispatch(os.Args[1:])
	switch {
	case err == nil:
	case errors.Is(err, errUsage):
		fmt.Fprintf(os.Stderr, "%v\n\n%s", err, usage)
		os.Exit(2)
	default:
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func dispatch(args []string) error {
	if len(args) == 0 {
		return fmt.Errorf("%w: no command given; one of run, test, bench, web would do", errUsage)
	}
	if err := toModuleRoot(); err != nil {
		return err
	}
	rest := args[1:]
	switch args[0] {
	case "run":
		return run(rest)
	case "test":
		return alone("test", rest, test)
	case "bench":
		return alone("bench", rest, bench)
	case "web":
		return web(rest)
	case "help", "-h", "--help":
		fmt.Print(usage)
		return nil
	}
	return fmt.Errorf("%w: read %q; run, test, bench or web would do", errUsage, args[0])
}

// alone runs a command that takes no further words.
func alone(name string, rest []string, f func() error) error {
	if len(rest) > 0 {
		return fmt.Errorf("%w: %s takes no further words, read %q", errUsage, name, strings.Join(rest, " "))
	}
	return f()
}
