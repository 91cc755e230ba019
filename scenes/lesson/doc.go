// Package lesson is a lecture as data: a file of steps that a presenter goes
// through, and the player that goes through them. A lesson decides nothing about
// pictures; scenes and the terminal play it.
//
// # The file
//
// A lesson is TOML, in UTF-8. A key that is not named here is refused. Angles
// are in degrees, times in seconds.
//
//	title       one line, wanted
//	summary     one sentence
//	minutes     how long it takes when it is told, 1 to 120
//	notes       for the presenter, before the first step; may run over several lines
//	seed        a whole number: of the stone, the needle and the simulated student
//	plane       right-hand strike and dip of the slab, such as "035/30", wanted
//	declination of the place, -180 to 180, east positive; it is set on the dial
//
// Then come the steps, each after a line [[step]]. What a step holds happens in
// this order:
//
//	plane    another slab, such as "215/10"; the bench begins anew on it
//	pose     where the instrument is put: { seat = "edge", swing = 0, roll = 0 }
//	         on its edge, or { seat = "side", swing = 90, roll = 0, arm = 30 } on its
//	         side. swing counts clockwise, seen from above, from the right-hand end
//	         of the strike; roll is what the plate is off level, right side down
//	         positive, or how far it leans when on its side; arm is that of the arc.
//	         What is left out is 0, the seat "edge".
//	mistake  the name of a mistake: the simulated student makes it now, and
//	         writes down what comes of it; "careful" is one who makes none. The
//	         same name at another step is another measurement. It brings
//	         instrument, levels, scale and student to the screen, less what
//	         the step hides by name; a step that says no view ends in that of the
//	         reading that went wrong, "strike" or "dip". In "strike" and "close"
//	         the instrument is put back at the end as it stood when the dial was
//	         read; otherwise it stays as it was when the arc was read
//	do       lines of the spoken bench, a second each: ["swing 5", "tap"]
//	needle   seconds in which needle and bubbles run on, 0 to 60
//	wait     seconds after which the next step follows by itself, 0 to 600;
//	         without it the presenter goes on
//	say      the line on the screen, at most two rows of it; left out, the last stays
//	show     what appears, a list of: water, strike, arrow, hand, numbers, ball,
//	         instrument, levels, scale, curve, ends, reading, student. A reading
//	         brings its scale
//	hide     what goes, from the same list; "all" is everything. What the same step
//	         shows appears after it
//	ask      a question in place of say; it needs an answer
//	answer   what is shown when the presenter reveals
//	view     where the eye goes: "strike", "dip", "close" or "above"
//	notes    what the presenter may tell; may run over several lines
//
// A lesson begins with the bare slab: the instrument and everything else must be
// shown. Numbers that come out of the simulation are never written in say: show
// "numbers", "ends", "reading" or "student" puts them on the screen. "student" is
// what the simulated student wrote, the verdict and the reason that the judge
// names.
package lesson
