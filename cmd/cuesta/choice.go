package main

import (
	"fmt"
	"strings"
)

// choice is the value of a flag that takes one of a few words.
type choice[T any] struct {
	value *T
	word  string
	words []named[T]
}

type named[T any] struct {
	word  string
	value T
}

// choose makes a choice that starts at the first word.
func choose[T any](value *T, words ...named[T]) *choice[T] {
	*value = words[0].value
	return &choice[T]{value: value, word: words[0].word, words: words}
}

// String is the word chosen.
func (c *choice[T]) String() string { return c.word }

// Type shows the words in the help.
func (c *choice[T]) Type() string {
	words := make([]string, len(c.words))
	for i, w := range c.words {
		words[i] = w.word
	}
	return strings.Join(words, "|")
}

// Set takes a word; any other is an error that lists them.
func (c *choice[T]) Set(s string) error {
	for _, w := range c.words {
		if w.word == strings.ToLower(s) {
			*c.value, c.word = w.value, w.word
			return nil
		}
	}
	return fmt.Errorf("write one of %s", strings.ReplaceAll(c.Type(), "|", ", "))
}
