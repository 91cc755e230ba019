package form

import "io"

type formFile struct {
	head
	formJSON
}

// Encode writes the form as a file.
func (f Form) Encode(to io.Writer) error {
	return encode(to, formFile{head{"form", version}, formJSONOf(f)})
}

// DecodeForm reads a form under strict checks: it is whole, of this version,
// and unchanged, as its code shows. An error of the file is a *Wrong; others
// are those of the reader.
func DecodeForm(from io.Reader) (Form, error) {
	var in formFile
	if err := decode(from, LargestForm, "form", &in); err != nil {
		return Form{}, err
	}
	f, err := in.form()
	if err != nil {
		return Form{}, wrong(ErrFile, "%v", err)
	}
	return f, nil
}
