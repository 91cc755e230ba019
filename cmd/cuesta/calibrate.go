package main

import (
	"strconv"

	"github.com/spf13/cobra"

	"cuesta/quiz/form"
	"cuesta/quiz/learner/calibrate"
)

type calibrator struct {
	env
	students, seed string
	json           bool
}

func calibrateCommand(e env) *cobra.Command {
	c := &calibrator{env: e}
	cmd := &cobra.Command{
		Use:   "calibrate BLUEPRINT.toml",
		Short: "What simulated students would score, before class",
		Long: "Lets simulated students sit the quiz: careful, hurried and guessing ones, and for\n" +
			"each mistake one kind who makes it. Tells what each would score, how often each\n" +
			"mistake is named rightly, and which items do not tell two mistakes apart. What\n" +
			"they do is assumed, not measured on people: take the table as a check of the\n" +
			"tolerances, not as a forecast. The same blueprint, number and seed give the same\n" +
			"table.",
		Example: "  cuesta deal --example > quiz.toml\n" +
			"  cuesta calibrate quiz.toml\n" +
			"  cuesta calibrate --students 2000 --json quiz.toml",
		Args: func(_ *cobra.Command, files []string) error {
			if len(files) != 1 {
				return misreadf("read %d blueprints; name one, such as cuesta calibrate quiz.toml", len(files))
			}
			return nil
		},
		RunE: func(_ *cobra.Command, files []string) error { return c.run(files[0]) },
	}
	f := cmd.Flags()
	f.StringVar(&c.students, "students", strconv.Itoa(calibrate.Usual), "simulated students of each kind")
	f.StringVar(&c.seed, "seed", "1", "whole number that all is drawn from")
	f.BoolVar(&c.json, "json", false, "one JSON object")
	return cmd
}

func (c *calibrator) run(file string) error {
	o := calibrate.Options{Progress: progress(c.err, "students done:")}
	var err error
	if o.Students, err = strconv.Atoi(c.students); err != nil || o.Students < 2 || o.Students > calibrate.Most {
		return misreadf("--students read %q; write a whole number from 2 to %d, such as --students 2000", c.students, calibrate.Most)
	}
	if o.Seed, err = strconv.ParseUint(c.seed, 10, 64); err != nil {
		return misreadf("--seed read %q; write a whole number from 0, such as --seed 7", c.seed)
	}
	b, err := readFile(c.env, file, form.ReadBlueprint)
	if err != nil {
		return err
	}
	t, err := calibrate.Run(b, o)
	if err != nil {
		return err
	}
	if c.json {
		return t.WriteJSON(c.out)
	}
	return t.Write(c.out)
}
