package form

import "hash/fnv"

// seeds is a stream of seeds for items; every purpose and place has its own, so
// that one does not shift when another takes more.
type seeds struct{ state uint64 }

// seedsOf begins the stream for a purpose.
func seedsOf(seed uint64, purpose string, place int) *seeds {
	h := fnv.New64a()
	h.Write([]byte(purpose))
	return &seeds{mixed(seed) ^ mixed(h.Sum64()+uint64(place)*0x9e3779b97f4a7c15)}
}

// next is the next seed: 53 bits, so that every reader of JSON keeps it whole.
func (s *seeds) next() uint64 {
	s.state += 0x9e3779b97f4a7c15
	return mixed(s.state) & mostSeed
}

// mixed spreads every bit over the whole word (the finaliser of SplitMix64:
// Steele, Lea & Flood 2014, OOPSLA; constants from memory).
func mixed(z uint64) uint64 {
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}
