package orient

// StrikeError is how far a strike is off when it is read along a line that
// plunges by β instead of lying level: asin(tan β / tan d), in [−π/2, π/2]
// with the sign of β. Where β reaches the dip, every direction may be read as
// the strike and the error is π/2. (Ragan, Structural Geology, ch. 1, from
// memory; it follows from the apparent dip.)
func StrikeError(beta, dip Angle) Angle {
	if beta == 0 {
		return 0
	}
	if beta.Abs() >= dip {
		return Angle(sign(float64(beta))) * Right
	}
	return Asin(beta.Tan() / dip.Tan())
}

// StrikeScatter is the standard deviation of strikes where that of dips is
// sd: sd / sin d (Cruden & Charlesworth 1976, GSA Bulletin 87:977–980). It
// has no bound as the dip goes to 0 and is infinite there.
func StrikeScatter(sd, dip Angle) Angle { return sd / Angle(dip.Sin()) }

func sign(x float64) float64 {
	if x < 0 {
		return -1
	}
	return 1
}
