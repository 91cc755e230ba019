package form

import (
	"bytes"
	"reflect"
	"strings"
	"testing"

	"cuesta/quiz/item"
)

func example(t testing.TB) Blueprint {
	t.Helper()
	b, err := ReadBlueprint(strings.NewReader(Example()))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestTheExampleReadsAndComesBack(t *testing.T) {
	b := example(t)
	var out bytes.Buffer
	if err := b.Write(&out); err != nil {
		t.Fatal(err)
	}
	again, err := ReadBlueprint(&out)
	if err != nil {
		t.Fatalf("%v in\n%s", err, out.String())
	}
	if !reflect.DeepEqual(b, again) {
		t.Errorf("got %+v, want %+v", again, b)
	}
	settled, err := b.settled()
	if err != nil || !reflect.DeepEqual(b, settled) {
		t.Errorf("through a file: got %+v, %v; want %+v", settled, err, b)
	}
}

func TestTheExampleNamesEveryKind(t *testing.T) {
	for _, k := range item.Kinds() {
		if !strings.Contains(Example(), "\n#   "+k.Name()+" ") {
			t.Errorf("the example does not list %s", k.Name())
		}
	}
}
