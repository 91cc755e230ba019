package sim

// kindNames are the names of the kinds in files and messages.
var kindNames = [...]string{
	Idle: "idle", Place: "place", Swing: "swing", Roll: "roll", Arm: "arm", Flip: "flip",
	Ring: "ring", Tap: "tap", Lock: "lock", Free: "free", Read: "read", Note: "note", Calibrate: "calibrate",
}

// String is the name of the kind in lower case, "unknown" for none of them.
func (k Kind) String() string {
	if int(k) < len(kindNames) {
		return kindNames[k]
	}
	return "unknown"
}

// KindOf is the kind of a name as String writes it, and whether there is one.
func KindOf(name string) (Kind, bool) {
	for k, n := range kindNames {
		if n == name {
			return Kind(k), true
		}
	}
	return 0, false
}

// Turns says whether the kind takes an angle.
func (k Kind) Turns() bool {
	switch k {
	case Swing, Roll, Arm, Ring:
		return true
	case Idle, Place, Flip, Tap, Lock, Free, Read, Note, Calibrate:
		return false
	}
	return false
}

// seatNames are the names of the seats in files and messages.
var seatNames = [seats]string{OnEdge: "edge", OnSide: "side", OnLid: "lid", OnBack: "flat"}

// String is the name of the seat in lower case, "unknown" for none of them.
func (s Seat) String() string {
	if int(s) < seats {
		return seatNames[s]
	}
	return "unknown"
}

// SeatOf is the seat of a name as String writes it, and whether there is one.
func SeatOf(name string) (Seat, bool) {
	for s, n := range seatNames {
		if n == name {
			return Seat(s), true
		}
	}
	return 0, false
}

// balanceNames are the names of the balances in files and messages.
var balanceNames = [...]string{BalancedHere: "here", BalancedNorth: "north", BalancedEquator: "equator", BalancedSouth: "south"}

// String is the name of the balance in lower case, "unknown" for none of them.
func (b Balance) String() string {
	if int(b) < len(balanceNames) {
		return balanceNames[b]
	}
	return "unknown"
}

// BalanceOf is the balance of a name as String writes it, and whether there is
// one.
func BalanceOf(name string) (Balance, bool) {
	for b, n := range balanceNames {
		if n == name {
			return Balance(b), true
		}
	}
	return 0, false
}

// toolNames are the names of the instruments in files and messages.
var toolNames = [...]string{Plain: "plain", Lidded: "lid", Sensing: "sensor", Complete: "lid and sensor"}

// String is the name of the instrument in lower case, "unknown" for none.
func (t Tool) String() string {
	if int(t) < len(toolNames) {
		return toolNames[t]
	}
	return "unknown"
}

// ToolOf is the instrument of a name as String writes it, and whether there is
// one.
func ToolOf(name string) (Tool, bool) {
	for t, n := range toolNames {
		if n == name {
			return Tool(t), true
		}
	}
	return 0, false
}

// String is the name of the edge in lower case.
func (s Side) String() string {
	if s == Left {
		return "left"
	}
	return "right"
}

// SideOf is the edge of a name as String writes it, and whether there is one.
func SideOf(name string) (Side, bool) {
	switch name {
	case "left":
		return Left, true
	case "right":
		return RightSide, true
	}
	return 0, false
}
