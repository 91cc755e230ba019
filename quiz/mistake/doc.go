// Package mistake knows how a measurement of strike and dip goes wrong, and
// finds the probable reason of a wrong answer.
//
// Each mistake predicts what the answer would look like. Where the student
// took readings on the bench, the prediction starts from what the dial and the
// arm, the hinge of the lid or the sensor showed and from the pose of the instrument: the faults in the pose are
// known then, and only what was done with the number is open. Without readings
// (on paper) it starts from the true plane and the answer has to speak alone.
// A bench that kept every reading and shows none of a part rules out that the
// part was misread.
// Bayes' rule weighs the predictions; a mistake is named only when it is
// probable, and two that fit alike are both named.
//
// The priors are design assumptions: no published frequencies are known to us.
package mistake
