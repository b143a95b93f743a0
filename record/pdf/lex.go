package pdf

import (
	"errors"
	"strconv"
)

// ErrMalformed is the answer to every file that is not as it should be, or that
// asks for more than a file of that kind needs.
var ErrMalformed = errors.New("malformed PDF")

// Bounds of one object. The format itself asks programs for less (Annex C).
const (
	maxNesting     = 32 // arrays and dictionaries inside each other
	maxWordBytes   = 4 << 10
	maxStringBytes = 1 << 20
)

// A lexer reads objects from a place in a file (ISO 32000-1, 7.2 and 7.3).
type lexer struct {
	data  []byte
	pos   int
	spend *spending
}

// keyword is a bare word that is no object, such as "obj" or "endstream".
type keyword string

func (l *lexer) skipSpace() {
	for l.pos < len(l.data) {
		switch c := l.data[l.pos]; {
		case isSpace(c):
			l.pos++
		case c == '%':
			for l.pos < len(l.data) && l.data[l.pos] != '\n' && l.data[l.pos] != '\r' {
				l.pos++
			}
		default:
			return
		}
	}
}

// object reads one object or keyword. References are recognised, streams are
// left to the caller, who knows how long they are.
func (l *lexer) object() (any, error) {
	from := l.pos
	defer func() { l.spend.looked -= l.pos - from }()
	return l.next(0)
}

func (l *lexer) next(depth int) (any, error) {
	l.skipSpace()
	l.spend.objects--
	if l.pos >= len(l.data) || depth > maxNesting || l.spend.objects < 0 || l.spend.looked < 0 {
		return nil, ErrMalformed
	}
	switch c := l.data[l.pos]; {
	case c == '/':
		l.pos++
		return l.name()
	case c == '(':
		return l.literal()
	case c == '<' && l.peek(1) == '<':
		l.pos += 2
		return l.dict(depth)
	case c == '<':
		return l.hex()
	case c == '[':
		l.pos++
		return l.array(depth)
	case isDelimiter(c):
		return nil, ErrMalformed
	}
	word := l.word()
	if len(word) > maxWordBytes {
		return nil, ErrMalformed
	}
	switch word {
	case "true", "false":
		return word == "true", nil
	case "null":
		return nil, nil
	}
	if n, err := strconv.ParseInt(word, 10, 64); err == nil {
		return l.reference(n), nil
	}
	if isReal(word) {
		return real(word), nil
	}
	return keyword(word), nil
}

func (l *lexer) peek(n int) byte {
	if l.pos+n < len(l.data) {
		return l.data[l.pos+n]
	}
	return 0
}

func (l *lexer) word() string {
	from := l.pos
	for l.pos < len(l.data) && l.pos-from <= maxWordBytes && !isSpace(l.data[l.pos]) && !isDelimiter(l.data[l.pos]) {
		l.pos++
	}
	return string(l.data[from:l.pos])
}

func isReal(s string) bool {
	digits, points := 0, 0
	for i := range len(s) {
		switch c := s[i]; {
		case c >= '0' && c <= '9':
			digits++
		case c == '.':
			points++
		case (c == '-' || c == '+') && i == 0:
		default:
			return false
		}
	}
	return digits > 0 && points == 1
}

// reference looks for "n g R" behind a whole number n.
func (l *lexer) reference(n int64) any {
	back := l.pos
	l.skipSpace()
	gen, err := strconv.ParseUint(l.word(), 10, 16)
	if err == nil && n > 0 && n < 1<<31 {
		l.skipSpace()
		if l.word() == "R" {
			return Ref{int(n), int(gen)}
		}
	}
	l.pos = back
	return n
}

func (l *lexer) name() (any, error) {
	raw := l.word()
	if len(raw) > maxWordBytes {
		return nil, ErrMalformed
	}
	var out []byte
	for i := 0; i < len(raw); i++ {
		if raw[i] == '#' {
			if i+2 >= len(raw) {
				return nil, ErrMalformed
			}
			v, err := strconv.ParseUint(raw[i+1:i+3], 16, 8)
			if err != nil {
				return nil, ErrMalformed
			}
			out = append(out, byte(v))
			i += 2
			continue
		}
		out = append(out, raw[i])
	}
	return Name(out), nil
}

func (l *lexer) array(depth int) (any, error) {
	out := []any{}
	for {
		l.skipSpace()
		if l.peek(0) == ']' {
			l.pos++
			return out, nil
		}
		o, err := l.next(depth + 1)
		if err != nil {
			return nil, err
		}
		if _, bad := o.(keyword); bad {
			return nil, ErrMalformed
		}
		out = append(out, o)
	}
}

func (l *lexer) dict(depth int) (any, error) {
	out := Dict{}
	for {
		l.skipSpace()
		if l.peek(0) == '>' && l.peek(1) == '>' {
			l.pos += 2
			return out, nil
		}
		k, err := l.next(depth + 1)
		if err != nil {
			return nil, err
		}
		key, ok := k.(Name)
		if !ok {
			return nil, ErrMalformed
		}
		v, err := l.next(depth + 1)
		if err != nil {
			return nil, err
		}
		if _, bad := v.(keyword); bad {
			return nil, ErrMalformed
		}
		if _, twice := out[key]; twice {
			return nil, ErrMalformed // one program takes the first, another the last
		}
		out[key] = v
	}
}

func (l *lexer) hex() (any, error) {
	var out []byte
	half := -1
	for l.pos++; l.pos < len(l.data) && len(out) <= maxStringBytes; l.pos++ {
		c := l.data[l.pos]
		if c == '>' {
			l.pos++
			if half >= 0 {
				out = append(out, byte(half<<4))
			}
			return String(out), nil
		}
		if isSpace(c) {
			continue
		}
		v, err := strconv.ParseUint(string(c), 16, 8)
		if err != nil {
			return nil, ErrMalformed
		}
		if half < 0 {
			half = int(v)
		} else {
			out = append(out, byte(half<<4)|byte(v))
			half = -1
		}
	}
	return nil, ErrMalformed
}

func (l *lexer) literal() (any, error) {
	var out []byte
	open := 1
	for l.pos++; l.pos < len(l.data) && len(out) <= maxStringBytes; l.pos++ {
		c := l.data[l.pos]
		switch c {
		case '(':
			open++
		case ')':
			if open--; open == 0 {
				l.pos++
				return String(out), nil
			}
		case '\\':
			out = l.escaped(out)
			continue
		case '\r':
			if l.peek(1) == '\n' {
				l.pos++
			}
			c = '\n'
		}
		out = append(out, c)
	}
	return nil, ErrMalformed
}

// escaped reads what follows a backslash; the position stays on its last byte.
func (l *lexer) escaped(out []byte) []byte {
	l.pos++
	switch c := l.peek(0); c {
	case 'n':
		return append(out, '\n')
	case 'r':
		return append(out, '\r')
	case 't':
		return append(out, '\t')
	case 'b':
		return append(out, '\b')
	case 'f':
		return append(out, '\f')
	case '\n':
		return out
	case '\r':
		if l.peek(1) == '\n' {
			l.pos++
		}
		return out
	case '0', '1', '2', '3', '4', '5', '6', '7':
		v := int(c - '0')
		for n := 1; n < 3 && l.peek(1) >= '0' && l.peek(1) <= '7'; n++ {
			l.pos++
			v = v<<3 | int(l.peek(0)-'0')
		}
		return append(out, byte(v))
	default:
		return append(out, c)
	}
}
