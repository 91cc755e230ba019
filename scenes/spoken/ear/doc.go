// Package ear measures at a spoken bench with nothing but the sentences it
// says. It stands for a student with the screen off, and shows that the
// sentences suffice; no figure reaches it that was not said.
package ear
