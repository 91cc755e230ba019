package lesson

import (
	"errors"
	"slices"
	"strings"

	"cuesta/quiz"
	"cuesta/quiz/learner"
	"cuesta/quiz/mistake"
	"cuesta/scenes/session"
	"cuesta/sim"
)

// Written is what the simulated student wrote, and how it was judged.
type Written struct {
	Text    string         // as it was written
	Right   bool           // the judge takes it
	Outcome string         // what is right and what is off, a sentence or two
	Reasons []string       // what probably happened and what to do about it, the most probable first
	Named   []mistake.Kind // the mistakes in Reasons
}

// studentOf is the learner of a name in a step.
func studentOf(name string) (learner.Learner, bool) {
	if name == Careful {
		return learner.Learner{}, true
	}
	k, ok := mistake.KindOf(name)
	return learner.Learner{Manner: learner.Mistaken, Mistake: k}, ok
}

// noted is an answer written down at a bench, and what the judge says of it. One
// that cannot be read is written down all the same.
func noted(ses *session.Session, text string) (Written, error) {
	s := Written{Text: text}
	v, err := ses.Note(text)
	var refused *session.Refused
	switch {
	case errors.As(err, &refused):
		s.refused(refused)
		return s, ses.Do(sim.Command{Kind: sim.Note, Text: text})
	case err != nil:
		return s, err
	}
	s.judged(v)
	return s, nil
}

func (s *Written) judged(v quiz.Verdict) {
	s.Right, s.Outcome = v.Right, v.Said
	for _, m := range causeFirst(v.Mistakes) {
		s.Named = append(s.Named, m.Kind)
		s.because(m.Said)
		s.Outcome = strings.Replace(s.Outcome, m.Said, "", 1)
	}
	s.Outcome = strings.TrimSpace(s.Outcome)
}

// causeFirst puts a needle that rubs before the level that was out: it rubs only
// in a case that is tilted, so that the one brings the other with it.
func causeFirst(all []mistake.Finding) []mistake.Finding {
	all = slices.Clone(all)
	slices.SortStableFunc(all, func(a, b mistake.Finding) int {
		switch {
		case a.Kind == mistake.NeedleRubbing && b.Kind == mistake.LevelNotCentred:
			return -1
		case a.Kind == mistake.LevelNotCentred && b.Kind == mistake.NeedleRubbing:
			return 1
		}
		return 0
	})
	return all
}

// because adds a reason, once: two mistakes that cannot be told apart are one.
// What is probable beside the first reason is said as that.
func (s *Written) because(said string) {
	for _, r := range s.Reasons {
		if r == said {
			return
		}
	}
	if rest, ok := strings.CutPrefix(said, "Probably "); ok && len(s.Reasons) > 0 {
		said = "And also " + rest
	}
	s.Reasons = append(s.Reasons, said)
}

func (s *Written) refused(r *session.Refused) {
	s.Outcome = strings.TrimSuffix(r.Reason.Error(), ".") + "."
	if r.Hint != nil {
		s.Named, s.Reasons = []mistake.Kind{r.Hint.Kind}, []string{r.Hint.Said}
	}
}
