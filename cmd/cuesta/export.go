package main

import (
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"cuesta/quiz/form"
	"cuesta/quiz/qti"
)

type exporter struct {
	env
	variants int
	out      string
	force    bool
}

func exportCommand(e env) *cobra.Command {
	x := &exporter{env: e}
	cmd := &cobra.Command{
		Use:   "export [--variants N] --out FILE.zip BLUEPRINT.toml",
		Short: "The quiz as a question package for learning systems",
		Long: "Packs the quiz as 1EdTech QTI 3.0, for learning systems that read it: N variants\n" +
			"of each item, of which a student is asked one, with figures and alternative\n" +
			"texts. Items that need the bench or a drawing are left out, and named. The same\n" +
			"blueprint and number give the same file.",
		Example: "  cuesta export --variants 8 --out quiz.zip quiz.toml",
		Args:    x.words,
		RunE:    func(_ *cobra.Command, files []string) error { return x.run(files[0]) },
	}
	f := cmd.Flags()
	f.IntVar(&x.variants, "variants", 4, "how many variants of each item")
	f.StringVar(&x.out, "out", "", "the package to write")
	f.BoolVar(&x.force, "force", false, "replace a file that is there")
	return cmd
}

func (x *exporter) words(_ *cobra.Command, files []string) error {
	switch {
	case len(files) != 1:
		return misreadf("read %d blueprints; name one, such as cuesta export --out quiz.zip quiz.toml (cuesta deal --example prints one)", len(files))
	case x.variants < 1 || x.variants > qti.MostVariants:
		return misreadf("--variants read %d; write a number from 1 to %d", x.variants, qti.MostVariants)
	case x.out == "":
		return misreadf("read no file for the package; write --out and its name")
	}
	return nil
}

func (x *exporter) run(file string) error {
	b, err := readFile(x.env, file, form.ReadBlueprint)
	if err != nil {
		return err
	}
	var left []string
	err = writeWhole(x.out, x.force, func(w io.Writer) (err error) {
		left, err = qti.Package(w, b, x.variants)
		return err
	})
	for _, l := range left {
		fmt.Fprintln(x.err, "left out:", l)
	}
	if err != nil {
		return err
	}
	fmt.Fprintf(x.env.out, "%s holds %d of %d items, %d variants of each.\n", x.out, count(b)-len(left), count(b), x.variants)
	return nil
}

func count(b form.Blueprint) int {
	n := 0
	for _, p := range b.Parts {
		n += p.Count
	}
	return n
}
