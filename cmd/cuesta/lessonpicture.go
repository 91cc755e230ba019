package main

import (
	"strings"

	"cuesta/scenes/lesson"
)

// picturesOf plays a lesson and keeps every step.
func picturesOf(l lesson.Lesson) ([]stepPicture, error) {
	p, err := lesson.NewPlayer(l)
	if err != nil {
		return nil, err
	}
	var out []stepPicture
	for {
		p.Finish()
		out = append(out, stepPicture{words: strings.Join(p.Told(), " ")})
		there, err := p.Next()
		if err != nil {
			return nil, err
		}
		if !there {
			return out, nil
		}
	}
}
