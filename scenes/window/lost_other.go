//go:build !linux || !cgo

package window

// onDisplayLost has nothing to watch for: here the library returns an error.
func onDisplayLost(*guarded) {}
