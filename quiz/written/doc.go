// Package written reads the TOML files that people write by hand. It is strict:
// an unknown key is refused, and every problem is told at once with its line and
// column and with what would do, in plain words.
package written
