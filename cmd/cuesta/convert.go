package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"cuesta/orient"
)

// target is what convert writes.
type target uint8

const (
	toAll target = iota
	toAzimuth
	toQuadrant
	toDirection
	toPole
)

type converter struct {
	env
	to     target
	assume orient.Notation
	json   bool
}

func convertCommand(e env) *cobra.Command {
	c := &converter{env: e}
	cmd := &cobra.Command{
		Use:   "convert [flags] TEXT...",
		Short: "Read a plane in any notation, write it in the others",
		Long: "Reads planes as people write them and writes them in the other notations.\n" +
			"Put a TEXT with spaces in quotes. A bare 125/30 is a right-hand strike and\n" +
			"dip, unless --assume direction takes it as dip direction and dip.",
		Example: "  cuesta convert 035/30SE\n" +
			"  cuesta convert --to quadrant \"215/30 SE\" \"30→125\"\n" +
			"  cuesta convert --assume direction --to azimuth 125/30",
		RunE: func(_ *cobra.Command, texts []string) error { return c.run(texts) },
	}
	cmd.Flags().Var(choose(&c.to,
		named[target]{"all", toAll}, named[target]{"azimuth", toAzimuth}, named[target]{"quadrant", toQuadrant},
		named[target]{"direction", toDirection}, named[target]{"pole", toPole},
	), "to", "the notation to write")
	cmd.Flags().Var(choose(&c.assume,
		named[orient.Notation]{"azimuth", orient.AzimuthDip}, named[orient.Notation]{"direction", orient.DirectionDip},
	), "assume", "what a bare 125/30 is")
	cmd.Flags().BoolVar(&c.json, "json", false, "one JSON object a line")
	cmd.SetFlagErrorFunc(c.flagError)
	return cmd
}

// flagError takes -35/30 for the reading it was meant to be, and says what is
// wrong with that.
func (c *converter) flagError(cmd *cobra.Command, err error) error {
	var unknown *pflag.NotExistError
	if errors.As(err, &unknown) && strings.ContainsAny(unknown.GetSpecifiedShortnames(), "0123456789") {
		if _, err := orient.Parse("-"+unknown.GetSpecifiedShortnames(), c.assume); err != nil {
			return err
		}
	}
	return flagError(cmd, err)
}

// run reads every text before it writes anything.
func (c *converter) run(texts []string) error {
	if len(texts) == 0 {
		return misreadf("read no text; write a plane, such as cuesta convert 035/30SE")
	}
	entries := make([]orient.Entry, len(texts))
	for i, t := range texts {
		e, err := orient.Parse(t, c.assume)
		if err != nil {
			return c.refuse(texts, i, err)
		}
		entries[i] = e
	}
	var out bytes.Buffer
	for i, e := range entries {
		if err := c.write(&out, texts[i], e, i == 0); err != nil {
			return err
		}
	}
	_, err := c.out.Write(out.Bytes())
	return err
}

// refuse says which of several texts is wrong, and whether quotes would help.
func (c *converter) refuse(texts []string, i int, err error) error {
	if len(texts) == 1 {
		return err
	}
	whole := strings.Join(texts, " ")
	if _, e := orient.Parse(whole, c.assume); e == nil {
		return fmt.Errorf("text %d of %d: %w; if they are one plane, put it in quotes: \"%s\"", i+1, len(texts), err, whole)
	}
	return fmt.Errorf("text %d of %d: %w", i+1, len(texts), err)
}

func (c *converter) write(out *bytes.Buffer, text string, e orient.Entry, first bool) error {
	if c.json {
		return json.NewEncoder(out).Encode(planeObject(text, e))
	}
	p := e.Plane
	switch c.to {
	case toAzimuth:
		fmt.Fprintln(out, orient.Format(p, orient.AzimuthDip))
	case toQuadrant:
		fmt.Fprintln(out, orient.Format(p, orient.Quadrant))
	case toDirection:
		fmt.Fprintln(out, orient.Format(p, orient.DirectionDip))
	case toPole:
		fmt.Fprintln(out, orient.Format(p, orient.PoleNotation))
	case toAll:
		if !first {
			fmt.Fprintln(out)
		}
		writeAll(out, text, e)
	}
	return nil
}

func writeAll(out *bytes.Buffer, text string, e orient.Entry) {
	for _, l := range [...]struct{ label, value string }{
		{"read", oneLine(text)},
		{"understood", e.Understood()},
		{"azimuth", orient.Format(e.Plane, orient.AzimuthDip)},
		{"quadrant", orient.Format(e.Plane, orient.Quadrant)},
		{"direction", orient.Format(e.Plane, orient.DirectionDip)},
		{"pole", orient.Format(e.Plane, orient.PoleNotation)},
	} {
		fmt.Fprintf(out, "%-11s%s\n", l.label, l.value)
	}
}

// convertedPlane is one line of convert --json. Strike, dip direction and
// letters are left out for a horizontal plane.
type convertedPlane struct {
	Text         string   `json:"text"`
	Understood   string   `json:"understood"`
	Azimuth      string   `json:"azimuth"`
	Quadrant     string   `json:"quadrant"`
	Direction    string   `json:"direction"`
	Pole         string   `json:"pole"`
	Strike       *float64 `json:"strike,omitempty"`
	DipDirection *float64 `json:"dip_direction,omitempty"`
	Dip          float64  `json:"dip"`
	Letters      string   `json:"letters,omitempty"`
	Overturned   bool     `json:"overturned"`
}

func planeObject(text string, e orient.Entry) convertedPlane {
	p := e.Plane
	c := convertedPlane{
		Text: text, Understood: e.Understood(),
		Azimuth:   orient.Format(p, orient.AzimuthDip),
		Quadrant:  orient.Format(p, orient.Quadrant),
		Direction: orient.Format(p, orient.DirectionDip),
		Pole:      orient.Format(p, orient.PoleNotation),
		Dip:       rounded(p.Dip.Degrees(), 6), Overturned: p.Overturned,
	}
	if e.HasStrike {
		strike, direction := rounded(p.Strike.Degrees(), 6), rounded(p.DipDirection().Degrees(), 6)
		c.Strike, c.DipDirection = &strike, &direction
		c.Letters = p.DipDirection().Letters()
	}
	return c
}
