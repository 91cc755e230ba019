package item

import (
	"math/rand/v2"

	"cuesta/sim"
)

// measureSlab has a slab measured at the bench.
type measureSlab struct{}

// slabItem is one slab.
type slabItem struct {
	planar
	bare
	setup sim.Setup
}

// Name, Title and OnPaper describe the kind.
func (measureSlab) Name() string  { return "measure-slab" }
func (measureSlab) Title() string { return "Measure a slab" }
func (measureSlab) OnPaper() bool { return false }

// Deal draws a slab and the pose the bench starts in.
func (measureSlab) Deal(s Spec, r *rand.Rand) (Item, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	p, err := s.plane(r)
	if err != nil {
		return nil, err
	}
	it := slabItem{setup: sim.Setup{Seed: r.Uint64(), Plane: p, Field: s.field()}}
	declination := it.setup.Field.Declination
	if s.RingPreset {
		it.setup.Ring = declination
	}
	it.planar = planar{truth: p, notation: s.Notation, tolerance: s.tolerance(), declination: declination}
	return it, nil
}

// horizontal is the horizontal field where only the declination is given, in
// tesla.
const horizontal = 20e-6

// field is the field at the bench.
func (s Spec) field() sim.Field {
	if s.Field == (sim.Field{}) && s.Declination != 0 {
		return sim.Field{Declination: s.Declination, Horizontal: horizontal}
	}
	return s.Field
}

// Kind is the kind.
func (slabItem) Kind() Kind { return measureSlab{} }

// Setup is the bench it is measured at.
func (it slabItem) Setup() sim.Setup { return it.setup }

// Prompt is the question.
func (it slabItem) Prompt() string {
	text := "Measure the slab on the bench and write it as " + notationNames[it.notation] + "."
	switch {
	case it.declination == 0:
		return text
	case it.setup.Ring == it.declination:
		return text + " The declination of the place is set on the dial."
	}
	return text + " The declination of the place is " + declinationWords(it.declination) + "; the ring of the dial stands at zero."
}

// Mark marks a plane as it was typed.
func (it slabItem) Mark(answer string, e Evidence) Mark {
	e.RingPreset = it.setup.Ring == it.declination
	return it.planar.Mark(answer, e)
}

// Hints help in steps.
func (slabItem) Hints() []string {
	return []string{
		"The strike is read with a long edge on the rock and the body level; the dip with the body on its side.",
		"Centre the bubble of the round level and let the needle come to rest before you read its north end.",
		"For the dip let the edge point straight down the slope, where the arc shows the greatest angle. The right hand on the bed, fingers down the dip, has its thumb at the end to write.",
	}
}

// Near says that both slabs lie alike.
func (it slabItem) Near(other Item) bool {
	o, ok := other.(slabItem)
	return ok && it.near(o.planar)
}

// Difficulty is how gentle the slab is.
func (it slabItem) Difficulty() float64 { return gentleness(it.truth) }
