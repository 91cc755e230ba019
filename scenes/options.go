package scenes

import (
	"cuesta/orient"
	"cuesta/scenes/describe"
	"cuesta/scenes/theme"
)

// option is one setting: its name and the choices in the order of their IDs.
type option struct {
	first describe.ID
	name  string
	words []string
	at    int
}

func (s Settings) options() []option {
	var themes []string
	for _, n := range theme.Names {
		themes = append(themes, n.String())
	}
	return []option{
		{idSetNotation, "Notation", []string{"035/30 right-hand", "N35E 30SE", "125/30 dip direction"}, int(s.Notation)},
		{idSetDeclination, "Declination", []string{"none", "already set on the dial", "mine to set"}, int(s.Declination)},
		{idSetDips, "Planes", []string{"all dips", "gentle", "moderate", "steep", "what I miss most"}, int(s.Dips)},
		{idSetMethod, "Method", []string{MethodEdge.String(), MethodLid.String(), MethodSensor.String()}, int(s.Method)},
		{idSetText, "Text", []string{Text100.String(), Text125.String(), Text150.String(), Text200.String()}, int(s.Text)},
		{idSetTheme, "Colours", themes, int(s.Theme)},
		{idSetMotion, "Motion", []string{"full", "reduced"}, second(s.Calm)},
		{idSetSound, "Sound", []string{SoundOff.String(), SoundSoft.String(), SoundMiddle.String(), SoundLoud.String()}, int(s.Sound)},
		{idSetSpeech, "Speech", []string{"off", "on"}, second(s.Speech)},
		{idSetScan, "Switches", []string{ScanOff.String(), ScanItself.String(), ScanTwo.String()}, int(s.Scan)},
		{idSetPace, "Mark stays", []string{PaceSlow.String(), PaceMiddle.String(), PaceQuick.String()}, int(s.Pace)},
		{idSetLetters, "Letter keys", []string{"work", "only write"}, second(s.Quiet)},
	}
}

// second is the second of two choices, when it is the one.
func second(is bool) int {
	if is {
		return 1
	}
	return 0
}

// with returns the settings with the choice of an ID made.
func (s Settings) with(id describe.ID) Settings {
	for _, o := range s.options() {
		at := int(id) - int(o.first)
		if at < 0 || at >= len(o.words) {
			continue
		}
		switch o.first {
		case idSetNotation:
			s.Notation = orient.Notation(at)
		case idSetDeclination:
			s.Declination = Declination(at)
		case idSetDips:
			s.Dips = Dips(at)
		case idSetMethod:
			s.Method = Method(at)
		case idSetText:
			s.Text = TextSize(at)
		case idSetTheme:
			s.Theme = theme.Name(at)
		case idSetMotion:
			s.Calm = at == 1
		case idSetSound:
			s.Sound = Loudness(at)
		case idSetSpeech:
			s.Speech = at == 1
		case idSetScan:
			s.Scan = Scan(at)
		case idSetPace:
			s.Pace = Pace(at)
		case idSetLetters:
			s.Quiet = at == 1
		}
	}
	return s
}
