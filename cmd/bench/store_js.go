package main

import (
	"errors"
	"fmt"
	"syscall/js"

	"cuesta/scenes/keep"
)

// page is a store in the browser's storage of the page.
type page string

// store is where practice is kept between one visit and the next, or nil where
// the browser allows none.
func store() keep.Store {
	p := page("cuesta.practice")
	if _, err := p.Load(); err != nil {
		return nil
	}
	return p
}

// Load reads the storage.
func (p page) Load() (data []byte, err error) {
	v, err := call("getItem", string(p))
	if err != nil || v.IsNull() {
		return nil, err
	}
	return []byte(v.String()), nil
}

// Save replaces what is stored; the browser does so whole or not at all.
func (p page) Save(data []byte) error {
	_, err := call("setItem", string(p), string(data))
	return err
}

// SetAside copies what is stored to a free name and removes it.
func (p page) SetAside() (string, error) {
	data, err := p.Load()
	if err != nil {
		return "", err
	}
	for n := 1; n < 1000; n++ {
		to := page(fmt.Sprintf("%s.damaged-%d", string(p), n))
		if old, err := to.Load(); err != nil || old != nil {
			continue
		}
		if err := to.Save(data); err != nil {
			return "", err
		}
		_, err := call("removeItem", string(p))
		return string(to) + " in the browser's storage", err
	}
	return "", errors.New("too much damaged data in the browser's storage")
}

// call calls a function of the storage. A page without leave to store throws.
func call(name string, args ...any) (v js.Value, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("the browser's storage: %v", r)
		}
	}()
	// Asking for the storage may throw, which only a call gives back as an error.
	storage := js.Global().Get("Reflect").Call("get", js.Global(), "localStorage")
	return storage.Call(name, args...), nil
}
