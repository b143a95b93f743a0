package paper

import (
	"bytes"
	"fmt"
	"slices"
	"strconv"
	"unicode/utf16"
)

// PDF objects (ISO 32000-1, 7.3). null is nil, booleans are bool, whole
// numbers int64, arrays []any, streams *pdfStream. Dictionaries are written
// with their keys in order, so that the same objects give the same bytes.
type (
	pdfName   string
	pdfString string // its bytes
	pdfReal   string // as it was spelled
	pdfDict   map[pdfName]any
	pdfStream struct {
		dict pdfDict
		data []byte // as stored, filters not undone
	}
	pdfRef struct{ num, gen int }
)

// textString encodes text as PDF reads it: as it is if ASCII, or else as
// UTF-16 with a byte order mark (7.9.2.2).
func textString(s string) pdfString {
	ascii := true
	for _, r := range s {
		ascii = ascii && r >= ' ' && r <= '~'
	}
	if ascii {
		return pdfString(s)
	}
	b := []byte{0xFE, 0xFF}
	for _, u := range utf16.Encode([]rune(s)) {
		b = append(b, byte(u>>8), byte(u))
	}
	return pdfString(b)
}

// text decodes a text string; other encodings than the two above are read as
// Latin-1, which is near enough to PDFDocEncoding for a name.
func (s pdfString) text() string {
	if len(s) >= 2 && s[0] == 0xFE && s[1] == 0xFF {
		var units []uint16
		for i := 2; i+1 < len(s); i += 2 {
			units = append(units, uint16(s[i])<<8|uint16(s[i+1]))
		}
		return string(utf16.Decode(units))
	}
	runes := make([]rune, len(s))
	for i := range len(s) {
		runes[i] = rune(s[i])
	}
	return string(runes)
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
	case pdfReal:
		b.WriteString(string(o))
	case pdfName:
		writeName(b, o)
	case pdfString:
		fmt.Fprintf(b, "<%X>", string(o))
	case pdfRef:
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
	case pdfDict:
		b.WriteString("<<")
		for _, k := range sortedKeys(o) {
			writeName(b, k)
			b.WriteByte(' ')
			writeObject(b, o[k])
			b.WriteByte('\n')
		}
		b.WriteString(">>")
	case *pdfStream:
		o.dict["Length"] = int64(len(o.data))
		writeObject(b, o.dict)
		b.WriteString("\nstream\r\n")
		b.Write(o.data)
		b.WriteString("\nendstream")
	default:
		panic(fmt.Sprintf("no such PDF object: %T", o))
	}
}

func sortedKeys(d pdfDict) []pdfName {
	keys := make([]pdfName, 0, len(d))
	for k := range d {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

func writeName(b *bytes.Buffer, n pdfName) {
	b.WriteByte('/')
	for i := range len(n) {
		if c := n[i]; c > ' ' && c <= '~' && c != '#' && !isDelimiter(c) {
			b.WriteByte(c)
		} else {
			fmt.Fprintf(b, "#%02X", c)
		}
	}
}

func isDelimiter(c byte) bool { return bytes.IndexByte([]byte("()<>[]{}/%"), c) >= 0 }

func isSpace(c byte) bool { return bytes.IndexByte([]byte("\x00\t\n\f\r "), c) >= 0 }
