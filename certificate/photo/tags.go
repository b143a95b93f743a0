package photo

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"io"
)

// tags is what stands in a picture file beside the picture.
type tags struct {
	orientation orientation
	profile     []byte // ICC
}

// Bounds against files that are made to do harm.
const (
	maxProfileBytes = 4 << 20
	maxDirEntries   = 1000
)

// readTags reads what it understands and passes over the rest: a photograph
// with damaged tags is still a photograph.
func readTags(file []byte) tags {
	if rest, ok := bytes.CutPrefix(file, []byte("\x89PNG\r\n\x1a\n")); ok {
		return pngTags(rest)
	}
	if rest, ok := bytes.CutPrefix(file, []byte("\xff\xd8")); ok {
		return jpegTags(rest)
	}
	return tags{}
}

// jpegTags reads the segments before the picture: Exif in APP1, the profile in
// numbered parts in APP2 (ICC.1:2010, B.4).
func jpegTags(b []byte) (t tags) {
	parts := map[byte][]byte{}
	var count byte
	for len(b) >= 4 && b[0] == 0xff {
		marker, n := b[1], int(binary.BigEndian.Uint16(b[2:]))
		if marker == 0xff { // a fill byte
			b = b[1:]
			continue
		}
		if marker == 0xda || marker == 0xd9 || n < 2 || len(b) < 2+n {
			break
		}
		body := b[4 : 2+n]
		b = b[2+n:]
		if exif, ok := bytes.CutPrefix(body, []byte("Exif\x00\x00")); ok && marker == 0xe1 && t.orientation == 0 {
			t.orientation = exifOrientation(exif)
		}
		if icc, ok := bytes.CutPrefix(body, []byte("ICC_PROFILE\x00")); ok && marker == 0xe2 && len(icc) > 2 {
			parts[icc[0]], count = icc[2:], icc[1]
		}
	}
	for i := byte(1); i <= count && i > 0; i++ {
		part, ok := parts[i]
		if !ok {
			return tags{orientation: t.orientation}
		}
		t.profile = append(t.profile, part...)
	}
	return t
}

// pngTags reads the chunks before the picture.
func pngTags(b []byte) (t tags) {
	for len(b) >= 12 {
		n := int64(binary.BigEndian.Uint32(b))
		kind := string(b[4:8])
		if n > int64(len(b)-12) || kind == "IEND" {
			break
		}
		body := b[8 : 8+n]
		b = b[12+n:]
		switch kind {
		case "eXIf":
			t.orientation = exifOrientation(body)
		case "iCCP": // name, 0, method, deflated profile
			if i := bytes.IndexByte(body, 0); i > 0 && i+2 < len(body) {
				t.profile = inflated(body[i+2:])
			}
		}
	}
	return t
}

func inflated(b []byte) []byte {
	r, err := zlib.NewReader(bytes.NewReader(b))
	if err != nil {
		return nil
	}
	out, err := io.ReadAll(io.LimitReader(r, maxProfileBytes+1))
	if err != nil || len(out) > maxProfileBytes {
		return nil
	}
	return out
}

// exifOrientation reads tag 0x0112 of the first directory of a TIFF structure.
func exifOrientation(b []byte) orientation {
	if len(b) < 8 {
		return 0
	}
	var order binary.ByteOrder
	switch string(b[:4]) {
	case "II*\x00":
		order = binary.LittleEndian
	case "MM\x00*":
		order = binary.BigEndian
	default:
		return 0
	}
	at := int64(order.Uint32(b[4:]))
	if at+2 > int64(len(b)) {
		return 0
	}
	entries := b[at+2:]
	for range min(int(order.Uint16(b[at:])), maxDirEntries) {
		if len(entries) < 12 {
			return 0
		}
		const short = 3
		if order.Uint16(entries) == 0x0112 && order.Uint16(entries[2:]) == short {
			if v := order.Uint16(entries[8:]); v >= 1 && v <= 8 {
				return orientation(v)
			}
			return 0
		}
		entries = entries[12:]
	}
	return 0
}
