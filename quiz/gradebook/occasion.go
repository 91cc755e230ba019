package gradebook

import "cuesta/quiz/form"

// occasion is what differs in words between a quiz at the simulated bench and a
// lab with real slabs.
type occasion struct {
	where     string // something is measured
	tolerance string // behind that of the whole
	band      string // behind the caption of the figure that shows it
	measured  string // what the readings are good for
	nothing   string // there is to look at
	closing   string // of the report
}

var (
	quizWords = occasion{
		where:     "bench",
		tolerance: "Single items may have a tolerance of their own.",
		measured:  "Measured on a simulated bench: its readings are never data for design.",
		nothing:   "Nothing: every submission was read and marked, nobody is missing, and every recording led to its answer.",
		closing:   "A remark on a recording is for you to look into and took no points off. A recording shows that a reading was taken at that bench, not who took it.",
	}
	labWords = occasion{
		where:     "stations",
		tolerance: "What the value of a station may itself be off by is added to both.",
		band:      " What the value of a station may itself be off by is added in the marking and is not in the band.",
		measured:  "Measured at practice slabs: these readings are never data for design. Two people lift a slab, with fingers and feet clear of it.",
		nothing:   "Nothing: every submission was read and marked, and nobody is missing.",
		closing:   "The readings were taken at real slabs, of which there is no recording: why one is wrong is judged from its numbers alone.",
	}
)

// outdoors are the usual cautions.
const outdoors = " Outdoors, keep off and out from under unstable faces, never go alone, and follow the local codes."

func wordsFor(b form.Blueprint) occasion {
	if len(b.Parts) > 0 && b.Parts[0].Kind == form.LabStation {
		return labWords
	}
	return quizWords
}
