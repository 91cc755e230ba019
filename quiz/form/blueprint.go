package form

import (
	"io"

	"cuesta/quiz/written"
)

// LargestBlueprint is the size in bytes above which a blueprint is not read.
const LargestBlueprint = 64 << 10

// blueprintTOML is the shape of the file. Its values are read as they come, so
// that one of the wrong type does not hide what else is wrong.
type blueprintTOML struct {
	Title     any           `toml:"title"`
	Notation  any           `toml:"notation"`
	Pass      any           `toml:"pass"`
	Minutes   any           `toml:"minutes"`
	Due       any           `toml:"due"`
	Cautions  any           `toml:"cautions"`
	Seed      any           `toml:"seed"`
	Place     placeTOML     `toml:"place"`
	Tolerance toleranceTOML `toml:"tolerance"`
	Items     []itemTOML    `toml:"item"`
}

type placeTOML struct {
	Name        any `toml:"name"`
	Site        any `toml:"site"`
	Date        any `toml:"date"`
	Declination any `toml:"declination"`
}

type toleranceTOML struct {
	Reading    any `toml:"reading"`
	Levelling  any `toml:"levelling"`
	Dip        any `toml:"dip"`
	StepStrike any `toml:"step_strike"`
	StepDip    any `toml:"step_dip"`
	StepShare  any `toml:"step_share"`
	Side       any `toml:"side"`
}

type itemTOML struct {
	Kind      any           `toml:"kind"`
	Count     any           `toml:"count"`
	Points    any           `toml:"points"`
	Attempts  any           `toml:"attempts"`
	HintCost  any           `toml:"hint_cost"`
	Notation  any           `toml:"notation"`
	Dips      any           `toml:"dips"`
	Mix       mixTOML       `toml:"mix"`
	Tolerance toleranceTOML `toml:"tolerance"`
}

type mixTOML struct {
	Gentle   any `toml:"gentle"`
	Moderate any `toml:"moderate"`
	Steep    any `toml:"steep"`
}

// ReadBlueprint reads a blueprint (TOML). It is strict: a key that it does not
// know is refused. An error of the file is a *Wrong that names every problem at
// once with line and column, except that a text which is no TOML at all ends at
// its first one; other errors are those of the reader.
func ReadBlueprint(from io.Reader) (Blueprint, error) {
	var in blueprintTOML
	c, err := readTOML(from, blueprintFile, &in)
	if err != nil {
		return Blueprint{}, err
	}
	b := c.blueprint(in)
	return b, c.Result()
}

var blueprintFile = written.Kind{Name: "a blueprint", Err: ErrBlueprint, Largest: LargestBlueprint, Table: "item"}

// checker reads the values of a file.
type checker struct{ *written.Checker }

// readTOML decodes a file into a shape and returns the checker of its values.
func readTOML(from io.Reader, k written.Kind, into any) (checker, error) {
	text, err := io.ReadAll(io.LimitReader(from, int64(k.Largest)+1))
	if err != nil {
		return checker{}, err
	}
	c, err := written.Decode(text, into, k)
	return checker{c}, err
}
