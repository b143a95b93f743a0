package photo

import (
	"bytes"
	"compress/zlib"
	"encoding/hex"
	"io"
)

// A Place is where in a file stands where the picture was taken.
type Place string

// The places that are looked at.
const (
	InExif   Place = "exif"   // GPS tags of Exif (CIPA DC-008)
	InNote   Place = "note"   // XMP (ISO 16684-1), IPTC, a comment or another note
	InBehind Place = "behind" // behind the picture: further pictures and films of a telephone
)

// words are names under which XMP and other notes tell a place: of Exif in XMP,
// of IPTC Core and Extension, of Photoshop, of W3C's basic geo vocabulary.
var words = []string{
	"gpslatitude", "gpslongitude", "gpsdest", "gpsposition", "gpscoordinates", "gpsareainformation",
	":latitude", "\"latitude", ":longitude", "\"longitude", "geo:lat", "geo:long",
	"iptc4xmpcore:location", "iptc4xmpcore:countrycode", "locationcreated", "locationshown",
	"photoshop:city", "photoshop:state", "photoshop:country",
	"\xa9xyz", "com.apple.quicktime.location",
}

// maxNote bounds what is unpacked of one note, and maxNotes of all.
const (
	maxNote  = 4 << 20
	maxNotes = 32 << 20
)

// places finds the parts that say where the picture was taken.
func (f file) places() (found map[int]Place, behind bool) {
	found = map[int]Place{}
	left := maxNotes
	var joined []byte // an XMP note that is longer than a segment
	var joints []int
	for i, p := range f.parts {
		if exif, ok := f.exif(p); ok {
			if t, ok := openTIFF(exif); ok {
				if entries, _ := t.place(); len(entries) > 0 {
					found[i] = InExif
				}
				continue
			}
		}
		note := f.note(p, &left)
		if rest, ok := bytes.CutPrefix(note, []byte("http://ns.adobe.com/xmp/extension/\x00")); ok && len(rest) > 40 {
			joined, joints = append(joined, rest[40:]...), append(joints, i) // digest, length, offset
			continue
		}
		if tellsPlace(note) {
			found[i] = InNote
		}
	}
	if tellsPlace(joined) {
		for _, i := range joints {
			found[i] = InNote
		}
	}
	return found, behindTellsPlace(f.rest)
}

// exif returns the structure in a part that is Exif.
func (f file) exif(p part) ([]byte, bool) {
	if f.png {
		return p.body, p.kind == "eXIf"
	}
	exif, ok := bytes.CutPrefix(p.body, []byte("Exif\x00\x00"))
	return exif, ok && p.kind == app1
}

// note returns what a part says in words or in fields of its own; nil if it is
// part of the picture.
func (f file) note(p part, left *int) []byte {
	if !f.png {
		if p.kind == comment || p.kind >= "\xe0" && p.kind <= "\xef" && !bytes.HasPrefix(p.body, []byte("ICC_PROFILE\x00")) {
			return p.body
		}
		return nil
	}
	switch p.kind {
	case "tEXt":
		return rawProfile(p.body)
	case "zTXt": // keyword, 0, method, deflated text
		key, rest, _ := bytes.Cut(p.body, []byte{0})
		return rawProfile(append(append(bytes.Clone(key), 0), inflatedNote(rest, 1, left)...))
	case "iTXt": // keyword, 0, flag, method, language, 0, keyword, 0, text
		key, rest, _ := bytes.Cut(p.body, []byte{0})
		if len(rest) < 2 || rest[0] == 0 {
			return p.body
		}
		_, text, _ := bytes.Cut(rest[2:], []byte{0})
		_, text, _ = bytes.Cut(text, []byte{0})
		return append(append(bytes.Clone(key), 0), inflatedNote(text, 0, left)...)
	}
	return nil
}

