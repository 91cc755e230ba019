package speech

import (
	"fmt"
	"os/exec"
	"strings"
)

// program is a speech program and how it is called.
type program struct {
	name, path string
	args       []string
	reads      bool     // the text from its input; otherwise it stands behind args
	stop       []string // arguments that end what is being said elsewhere, or nil
}

func (p program) command(text string) *exec.Cmd {
	if !p.reads {
		return exec.Command(p.path, append(append([]string(nil), p.args...), text)...)
	}
	c := exec.Command(p.path, p.args...)
	c.Stdin = strings.NewReader(text + "\n")
	return c
}

// run says what there is to say until the voice is ended.
func (v *Voice) run() {
	defer close(v.over)
	for range v.wake {
		for {
			text, ended := v.take()
			if text == "" && ended {
				return
			}
			if text == "" {
				break
			}
			v.speak(text)
		}
	}
}

// speak says one text, or as much of it as there is time for. Where a program
// fails the next one says it; where the last one fails it stays unsaid.
func (v *Voice) speak(text string) {
	for len(v.programs) > 0 {
		err := v.by(v.programs[0], text)
		if err == nil {
			return
		}
		if v.programs = v.programs[1:]; len(v.programs) == 0 {
			v.mu.Lock()
			v.err = err
			v.mu.Unlock()
		}
	}
}

// by has a program say one text; it is no failure to be cut off.
func (v *Voice) by(p program, text string) error {
	c := p.command(text)
	if err := c.Start(); err != nil {
		return fmt.Errorf("%s: %w", p.name, err)
	}
	said := make(chan error, 1)
	go func() { said <- c.Wait() }()
	for {
		select {
		case err := <-said:
			if err != nil {
				return fmt.Errorf("%s: %w", p.name, err)
			}
			return nil
		case <-v.wake:
			if !v.hurry() {
				continue
			}
			if p.stop != nil {
				_ = exec.Command(p.path, p.stop...).Run() // it goes on talking where this fails
			}
			_ = c.Process.Kill() // it may just have ended
			<-said
			return nil
		}
	}
}
