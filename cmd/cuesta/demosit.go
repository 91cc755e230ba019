package main

import (
	"encoding/csv"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"sync"
	"time"

	"cuesta/quiz/form"
	"cuesta/quiz/learner"
)

// writeRoster writes a roster as ReadRoster reads it (RFC 4180).
func writeRoster(to io.Writer, roster []form.Student) error {
	w := csv.NewWriter(to)
	w.UseCRLF = true
	rows := [][]string{{"id", "name", "extra_time", "class"}}
	for _, s := range roster {
		extra := ""
		if s.ExtraTime > 1 {
			extra = strconv.FormatFloat(s.ExtraTime, 'f', -1, 64)
		}
		rows = append(rows, []string{s.ID, s.Name, extra, s.Class})
	}
	return w.WriteAll(rows)
}

// sit lets simulated students sit the forms, on all processors, and names the
// files of what they hand in. No submission is held longer than it takes to
// write it.
func (d *demo) sit(to *folder, forms []form.Form, seed uint64) ([]string, error) {
	if err := to.below(demoSubmissions); err != nil {
		return nil, err
	}
	class := learner.Class(len(forms), seed)
	names := make([]string, len(forms))
	next := make(chan int)
	var lock sync.Mutex
	var first error
	var workers sync.WaitGroup
	done, tell := 0, progress(d.err, "sat")
	for range runtime.GOMAXPROCS(0) {
		workers.Add(1)
		go func() {
			defer workers.Done()
			for i := range next {
				names[i] = filepath.Join(demoSubmissions, form.FileName(forms[i].Student.ID)+form.SubmissionEnding)
				err := hand(to, names[i], forms[i], class[i], seed+uint64(i))
				lock.Lock()
				if first == nil {
					first = err
				}
				done++
				tell(done, len(forms))
				lock.Unlock()
			}
		}()
	}
	for i := range forms {
		next <- i
	}
	close(next)
	workers.Wait()
	return names, first
}

// hand writes what one student hands in.
func hand(to *folder, name string, f form.Form, l learner.Learner, seed uint64) error {
	w, err := l.Sit(f, seed)
	if err != nil {
		return err
	}
	w.Submission.Started, w.Submission.Finished = demoTimes(f, seed)
	return to.write(name, w.Submission.Encode)
}

// demoTimes are when a student started and finished, on the day of the demo
// course and within the time allowed.
func demoTimes(f form.Form, seed uint64) (started, finished string) {
	r := rand.New(rand.NewPCG(seed, 0x64656d6f))
	at := time.Date(2026, time.September, 14, 13, 0, r.IntN(240), 0, time.FixedZone("", -4*3600))
	minutes := max(1, f.Student.ExtraTime) * f.Blueprint.Minutes
	took := time.Duration((0.45 + 0.5*r.Float64()) * minutes * float64(time.Minute)).Round(time.Second)
	return at.Format(time.RFC3339), at.Add(took).Format(time.RFC3339)
}

// below makes a folder in the folder.
func (f *folder) below(name string) error { return os.Mkdir(filepath.Join(f.temp, name), 0o755) }