func inflatedNote(b []byte, from int, left *int) []byte {
	if len(b) < from {
		return nil
	}
	r, err := zlib.NewReader(bytes.NewReader(b[from:]))
	if err != nil {
		return nil
	}
	out, _ := io.ReadAll(io.LimitReader(r, int64(min(maxNote, *left)))) // what came before damage still counts
	*left -= len(out)
	return out
}

// rawProfile undoes the hexadecimal digits in which some programs keep the notes
// of JPEG in PNG: "Raw profile type exif", 0, line, name, length, digits.
func rawProfile(b []byte) []byte {
	key, text, _ := bytes.Cut(b, []byte{0})
	if !bytes.HasPrefix(key, []byte("Raw profile type ")) {
		return b
	}
	fields := bytes.Fields(text)
	if len(fields) < 3 {
		return b
	}
	digits := bytes.Join(fields[2:], nil)
	out := make([]byte, len(digits)/2)
	n, _ := hex.Decode(out, digits[:len(digits)&^1])
	return out[:n]
}

// tellsPlace looks for words, for IPTC fields, and for Exif in a wrapping.
func tellsPlace(note []byte) bool {
	if len(note) == 0 {
		return false
	}
	plain := make([]byte, 0, len(note))
	for _, c := range note {
		if c >= 'A' && c <= 'Z' {
			c += 'a' - 'A'
		}
		if c != 0 { // of two-byte characters, one
			plain = append(plain, c)
		}
	}
	for _, w := range words {
		if bytes.Contains(plain, []byte(w)) {
			return true
		}
	}
	return iptcTellsPlace(note) || exifWithin(note)
}

// iptcTellsPlace reads IPTC-IIM data sets in a Photoshop resource (0x0404).
func iptcTellsPlace(note []byte) bool {
	_, b, ok := bytes.Cut(note, []byte("8BIM\x04\x04"))
	if !ok {
		return false
	}
	if i := bytes.IndexByte(b[:min(len(b), 300)], 0x1c); i >= 0 {
		b = b[i:]
	}
	for len(b) >= 5 && b[0] == 0x1c {
		record, set, n := b[1], b[2], int(b[3])<<8|int(b[4])
		if n > len(b)-5 {
			return false
		}
		if record == 2 && n > 0 {
			switch set { // content location, city, sublocation, state, country
			case 26, 27, 90, 92, 95, 100, 101:
				return true
			}
		}
		b = b[5+n:]
	}
	return false
}

// exifWithin finds a place in Exif that stands inside something else.
func exifWithin(b []byte) bool {
	const most = 100
	for range most {
		_, rest, ok := bytes.Cut(b, []byte("Exif\x00\x00"))
		if !ok {
			return false
		}
		if t, ok := openTIFF(rest); ok {
			if entries, _ := t.place(); len(entries) > 0 {
				return true
			}
		}
		b = rest
	}
	return false
}

// behindTellsPlace looks at what a telephone puts behind its picture.
func behindTellsPlace(rest []byte) bool {
	return exifWithin(rest) || tellsPlace(rest)
}

// WithoutPlaces returns a photograph without what says where it was taken. The
// picture is the same, bit for bit, and so is everything else but notes that
// hold a place among other things, which go whole, and what stands behind the
// picture.
func WithoutPlaces(photograph []byte) ([]byte, error) {
	f, err := open(photograph)
	if err != nil {
		return nil, err
	}
	found, behind := f.places()
	kept := f.parts[:0:0]
	for i, p := range f.parts {
		switch {
		case found[i] == InNote, behind && p.kind == app2 && bytes.HasPrefix(p.body, []byte("MPF\x00")): // a list of what stands behind
			continue
		case found[i] == InExif:
			exif, _ := f.exif(p)
			t, _ := openTIFF(exif)
			head := p.body[:len(p.body)-len(exif)]
			p = f.with(p, append(bytes.Clone(head), t.withoutPlace()...))
		}
		kept = append(kept, p)
	}
	f.parts = kept
	if behind {
		f.rest = nil
	}
	return f.bytes(), nil
}
