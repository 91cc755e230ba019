package learner_test

import (
	"strings"
	"testing"

	"cuesta/quiz/learner"
	"cuesta/sim"
	"cuesta/sim/record"
)

// BenchmarkSit lets a class of all kinds of students measure slabs.
func BenchmarkSit(b *testing.B) {
	f, class := slabs(3), learner.Class(30, 1)
	n := 0
	for b.Loop() {
		if _, err := class[n%len(class)].Sit(f, uint64(n)); err != nil {
			b.Fatal(err)
		}
		n++
	}
	b.ReportMetric(float64(n*len(f.Items))/b.Elapsed().Seconds(), "slabs/s")
}

// BenchmarkReplay reads and runs recordings of careful measurements again, and
// reports how much faster that goes than the clock of the bench.
func BenchmarkReplay(b *testing.B) {
	w, err := learner.Learner{}.Sit(slabs(20), 1)
	if err != nil {
		b.Fatal(err)
	}
	var ticks sim.Tick
	n := 0
	for b.Loop() {
		r, err := record.Read(strings.NewReader(w.Submission.Answers[n%20].Recording))
		if err != nil {
			b.Fatal(err)
		}
		got, err := record.Replay(r)
		if err != nil || !got.Same {
			b.Fatalf("got %v, %v", got, err)
		}
		ticks += got.Tick
		n++
	}
	b.ReportMetric(float64(ticks)/sim.TicksPerSecond/b.Elapsed().Seconds(), "x-realtime")
}
