package scenes_test

import (
	"slices"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/scenes"
)

func benchOf(t *testing.T, p orient.Plane, set scenes.Settings, seed uint64) *room {
	t.Helper()
	b, err := scenes.NewBench(scenes.BenchOptions{Plane: &p, Seed: seed})
	if err != nil {
		t.Fatal(err)
	}
	b.Choose(set)
	return enter(t, scenes.NewSwitched(b))
}

// journey is a way through the bench and the bound on its presses.
type journey struct {
	name string
	set  scenes.Settings
	hand func(*room) hand
	most int
}

var journeys = []journey{
	{"keyboard", scenes.Settings{}, func(r *room) hand { return keyboard{r} }, 120},
	{"one switch", scenes.Settings{Scan: scenes.ScanItself, Pace: scenes.PaceQuick},
		func(r *room) hand { return oneSwitch{room: r, stay: scenes.PaceQuick.Ticks()} }, 150},
	{"two switches", scenes.Settings{Scan: scenes.ScanTwo}, func(r *room) hand { return oneSwitch{room: r, two: true} }, 400},
}

// TestAMeasurementFromTheDescriptionAlone takes 25 random planes by each way,
// and looks at nothing but the description.
func TestAMeasurementFromTheDescriptionAlone(t *testing.T) {
	for _, j := range journeys {
		t.Run(j.name, func(t *testing.T) {
			t.Parallel()
			var presses []int
			for i, p := range planes(31, 25) {
				r := benchOf(t, p, j.set, uint64(40+i))
				m := &measurer{room: r, hand: j.hand(r), step: "Steps of 1°"}
				verdict, strike, dip := m.measure()
				if !strings.Contains(verdict, "Right: strike and dip") || !within(p, strike, dip) {
					t.Errorf("%s: wrote %03d/%02d, told %q", orient.Format(p, orient.AzimuthDip), strike, dip, verdict)
				}
				presses = append(presses, r.presses)
			}
			slices.Sort(presses)
			t.Logf("presses: median %d, most %d", presses[len(presses)/2], presses[len(presses)-1])
			if most := presses[len(presses)-1]; most > j.most {
				t.Errorf("%d presses, want at most %d", most, j.most)
			}
		})
	}
}
