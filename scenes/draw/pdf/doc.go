// Package pdf writes pictures to the pages of a Portable Document Format file
// that a screen reader can follow: text is text in embedded fonts, every piece
// of content belongs to an element of a structure tree or is marked as
// ornament, figures carry words in their stead, and the document has a
// language and a title (ISO 32000-1, 14.7 to 14.9). The same calls give the
// same bytes.
//
// The pages and the fonts come from a general PDF library. It writes no
// structure tree, so the finished file is taken apart along its own
// cross-reference table, completed, and put together again.
//
// Coordinates are points of 1/72 inch, x right, y down from the upper left
// corner of the page.
package pdf
