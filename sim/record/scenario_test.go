package record_test

import (
	"flag"
	"os"
	"path/filepath"
	"testing"

	"cuesta/sim"
	"cuesta/sim/record"
)

// update writes the scenarios again with the states of this program. It is for
// a change of the physics that is meant, never to turn red into green.
var update = flag.Bool("update", false, "write the golden recordings again")

// scenarios are the golden recordings: a careful measurement with both ends of
// the strike line, a hasty one with everything against the grain, a slow needle
// on a steep bed in the far north, and one bed measured with the lid and with
// the sensor. Any `cuesta replay` can run them.
func scenarios(t *testing.T) []string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join("testdata", "*.rec"))
	if err != nil || len(files) != 4 {
		t.Fatalf("got %v, %v; want four recordings", files, err)
	}
	return files
}

func readFile(t *testing.T, name string) record.Recording {
	t.Helper()
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r, err := record.Read(f)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return r
}

// again carries the commands of a recording out once more and keeps the states
// of this program.
func again(t *testing.T, old record.Recording) record.Recording {
	t.Helper()
	r, err := record.Start(old.Setup)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range old.Entries {
		r.Advance(int(e.Tick - r.World().Tick()))
		if err := r.Do(e.Command); err != nil {
			t.Fatal(err)
		}
	}
	r.Advance(int(old.End.Tick - r.World().Tick()))
	return r.Recording()
}

// The same commands give the same states, bit for bit, on every run and on
// every target this test is run on (amd64 and WebAssembly).
func TestScenariosEndWhereTheySay(t *testing.T) {
	for _, name := range scenarios(t) {
		r := readFile(t, name)
		if *update {
			r = again(t, r)
			if err := r.WriteFile(name, true); err != nil {
				t.Fatal(err)
			}
		}
		res, err := record.Replay(r)
		if err != nil || !res.Same {
			t.Errorf("%s: %v (%v)", name, res, err)
		}
	}
}

func TestScenariosUseEveryKindOfCommand(t *testing.T) {
	var used [sim.Calibrate + 1]bool
	for _, name := range scenarios(t) {
		for _, e := range readFile(t, name).Entries {
			used[e.Command.Kind] = true
		}
	}
	for k, ok := range used {
		if !ok {
			t.Errorf("no scenario has a command to %v", sim.Kind(k))
		}
	}
}
