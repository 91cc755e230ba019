package form

import (
	"crypto/sha256"
	"encoding/hex"
	"strings"
)

// longestName bounds a file name made from an id, so that room is left for the
// ending.
const longestName = 60

// FileName is a file name for the files of a student, without its ending. An
// id of letters, digits, dot, hyphen and underscore is its own name; of any
// other, and of one that a system keeps for itself, the rest is replaced and a
// few digits are added that tell it from its like.
func FileName(id string) string {
	name := strings.Map(func(r rune) rune {
		if 'a' <= r && r <= 'z' || 'A' <= r && r <= 'Z' || '0' <= r && r <= '9' || r == '.' || r == '-' || r == '_' {
			return r
		}
		return '_'
	}, id)
	if len(name) > longestName {
		name = name[:longestName]
	}
	trimmed := strings.Trim(name, ".-_")
	if name == id && trimmed == id && !reserved(name) {
		return name
	}
	sum := sha256.Sum256([]byte(id))
	name = strings.TrimPrefix(trimmed+"-"+hex.EncodeToString(sum[:4]), "-")
	if reserved(name) {
		return "id-" + name
	}
	return name
}

// reserved says whether Windows keeps the name for a device, with or without
// an ending (from memory); key is the folder of the instructor.
func reserved(name string) bool {
	stem, _, _ := strings.Cut(strings.ToUpper(name), ".")
	switch stem {
	case "CON", "PRN", "AUX", "NUL", "KEY":
		return true
	}
	return len(stem) == 4 && (strings.HasPrefix(stem, "COM") || strings.HasPrefix(stem, "LPT")) &&
		stem[3] >= '0' && stem[3] <= '9'
}

// Harmless is a text for a cell of a spreadsheet: what would be taken for a
// formula gets an apostrophe in front (common practice).
func Harmless(cell string) string {
	if cell != "" && strings.ContainsRune("=+-@\t\r", rune(cell[0])) {
		return "'" + cell
	}
	return cell
}
