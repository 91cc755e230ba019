// Package spoken is the bench line by line: each line is one act or one
// question, each reply is words and figures that are enough to finish a
// measurement without any picture. It says what a sighted student would see,
// and does none of the thinking.
package spoken
