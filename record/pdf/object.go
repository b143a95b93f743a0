package pdf

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"unicode/utf16"
)

// Objects (7.3). null is nil, booleans are bool, whole numbers int64, arrays
// []any, streams *Stream. Dictionaries are written with their keys in order, so
// that the same objects give the same bytes.
type (
	Name   string
	String string // its bytes
	Dict   map[Name]any
	Stream struct {
		Dict Dict
		Data []byte // as stored, filters not undone
	}
	Ref  struct{ num, gen int }
	real string // as it was spelled
)

// Text encodes text as PDF reads it: as it is if ASCII, or else as UTF-16 with
// a byte order mark (7.9.2.2).
func Text(s string) String {
	if isASCII(s) {
		return String(s)
	}
	b := []byte{0xFE, 0xFF}
	for _, u := range utf16.Encode([]rune(s)) {
		b = append(b, byte(u>>8), byte(u))
	}
	return String(b)
}

func isASCII(s string) bool {
	for i := range len(s) {
		if s[i] < ' ' || s[i] > '~' {
			return false
		}
	}
	return true
}

// text decodes a text string: UTF-16 by its byte order mark, in either order as
// other programs read it, UTF-8 (ISO 32000-2, 7.9.2.2), and else Latin-1, which
// is near enough to PDFDocEncoding for a name.
func (s String) text() string {
	switch {
	case strings.HasPrefix(string(s), "\xFE\xFF"):
		return utf16Text(s[2:], binary.BigEndian)
	case strings.HasPrefix(string(s), "\xFF\xFE"):
		return utf16Text(s[2:], binary.LittleEndian)
	case strings.HasPrefix(string(s), "\xEF\xBB\xBF"):
		return strings.ToValidUTF8(string(s[3:]), "\uFFFD")
	}
	runes := make([]rune, len(s))
	for i := range len(s) {
		runes[i] = rune(s[i])
	}
	return string(runes)
}

func utf16Text(s String, order binary.ByteOrder) string {
	var units []uint16
	for b := []byte(s); len(b) >= 2; b = b[2:] {
		units = append(units, order.Uint16(b))
	}
	return string(utf16.Decode(units))
}

// writeObject writes an object that stands inside another one.
func writeObject(b *bytes.Buffer, o any) {
	switch o := o.(type) {
	case nil:
		b.WriteString("null")
	case bool:
		b.WriteString(strconv.FormatBool(o))
	case int:
		b.WriteString(strconv.Itoa(o))
	case int64:
		b.WriteString(strconv.FormatInt(o, 10))
	case real:
		b.WriteString(string(o))
	case Name:
		writeName(b, o)
	case String:
		writeString(b, o)
	case Ref:
		fmt.Fprintf(b, "%d %d R", o.num, o.gen)
	case []any:
		b.WriteByte('[')
		for i, v := range o {
			if i > 0 {
				b.WriteByte(' ')
			}
			writeObject(b, v)
		}
		b.WriteByte(']')
	case Dict:
		b.WriteString("<<")
		for _, k := range slices.Sorted(maps.Keys(o)) {
			writeName(b, k)
			b.WriteByte(' ')
			writeObject(b, o[k])
			b.WriteByte('\n')
		}
		b.WriteString(">>")
	case *Stream:
		o.Dict["Length"] = int64(len(o.Data))
		writeObject(b, o.Dict)
		b.WriteString("\nstream\r\n")
		b.Write(o.Data)
		b.WriteString("\nendstream")
	default:
		panic(fmt.Sprintf("no such PDF object: %T", o))
	}
}

// writeString writes plain text legibly, as some readers want dates, and all
// else in hexadecimal digits.
func writeString(b *bytes.Buffer, s String) {
	if isASCII(string(s)) && !bytes.ContainsAny([]byte(s), `()\`) {
		fmt.Fprintf(b, "(%s)", string(s))
	} else {
		fmt.Fprintf(b, "<%X>", string(s))
	}
}

func writeName(b *bytes.Buffer, n Name) {
	b.WriteByte('/')
	for i := range len(n) {
		if c := n[i]; c > ' ' && c <= '~' && c != '#' && !isDelimiter(c) {
			b.WriteByte(c)
		} else {
			fmt.Fprintf(b, "#%02X", c)
		}
	}
}

func isDelimiter(c byte) bool {
	switch c {
	case '(', ')', '<', '>', '[', ']', '{', '}', '/', '%':
		return true
	}
	return false
}

func isSpace(c byte) bool {
	switch c {
	case 0, '\t', '\n', '\f', '\r', ' ':
		return true
	}
	return false
}
