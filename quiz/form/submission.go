package form

import (
	"fmt"
	"io"
	"unicode/utf8"
)

// Bounds of a submission.
const (
	LongestAnswer    = 400     // bytes of a text
	LongestRecording = 4 << 20 // bytes
	mostHints        = 20
)

type submissionFile struct {
	head
	Form     formJSON     `json:"form"`
	Started  string       `json:"started"`
	Finished string       `json:"finished"`
	Answers  []answerJSON `json:"answers"`
}

type answerJSON struct {
	Texts     []string `json:"texts"`
	Hints     int      `json:"hints"`
	Flagged   bool     `json:"flagged"`
	Recording string   `json:"recording,omitempty"`
}

// Encode writes the submission as a file.
func (s Submission) Encode(to io.Writer) error {
	out := submissionFile{
		head: head{"submission", version}, Form: formJSONOf(s.Form),
		Started: s.Started, Finished: s.Finished, Answers: make([]answerJSON, len(s.Answers)),
	}
	for i, a := range s.Answers {
		out.Answers[i] = answerJSON{append([]string{}, a.Texts...), a.Hints, a.Flagged, a.Recording}
	}
	return encode(to, out)
}

// DecodeSubmission reads a submission under strict checks; its recordings are
// taken as text and checked where they are run. An error of the file is a
// *Wrong; others are those of the reader.
func DecodeSubmission(from io.Reader) (Submission, error) {
	var in submissionFile
	if err := decode(from, LargestSubmission, "submission", &in); err != nil {
		return Submission{}, err
	}
	s, err := in.submission()
	if err != nil {
		return Submission{}, wrong(ErrFile, "%v", err)
	}
	return s, nil
}

func (in submissionFile) submission() (Submission, error) {
	f, err := in.Form.form()
	if err != nil {
		return Submission{}, err
	}
	s := Submission{Form: f, Started: in.Started, Finished: in.Finished}
	for _, t := range []string{s.Started, s.Finished} {
		if t != "" && !isMoment(t) {
			return s, fmt.Errorf("a time is %s; it is a day and time with its zone", shortened(t))
		}
	}
	if len(in.Answers) != len(f.Items) {
		return s, fmt.Errorf("it has %d answers; the form has %d items", len(in.Answers), len(f.Items))
	}
	for i, a := range in.Answers {
		if err := a.check(f.Part(i)); err != nil {
			return s, fmt.Errorf("answer %d: %w", i+1, err)
		}
		var texts []string
		texts = append(texts, a.Texts...)
		s.Answers = append(s.Answers, Answer{texts, a.Hints, a.Flagged, a.Recording})
	}
	return s, nil
}

func (a answerJSON) check(p Part) error {
	switch {
	case a.Texts == nil:
		return fmt.Errorf("the list of texts is missing")
	case len(a.Texts) > p.Attempts:
		return fmt.Errorf("it was given %d times; %d are allowed", len(a.Texts), p.Attempts)
	case a.Hints < 0 || a.Hints > mostHints:
		return fmt.Errorf("%d hints were taken; there are at most %d", a.Hints, mostHints)
	case len(a.Recording) > LongestRecording:
		return fmt.Errorf("its recording is longer than %d MB", LongestRecording>>20)
	}
	for _, t := range a.Texts {
		if err := CheckText(t); err != nil {
			return err
		}
	}
	return nil
}

// CheckText says what keeps a text from being kept as an answer.
func CheckText(t string) error {
	switch {
	case !utf8.ValidString(t):
		return fmt.Errorf("an answer is plain text")
	case len(t) > LongestAnswer:
		return fmt.Errorf("an answer has at most %d bytes; this one has %d", LongestAnswer, len(t))
	}
	return nil
}
