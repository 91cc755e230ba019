// Package window shows a scene in a window or on a browser page. It is the
// only package that touches the display: it turns keys, mouse and touch into
// input.Frame, and a draw.List into triangles.
//
// Shapes and text are painted in memory when the version of their texture
// changes; a frame moves triangles only, and only where the picture differs
// from the last one.
package window
