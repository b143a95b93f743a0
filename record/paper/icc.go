package paper

import (
	"bytes"
	"encoding/binary"
	"math"
	"sync"
)

// sRGBProfile returns an ICC profile of version 2 (ICC.1:2001-04) for sRGB,
// computed from what IEC 61966-2-1 publishes: the chromaticities of its
// primaries and white, and its transfer function. The colorants are adapted
// to the white of the connection space with the Bradford transform.
var sRGBProfile = sync.OnceValue(func() []byte {
	xyz := adaptedPrimaries()
	tags := []struct {
		name string
		data []byte
	}{
		{"desc", iccDescription("sRGB IEC61966-2.1")},
		{"cprt", append(append([]byte("text\x00\x00\x00\x00"), "No copyright, use freely"...), 0)},
		{"wtpt", iccXYZ(whiteD50)},
		{"rXYZ", iccXYZ(vec{xyz[0][0], xyz[1][0], xyz[2][0]})},
		{"gXYZ", iccXYZ(vec{xyz[0][1], xyz[1][1], xyz[2][1]})},
		{"bXYZ", iccXYZ(vec{xyz[0][2], xyz[1][2], xyz[2][2]})},
		{"rTRC", iccCurve()},
	}
	var table, body bytes.Buffer
	start := 128 + 4 + 12*(len(tags)+2)
	entry := func(name string, at, size int) {
		table.WriteString(name)
		binary.Write(&table, binary.BigEndian, [2]uint32{uint32(at), uint32(size)})
	}
	for _, t := range tags {
		at := start + body.Len()
		entry(t.name, at, len(t.data))
		if t.name == "rTRC" { // the three channels share one curve
			entry("gTRC", at, len(t.data))
			entry("bTRC", at, len(t.data))
		}
		body.Write(t.data)
		for body.Len()%4 != 0 {
			body.WriteByte(0)
		}
	}
	var b bytes.Buffer
	b.Write(iccHeader(start + body.Len()))
	binary.Write(&b, binary.BigEndian, uint32(len(tags)+2))
	b.Write(table.Bytes())
	b.Write(body.Bytes())
	return b.Bytes()
})

func iccHeader(size int) []byte {
	h := make([]byte, 128)
	binary.BigEndian.PutUint32(h[0:], uint32(size))
	binary.BigEndian.PutUint32(h[8:], 0x02400000) // version 2.4
	copy(h[12:], "mntrRGB XYZ ")
	// The date is that of the standard; a profile that is computed has no hour.
	for i, v := range []uint16{1999, 10, 1, 0, 0, 0} {
		binary.BigEndian.PutUint16(h[24+2*i:], v)
	}
	copy(h[36:], "acsp")
	copy(h[68:], iccXYZ(whiteD50)[8:])
	return h
}

type (
	vec [3]float64
	mat [3]vec
)

// whiteD50 is the white of the profile connection space (ICC.1, 6.3.4.3).
var whiteD50 = vec{0.9642, 1, 0.8249}

// xyzOf returns X, Y, Z of a chromaticity at Y = 1.
func xyzOf(x, y float64) vec { return vec{x / y, 1, (1 - x - y) / y} }

// adaptedPrimaries returns the matrix from linear sRGB to XYZ under D50.
func adaptedPrimaries() mat {
	r, g, b := xyzOf(0.64, 0.33), xyzOf(0.30, 0.60), xyzOf(0.15, 0.06)
	white := xyzOf(0.3127, 0.3290)
	p := mat{{r[0], g[0], b[0]}, {r[1], g[1], b[1]}, {r[2], g[2], b[2]}}
	s := p.inverse().apply(white)
	for i := range p {
		for j := range p[i] {
			p[i][j] *= s[j]
		}
	}
	return adaptation(white, whiteD50).times(p)
}

// adaptation is the Bradford transform from one white to another.
func adaptation(from, to vec) mat {
	cone := mat{{0.8951, 0.2664, -0.1614}, {-0.7502, 1.7135, 0.0367}, {0.0389, -0.0685, 1.0296}}
	a, b := cone.apply(from), cone.apply(to)
	scale := mat{{b[0] / a[0], 0, 0}, {0, b[1] / a[1], 0}, {0, 0, b[2] / a[2]}}
	return cone.inverse().times(scale).times(cone)
}

func (m mat) apply(v vec) (out vec) {
	for i := range m {
		for j := range v {
			out[i] += m[i][j] * v[j]
		}
	}
	return out
}

func (m mat) times(n mat) (out mat) {
	for i := range m {
		for j := range m {
			for k := range m {
				out[i][j] += m[i][k] * n[k][j]
			}
		}
	}
	return out
}

func (m mat) inverse() (out mat) {
	cofactor := func(i, j int) float64 {
		a, b, c, d := (i+1)%3, (i+2)%3, (j+1)%3, (j+2)%3
		return m[a][c]*m[b][d] - m[a][d]*m[b][c]
	}
	det := 0.0
	for j := range 3 {
		det += m[0][j] * cofactor(0, j)
	}
	for i := range 3 {
		for j := range 3 {
			out[j][i] = cofactor(i, j) / det
		}
	}
	return out
}

// linear is the transfer function of IEC 61966-2-1.
func linear(v float64) float64 {
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

func iccXYZ(v vec) []byte {
	var b bytes.Buffer
	b.WriteString("XYZ \x00\x00\x00\x00")
	for _, c := range v {
		binary.Write(&b, binary.BigEndian, int32(math.Round(c*65536)))
	}
	return b.Bytes()
}

func iccCurve() []byte {
	const points = 1024
	var b bytes.Buffer
	b.WriteString("curv\x00\x00\x00\x00")
	binary.Write(&b, binary.BigEndian, uint32(points))
	for i := range points {
		binary.Write(&b, binary.BigEndian, uint16(math.Round(linear(float64(i)/(points-1))*65535)))
	}
	return b.Bytes()
}

// iccDescription is a textDescriptionType with its ASCII part only (ICC.1, 6.5.17).
func iccDescription(s string) []byte {
	var b bytes.Buffer
	b.WriteString("desc\x00\x00\x00\x00")
	binary.Write(&b, binary.BigEndian, uint32(len(s)+1))
	b.WriteString(s)
	b.Write(make([]byte, 1+4+4+2+1+67))
	return b.Bytes()
}
