package orient

// plain maps each rune to the one sign that stands for its kind, in capitals.
func plain(text string) []rune {
	rs := []rune(text)
	for i, c := range rs {
		rs[i] = plainRune(c)
	}
	return rs
}

func plainRune(c rune) rune {
	if '！' <= c && c <= '～' { // full-width forms
		c -= '！' - '!'
	}
	if 'a' <= c && c <= 'z' {
		return c - 'a' + 'A'
	}
	switch c {
	case '\t', '\n', '\r', '\v', '\f', '\u00a0', '\u2007', '\u2009', '\u200a', '\u202f', '\u3000',
		'(', ')', '[', ']', '_':
		return ' '
	case '‐', '‑', '‒', '–', '—', '―', '−', '⁃', '﹘', '﹣':
		return '-'
	case '⁄', '∕', '⧸', '\\':
		return '/'
	case '→', '⟶', '➔', '➝', '➞', '⇒', '⇾', '↘', '↗', '↙', '↖', '›', '»':
		return '>'
	case 'º', '˚', '∘', '⁰', '◦':
		return '°'
	case '’', '‘', '′', 'ʹ', 'ʼ', '´', '`', '‵':
		return '\''
	case '”', '“', '″', 'ʺ', '‟':
		return '"'
	}
	return c
}
