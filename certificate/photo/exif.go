package photo

import (
	"bytes"
	"encoding/binary"
)

// Tags of Exif (CIPA DC-008).
const (
	tagOrientation = 0x0112
	tagExif        = 0x8769 // leads to a further directory
	tagGPS         = 0x8825 // the same
)

// A tiff is the structure inside Exif: directories of twelve bytes an entry.
type tiff struct {
	b     []byte
	order binary.ByteOrder
}

func openTIFF(b []byte) (tiff, bool) {
	if len(b) < 8 {
		return tiff{}, false
	}
	switch string(b[:4]) {
	case "II*\x00":
		return tiff{b, binary.LittleEndian}, true
	case "MM\x00*":
		return tiff{b, binary.BigEndian}, true
	}
	return tiff{}, false
}

// entries returns where the entries of a directory stand, and the directory
// behind it; nothing if it does not lie in the structure.
func (t tiff) entries(dir int64) (at []int64, next int64) {
	if dir < 8 || dir+2 > int64(len(t.b)) {
		return nil, 0
	}
	n := int64(t.order.Uint16(t.b[dir:]))
	end := dir + 2 + 12*n
	if end > int64(len(t.b)) {
		return nil, 0
	}
	for i := range n {
		at = append(at, dir+2+12*i)
	}
	if end+4 <= int64(len(t.b)) {
		next = int64(t.order.Uint32(t.b[end:]))
	}
	return at, next
}

func (t tiff) tag(entry int64) uint16  { return t.order.Uint16(t.b[entry:]) }
func (t tiff) value(entry int64) int64 { return int64(t.order.Uint32(t.b[entry+8:])) }

// directories returns the main directories and those of Exif below them.
func (t tiff) directories() (dirs []int64) {
	const most = 16
	for dir := int64(t.order.Uint32(t.b[4:])); dir != 0 && len(dirs) < most; {
		dirs = append(dirs, dir)
		at, next := t.entries(dir)
		for _, e := range at {
			if t.tag(e) == tagExif && len(dirs) < most {
				dirs = append(dirs, t.value(e))
			}
		}
		dir = next
	}
	return dirs
}

// orientation reads the tag of the first directory.
func (t tiff) orientation() orientation {
	at, _ := t.entries(int64(t.order.Uint32(t.b[4:])))
	for _, e := range at {
		const short = 3
		if t.tag(e) == tagOrientation && t.order.Uint16(t.b[e+2:]) == short {
			if v := t.order.Uint16(t.b[e+8:]); v >= 1 && v <= 8 {
				return orientation(v)
			}
			return 0
		}
	}
	return 0
}

// place returns the entries that lead to where the picture was taken. There
// should be one; of more than a few, which only a file made to do harm has, what
// they lead to is not looked at.
func (t tiff) place() (entries []int64, dirs []int64) {
	const few = 16
	looked := 0
	for _, dir := range t.directories() {
		at, _ := t.entries(dir)
		for _, e := range at {
			if t.tag(e) != tagGPS {
				continue
			}
			if looked++; looked > few || t.saysWhere(t.value(e)) {
				entries, dirs = append(entries, e), append(dirs, dir)
			}
		}
	}
	return entries, dirs
}

// saysWhere reports whether a directory of GPS tags holds more than its version
// and a time, which cameras write that found no satellite.
func (t tiff) saysWhere(dir int64) bool {
	at, _ := t.entries(dir)
	for _, e := range at {
		switch t.tag(e) {
		case 0x00, 0x07, 0x08, 0x09, 0x0a, 0x0b, 0x12, 0x1d, 0x1e: // version, time, satellites, status, mode, precision, datum, date, correction
		default:
			return true
		}
	}
	return false
}

// withoutPlace returns the structure with the place overwritten and no entry
// that leads to it. Nothing else moves.
func (t tiff) withoutPlace() []byte {
	out := tiff{bytes.Clone(t.b), t.order}
	entries, dirs := t.place()
	for _, e := range entries {
		out.wipe(t.value(e))
	}
	for i := len(entries) - 1; i >= 0; i-- { // later entries first: those before keep their place
		out.cut(dirs[i], entries[i])
	}
	return out.b
}

// wipe overwrites a directory with zeros, and what its entries lead to.
func (t tiff) wipe(dir int64) {
	at, _ := t.entries(dir)
	size := map[uint16]int64{1: 1, 2: 1, 3: 2, 4: 4, 5: 8, 6: 1, 7: 1, 8: 2, 9: 4, 10: 8, 11: 4, 12: 8}
	for _, e := range at {
		n := size[t.order.Uint16(t.b[e+2:])] * int64(t.order.Uint32(t.b[e+4:]))
		if from := t.value(e); n > 4 && from+n <= int64(len(t.b)) {
			clear(t.b[from : from+n])
		}
	}
	if len(at) > 0 {
		clear(t.b[dir : dir+2+12*int64(len(at))])
	}
}

// cut takes an entry out of its directory.
func (t tiff) cut(dir, entry int64) {
	at, _ := t.entries(dir)
	if len(at) == 0 { // it was wiped: the file was made to be confusing
		return
	}
	end := min(dir+2+12*int64(len(at))+4, int64(len(t.b)))
	copy(t.b[entry:], t.b[entry+12:end])
	clear(t.b[end-12 : end])
	t.order.PutUint16(t.b[dir:], uint16(len(at)-1))
}
