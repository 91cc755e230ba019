// Command cuesta teaches strike and dip at the command line: a bench that is
// worked line by line, and the conversions and the field that go with it. It
// needs no display.
package main

import "os"

func main() {
	os.Exit(run(os.Args[1:], env{in: os.Stdin, out: os.Stdout, err: os.Stderr}))
}
