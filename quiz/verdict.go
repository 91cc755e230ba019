package quiz

import (
	"encoding/json"
	"math"

	"cuesta/orient"
	"cuesta/quiz/mistake"
)

// Verdict is how an answer was judged, part by part. A part that was not asked
// for counts as right.
type Verdict struct {
	Understood string  // the answer as it was understood, right-hand strike and dip: 035/30
	Right      bool    // all parts
	Points, Of float64 // points earned, in [0, Of]

	StrikeAsked bool // false on a bed too flat to have a strike
	StrikeRight bool // the strike line, whichever its end
	SideRight   bool // dips to the right side
	EndAsked    bool // the answer rests on the right-hand end: no letters settle the side
	EndRight    bool
	DipRight    bool
	WayUpRight  bool // overturned or not, as the bed is

	StrikeError orient.Angle // answer − truth of the right-hand strikes, (−π, π]; 0 without a strike
	LineError   orient.Angle // the same of the strike lines, (−π/2, π/2]
	DipError    orient.Angle // answer − truth; past the vertical it counts on
	PoleAngle   orient.Angle // between the poles, [0, π/2]; 0 while the dip is missing

	Mistakes []mistake.Finding // the probable reasons, the most probable first
	Said     string            // the verdict in a few calm sentences, without the true numbers
	measured bool              // the answer has all that was asked for
}

type verdictJSON struct {
	Understood  string        `json:"understood"`
	Right       bool          `json:"right"`
	Points      float64       `json:"points"`
	Of          float64       `json:"of"`
	StrikeError float64       `json:"strike_error"`
	DipError    float64       `json:"dip_error"`
	PoleAngle   float64       `json:"pole_angle"`
	Mistakes    []findingJSON `json:"mistakes"`
}

type findingJSON struct {
	Kind        mistake.Kind `json:"kind"`
	Probability float64      `json:"probability"`
	Said        string       `json:"said"`
}

// MarshalJSON writes the verdict as the spoken bench does, angles in degrees
// to the thousandth.
func (v Verdict) MarshalJSON() ([]byte, error) {
	out := verdictJSON{
		Understood: v.Understood, Right: v.Right, Points: v.Points, Of: v.Of,
		StrikeError: thousandth(v.StrikeError.Degrees()), DipError: thousandth(v.DipError.Degrees()),
		PoleAngle: thousandth(v.PoleAngle.Degrees()), Mistakes: []findingJSON{},
	}
	for _, f := range v.Mistakes {
		out.Mistakes = append(out.Mistakes, findingJSON{f.Kind, thousandth(f.Probability), f.Said})
	}
	return json.Marshal(out)
}

// thousandth rounds to 0.001 and never writes −0.
func thousandth(x float64) float64 { return math.Round(x*1000)/1000 + 0 }
