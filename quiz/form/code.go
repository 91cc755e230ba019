package form

import (
	"crypto/sha256"
	"encoding/json"
)

// letters are those of a code: none of them is easily taken for another letter
// or a digit, spoken or written, and without vowels they make no words.
const letters = "CDFGHJKLMNPQRTVWXY"

// codeOf is the code of a form: nine letters in groups of three, such as
// KTW-MXP-HRV, that follow from everything else in the form. It tells forms
// apart and shows a damaged one; it is no seal, for anyone can work it out.
func codeOf(f Form) string {
	j := formJSONOf(f)
	j.Code = ""
	text, err := json.Marshal(j)
	if err != nil {
		panic("form: a form that is not finite: " + err.Error())
	}
	sum := sha256.Sum256(text)
	var code []byte
	rest := uint64(0)
	for _, b := range sum[:8] {
		rest = rest<<8 | uint64(b)
	}
	for i := range 9 {
		if i == 3 || i == 6 {
			code = append(code, '-')
		}
		code = append(code, letters[rest%uint64(len(letters))])
		rest /= uint64(len(letters))
	}
	return string(code)
}
