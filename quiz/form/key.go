package form

import (
	"bufio"
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
)

// Key is the instructor's key to a class: every form with its right answers. It
// is kept apart from the forms.
type Key struct {
	Blueprint Blueprint
	Forms     []KeyForm
}

// KeyForm is the key to one form.
type KeyForm struct {
	Code    string
	Student Student
	Items   []KeyItem
}

// KeyItem is the key to one item.
type KeyItem struct {
	Dealt
	Kind       string
	Answer     string  // right, as it would be written
	Points     float64 // of the item
	Difficulty float64
}

// KeyOf is the key to the forms of a class, which share one blueprint.
func KeyOf(forms []Form) (Key, error) {
	var k Key
	for _, f := range forms {
		items, err := f.All()
		if err != nil {
			return Key{}, fmt.Errorf("form %s: %w", f.Code, err)
		}
		one := KeyForm{Code: f.Code, Student: f.Student}
		for i, it := range items {
			one.Items = append(one.Items, KeyItem{f.Items[i], f.Part(i).Kind, it.Key(), f.Part(i).Points, it.Difficulty()})
		}
		k.Forms = append(k.Forms, one)
		k.Blueprint = f.Blueprint
	}
	return k, nil
}

// WriteCSV writes the key as a table (RFC 4180), one line an item.
func (k Key) WriteCSV(to io.Writer) error {
	w := csv.NewWriter(to)
	w.UseCRLF = true
	err := w.Write([]string{"id", "name", "class", "code", "item", "kind", "answer", "points", "difficulty"})
	for _, f := range k.Forms {
		for i, it := range f.Items {
			if err != nil {
				return err
			}
			err = w.Write([]string{
				Harmless(f.Student.ID), Harmless(f.Student.Name), Harmless(f.Student.Class), f.Code,
				strconv.Itoa(i + 1), it.Kind, Harmless(it.Answer), plain(it.Points), strconv.FormatFloat(it.Difficulty, 'f', 3, 64),
			})
		}
	}
	w.Flush()
	if err == nil {
		err = w.Error()
	}
	return err
}

type keyFile struct {
	head
	Blueprint blueprintJSON `json:"blueprint"`
	Forms     []keyFormJSON `json:"forms"`
}

type keyFormJSON struct {
	Code    string        `json:"code"`
	Student studentJSON   `json:"student"`
	Items   []keyItemJSON `json:"items"`
}

type keyItemJSON struct {
	dealtJSON
	Kind       string  `json:"kind"`
	Answer     string  `json:"answer"`
	Points     float64 `json:"points"`
	Difficulty float64 `json:"difficulty"`
}

// Encode writes the key as a file, a form a line, so that no more than one form
// is held twice.
func (k Key) Encode(to io.Writer) error {
	b := bufio.NewWriter(to)
	head, err := marshal(keyFile{head: head{"key", version}, Blueprint: blueprintJSONOf(k.Blueprint)})
	if err != nil {
		return err
	}
	b.Write(head[:len(head)-len("null}\n")]) // bufio keeps the first error for Flush
	b.WriteString("[")
	for i, f := range k.Forms {
		line, err := marshal(f.json())
		if err != nil {
			return err
		}
		if i > 0 {
			b.WriteString(",")
		}
		b.WriteString("\n")
		b.Write(line[:len(line)-1])
	}
	b.WriteString("\n]}\n")
	return b.Flush()
}

func (f KeyForm) json() keyFormJSON {
	s := f.Student
	j := keyFormJSON{Code: f.Code, Student: studentJSON{s.ID, s.Name, s.Class, s.ExtraTime}, Items: []keyItemJSON{}}
	for _, it := range f.Items {
		j.Items = append(j.Items, keyItemJSON{dealtJSON{it.Part, it.Seed}, it.Kind, it.Answer, it.Points, it.Difficulty})
	}
	return j
}

// DecodeKey reads a key under strict checks. An error of the file is a *Wrong;
// others are those of the reader.
func DecodeKey(from io.Reader) (Key, error) {
	var in keyFile
	if err := decode(from, LargestKey, "key", &in); err != nil {
		return Key{}, err
	}
	b, err := in.Blueprint.blueprint()
	if err != nil {
		return Key{}, wrong(ErrFile, "%v", err)
	}
	k := Key{Blueprint: b}
	for _, f := range in.Forms {
		one := KeyForm{Code: f.Code, Student: Student{f.Student.ID, f.Student.Name, f.Student.ExtraTime, f.Student.Class}}
		for _, it := range f.Items {
			one.Items = append(one.Items, KeyItem{Dealt{it.Part, it.Seed}, it.Kind, it.Answer, it.Points, it.Difficulty})
		}
		if got := codeOf(k.form(one)); got != one.Code {
			return Key{}, wrong(ErrFile, "the form of %s has the code %s, but what it holds has the code %s: the key was changed", shortened(one.Student.ID), shortened(one.Code), got)
		}
		k.Forms = append(k.Forms, one)
	}
	return k, nil
}

// Dealt are the forms that the key belongs to.
func (k Key) Dealt() []Form {
	out := make([]Form, len(k.Forms))
	for i, f := range k.Forms {
		out[i] = k.form(f)
	}
	return out
}

// form is the form that a key belongs to.
func (k Key) form(f KeyForm) Form {
	out := Form{Blueprint: k.Blueprint, Student: f.Student, Code: f.Code, Items: make([]Dealt, len(f.Items))}
	for i, it := range f.Items {
		out.Items[i] = it.Dealt
	}
	return out
}
