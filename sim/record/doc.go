// Package record keeps what was done at a bench: the set-up, each command with
// its tick and the state hash after it, and where it all ended. A recording
// can be written to a file, read back under strict checks, and run again.
//
// # The file
//
// Plain text, one JSON object a line, no empty lines. The first line names the
// format, its version and the set-up; then follows one line for each command,
// in order; the last line counts the commands and says how the bench stood. A
// file without that last line has been cut off. Angles are radians, so that
// they come back bit for bit; hashes are sixteen hexadecimal digits.
//
//	{"cuesta":"recording","version":1,"setup":{…},"hash":"…"}
//	{"tick":120,"do":"swing","turn":0.25,"hash":"…"}
//	{"tick":240,"do":"note","text":"035/30","hash":"…"}
//	{"end":2,"tick":360,"hash":"…","seen":{…}}
package record
