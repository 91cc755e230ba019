package main

import (
	"strings"
	"testing"
)

// The form of the events is that of `go doc test2json`.
func TestReadEvents(t *testing.T) {
	const stream = `{"Action":"run","Package":"a","Test":"TestX"}
{"Action":"run","Package":"a","Test":"TestX/one"}
{"Action":"output","Package":"a","Test":"TestX/one","Output":"the reason\n"}
{"Action":"fail","Package":"a","Test":"TestX/one"}
{"Action":"run","Package":"a","Test":"TestX/two"}
{"Action":"pass","Package":"a","Test":"TestX/two"}
{"Action":"fail","Package":"a","Test":"TestX"}
{"Action":"run","Package":"a","Test":"TestY"}
{"Action":"output","Package":"a","Test":"TestY","Output":"hidden\n"}
{"Action":"pass","Package":"a","Test":"TestY"}
{"Action":"fail","Package":"a"}
{"ImportPath":"b","Action":"build-output","Output":"b.go:1: syntax\n"}
{"Action":"fail","Package":"b"}
{"Action":"skip","Package":"c"}
not an event
`
	var ended []string
	r := readEvents(strings.NewReader(stream), func(e testEvent) { ended = append(ended, e.Action+" "+e.Package) })
	if got := strings.Join(ended, ", "); got != "fail a, fail b" {
		t.Errorf("packages ended: %s", got)
	}
	if want := (tally{passed: 2, failed: 2}); r.tally != want {
		t.Errorf("tally %+v, want %+v", r.tally, want)
	}
	for _, want := range []string{"the reason", "b.go:1: syntax", "not an event"} {
		if !strings.Contains(r.said, want) {
			t.Errorf("output %q lacks %q", r.said, want)
		}
	}
	if strings.Contains(r.said, "hidden") {
		t.Errorf("output %q tells of a test that passed", r.said)
	}
}

func TestAParentThatFailsByItselfCounts(t *testing.T) {
	const stream = `{"Action":"run","Package":"a","Test":"TestX"}
{"Action":"run","Package":"a","Test":"TestX/one"}
{"Action":"pass","Package":"a","Test":"TestX/one"}
{"Action":"fail","Package":"a","Test":"TestX"}
{"Action":"fail","Package":"a"}
`
	r := readEvents(strings.NewReader(stream), func(testEvent) {})
	if want := (tally{passed: 1, failed: 1}); r.tally != want {
		t.Errorf("tally %+v, want %+v", r.tally, want)
	}
}
