// Package browse opens the browser program in a real Chromium without a
// window, works it by keyboard, pointer and accessibility tree, and takes its
// time. The page is served from this machine under a path that is not the
// root, and nothing outside of it can be reached.
package browse
