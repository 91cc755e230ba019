package mistake

import "fmt"

// Kind is one way a measurement goes wrong.
type Kind uint8

// The kinds.
const (
	OtherEnd             Kind   = iota // the end of the strike line against the right-hand convention
	SouthEnd                           // the needle's south end read
	DirectionForStrike                 // dip direction and strike taken for each other
	EastWest                           // east and west exchanged: 360 − azimuth
	WrongLetters                       // possible letters, but on the rising side
	DeclinationNotSet                  // ring left at zero: azimuth − declination
	DeclinationWrongSign               // ring set the wrong way: azimuth − 2·declination
	DeclinationMisset                  // ring at some other wrong value
	DeclinationTwice                   // added on paper to a reading that had it already
	LevelNotCentred                    // edge not level when the dial was read
	NeedleMoving                       // read before the needle came to rest
	NeedleRubbing                      // case tilted so far that the needle touched the glass
	NeedleLocked                       // needle held by the lock
	NeedleSticking                     // needle at rest, but not in the field: pivot friction
	EdgeNotDownDip                     // apparent dip measured: tan α = tan d · sin ψ
	BodyLeaning                        // face not vertical: tan λ = tan β / cos η
	TubeNotCentred                     // tube level off when the arc was read
	PercentScale                       // percent scale read as degrees: 100·tan d
	Complement                         // 90° − d
	DigitsSwapped                      // two digits exchanged
	StrikeDipSwapped                   // strike and dip in each other's place
	LettersContradict                  // letters that cannot be for the strike; such an answer is refused
	NotCalibrated                      // the sensor turned by its own iron
	Kinds                = iota        // the number of kinds
)

// IsValid says whether k is one of the kinds.
func (k Kind) IsValid() bool { return int(k) < Kinds }

// String is the stable name of the kind, in lower case with hyphens.
func (k Kind) String() string {
	if !k.IsValid() {
		return fmt.Sprintf("mistake-%d", uint8(k))
	}
	return catalogue[k].name
}

// KindOf returns the kind with the given name.
func KindOf(name string) (Kind, bool) {
	for k := range Kind(Kinds) {
		if catalogue[k].name == name {
			return k, true
		}
	}
	return 0, false
}

// MarshalText writes the name.
func (k Kind) MarshalText() ([]byte, error) {
	if !k.IsValid() {
		return nil, fmt.Errorf("mistake: no kind %d", uint8(k))
	}
	return []byte(k.String()), nil
}

// UnmarshalText reads the name.
func (k *Kind) UnmarshalText(text []byte) error {
	got, ok := KindOf(string(text))
	if !ok {
		return fmt.Errorf("mistake: %q is not the name of a mistake", text)
	}
	*k = got
	return nil
}
