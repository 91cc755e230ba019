// Package telling is a lesson given line by line, in words and figures that need
// no picture: its steps, its questions, and the instrument in live play.
package telling
