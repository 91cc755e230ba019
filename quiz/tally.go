package quiz

import (
	"sort"

	"cuesta/orient"
	"cuesta/quiz/mistake"
)

// Tally counts past verdicts: by dip class, and by mistake. The zero value has
// counted nothing. It is a plain value that can be compared.
//
// Recent answers count more: when a dip class holds more than Recent answers
// both its counts are halved, and when as many have been counted in all the
// counts of mistakes are halved too.
type Tally struct {
	Classes  [Classes]Score
	Mistakes [mistake.Kinds]int // how often each was named first
	Answers  int                // since the mistakes were last halved
}

// Score is how many answers were right, of how many.
type Score struct {
	Right int `json:"right"`
	Total int `json:"total"`
}

// Recent is the number of answers beyond which old ones fade.
const Recent = 40

// Add counts the verdict on a plane.
func (t Tally) Add(truth orient.Plane, v Verdict) Tally {
	s := &t.Classes[ClassOf(truth.Dip)]
	if s.Total >= Recent {
		s.Right, s.Total = s.Right/2, s.Total/2
	}
	s.Total++
	if v.Right {
		s.Right++
	}
	t.addMistakes(v.Mistakes)
	return t
}

func (t *Tally) addMistakes(fs []mistake.Finding) {
	if t.Answers >= Recent {
		t.Answers /= 2
		for k := range t.Mistakes {
			t.Mistakes[k] /= 2
		}
	}
	t.Answers++
	for _, f := range fs {
		if len(f.With) == 0 {
			t.Mistakes[f.Kind]++
		}
	}
}

// Missed is the share of the class that is expected to be missed, in (0, 1):
// (wrong + 1)/(total + 2), the rule of succession, so that a class without
// answers stands at one half and a single slip does not decide.
func (s Score) Missed() float64 {
	return float64(s.Total-s.Right+1) / float64(s.Total+2)
}

// leastShare keeps every class in the mix, however well it goes.
const leastShare = 0.15

// Mix returns the mix that practises what is missed most: the share of a class
// grows with Score.Missed, and no class falls under 15 percent. The mix of a
// tally that has counted nothing is DefaultMix in its shares.
func (t Tally) Mix() Mix {
	var w [Classes]float64
	var sum float64
	for c := range w {
		w[c] = DefaultMix.Share(DipClass(c)) * t.Classes[c].Missed()
		sum += w[c]
	}
	for c := range w {
		w[c] = leastShare + (1-leastShare*Classes)*w[c]/sum
	}
	return Mix{w[Gentle], w[Moderate], w[Steep]}
}

// Focus returns the mistakes made so far, the most frequent first.
func (t Tally) Focus() []mistake.Kind {
	var ks []mistake.Kind
	for k, n := range t.Mistakes {
		if n > 0 {
			ks = append(ks, mistake.Kind(k))
		}
	}
	sort.SliceStable(ks, func(i, j int) bool { return t.Mistakes[ks[i]] > t.Mistakes[ks[j]] })
	return ks
}

// mostCounted bounds every count, so that no file can make them overflow.
const mostCounted = 1_000_000

// IsValid says whether the counts can be counts: from 0 to a million, and no
// more right than answered.
func (t Tally) IsValid() bool {
	for _, s := range t.Classes {
		if s.Right < 0 || s.Right > s.Total || s.Total > mostCounted {
			return false
		}
	}
	for _, n := range t.Mistakes {
		if n < 0 || n > mostCounted {
			return false
		}
	}
	return t.Answers >= 0 && t.Answers <= mostCounted
}
