package mistake

import "cuesta/orient"

// Words are what happened, to follow "probably", and what to do next time, in
// the words of the notation n.
func (k Kind) Words(n orient.Notation) (what, advice string) { return k.what(n), k.advice(n) }
