package form

import (
	"bytes"
	"errors"
	"fmt"
	"reflect"
	"strings"
	"testing"
)

// roster makes an invented class.
func roster(n int) []Student {
	all := make([]Student, n)
	for i := range all {
		all[i] = Student{ID: fmt.Sprintf("tf%04d", i+1), Name: fmt.Sprintf("Student %d", i+1), ExtraTime: 1}
	}
	return all
}

func dealt(t testing.TB, b Blueprint, students []Student, seed uint64) Dealing {
	t.Helper()
	d, err := Deal(b, students, Options{Seed: seed})
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestNoTwoStudentsShareAPlane(t *testing.T) {
	for _, n := range []int{1, 2, 30, 100} {
		d := dealt(t, example(t), roster(n), 7)
		for slot := range d.Forms[0].Items {
			for i := range d.Forms {
				a, err := d.Forms[i].Item(slot)
				if err != nil {
					t.Fatal(err)
				}
				for j := range i {
					b, err := d.Forms[j].Item(slot)
					if err != nil {
						t.Fatal(err)
					}
					if isPlane(a) && (a.Near(b) || b.Near(a)) {
						t.Errorf("%d students: item %d: %s has %s and %s has %s", n, slot+1, d.Forms[i].Student.ID, a.Key(), d.Forms[j].Student.ID, b.Key())
					}
				}
			}
		}
	}
}

func TestParallelFormsAreEquallyDifficult(t *testing.T) {
	for n, seeds := range map[int]uint64{2: 10, 7: 5, 30: 3, 150: 1} {
		for seed := range seeds {
			if d := dealt(t, example(t), roster(n), seed); d.Spread > MostSpread {
				t.Errorf("%d students, seed %d: spread %.3f, want at most %.3f", n, seed, d.Spread, MostSpread)
			}
		}
	}
}

func TestTheSameInputsGiveTheSameBytes(t *testing.T) {
	bytesOf := func(seed uint64) []byte {
		var b bytes.Buffer
		for _, f := range dealt(t, example(t), roster(12), seed).Forms {
			if err := f.Encode(&b); err != nil {
				t.Fatal(err)
			}
		}
		return b.Bytes()
	}
	if !bytes.Equal(bytesOf(3), bytesOf(3)) {
		t.Error("the same seed gave other bytes")
	}
	if bytes.Equal(bytesOf(3), bytesOf(4)) {
		t.Error("another seed gave the same bytes")
	}
}

func TestFormsComeBackFromTheirFiles(t *testing.T) {
	for _, f := range dealt(t, example(t), roster(5), 1).Forms {
		var b bytes.Buffer
		if err := f.Encode(&b); err != nil {
			t.Fatal(err)
		}
		got, err := DecodeForm(bytes.NewReader(b.Bytes()))
		if err != nil || !reflect.DeepEqual(got, f) {
			t.Fatalf("got %+v, %v; want %+v", got, err, f)
		}
		for i := range f.Items {
			a, _ := f.Item(i)
			b, err := got.Item(i)
			if err != nil || !reflect.DeepEqual(a, b) {
				t.Errorf("item %d: got %+v, %v; want %+v", i+1, b, err, a)
			}
		}
	}
}

func TestTooLargeAClassIsToldHowManyFit(t *testing.T) {
	b := example(t)
	b.Parts = b.Parts[:1]
	b.Parts[0].Spec.Tolerance.Reading *= 10
	b.Parts[0].Spec.Tolerance.Dip *= 5
	_, err := Deal(b, roster(300), Options{Seed: 1})
	var room *RoomError
	if !errors.As(err, &room) || room.Fit < 10 || room.Fit >= 300 || room.Students != 300 {
		t.Fatalf("got %v, want a RoomError", err)
	}
	if want := fmt.Sprintf("only %d of the 300 students", room.Fit); !strings.Contains(err.Error(), want) {
		t.Errorf("got %q, want %q in it", err, want)
	}
	if _, err := Deal(b, roster(room.Fit/2), Options{Seed: 1}); err != nil {
		t.Errorf("half of them: %v", err)
	}
	split := roster(300)
	for i := range split {
		split[i].Class = fmt.Sprint(i % 60)
	}
	if _, err := Deal(b, split, Options{Seed: 1}); err != nil {
		t.Errorf("in classes: %v", err)
	}
}

func BenchmarkDeal(b *testing.B) {
	bp, students := example(b), roster(100)
	for b.Loop() {
		if _, err := Deal(bp, students, Options{Seed: 1}); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(b.N*len(students))/b.Elapsed().Seconds(), "forms/s")
}

// Who comes late is dealt a form apart from those of the others, whose forms
// stay as they were handed out, wherever in the roster the new name stands.
func TestFormsStayWhenOthersJoin(t *testing.T) {
	before := dealt(t, example(t), roster(12), 7)
	late := append([]Student{{ID: "late", Name: "Mabli Rowan", ExtraTime: 1}}, roster(12)...)
	after, err := Deal(example(t), late, Options{Seed: 7, Kept: before.Forms})
	if err != nil {
		t.Fatal(err)
	}
	for i, f := range before.Forms {
		if got := after.Forms[i+1]; !reflect.DeepEqual(got, f) {
			t.Errorf("%s: the form changed from %s to %s", f.Student.ID, f.Code, got.Code)
		}
	}
	items, err := after.Forms[0].All()
	if err != nil {
		t.Fatal(err)
	}
	for slot, it := range items {
		for _, f := range before.Forms {
			other, err := f.Item(slot)
			if err != nil {
				t.Fatal(err)
			}
			if isPlane(it) && (it.Near(other) || other.Near(it)) {
				t.Errorf("item %d: the late-comer has %s and %s has %s", slot+1, it.Key(), f.Student.ID, other.Key())
			}
		}
	}
	if after.Spread > MostSpread {
		t.Errorf("got a spread of %.3f, want at most %.3f", after.Spread, MostSpread)
	}
}

func TestFormsOfAnotherDealAreNotKept(t *testing.T) {
	before := dealt(t, example(t), roster(2), 7)
	if _, err := Deal(example(t), roster(3), Options{Seed: 8, Kept: before.Forms}); !errors.Is(err, ErrKept) {
		t.Errorf("another seed: got %v, want %v", err, ErrKept)
	}
}
