package speech

import (
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

// speak says one text, or as much of it as there is time for. A program that
// fails leaves the text unsaid.
func (v *Voice) speak(text string) {
	c := v.program.command(text)
	if c.Start() != nil {
		return
	}
	said := make(chan error, 1)
	go func() { said <- c.Wait() }()
	for {
		select {
		case <-said:
			return
		case <-v.wake:
			if !v.hurry() {
				continue
			}
			if v.program.stop != nil {
				_ = exec.Command(v.program.path, v.program.stop...).Run() // it goes on talking where this fails
			}
			_ = c.Process.Kill() // it may just have ended
			<-said
			return
		}
	}
}
