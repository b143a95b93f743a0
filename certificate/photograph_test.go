package certificate_test

import (
	"backleaf/record/toolcheck"
	"bytes"
	"image"
	"image/color"
	"strings"
	"testing"
)

// A photograph taken with the camera on its side stands upright on the page,
// in its own proportions: Exif orientation 6 (CIPA DC-008).
func TestPhotographStandsUpright(t *testing.T) {
	lying := jpegFile(t, shore(400, 300))
	tag := []byte("Exif\x00\x00MM\x00*\x00\x00\x00\x08\x00\x01\x01\x12\x00\x03\x00\x00\x00\x01\x00\x06\x00\x00\x00\x00\x00\x00")
	turned := append([]byte{0xff, 0xd8, 0xff, 0xe1, 0, byte(len(tag) + 2)}, append(tag, lying[2:]...)...)
	for name, c := range map[string]struct {
		file   []byte
		aspect float64
	}{"lying": {lying, 4. / 3}, "turned": {turned, 3. / 4}} {
		k := finished(t)
		k.photo(c.file)
		b := ink(t, save(t, name+".pdf", drawn(t, k.input(nil))), 1, 0)
		if got := (b.XMax - b.XMin) / (b.YMax - b.YMin); got < c.aspect*0.97 || got > c.aspect*1.03 {
			t.Errorf("%s: %.0f × %.0f points on the page", name, b.XMax-b.XMin, b.YMax-b.YMin)
		}
	}
}

// Grey, palette and transparency can be drawn, and a large picture is scaled
// down: the file holds what 300 dots to the inch can show, no more.
func TestKindsOfPhotograph(t *testing.T) {
	grey := image.NewGray(image.Rect(0, 0, 90, 60))
	palette := image.NewPaletted(image.Rect(0, 0, 90, 60), color.Palette{color.Black, color.RGBA{200, 40, 40, 255}})
	clear := image.NewNRGBA(image.Rect(0, 0, 90, 60))
	for name, file := range map[string][]byte{"grey.jpg": jpegFile(t, grey), "grey.png": pngFile(t, grey), "palette": pngFile(t, palette), "clear": pngFile(t, clear)} {
		k := finished(t)
		k.photo(file)
		if pdf := drawn(t, k.input(nil)); !bytes.Contains(pdf, []byte("/DCTDecode")) {
			t.Errorf("%s: no picture in the file", name)
		}
	}
	k := finished(t)
	k.photo(jpegFile(t, shore(3000, 2000)))
	list := strings.Split(strings.TrimSpace(toolcheck.Run(t, "pdfimages", "-list", save(t, "c.pdf", drawn(t, k.input(nil))))), "\n")
	fields := strings.Fields(list[len(list)-1])
	if dpi := fields[12]; len(list) != 3 || dpi < "295" || dpi > "305" {
		t.Errorf("the picture in the file: %v", list)
	}
}
