package lesson

// The names in files, in the order of the constants.
var (
	thingNames = [Things]string{"water", "strike", "arrow", "hand", "numbers", "ball", "instrument",
		"levels", "scale", "curve", "ends", "reading", "student"}
	viewNames = [...]string{ViewStrike: "strike", ViewDip: "dip", ViewClose: "close", ViewAbove: "above"}
	seatNames = [...]string{"edge", "side"}
)

// String is the name in files.
func (t Thing) String() string {
	if t < Things {
		return thingNames[t]
	}
	return ""
}

// String is the name in files; ViewAsItIs is "".
func (v View) String() string {
	if int(v) < len(viewNames) {
		return viewNames[v]
	}
	return ""
}
