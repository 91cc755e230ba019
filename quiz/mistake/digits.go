package mistake

// swapped returns the numbers that come of exchanging two neighbouring digits
// of n written with the given number of digits, without n itself and without
// those over the largest one allowed.
func swapped(n, digits, largest int) []int {
	var out []int
	for lo := 1; digits > 1; digits, lo = digits-1, lo*10 {
		a, b := n/lo%10, n/(lo*10)%10
		m := n + (a-b)*lo*10 + (b-a)*lo
		if m != n && m <= largest {
			out = append(out, m)
		}
	}
	return out
}
