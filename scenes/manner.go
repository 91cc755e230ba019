package scenes

// manner is how a person works the screen. A sentence that says what to do names
// a control by its key for those at a keyboard, and by what stands on it for
// those who tap.
type manner uint8

const (
	byKey manner = iota
	byTap
)

// mannerOf is the manner of a frame.
func mannerOf(touch bool) manner {
	if touch {
		return byTap
	}
	return byKey
}

// by is the key of a control, or what stands on it.
func (m manner) by(key, label string) string {
	if m == byTap {
		return label
	}
	return key
}
