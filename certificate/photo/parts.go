package photo

import (
	"bytes"
	"encoding/binary"
	"errors"
	"hash/crc32"
)

// A file is a picture file taken apart: put together again, its parts are the
// same bytes.
type file struct {
	png   bool
	parts []part
	rest  []byte // behind the end of the picture
}

// A part is a segment of JPEG (ITU-T T.81, B.1) with the coded data that may
// follow it, or a chunk of PNG (W3C PNG, 5.3). Its kind is the second byte of
// the marker, or the type of the chunk.
type part struct {
	kind string
	raw  []byte
	body []byte // without marker or type, length and check sum
}

// Kinds of segments that matter here.
const (
	startOfImage = "\xd8"
	endOfImage   = "\xd9"
	startOfScan  = "\xda"
	app1         = "\xe1" // Exif, XMP
	app2         = "\xe2" // colour profile, further pictures
	comment      = "\xfe"
)

// maxParts is more than any program writes: restarts of a scan are no parts.
const maxParts = 100000

// ErrKind says that a file is no photograph that is read here.
var ErrKind = errors.New("it is neither JPEG nor PNG")

var errDamaged = errors.New("it is damaged or cut short")

const signature = "\x89PNG\r\n\x1a\n"

// takeApart reads the parts of a file up to the end of its picture. It is as
// strict as the formats are: what a lenient reader would pass over could hide
// something.
func takeApart(b []byte) (file, error) {
	var f file
	next := jpegPart
	switch {
	case bytes.HasPrefix(b, []byte(signature)):
		f.png, next, b = true, pngPart, b[len(signature):]
	case !bytes.HasPrefix(b, []byte("\xff"+startOfImage)):
		return f, ErrKind
	}
	for len(f.parts) < maxParts {
		p, ok := next(b)
		if !ok {
			return f, errDamaged
		}
		f.parts = append(f.parts, p)
		b = b[len(p.raw):]
		if p.kind == endOfImage || p.kind == "IEND" {
			f.rest = b
			return f, nil
		}
	}
	return f, errDamaged
}

func jpegPart(b []byte) (part, bool) {
	fill := 0
	for fill+1 < len(b) && b[fill] == 0xff && b[fill+1] == 0xff {
		fill++
	}
	if len(b) < fill+2 || b[fill] != 0xff || b[fill+1] == 0 {
		return part{}, false
	}
	kind, at := string(b[fill+1:fill+2]), fill+2
	if kind == startOfImage || kind == endOfImage || kind >= "\xd0" && kind <= "\xd7" || kind == "\x01" { // they stand alone
		return part{kind, b[:at], nil}, true
	}
	if len(b) < at+2 {
		return part{}, false
	}
	n := int(binary.BigEndian.Uint16(b[at:]))
	if n < 2 || len(b) < at+n {
		return part{}, false
	}
	end := at + n
	if kind == startOfScan {
		end += codedData(b[end:])
	}
	return part{kind, b[:end], b[at+2 : at+n]}, true
}

// codedData returns how long the data of a scan is: in it, an 0xff is followed
// by 0 or is the start of a restart.
func codedData(b []byte) int {
	at := 0
	for {
		i := bytes.IndexByte(b[at:], 0xff)
		if i < 0 || at+i+1 >= len(b) {
			return len(b)
		}
		at += i
		if next := b[at+1]; next != 0 && (next < 0xd0 || next > 0xd7) {
			return at
		}
		at += 2
	}
}

func pngPart(b []byte) (part, bool) {
	const around = 12 // length, type, check sum
	if len(b) < around {
		return part{}, false
	}
	n := int64(binary.BigEndian.Uint32(b))
	if n > int64(len(b)-around) {
		return part{}, false
	}
	return part{string(b[4:8]), b[:n+around], b[8 : 8+n]}, true
}

// with returns the part with another body of the same kind.
func (f file) with(p part, body []byte) part {
	var raw []byte
	if f.png {
		raw = binary.BigEndian.AppendUint32(raw, uint32(len(body)))
		raw = append(append(raw, p.kind...), body...)
		raw = binary.BigEndian.AppendUint32(raw, crc32.ChecksumIEEE(raw[4:]))
	} else {
		raw = append([]byte{0xff}, p.kind...)
		raw = binary.BigEndian.AppendUint16(raw, uint16(len(body)+2))
		raw = append(raw, body...)
	}
	return part{p.kind, raw, body}
}

// bytes puts a file together.
func (f file) bytes() []byte {
	var b bytes.Buffer
	if f.png {
		b.WriteString(signature)
	}
	for _, p := range f.parts {
		b.Write(p.raw)
	}
	b.Write(f.rest)
	return b.Bytes()
}
