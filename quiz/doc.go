// Package quiz deals planes to measure and judges what is written down. It
// holds the mix of dips, the tolerances, the verdict and the tally of past
// verdicts; quiz/mistake finds the probable reason of a wrong answer.
//
// Everything here is a value: the source of randomness is an argument, and
// nothing reads a clock or a file.
package quiz
