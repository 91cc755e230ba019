package main

import (
	"context"
	"crypto/rand"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/signal"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"time"

	"github.com/spf13/cobra"

	"cuesta/cmd/internal/speech"
	"cuesta/orient"
	"cuesta/orient/geomag"
	"cuesta/scenes/session"
	"cuesta/scenes/spoken"
	"cuesta/sim"
)

type speaker struct {
	env
	plane, seed, site, date string
	method                  sim.Seat
	record                  string
	force, json, speak      bool
}

func spokenCommand(e env) *cobra.Command {
	s := &speaker{env: e}
	cmd := &cobra.Command{
		Use:   "spoken",
		Short: "The bench, line by line, in words and figures",
		Long: "The bench, line by line on standard input: each line is one act or one question,\n" +
			"each reply is words and figures that need no picture. The line help lists the\n" +
			"lines. Without --plane the plane is drawn from the seed; without --seed the seed\n" +
			"is drawn too, and told. A simulator reading is never data for design.",
		Example: "  cuesta spoken\n" +
			"  cuesta spoken --seed 7 --site 46.6,8.0,1500 --date 2026-09-14\n" +
			"  cuesta spoken --plane 125/40 --json < lines.txt",
		Args: noWords,
		RunE: func(*cobra.Command, []string) error { return s.run() },
	}
	f := cmd.Flags()
	f.StringVar(&s.plane, "plane", "", "the plane to measure, in any notation, such as 125/40")
	f.StringVar(&s.seed, "seed", "", "whole number that the plane and the first pose are drawn from")
	f.StringVar(&s.site, "site", "", "place: latitude, longitude and metres; gives the declination")
	f.StringVar(&s.date, "date", "", "day at the place, or decimal year (today)")
	f.Var(choose(&s.method, named[sim.Seat]{"edge", sim.OnEdge}, named[sim.Seat]{"lid", sim.OnLid}, named[sim.Seat]{"sensor", sim.OnBack}),
		"method", "how it is measured")
	f.StringVar(&s.record, "record", "", "file the recording is written to at the end")
	f.BoolVar(&s.force, "force", false, "let --record replace a file")
	f.BoolVar(&s.json, "json", false, "one JSON object a line")
	f.BoolVar(&s.speak, "speak", false, "have each reply spoken, through the system's speech program")
	return cmd
}

func (s *speaker) run() error {
	if s.speak && s.json {
		return misreadf("--speak and --json do not go together: objects are not for the ear; leave one out")
	}
	o, err := s.options()
	if err != nil {
		return err
	}
	if err := s.recordable(); err != nil {
		return err
	}
	ses, err := session.New(o)
	if err != nil {
		return err
	}
	bench := spoken.NewBench(ses, picture)
	voice := s.aloud()
	defer s.silence(voice)
	s.welcome(bench)
	in, stop := untilInterrupt(s.in)
	defer stop()
	return errors.Join(bench.Run(in, s.out, s.json), s.save(ses))
}

// aloud has what is written spoken as well, where that is wanted; without a
// speech program it tells what to install, and all else goes on.
func (s *speaker) aloud() *speech.Voice {
	if !s.speak {
		return nil
	}
	v, err := speech.Open()
	if err != nil {
		fmt.Fprintf(s.err, "nothing is spoken: %v\n", err)
		return nil
	}
	s.out = io.MultiWriter(s.out, v)
	return v
}

// silence waits until all has been said, or tells why it has not.
func (s *speaker) silence(v *speech.Voice) {
	v.Finish()
	if err := v.Err(); err != nil {
		fmt.Fprintf(s.err, "not all was spoken: %v\n", err)
	}
}

// welcome goes to the reader of the replies; with objects it is a remark, so
// that there is one object a line.
func (s *speaker) welcome(b *spoken.Bench) {
	to := s.out
	if s.json {
		to = s.err
	}
	fmt.Fprintln(to, b.Welcome())
}

func (s *speaker) options() (session.Options, error) {
	o := session.Options{Tool: sim.Complete, Method: s.method, Notation: orient.AzimuthDip}
	var err error
	if o.Seed, err = s.seedOf(); err != nil {
		return o, err
	}
	if s.plane != "" {
		e, err := orient.Parse(s.plane, o.Notation)
		if err != nil {
			return o, fmt.Errorf("--plane %w", err)
		}
		o.Plane = &e.Plane
	}
	o.Field, o.Place, err = s.fieldOf()
	return o, err
}

