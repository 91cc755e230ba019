package scenes

import (
	"bytes"
	"encoding/json"
	"fmt"

	"cuesta/quiz"
)

// practice is what a bench keeps from day to day.
type practice struct {
	Version  int
	Settings Settings
	Tally    quiz.Tally
	Planes   int    // dealt so far
	Seed     uint64 // of the plane on the bench
}

// practiceVersion is written; practices of version 1, which had neither sound,
// speech, switches nor keys to choose, are read as well.
const practiceVersion = 2

// load takes up where the student left off. Data that cannot be read is set
// aside, never overwritten.
func (b *Bench) load() {
	if b.store == nil {
		return
	}
	data, err := b.store.Load()
	if err != nil {
		b.say("Progress cannot be read and will not be kept: " + err.Error())
		b.store = nil
		return
	}
	if data == nil {
		return
	}
	p, err := readPractice(data)
	if err != nil {
		b.setAside(err)
		return
	}
	b.set, b.tally = p.Settings, p.Tally
	b.number, b.seed = max(p.Planes-1, 0), p.Seed
}

func (b *Bench) setAside(why error) {
	where, err := b.store.SetAside()
	if err != nil {
		b.say("Progress cannot be read and will not be kept: " + err.Error())
		b.store = nil
		return
	}
	b.say(fmt.Sprintf("The record of earlier practice could not be read (%v); it now lies at %s, and a new one begins.", why, where))
}

func readPractice(data []byte) (practice, error) {
	var p practice
	d := json.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	if err := d.Decode(&p); err != nil {
		return practice{}, err
	}
	switch {
	case d.More():
		return practice{}, fmt.Errorf("there is more after the end")
	case p.Version < 1 || p.Version > practiceVersion:
		return practice{}, fmt.Errorf("version %d, this program reads versions 1 to %d", p.Version, practiceVersion)
	case !p.Settings.IsValid():
		return practice{}, fmt.Errorf("a setting is none of those offered")
	case p.Planes < 0:
		return practice{}, fmt.Errorf("a count is below zero")
	}
	return p, nil
}

// save writes what is to be kept. The first failure is told; practice goes on.
func (b *Bench) save() {
	if b.store == nil {
		return
	}
	data, err := json.MarshalIndent(practice{practiceVersion, b.set, b.tally, b.number, b.seed}, "", "\t")
	if err == nil {
		err = b.store.Save(append(data, '\n'))
	}
	if err != nil && b.closing == nil {
		b.closing = fmt.Errorf("progress could not be kept: %w", err)
		b.say("Progress could not be kept: " + err.Error())
	}
}
