package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
)

// Decoded returns the bytes of the stream that o is or refers to, its filter
// undone. Only the filter that all programs use is known.
func (f *File) Decoded(o any) ([]byte, error) {
	v, err := f.resolve(o)
	if err != nil {
		return nil, err
	}
	s, ok := v.(*Stream)
	if !ok {
		return nil, fmt.Errorf("%w: stream expected", ErrMalformed)
	}
	filter, err := f.only(s.Dict["Filter"])
	if err != nil {
		return nil, err
	}
	parms, err := f.only(s.Dict["DecodeParms"])
	if err != nil {
		return nil, err
	}
	switch {
	case s.Dict["Fl"] != nil || s.Dict["DP"] != nil: // short for the same, to some programs
		return nil, fmt.Errorf("%w: a filter by its short name", ErrAmbiguous)
	case s.Dict["F"] != nil:
		return nil, fmt.Errorf("%w: the stream stands in another file", ErrMalformed)
	case filter == nil:
		return s.Data, nil
	case filter != any(Name("FlateDecode")):
		return nil, fmt.Errorf("%w: filter not known", ErrMalformed)
	}
	data, err := f.inflated(s.Data)
	if err != nil || parms == nil {
		return data, err
	}
	d, err := f.Dict(parms)
	if err != nil {
		return nil, err
	}
	return unpredicted(data, d)
}

// only returns the one filter, or its parameters, whether in an array or not.
func (f *File) only(o any) (any, error) {
	v, err := f.resolve(o)
	if err != nil {
		return nil, err
	}
	a, ok := v.([]any)
	switch {
	case !ok:
		return v, nil
	case len(a) == 0:
		return nil, nil
	case len(a) > 1:
		return nil, fmt.Errorf("%w: more than one filter", ErrMalformed)
	}
	return f.resolve(a[0])
}

func (f *File) inflated(packed []byte) ([]byte, error) {
	if len(packed) == 0 { // some programs pack nothing into nothing
		return nil, nil
	}
	z, err := zlib.NewReader(bytes.NewReader(packed))
	if err != nil {
		return nil, fmt.Errorf("%w: %w", ErrMalformed, err)
	}
	data, err := io.ReadAll(io.LimitReader(z, int64(f.spend.unpacked)+1))
	if err != nil {
		return nil, fmt.Errorf("%w: %w", ErrMalformed, err)
	}
	if f.spend.unpacked -= len(data); f.spend.unpacked < 0 {
		return nil, fmt.Errorf("%w: its streams are larger than such a file needs", ErrMalformed)
	}
	return data, nil
}

// unpredicted undoes what was done to rows of samples so that they pack better:
// nothing, or one of the filters of PNG in each row (7.4.4.4; W3C PNG, 9).
func unpredicted(data []byte, parms Dict) ([]byte, error) {
	bad := fmt.Errorf("%w: parameters of a filter", ErrMalformed)
	value := func(key Name, otherwise int64) int64 {
		switch v := parms[key].(type) {
		case nil:
			return otherwise
		case int64:
			return v
		}
		return -1
	}
	predictor := value("Predictor", 1)
	if predictor == 1 {
		return data, nil
	}
	colors, bits, columns := value("Colors", 1), value("BitsPerComponent", 8), value("Columns", 1)
	if predictor < 10 || predictor > 15 || colors < 1 || colors > 32 || bits < 1 || bits > 16 || columns < 1 || columns > MaxBytes {
		return nil, bad
	}
	pixel := int((colors*bits + 7) / 8)
	row := int((colors*bits*columns + 7) / 8)
	var above []byte
	out := data[:0] // a row comes out shorter than it went in
	for len(data) > 0 {
		kind, line := data[0], data[1:min(len(data), row+1)]
		data = data[1+len(line):]
		if !unfilter(kind, line, above, pixel) {
			return nil, bad
		}
		out = append(out, line...)
		above = out[len(out)-len(line):]
	}
	return out, nil
}

// unfilter undoes one of the five filters of a row; what lies left of it and
// above the first is 0.
func unfilter(kind byte, line, above []byte, pixel int) bool {
	for i := range line {
		var left, up, corner byte
		if i >= pixel {
			left = line[i-pixel]
		}
		if i < len(above) {
			up = above[i]
		}
		if i >= pixel && i-pixel < len(above) {
			corner = above[i-pixel]
		}
		switch kind {
		case 0:
		case 1:
			line[i] += left
		case 2:
			line[i] += up
		case 3:
			line[i] += byte((int(left) + int(up)) / 2)
		case 4:
			line[i] += paeth(left, up, corner)
		default:
			return false
		}
	}
	return true
}

// paeth chooses the neighbour nearest to left + up - corner.
func paeth(left, up, corner byte) byte {
	p := int(left) + int(up) - int(corner)
	distance := func(v byte) int { return max(p-int(v), int(v)-p) }
	switch l, u, c := distance(left), distance(up), distance(corner); {
	case l <= u && l <= c:
		return left
	case u <= c:
		return up
	}
	return corner
}
