package main

import (
	"cuesta/cmd/bench/asked"
	"cuesta/orient"
)

// options are what the command line asks for.
type options struct {
	asked.Options
	plane *orient.Plane
}

// read reads the command line. Without a seed each start is another.
func read(args []string) (o options, err error) {
	o.Options, err = asked.Read(args, o.readPlane)
	if !o.Seeded {
		o.Seed = chance()
	}
	return o, err
}

func (o *options) readPlane(s string) error {
	e, err := orient.Parse(s, orient.AzimuthDip)
	if err != nil {
		return err
	}
	o.plane = &e.Plane
	return nil
}
