// Package sound lets the instrument be heard, so that it can be levelled with
// the eyes shut. It computes samples from what can be seen on the instrument;
// it knows no device and reads no clock.
//
// Two notes follow each other: the first, in the middle, is the note of a level
// instrument; the second is where the bubble is. It comes from the left or the
// right as the bubble lies, and is higher than the first when the bubble lies
// forward, lower when it lies back. The pair is the louder and the quicker the
// farther off the bubble is, and hollow when it touches the wall. A bubble
// wholly inside the ring is a calm chord that does not beat. The level on the
// arm is heard alike, its index end to the right and high. The needle ticks the
// slower the less it swings, and a soft bell says that it has come to rest.
//
// Nothing is told by sound alone.
package sound
