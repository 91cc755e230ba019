// Package lab is practice at real slabs: numbered stations in a room, whose
// planes the instructor has measured beforehand, and one keyboard or screen at
// which a class writes down what it reads.
//
// A lab is a form.Blueprint that form.ReadStations makes of a file of stations;
// each student has a form of it, and every reading is an answer to one of its
// items. So the verdict is that of the quiz, the journal is that of a sitting,
// and what is left behind are submissions that quiz/grade marks like any other.
// How the stations lie is known in memory only: no journal and no submission
// holds it, and marking needs the instructor's file again.
//
// # Fair marks against a measured truth
//
// The true value of a real slab is itself a mean of readings. What it may be
// off by widens the tolerance (quiz.Tolerance.Widened): the two errors add,
// because the worst case of a careful student and a careful instructor is that
// both are off, to opposite sides. A way to find it: measure the slab at least
// five times, seating the instrument anew each time, on another day too if
// possible, and take half of the range of the strikes and of the dips, or twice
// their standard deviation divided by the root of their number (common
// practice), whichever is the greater.
package lab
