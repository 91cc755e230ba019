// Package learner sits quizzes with simulated students: careful, hurried and
// guessing ones, and for each mistake of the catalogue one who makes it and
// does everything else with care. At the bench they work by the commands that
// people use, and know nothing but what can be seen on the instrument; other
// questions they answer from the right answer, with the scatter of a reading.
//
// What they do follows from a seed, so a class of them can be had again. They
// stand for no real students: their scatter and their habits are assumptions,
// stated beside each figure.
package learner
