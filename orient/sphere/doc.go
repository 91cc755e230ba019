// Package sphere holds the statistics of directions: of axes, such as poles
// and fold axes, where v and −v are the same.
package sphere
