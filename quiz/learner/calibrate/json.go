package calibrate

import (
	"encoding/json"
	"io"
	"math"
)

type tableJSON struct {
	Title    string        `json:"title"`
	Students int           `json:"students"`
	Pass     float64       `json:"pass"`
	Scores   []scoreJSON   `json:"scores"`
	Mistakes []namingJSON  `json:"mistakes"`
	Alike    []alikeJSON   `json:"alike"`
	Accused  []accusedJSON `json:"accused"`
}

type scoreJSON struct {
	Learner string  `json:"learner"`
	Mean    float64 `json:"mean"`
	SD      float64 `json:"sd"`
	Pass    float64 `json:"pass"`
}

type namingJSON struct {
	Kind      string   `json:"kind"`
	Made      int      `json:"made"`
	Right     int      `json:"no_harm"`
	Refused   int      `json:"refused"`
	Alike     int      `json:"alike"`
	Misnamed  int      `json:"misnamed"`
	Apart     int      `json:"told"`
	Named     int      `json:"named"`
	Told      bool     `json:"distinguishable"`
	Recall    *float64 `json:"recall"`
	Precision *float64 `json:"precision"`
}

type alikeJSON struct {
	Part     int     `json:"part"`
	Item     string  `json:"item"`
	Mistake  string  `json:"mistake"`
	Like     string  `json:"like"`
	Readings bool    `json:"with_readings"`
	Share    float64 `json:"share"`
}

type accusedJSON struct {
	Learner string  `json:"learner"`
	Share   float64 `json:"share"`
}

// WriteJSON writes the table as one object, shares to the ten-thousandth. The
// error is that of the writer.
func (t Table) WriteJSON(to io.Writer) error {
	out := tableJSON{Title: t.Title, Students: t.Students, Pass: t.PassShare, Alike: []alikeJSON{}}
	for _, s := range t.Scores {
		out.Scores = append(out.Scores, scoreJSON{s.Learner, fine(s.Mean), fine(s.SD), fine(s.Pass)})
	}
	for _, n := range t.Named {
		out.Mistakes = append(out.Mistakes, n.json())
	}
	for _, a := range t.Alike {
		out.Alike = append(out.Alike, alikeJSON{a.Part + 1, a.Item, a.Made.String(), a.rival(), !a.Bare, fine(a.Share)})
	}
	for _, a := range t.Accused {
		out.Accused = append(out.Accused, accusedJSON{a.Manner, fine(a.Share)})
	}
	return json.NewEncoder(to).Encode(out)
}

func (n Naming) json() namingJSON {
	return namingJSON{
		Kind: n.Kind.String(), Made: n.Made, Right: n.Right, Refused: n.Refused, Alike: n.Alike, Misnamed: n.Misnamed,
		Apart: n.Apart, Named: n.Named, Told: n.Told(), Recall: fineOr(n.Recall()), Precision: fineOr(n.Precision()),
	}
}

func fineOr(share float64, ok bool) *float64 {
	if !ok {
		return nil
	}
	x := fine(share)
	return &x
}

func fine(x float64) float64 { return math.Round(x*1e4)/1e4 + 0 }
