package rock

// Half lengths of the slab along strike and dip, and its thickness, in cm.
const (
	HalfA = 12.8
	HalfB = 11.0
	Thick = 4.9
)

// Side is one of the four broken sides.
type Side uint8

// The sides, named for where they face: along the strike line, straight down
// the dip, against the strike line, up the dip.
const (
	Ahead Side = iota
	Down
	Behind
	Up
)

// Sides lists them.
var Sides = [...]Side{Ahead, Down, Behind, Up}

// Half is half the length of the side.
func (s Side) Half() float64 {
	if s == Ahead || s == Behind {
		return HalfB
	}
	return HalfA
}

// Place returns the point of the top at t along the side, d inside it. Seen
// from outside, t grows to the right with the top up.
func (s Side) Place(t, d float64) (a, b float64) {
	switch s {
	case Ahead:
		return HalfA - d, -t
	case Down:
		return t, HalfB - d
	case Behind:
		return -HalfA + d, t
	default:
		return -t, -HalfB + d
	}
}

// along returns where (a, b) lies along the side and how far inside it.
func (s Side) along(a, b float64) (t, d float64) {
	switch s {
	case Ahead:
		return -b, HalfA - a
	case Down:
		return a, HalfB - b
	case Behind:
		return b, HalfA + a
	default:
		return -a, HalfB + b
	}
}

// Stone is a slab that can be asked for its shape and painted.
type Stone struct {
	seed   noise
	beds   []bed
	scarps [4][]scarp
}

// scarp says how far the upper and the second lamina have flaked off inwards
// from the rim, in cm; not above 0 where the lamina is whole.
type scarp [2]float64

// scarpStep is the distance between the entries of Stone.scarps, in cm.
const scarpStep = 0.02

// New returns the stone of a seed.
func New(seed uint64) *Stone {
	n := noise(seed).with(1)
	s := &Stone{seed: n, beds: beds(n.with(2), Thick+1)}
	for _, side := range Sides {
		list := make([]scarp, int(2*(side.Half()+1)/scarpStep)+1)
		for i := range list {
			list[i] = s.flake(side, float64(i)*scarpStep-side.Half()-1)
		}
		s.scarps[side] = list
	}
	return s
}

// scarp looks up how far a side has flaked off at t.
func (s *Stone) scarp(side Side, t float64) scarp {
	list := s.scarps[side]
	i := int((t + side.Half() + 1) / scarpStep)
	return list[max(0, min(len(list)-1, i))]
}

// Chip is how far the rim is broken back at t along a side, in [0, 1.2] cm:
// a worn edge everywhere, now and then a real chip.
func (s *Stone) Chip(side Side, t float64) float64 {
	n := s.seed.with(40 + uint64(side))
	c := 0.05 + 0.13*n.broken(1.9*t) + 0.08*n.with(1).broken(5.3*t)
	big := max(0, n.with(2).broken(0.62*t+50)-0.56)
	return min(1.2, c+2.1*big)
}

// Foot is how far the lower edge of a side is broken back, in [0, 0.6] cm.
func (s *Stone) Foot(side Side, t float64) float64 {
	n := s.seed.with(60 + uint64(side))
	return min(0.6, 0.03+0.12*n.broken(1.7*t)+0.9*max(0, n.with(1).broken(0.5*t)-0.62))
}

// flake works out the scarps at t along a side. They depend on t alone, so that
// every scarp is open to the rim and none closes.
func (s *Stone) flake(side Side, t float64) scarp {
	n := s.seed.with(80 + uint64(side))
	reach := [...]float64{2.6, 3.6, 2.2, 2.8}[side]
	ragged := 0.42*(n.broken(t/0.8)-0.5) + 0.24*(n.with(1).broken(t/0.33)-0.5) + 0.12*(n.with(2).broken(t/0.13)-0.5)
	wide := n.with(3).broken(t/4.1+9) - 0.42
	first := reach*1.45*max(wide, -0.12) + 0.16 + ragged*(0.35+1.1*max(0, wide))
	second := 0.5*first - 0.35 + 0.9*(n.with(4).broken(t/1.9)-0.5)
	return scarp{first, second}
}
