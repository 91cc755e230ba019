//go:build !js

package main

import "os"

// start runs what the command line asks for.
func start(args []string) int { return run(args, os.Stdout, os.Stderr) }
