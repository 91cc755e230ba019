// Package paper sets forms as printed sheets: the questions with their figures
// and room for the answers, the key to them, and a sheet for marking. The pages
// are PDF that a screen reader can follow; the same forms give the same bytes.
//
// Items that are measured at the bench become a table to fill in at a real
// slab, whose plane the instructor measures beforehand: the planes of the
// simulated bench are no use there, and the key says so. Other items that make
// no sense on paper are left out, and what is left is numbered anew.
package paper
