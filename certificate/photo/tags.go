package photo

import (
	"bytes"
	"compress/zlib"
	"io"
)

// tags is what stands in a picture file beside the picture.
type tags struct {
	orientation orientation
	profile     []byte // ICC
}

// maxProfileBytes bounds a profile that is packed.
const maxProfileBytes = 4 << 20

// tags reads what it understands and passes over the rest: a photograph with
// damaged tags is still a photograph. The profile of a JPEG stands in numbered
// parts (ICC.1:2010, B.4).
func (f file) tags() (t tags) {
	profile := map[byte][]byte{}
	var count byte
	for _, p := range f.parts {
		if p.kind == startOfScan || p.kind == "IDAT" {
			break
		}
		if exif, ok := f.exif(p); ok && t.orientation == 0 {
			if tiff, ok := openTIFF(exif); ok {
				t.orientation = tiff.orientation()
			}
		}
		if icc, ok := bytes.CutPrefix(p.body, []byte("ICC_PROFILE\x00")); ok && p.kind == app2 && len(icc) > 2 {
			profile[icc[0]], count = icc[2:], icc[1]
		}
		if i := bytes.IndexByte(p.body, 0); p.kind == "iCCP" && i > 0 && i+2 < len(p.body) { // name, 0, method, deflated profile
			t.profile = inflated(p.body[i+2:])
		}
	}
	for i := byte(1); i <= count && i > 0; i++ {
		one, ok := profile[i]
		if !ok {
			return tags{orientation: t.orientation}
		}
		t.profile = append(t.profile, one...)
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
