package item

// kinds are all kinds, in the order of the handbook.
var kinds = []Kind{
	measureSlab{},
	readDial{},
	convertNotation{},
}
