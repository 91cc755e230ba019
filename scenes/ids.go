package scenes

import "cuesta/scenes/describe"

// The controls and places of the bench.
const (
	idNone describe.ID = iota
	idTitle
	idSteps
	idInstrument
	idView
	idViewLeft
	idViewRight
	idViewCloser
	idSettings
	idHelp
	idSwingLess
	idSwingMore
	idTiltLess
	idTiltMore
	idLeanLess
	idLeanMore
	idRingLess
	idRingMore
	idStepCoarse
	idStepNormal
	idStepFine
	idTurn
	idFlip
	idTap
	idRound
	idDial
	idNotebook
	idEcho
	idVerdict
	idPrimary
	idSecondary
	idHint
	idNotice
	idShowStrike
	idShowArrow
	idShowWater
	idShowHand
	idShowNumbers
	idShowYours
	idClosePanel
	idPanelTitle
	idPanelText
	idPanelMore
	idKnob
	idMore
	idWhy
	idKeypad
	idHall // back to the hall
	idReadOut
	idPlace // what must be known of it
	idHinge
	idCalibrate
	// Each setting has its choices in a row from its first ID on.
	idSetNotation    describe.ID = 100
	idSetSound       describe.ID = 105
	idSetDeclination describe.ID = 110
	idSetSpeech      describe.ID = 114
	idSetScan        describe.ID = 116
	idSetDips        describe.ID = 120
	idSetPace        describe.ID = 126
	idSetText        describe.ID = 130
	idSetLetters     describe.ID = 136
	idSetTheme       describe.ID = 140
	idSetMethod      describe.ID = 145
	idSetMotion      describe.ID = 150
	idSetKeys        describe.ID = 155
	idUsualKeys      describe.ID = 156
	idHelpLine       describe.ID = 160
	idVerdictHead    describe.ID = 190
	idMark           describe.ID = 191 // as many as a verdict has
	idKeyRow         describe.ID = 900 // as many as there are actions
	idPadKey         describe.ID = 1000
)

// The controls of a form.
const (
	idForward describe.ID = iota + 200
	idBackward
	idFlag
	idOverview
	idUndo
	idFinish
	idPrompt
	idFigure
	idLeft
	idTurnLess
	idTurnMore
	idDipLess
	idDipMore
	idWorth
	idFieldName
	idSaveAgain
	idWayUp                       // the word overturned
	idEnlarge                     // the figure
	idHintTaken describe.ID = 225 // as many as a question has
	idChoice    describe.ID = 240
	idQuestion  describe.ID = 300 // as many as a form has items
)
