// Package scenes holds what a person sees and does: the bench on the screen,
// its layout, its controls and the words that go with them. A scene turns a
// frame of input into typed commands for the world, and the state of the world
// into a picture (draw.List) and a description (describe.Tree). It draws with
// no painter, reads no clock and opens no window.
package scenes
