package paper

import (
	"encoding/binary"
	"math"
	"testing"
)

// The header of ICC.1:2001-04, 6.1, and the colorants of sRGB under D50 as
// IEC 61966-2-1 and the ICC's own sRGB profiles give them (from memory, to
// four places).
func TestProfile(t *testing.T) {
	p := sRGBProfile()
	u32 := func(at int) int { return int(binary.BigEndian.Uint32(p[at:])) }
	if u32(0) != len(p) || p[8] != 2 || string(p[12:24]) != "mntrRGB XYZ " || string(p[36:40]) != "acsp" {
		t.Fatalf("header % x", p[:128])
	}
	for i, want := range whiteD50 {
		if got := fixed16(p[68+4*i:]); math.Abs(got-want) > 1e-4 {
			t.Errorf("illuminant %d: %.4f", i, got)
		}
	}
	want := map[string]vec{
		"rXYZ": {0.4361, 0.2225, 0.0139}, "gXYZ": {0.3851, 0.7169, 0.0971}, "bXYZ": {0.1431, 0.0606, 0.7141},
		"wtpt": whiteD50,
	}
	var sum vec
	seen := map[string]bool{}
	for i := range u32(128) {
		at := 132 + 12*i
		name, offset, size := string(p[at:at+4]), u32(at+4), u32(at+8)
		seen[name] = true
		if offset%4 != 0 || offset+size > len(p) {
			t.Fatalf("%s lies at %d, %d bytes", name, offset, size)
		}
		for j, w := range want[name] {
			if want[name] == (vec{}) {
				break // no colorant
			}
			got := fixed16(p[offset+8+4*j:])
			if math.Abs(got-w) > 2e-4 {
				t.Errorf("%s %d: %.4f, want %.4f", name, j, got, w)
			}
			if name != "wtpt" {
				sum[j] += got
			}
		}
		if name == "gTRC" {
			n := u32(offset + 8)
			if p[offset+12] != 0 || p[offset+13] != 0 || binary.BigEndian.Uint16(p[offset+12+2*(n-1):]) != 65535 {
				t.Error("the curve does not run from 0 to 1")
			}
		}
	}
	for _, tag := range []string{"desc", "cprt", "wtpt", "rXYZ", "gXYZ", "bXYZ", "rTRC", "gTRC", "bTRC"} {
		if !seen[tag] {
			t.Errorf("tag %s is missing", tag)
		}
	}
	for i := range sum { // red, green and blue together are white
		if math.Abs(sum[i]-whiteD50[i]) > 1e-4 {
			t.Errorf("sum of colorants %d: %.5f", i, sum[i])
		}
	}
	// IEC 61966-2-1: a signal of 0.5 is 0.2140 of the light.
	if v := linear(0.5); math.Abs(v-0.2140) > 5e-5 {
		t.Errorf("linear(0.5) = %.5f", v)
	}
}

func fixed16(b []byte) float64 { return float64(int32(binary.BigEndian.Uint32(b))) / 65536 }
