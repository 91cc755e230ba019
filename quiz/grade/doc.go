// Package grade marks what students hand in and says how well the questions
// did their work.
//
// A submission is marked answer by answer, by the item's own rules; hints cost
// what the blueprint says. The recording of a bench item is run again: its
// readings say why an answer is wrong, and what does not fit is reported to the
// instructor as a Remark. A remark never changes a mark.
//
// A recording shows that a reading was taken at the bench of that form. It does
// not show who took it, and a submission is a plain file: where much depends on
// a mark, let the quiz be sat under supervision.
package grade
