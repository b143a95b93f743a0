package photo

import (
	"encoding/binary"
	"image"
	"math"
	"strings"
	"unicode/utf16"
)

// A profile says what the values of a picture mean: each value goes through
// the curve of its channel, then the matrix leads to XYZ under D50.
type profile struct {
	curves [3][256]float64
	toXYZ  [3][3]float64
	grey   bool
}

// fromXYZ leads from XYZ under D50 to linear sRGB: the primaries and white of
// IEC 61966-2-1, adapted to D50 with the Bradford transform. Figures from
// memory of the published tables; TestColourByAnotherProgram holds them.
var fromXYZ = [3][3]float64{
	{3.1338561, -1.6168667, -0.4906146},
	{-0.9787684, 1.9161415, 0.0334540},
	{0.0719453, -0.2289914, 1.4052427},
}

// readProfile reads a profile of matrix and curves, or of one grey curve.
func readProfile(b []byte) (profile, bool) {
	var p profile
	if len(b) < 132 || string(b[36:40]) != "acsp" || string(b[20:24]) != "XYZ " && string(b[16:20]) != "GRAY" {
		return p, false
	}
	tag := tagTable(b)
	switch string(b[16:20]) {
	case "GRAY":
		p.grey = true
		return p, readCurve(tag["kTRC"], &p.curves[0])
	case "RGB ":
		for i, c := range []string{"r", "g", "b"} {
			xyz := tag[c+"XYZ"]
			if len(xyz) < 20 || string(xyz[:4]) != "XYZ " || !readCurve(tag[c+"TRC"], &p.curves[i]) {
				return p, false
			}
			for j := range 3 {
				p.toXYZ[j][i] = fixed(xyz[8+4*j:])
			}
		}
		return p, true
	}
	return p, false
}

// profileName reads the description of a profile: ASCII in version 2 (ICC.1:2001-04,
// 6.5.17), UTF-16 in version 4 (ICC.1:2010, 10.13). One that says nothing is called so.
func profileName(b []byte) string {
	const unnamed = "unnamed"
	if len(b) < 132 {
		return unnamed
	}
	d := tagTable(b)["desc"]
	name := ""
	switch {
	case len(d) >= 12 && string(d[:4]) == "desc":
		n := min(int64(binary.BigEndian.Uint32(d[8:])), int64(len(d)-12))
		name = string(d[12 : 12+n])
	case len(d) >= 28 && string(d[:4]) == "mluc":
		n, at := int64(binary.BigEndian.Uint32(d[20:])), int64(binary.BigEndian.Uint32(d[24:]))
		if at+n <= int64(len(d)) {
			var units []uint16
			for i := at; i+1 < at+n; i += 2 {
				units = append(units, binary.BigEndian.Uint16(d[i:]))
			}
			name = string(utf16.Decode(units))
		}
	}
	if name = strings.TrimSpace(strings.TrimRight(name, "\x00")); name == "" {
		return unnamed
	}
	return strings.ToValidUTF8(name[:min(len(name), 200)], "")
}

func tagTable(b []byte) map[string][]byte {
	tag := map[string][]byte{}
	table := b[132:]
	for range min(int64(binary.BigEndian.Uint32(b[128:])), 200) {
		if len(table) < 12 {
			break
		}
		at, n := int64(binary.BigEndian.Uint32(table[4:])), int64(binary.BigEndian.Uint32(table[8:]))
		if at+n <= int64(len(b)) {
			tag[string(table[:4])] = b[at : at+n]
		}
		table = table[12:]
	}
	return tag
}

// fixed reads an s15Fixed16Number.
func fixed(b []byte) float64 { return float64(int32(binary.BigEndian.Uint32(b))) / 65536 }

// readCurve reads a curve (ICC.1:2010, 10.5 and 10.15) at 256 values.
func readCurve(b []byte, into *[256]float64) bool {
	if len(b) < 12 {
		return false
	}
	var f func(float64) float64
	switch string(b[:4]) {
	case "curv":
		f = sampledCurve(b[12:], int64(binary.BigEndian.Uint32(b[8:])))
	case "para":
		f = formulaCurve(binary.BigEndian.Uint16(b[8:]), b[12:])
	}
	if f == nil {
		return false
	}
	for i := range into {
		v := f(float64(i) / 255)
		if math.IsNaN(v) {
			return false
		}
		into[i] = min(max(v, 0), 1)
	}
	return true
}

func sampledCurve(b []byte, n int64) func(float64) float64 {
	switch {
	case n == 0:
		return func(x float64) float64 { return x }
	case int64(len(b)) < 2*n:
		return nil
	case n == 1:
		gamma := float64(binary.BigEndian.Uint16(b)) / 256
		return func(x float64) float64 { return math.Pow(x, gamma) }
	}
	at := func(i int64) float64 { return float64(binary.BigEndian.Uint16(b[2*min(i, n-1):])) / 65535 }
	return func(x float64) float64 {
		whole, part := math.Modf(x * float64(n-1))
		return at(int64(whole))*(1-part) + at(int64(whole)+1)*part
	}
}

// formulaCurve is a parametricCurveType: five forms of a power with a line.
func formulaCurve(form uint16, b []byte) func(float64) float64 {
	counts := []int{1, 3, 4, 5, 7}
	if int(form) >= len(counts) || len(b) < 4*counts[form] {
		return nil
	}
	// g a b c d e f, filled as the shorter forms imply.
	v := [7]float64{1, 1}
	for i := range counts[form] {
		v[i] = fixed(b[4*i:])
	}
	g, a, s, c, d, e, f := v[0], v[1], v[2], v[3], v[4], v[5], v[6]
	switch form {
	case 1:
		d = -s / a
	case 2:
		d, e, f, c = -s/a, c, c, 0
	}
	if form == 0 {
		d = math.Inf(-1)
	}
	return func(x float64) float64 {
		if x >= d {
			return math.Pow(max(a*x+s, 0), g) + e
		}
		return c*x + f
	}
}

// encode is the inverse of the transfer function of IEC 61966-2-1, in 0 to 255.
func encode(v float64) uint8 {
	if v = min(max(v, 0), 1); v <= 0.0031308 {
		v *= 12.92
	} else {
		v = 1.055*math.Pow(v, 1/2.4) - 0.055
	}
	return uint8(v*255 + 0.5)
}

// convert turns an opaque picture into sRGB. Colours that sRGB does not hold
// become the nearest value of each channel.
func (p profile) convert(img *image.RGBA) {
	var m [3][3]float64
	for i := range m {
		for j := range m {
			for k := range m {
				m[i][j] += fromXYZ[i][k] * p.toXYZ[k][j]
			}
		}
	}
	for i := 0; i < len(img.Pix); i += 4 {
		px := img.Pix[i : i+3]
		if p.grey {
			v := encode(p.curves[0][px[0]])
			px[0], px[1], px[2] = v, v, v
			continue
		}
		r, g, b := p.curves[0][px[0]], p.curves[1][px[1]], p.curves[2][px[2]]
		for j := range px {
			px[j] = encode(m[j][0]*r + m[j][1]*g + m[j][2]*b)
		}
	}
}
