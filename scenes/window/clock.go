package window

import "time"

// clock turns the time between frames into fixed ticks.
type clock struct {
	last time.Time
	owed time.Duration // less than one tick
}

const (
	ticksPerSecond = 120
	longest        = time.Second // more than this between frames is a pause
)

func (c *clock) ticks(now time.Time) int {
	if c.last.IsZero() {
		c.last = now
	}
	c.owed += min(max(now.Sub(c.last), 0), longest)
	c.last = now
	n := c.owed * ticksPerSecond / time.Second
	c.owed -= n * time.Second / ticksPerSecond
	return int(n)
}
