package sim

import "testing"

// comesBack checks that each name from first to last is read as what it names.
func comesBack[T ~uint8](t *testing.T, first, last T, name func(T) string, of func(string) (T, bool)) {
	t.Helper()
	for v := first; v <= last; v++ {
		if got, ok := of(name(v)); got != v || !ok {
			t.Errorf("%T %d: %q comes back as %d, %v", v, v, name(v), got, ok)
		}
	}
	for _, s := range []string{"", "unknown", "EDGE"} {
		if got, ok := of(s); ok {
			t.Errorf("%T: %q is taken for %d", got, s, got)
		}
	}
}

func TestNamesComeBack(t *testing.T) {
	comesBack(t, Idle, Calibrate, Kind.String, KindOf)
	comesBack(t, OnEdge, OnBack, Seat.String, SeatOf)
	comesBack(t, BalancedHere, BalancedSouth, Balance.String, BalanceOf)
	comesBack(t, Plain, Complete, Tool.String, ToolOf)
	comesBack(t, Left, RightSide, Side.String, SideOf)
	for _, s := range []string{Kind(99).String(), Seat(99).String(), Balance(99).String(), Tool(99).String()} {
		if s != "unknown" {
			t.Errorf("what there is not is called %q", s)
		}
	}
}
