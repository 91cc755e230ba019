package scenes

import "cuesta/scenes/describe"

// The controls and places of a lecture. While the instrument is played with,
// those of the bench that move it are there too.
const (
	idLectureTitle describe.ID = iota + 600
	idLectureLine
	idLectureAnswer
	idLectureWrote
	idLectureLevel
	idLectureScale
	idLectureCurve
	idNext
	idBack
	idAnswer
	idBlank
	idMagnify
	idPointer
	idLive
	idReturn
	idLectureKeys
	idAnotherPlace
	idRestart
	idLectureState
)
