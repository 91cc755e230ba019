package item

// kinds are all kinds, in the order of the handbook.
var kinds = []Kind{
	measureSlab{},
	readDial{},
	readArc{},
	whichWayLevel{},
	rightHandEnd{},
	dipDirection{},
	convertNotation{},
	possibleNotation{},
	readSymbol{},
	drawSymbol{},
	applyDeclination{},
	apparentDip{},
	percentGrade{},
	strikeUncertainty{},
	meanOfReadings{},
	findOutlier{},
	needleAndSensor{},
	diagnoseMistake{},
}
