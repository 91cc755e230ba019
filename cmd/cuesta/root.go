package main

import (
	"errors"
	"fmt"
	"io"
	"os/exec"
	"strings"

	"github.com/spf13/cobra"

	"cuesta/orient"
)

// env is what a command reads and writes: results go to out, remarks to err.
type env struct {
	in       io.Reader
	out, err io.Writer
}

// Exit status.
const (
	done     = 0
	failed   = 1 // it could not be done
	misread  = 2 // the words or the file are wrong
	helpHint = "cuesta --help lists the commands"
)

// wrongWords is an error in what was typed, not in the doing.
type wrongWords struct{ error }

// Unwrap returns the error itself.
func (w wrongWords) Unwrap() error { return w.error }

// toldByOther is the end of another program that has said itself what was wrong.
type toldByOther struct{ *exec.ExitError }

// misreadf makes an error that ends the program with status 2.
func misreadf(format string, a ...any) error { return wrongWords{fmt.Errorf(format, a...)} }

// run executes one command line and returns the exit status. An error is told
// in one line.
func run(args []string, e env) int {
	root := newRoot(e)
	root.SetArgs(args)
	cmd, err := root.ExecuteC()
	if err == nil {
		return done
	}
	var already toldByOther
	if errors.As(err, &already) {
		return already.ExitCode()
	}
	fmt.Fprintf(e.err, "%s: %s\n", cmd.CommandPath(), oneLine(err.Error()))
	return status(err)
}

func status(err error) int {
	var words wrongWords
	var parse *orient.ParseError
	if errors.As(err, &words) || errors.As(err, &parse) {
		return misread
	}
	return failed
}

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

func newRoot(e env) *cobra.Command {
	root := &cobra.Command{
		Use:   "cuesta",
		Short: "Learn to measure strike and dip",
		Long: "Learn to measure strike and dip on a simulated bench.\n\n" +
			"A simulator reading is never data for design.",
		Args:          noSuchCommand,
		RunE:          func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
		SilenceErrors: true,
		SilenceUsage:  true,
	}
	root.SuggestionsMinimumDistance = 2
	root.SetIn(e.in)
	root.SetOut(e.out)
	root.SetErr(e.err)
	root.SetFlagErrorFunc(flagError)
	for _, c := range commands(e) {
		checkWords(c)
		root.AddCommand(c)
	}
	return root
}

// checkWords makes every refusal of a command's words one of status 2.
func checkWords(c *cobra.Command) {
	check := c.Args
	if check == nil {
		return
	}
	c.Args = func(cmd *cobra.Command, args []string) error {
		err := check(cmd, args)
		var words wrongWords
		if err == nil || errors.As(err, &words) {
			return err
		}
		return misreadf("%w; %s --help shows what it takes", err, cmd.CommandPath())
	}
}

// commands are all the commands, each made in a file of its own.
func commands(e env) []*cobra.Command {
	return []*cobra.Command{
		convertCommand(e),
		fieldCommand(e),
		spokenCommand(e),
		lessonCommand(e),
		openCommand(e),
		replayCommand(e),
		gradeCommand(e),
		dealCommand(e),
		calibrateCommand(e),
		demoClassCommand(e),
		takeCommand(e),
		printCommand(e),
		exportCommand(e),
		labCommand(e),
	}
}

// noSuchCommand refuses words that name no command.
func noSuchCommand(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	if near := cmd.SuggestionsFor(args[0]); len(near) > 0 {
		return misreadf("read %q, which is no command; did you mean %s?", args[0], strings.Join(near, " or "))
	}
	return misreadf("read %q, which is no command; %s", args[0], helpHint)
}

// noWords is for commands that take flags only.
func noWords(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	return misreadf("read %q, but it takes flags only; %s --help lists them", args[0], cmd.CommandPath())
}

// flagError blames the word before the flag where that is the first thing wrong.
func flagError(cmd *cobra.Command, err error) error {
	if !cmd.HasParent() {
		if wrong := noSuchCommand(cmd, cmd.Flags().Args()); wrong != nil {
			return wrong
		}
	}
	return misreadf("%w; %s --help lists the flags", err, cmd.CommandPath())
}