// mostChance keeps seeds that are drawn short enough to be typed again.
const mostChance = 1_000_000

func (s *speaker) seedOf() (uint64, error) {
	if s.seed == "" {
		var b [8]byte
		rand.Read(b[:]) // never fails: it ends the program where there is no chance
		return binary.LittleEndian.Uint64(b[:]) % mostChance, nil
	}
	n, err := strconv.ParseUint(s.seed, 10, 64)
	if err != nil {
		return 0, misreadf("--seed read %q; write a whole number from 0, such as --seed 7", s.seed)
	}
	return n, nil
}

// fieldOf is the field at the site, and the place in words.
func (s *speaker) fieldOf() (sim.Field, string, error) {
	if s.site == "" {
		if s.date != "" {
			return sim.Field{}, "", misreadf("--date read %q but no place; write --site too, such as --site 46.6,8.0,1500", s.date)
		}
		return sim.Field{}, "", nil
	}
	site, err := geomag.ParseSite(s.site)
	if err != nil {
		return sim.Field{}, "", fmt.Errorf("--site %w", err)
	}
	year, err := s.yearOf()
	if err != nil {
		return sim.Field{}, "", fmt.Errorf("--date %w", err)
	}
	f, err := geomag.At(site, year)
	if err != nil {
		return sim.Field{}, "", err
	}
	for _, w := range f.Caution.Words() {
		fmt.Fprintln(s.err, w)
	}
	if f.Horizontal < 1 {
		return sim.Field{}, "", misreadf("--site %s: a needle has no direction at a magnetic pole; choose another place", s.site)
	}
	field := sim.Field{Declination: f.Declination, Inclination: f.Inclination, Horizontal: f.Horizontal * 1e-9}
	return field, placeWords(site, year), nil
}

func (s *speaker) yearOf() (geomag.Year, error) {
	if s.date != "" {
		return geomag.ParseYear(s.date)
	}
	y, m, d := time.Now().Date()
	year, _ := geomag.YearOf(y, int(m), d)
	return year, nil
}

func placeWords(site geomag.Site, year geomag.Year) string {
	y, m, d := year.Date()
	return fmt.Sprintf("%s, %s, on %04d-%02d-%02d", lettered(site.Latitude, "N", "S"), lettered(site.Longitude.Wrapped(), "E", "W"), y, m, d)
}

// untilInterrupt ends the input when the program is interrupted or its terminal
// is closed, so that what was done is still kept.
func untilInterrupt(in io.Reader) (io.Reader, func()) {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	r, w := io.Pipe()
	go func() {
		_, err := io.Copy(w, in)
		w.CloseWithError(err)
	}()
	go func() {
		<-ctx.Done()
		w.Close()
	}()
	return r, stop
}

// recordable says early what would keep a recording from being written.
func (s *speaker) recordable() error {
	if s.record == "" {
		return nil
	}
	if info, err := os.Stat(s.record); err == nil && info.IsDir() {
		return misreadf("--record %s is a folder; name a file in it", s.record)
	}
	if _, err := os.Lstat(s.record); err == nil && !s.force {
		return fmt.Errorf("%s is already there; --force replaces it", s.record)
	}
	if info, err := os.Stat(filepath.Dir(s.record)); err != nil || !info.IsDir() {
		return fmt.Errorf("--record %s: there is no folder %s", s.record, filepath.Dir(s.record))
	}
	return nil
}

// save writes one recording a plane: the first under the name given, the
// others beside it with a number.
func (s *speaker) save(ses *session.Session) error {
	if s.record == "" {
		return nil
	}
	for i, r := range ses.Recordings() {
		name := numbered(s.record, i+1)
		err := r.WriteFile(name, s.force)
		if errors.Is(err, fs.ErrExist) {
			err = fmt.Errorf("%s is already there; --force replaces it", name)
		}
		if err != nil {
			return err
		}
		fmt.Fprintf(s.err, "recorded in %s\n", name)
	}
	return nil
}

// numbered puts a number before the extension, from the second file on.
func numbered(file string, n int) string {
	if n == 1 {
		return file
	}
	ext := filepath.Ext(file)
	return fmt.Sprintf("%s-%d%s", strings.TrimSuffix(file, ext), n, ext)
}
