package scenes

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/input"
	"cuesta/scenes/keep"
	"cuesta/scenes/keymap"
)

func TestPracticeGoesOnFromDayToDay(t *testing.T) {
	store := keep.File{Path: filepath.Join(t.TempDir(), "practice.json")}
	p := orient.PlaneOf(35*orient.Degree, 30*orient.Degree)
	k := newHands(t, BenchOptions{Seed: 7, Plane: &p, Store: store})
	k.b.Choose(Settings{Notation: orient.DirectionDip})
	k.typing("125/30")
	k.key(input.Enter, 0)
	if !k.b.verdict.Right {
		t.Fatalf("125/30 by dip direction: got %+v, want right", k.b.verdict)
	}
	k.key(input.Enter, 0) // deals the second plane
	truth := k.b.ses.Truth()
	if err := k.b.Close(); err != nil {
		t.Fatal(err)
	}
	again := newHands(t, BenchOptions{Seed: 99, Store: store})
	if got, want := again.b.Settings(), k.b.Settings(); got != want {
		t.Errorf("settings: got %+v, want %+v", got, want)
	}
	if again.b.tally != k.b.tally || again.b.number != 2 {
		t.Errorf("got station %d with tally %+v, want station 2 with %+v", again.b.number, again.b.tally, k.b.tally)
	}
	if got := again.b.ses.Truth(); got != truth {
		t.Errorf("the plane on the bench: got %v, want %v", got, truth)
	}
}

func TestDamagedPracticeIsSetAsideNotLost(t *testing.T) {
	for name, data := range map[string]string{
		"cut":           `{"Version":1,"Settings":{"Nota`,
		"not text":      "\x00\x01\x02",
		"other version": `{"Version":9}`,
		"keys":          `{"Version":2,"Settings":{"Keys":[{"Do":"flip","Key":"Escape"}]},"Tally":{"version":1,"classes":{},"mistakes":{},"answers":0}}`,
		"unknown":       `{"Version":1,"Colour":"red"}`,
		"setting":       `{"Version":1,"Settings":{"Theme":200},"Tally":{"version":1,"classes":{},"mistakes":{},"answers":0}}`,
		"junk behind":   `{"Version":1} {}`,
	} {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "practice.json")
			if err := os.WriteFile(path, []byte(data), 0o600); err != nil {
				t.Fatal(err)
			}
			k := newHands(t, BenchOptions{Seed: 1, Store: keep.File{Path: path}})
			if !strings.Contains(k.b.notice, "damaged-1") {
				t.Errorf("got notice %q, want where the old record lies", k.b.notice)
			}
			if got, err := os.ReadFile(path + ".damaged-1"); string(got) != data {
				t.Errorf("set aside: got %q, %v; want it unchanged", got, err)
			}
		})
	}
}

// full is a store on a full disk.
type full struct{}

var errFull = errors.New("no space left on device")

func (full) Load() ([]byte, error)     { return nil, nil }
func (full) Save([]byte) error         { return errFull }
func (full) SetAside() (string, error) { return "", errFull }

func TestAFullDiskIsSaidAndPracticeGoesOn(t *testing.T) {
	k := newHands(t, BenchOptions{Seed: 1, Store: full{}})
	k.typing("035/30")
	k.key(input.Enter, 0)
	if k.b.phase != judged || !strings.Contains(k.b.notice, "no space left") {
		t.Errorf("got phase %v, notice %q", k.b.phase, k.b.notice)
	}
	if err := k.b.Close(); !errors.Is(err, errFull) {
		t.Errorf("got %v at the end, want the reason", err)
	}
}

// Practices kept before there was sound, speech or a choice of keys go on.
func TestAnOlderPracticeIsRead(t *testing.T) {
	const old = `{"Version":1,"Settings":{"Notation":2,"Declination":0,"Dips":1,"Text":1,"Theme":1,"Calm":true},` +
		`"Tally":{"version":1,"classes":{},"mistakes":{},"answers":0},"Planes":4,"Seed":12}`
	path := filepath.Join(t.TempDir(), "practice.json")
	if err := os.WriteFile(path, []byte(old), 0o600); err != nil {
		t.Fatal(err)
	}
	k := newHands(t, BenchOptions{Seed: 1, Store: keep.File{Path: path}})
	want := Settings{Notation: orient.DirectionDip, Dips: GentleDips, Text: Text125, Theme: 1, Calm: true}
	if got := k.b.Settings(); got != want || k.b.notice != "" || k.b.number != 4 {
		t.Errorf("got %+v at station %d, notice %q; want %+v at 4", got, k.b.number, k.b.notice, want)
	}
}

func TestEverySettingIsKept(t *testing.T) {
	store := keep.File{Path: filepath.Join(t.TempDir(), "practice.json")}
	k := newHands(t, BenchOptions{Seed: 7, Store: store})
	keys, _, err := k.b.Settings().Keys.With(keymap.Flip, keymap.Stroke{Rune: 'x'})
	if err != nil {
		t.Fatal(err)
	}
	want := Settings{Sound: SoundSoft, Speech: true, Scan: ScanTwo, Pace: PaceQuick, Quiet: true, Keys: keys}
	k.b.Choose(want)
	again := newHands(t, BenchOptions{Seed: 7, Store: store})
	if got := again.b.Settings(); got != want {
		t.Errorf("got %+v, want %+v", got, want)
	}
}
