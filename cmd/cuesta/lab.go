package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"time"

	"github.com/spf13/cobra"

	"cuesta/quiz/form"
	"cuesta/quiz/lab"
	"cuesta/quiz/paper"
)

// labFolder is where readings go unless another folder is named.
const labFolder = "readings"

type laboratory struct {
	env
	roster, folder, station string
	withhold, json          bool
	cards, key, blank       string
	sheet                   paper.Sheet
	example, force          bool
	now                     func() string // RFC 3339
}

func labCommand(e env) *cobra.Command {
	l := &laboratory{env: e, now: func() string { return time.Now().UTC().Format(time.RFC3339) }}
	cmd := &cobra.Command{
		Use:   "lab STATIONS.toml",
		Short: "Practice at real slabs: readings of a class, station by station",
		Long: "Takes the readings that a class takes at real slabs in a room, line by line on\n" +
			"standard input: a17 3 035/30 is what student a17 reads at station 3. Every reading\n" +
			"is safe on the disk before it is confirmed; after a crash, or quit, the same\n" +
			"command goes on where it stopped. The line help lists the lines. cuesta open lab\n" +
			"opens the same as a screen, with the same flags.\n\n" +
			"STATIONS.toml holds the instructor's true values; --example prints one with\n" +
			"remarks. --withhold says nothing about right or wrong. --blank writes a copy\n" +
			"without the true values, for the machine in the room. The folder --out gets\n" +
			"ID.submission.json for each student, which does not hold them either: mark it with\n" +
			"cuesta grade --stations STATIONS.toml DIR. Where several machines have a folder\n" +
			"each, name all the folders there.\n\n" +
			"--cards prints a card for each station, --key the true values for the instructor.\n\n" +
			"Slabs are heavy. Two people lift one; fingers, hands and feet stay clear; nothing\n" +
			"stands over an edge; everyone wears closed shoes. The rules of the building come\n" +
			"first, and a licensed practitioner judges whatever bears on safety.",
		Example: "  cuesta lab --example > stations.toml\n" +
			"  cuesta lab stations.toml --cards cards.pdf --key key.pdf\n" +
			"  cuesta lab stations.toml --roster class.csv --out readings\n" +
			"  cuesta grade --stations stations.toml --roster class.csv readings/",
		Args: l.words,
		RunE: func(_ *cobra.Command, files []string) error { return l.run(files) },
	}
	f := cmd.Flags()
	f.StringVar(&l.roster, "roster", "", "the class (CSV); others are refused then")
	f.StringVar(&l.folder, "out", labFolder, "folder for the readings")
	f.StringVar(&l.station, "station", "", "the one station that stands beside this machine")
	f.BoolVar(&l.withhold, "withhold", false, "say nothing about right or wrong before the marking")
	f.BoolVar(&l.json, "json", false, "one JSON object a line")
	f.StringVar(&l.cards, "cards", "", "print a card for each station to this file (PDF)")
	f.StringVar(&l.key, "key", "", "print the true values and tolerances to this file (PDF)")
	f.Var(choose(&l.sheet, named[paper.Sheet]{"a4", paper.A4}, named[paper.Sheet]{"letter", paper.Letter}), "paper", "the size of the sheets")
	f.StringVar(&l.blank, "blank", "", "write a copy of STATIONS.toml without the true values to this file")
	f.BoolVar(&l.example, "example", false, "print a file of stations with remarks, to start from")
	f.BoolVar(&l.force, "force", false, "replace files that are there (PDF and copy; never readings)")
	return cmd
}

func (l *laboratory) words(_ *cobra.Command, files []string) error {
	switch {
	case l.example && len(files) > 0:
		return misreadf("read %q beside --example; it stands alone", files[0])
	case !l.example && len(files) != 1:
		return misreadf("read %d files of stations; name one, such as cuesta lab stations.toml (--example prints one)", len(files))
	}
	return nil
}

func (l *laboratory) run(files []string) error {
	if l.example {
		_, err := io.WriteString(l.out, lab.Example())
		return err
	}
	b, err := readFile(l.env, files[0], form.ReadStations)
	if err != nil {
		return err
	}
	if l.cards != "" || l.key != "" || l.blank != "" {
		l.doubt(b)
		return l.write(b)
	}
	l.doubt(b)
	return l.take(b)
}

// doubt says what the file can hardly mean.
func (l *laboratory) doubt(b form.Blueprint) {
	for _, doubt := range doubts(b, time.Now()) {
		fmt.Fprintln(l.err, doubt)
	}
	if b.Site == "" {
		fmt.Fprintln(l.err, "the file names no site under [place]: the declination counts as 0°, and cards and questions say so")
	}
}

// take takes readings until quit or the end of the input.
func (l *laboratory) take(b form.Blueprint) error {
	var roster []form.Student
	var err error
	if l.roster != "" {
		if roster, err = readFile(l.env, l.roster, form.ReadRoster); err != nil {
			return err
		}
	}
	if info, err := os.Stat(l.folder); err == nil && !info.IsDir() {
		return misreadf("--out %s is a file; name a folder", l.folder)
	}
	if err := os.MkdirAll(l.folder, 0o755); err != nil {
		return err
	}
	room, err := lab.NewRoom(b, lab.Options{
		Roster: roster, Folder: l.folder, Withhold: l.withhold, Now: l.now, Keep: l.keep,
	})
	if err != nil {
		return l.noRoom(err)
	}
	if l.station != "" {
		if err := room.GoTo(l.station); err != nil {
			return misreadf("--station: %w", err)
		}
	}
	in, stop := untilInterrupt(l.in)
	defer stop()
	p := &labTaking{room: room, out: l.out, json: l.json, folder: l.folder, fixed: l.station != ""}
	return errors.Join(p.run(in), room.Close())
}

func (l *laboratory) noRoom(err error) error {
	if errors.Is(err, lab.ErrOtherFile) {
		return wrongWords{fmt.Errorf("%w; it was left as it is: name another folder with --out, or the file as it was", err)}
	}
	return err
}

// keep writes the submission of a student; it is made of the journal, so it is
// replaced each time.
func (l *laboratory) keep(s form.Submission) error {
	return writeWhole(filepath.Join(l.folder, form.FileName(s.Form.Student.ID)+form.SubmissionEnding), true, s.Encode)
}
