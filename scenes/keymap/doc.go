// Package keymap says which key does what. The keys can be changed one by one;
// Tab, Enter and Escape stay as they are, so that nobody is locked out, and no
// action needs two keys at once or a key that is held.
package keymap
