package main

import (
	"path/filepath"
	"strings"

	"cuesta/orient"
	"cuesta/quiz/form"
	"cuesta/quiz/lab"
	"cuesta/quiz/learner"
	"cuesta/sim"
	"cuesta/sim/record"
)

// Names in the folder of the lab.
const (
	demoLab      = "lab"
	demoStations = "stations.toml"
	demoReadings = "readings"
)

// Bounds of the lab of a demo class: as many students as fit around a table,
// and how often each reads a station.
const (
	labGroup    = 30
	labReadings = 2
)

// measureSlabs lets the first of the class measure the stations of the example
// and writes what they hand in. Each reading is taken at a bench with a slab
// that lies as the instructor found it, give or take half of what that may be
// off by.
func (d *demo) measureSlabs(to *folder, roster []form.Student, seed uint64) error {
	if err := to.write(filepath.Join(demoLab, demoStations), text([]byte(lab.Example()))); err != nil {
		return err
	}
	b, err := form.ReadStations(strings.NewReader(lab.Example()))
	if err != nil {
		return err
	}
	group := roster[:min(len(roster), labGroup)]
	class := learner.Class(len(group), seed+1)
	for i, s := range group {
		f, err := b.Fixed(s)
		if err != nil {
			return err
		}
		sub := form.Submission{Form: f}
		for j, p := range b.Parts {
			texts, err := readings(p, class[i], seed+uint64(i*len(b.Parts)+j))
			if err != nil {
				return err
			}
			sub.Answers = append(sub.Answers, form.Answer{Texts: texts})
		}
		sub.Started, sub.Finished = demoTimes(f, seed+uint64(i))
		name := filepath.Join(demoLab, demoReadings, form.FileName(s.ID)+form.SubmissionEnding)
		if err := to.write(name, sub.Encode); err != nil {
			return err
		}
	}
	return nil
}

// readings are what a learner reads at a station.
func readings(p form.Part, l learner.Learner, seed uint64) ([]string, error) {
	st := p.Spec.Station
	sign := orient.Angle(1)
	if seed%2 == 1 {
		sign = -1
	}
	lies := orient.PlaneOf(st.Plane.Strike.Angle()+sign*st.Strike/2, st.Plane.Dip+sign*st.Dip/2)
	var texts []string
	for i := range uint64(labReadings) {
		rec, err := record.Start(sim.Setup{Seed: labReadings*seed + i, Plane: lies, Field: p.Spec.Field, Ring: p.Spec.Field.Declination})
		if err != nil {
			return nil, err
		}
		text, err := l.Measure(rec, p.Spec.Notation, labReadings*seed+i)
		if err != nil {
			return nil, err
		}
		texts = append(texts, text)
	}
	return texts, nil
}

// gradeLab marks the lab as the command does.
func (d *demo) gradeLab(dir string) error {
	g := &grader{
		env: d.env, force: d.force, stations: filepath.Join(dir, demoLab, demoStations),
		out: filepath.Join(dir, demoLab, demoGrades), report: filepath.Join(dir, demoLab, demoReport),
	}
	return g.run([]string{filepath.Join(dir, demoLab, demoReadings)})
}
