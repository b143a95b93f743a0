package photo

import (
	"encoding/binary"
	"fmt"
)

// MaxBytes is the largest file that is read.
const MaxBytes = 64 << 20

// Bounds of what decoding a picture may take: of memory, with the file itself,
// and of scans, each of which may touch every pixel. Cameras write one, programs
// for the web some ten.
const (
	maxMemory = 230 << 20
	maxScans  = 100
)

// affordable refuses a picture that takes too much to decode, before it is.
func (f file) affordable(size int) error {
	memory, scans := int64(size), 0
	for _, p := range f.parts {
		switch {
		case f.png && p.kind == "IHDR":
			memory += pngMemory(p.body)
		case !f.png && p.kind >= "\xc0" && p.kind <= "\xc2":
			memory += jpegMemory(p)
		case !f.png && p.kind == startOfScan:
			scans++
		}
		if memory > maxMemory {
			return fmt.Errorf("it has too many pixels: to decode it would take more than %d MB of memory", maxMemory>>20)
		}
	}
	if scans > maxScans {
		return fmt.Errorf("it has more than %d scans", maxScans)
	}
	return nil
}

// jpegMemory reckons what the decoder of the standard library takes for a frame
// (ITU-T T.81, B.2.2): a byte for each sample, four more while the picture is
// progressive, four for each pixel if its colours are not those of video.
func jpegMemory(p part) int64 {
	b := p.body
	if len(b) < 6 || len(b) < 6+3*int(b[5]) {
		return 0 // it will be refused
	}
	h, w, n := int64(binary.BigEndian.Uint16(b[1:])), int64(binary.BigEndian.Uint16(b[3:])), int(b[5])
	var across, down, samples int64 = 1, 1, 0
	for i := range n {
		factors := int64(b[6+3*i+1])
		across, down = max(across, factors>>4), max(down, factors&15)
		samples += (factors >> 4) * (factors & 15)
	}
	blocks := (w + 8*across - 1) / (8 * across) * ((h + 8*down - 1) / (8 * down))
	memory := blocks * 64 * samples
	if p.kind == "\xc2" {
		memory *= 5
	}
	if n == 4 || b[6] == 'R' {
		memory += 4 * w * h
	}
	return memory
}

// pngMemory reckons the same for an image header (W3C PNG, 11.2.1): four or
// eight bytes a pixel, twice if it is interlaced.
func pngMemory(b []byte) int64 {
	if len(b) < 13 {
		return 0
	}
	w, h := int64(binary.BigEndian.Uint32(b)), int64(binary.BigEndian.Uint32(b[4:]))
	if w > 1<<20 || h > 1<<20 {
		return 1 << 40
	}
	memory := 4 * w * h
	if b[8] == 16 {
		memory *= 2
	}
	if b[12] != 0 {
		memory *= 2
	}
	return memory
}
