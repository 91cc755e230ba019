package mistake

import "cuesta/orient"

// shownStrikes start from the dip direction that the lid or the sensor showed,
// with what turned it.
func (e Evidence) shownStrikes(direction orient.Azimuth, faults []fault, declination fault) []claim {
	b := builder{e: e, sigma: half(e.Limits.Reading), claims: make([]claim, 0, roomy)}
	own := withTilt(blamed(append(faults, declination), e.Limits.Strike))
	z := direction.Add(-orient.Right)
	b.add(own, priorAsRead, z)
	if !e.endless() {
		b.add(own|setOf(OtherEnd), priorOtherEnd, z.Opposite())
		b.add(own|setOf(SouthEnd), priorSouthEnd, z.Opposite())
	}
	b.mistreat(own, 1, z)
	b.byHand(z, faults, declination)
	b.digits(own, z)
	return without(b.claims, e.unheldStrike())
}

// lidStrikes start from what the dial showed with the lid flush on the rock.
func (e Evidence) lidStrikes() []claim {
	faults, declination := e.dialFaults(e.Lid, trend(e.Lid).From(e.Truth.DipDirection()))
	return e.shownStrikes(e.Lid.Shown.Dial.North, faults, declination)
}

// sensorStrikes start from what the sensor showed. Beyond the ring only its own
// iron turns it by more than its noise.
func (e Evidence) sensorStrikes() []claim {
	s, declination := e.Back.Shown, e.ringFault(e.Back)
	var faults []fault
	if !s.Sensor.Calibrated {
		right := e.Truth.DipDirection().Add(declination.effect)
		faults = append(faults, fault{NotCalibrated, s.Sensor.Direction.From(right)})
	}
	return e.shownStrikes(s.Sensor.Direction, faults, declination)
}

// shownDips start from the whole angle that the hinge or the sensor showed.
func (e Evidence) shownDips(own kinds, shown orient.Angle) []claim {
	sigma := half(min(e.Limits.Reading, e.Limits.Dip))
	cs := append(make([]claim, 0, roomy), claim{own, priorDipCareful, shown, sigma})
	return without(append(cs, misread(own, shown, sigma)...), e.unheldDip())
}

// lidDips start from the hinge: it shows the dip where the body is level.
func (e Evidence) lidDips() []claim {
	level := fault{LevelNotCentred, e.Lid.Shown.Hinge - e.Truth.Dip}
	return e.shownDips(blamed([]fault{level}, e.Limits.Dip), e.Lid.Shown.Hinge)
}
