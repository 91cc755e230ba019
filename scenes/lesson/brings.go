package lesson

import (
	"slices"

	"cuesta/quiz/mistake"
)

// whole is the step with what comes with it, named or not: a mistake is seen
// with the instrument, its magnifiers and what the student wrote, in the view of
// the reading that it spoils, and a reading stands under its scale. What the step
// hides by name stays hidden; "all" clears what was there before.
func (s Step) whole() Step {
	var with []Thing
	if s.Mistake != "" {
		with = append(with, Instrument, Levels, Scale, Student)
	}
	if slices.Contains(s.Show, Reading) {
		with = append(with, Scale)
	}
	for _, t := range with {
		if !s.hidesByName(t) && !slices.Contains(s.Show, t) {
			s.Show = append(s.Show, t)
		}
	}
	if s.View == ViewAsItIs {
		s.View = viewOf(s.Mistake)
	}
	return s
}

func (s Step) hidesByName(t Thing) bool {
	return len(s.Hide) < int(Things) && slices.Contains(s.Hide, t)
}

// viewOf is the view of the reading that a mistake spoils; who makes none is seen
// as the eye stands.
func viewOf(name string) View {
	k, ok := mistake.KindOf(name)
	if !ok {
		return ViewAsItIs
	}
	switch k {
	case mistake.EdgeNotDownDip, mistake.BodyLeaning, mistake.TubeNotCentred, mistake.PercentScale, mistake.Complement:
		return ViewDip
	case mistake.OtherEnd, mistake.SouthEnd, mistake.DirectionForStrike, mistake.EastWest, mistake.WrongLetters,
		mistake.DeclinationNotSet, mistake.DeclinationWrongSign, mistake.DeclinationMisset, mistake.DeclinationTwice,
		mistake.LevelNotCentred, mistake.NeedleMoving, mistake.NeedleRubbing, mistake.NeedleLocked, mistake.NeedleSticking,
		mistake.DigitsSwapped, mistake.StrikeDipSwapped, mistake.LettersContradict, mistake.NotCalibrated:
	}
	return ViewStrike
}

// onEdge says that a mistake seen so ends with the instrument back on its edge.
func (v View) onEdge() bool { return v == ViewStrike || v == ViewClose }
