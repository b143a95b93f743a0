package photo_test

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"hash/crc32"
	"image"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"backleaf/certificate/photo"
	"backleaf/record/toolcheck"
)

// sized gives a PNG header other sides.
func sized(file []byte, w, h uint32) []byte {
	file = bytes.Clone(file)
	binary.BigEndian.PutUint32(file[16:], w)
	binary.BigEndian.PutUint32(file[20:], h)
	binary.BigEndian.PutUint32(file[29:], crc32.ChecksumIEEE(file[12:29]))
	return file
}

// sizedJPEG does so with the frame of a JPEG, which it may make progressive.
func sizedJPEG(file []byte, w, h uint16, progressive bool) []byte {
	file = bytes.Clone(file)
	at := bytes.Index(file, []byte{0xff, 0xc0})
	if progressive {
		file[at+1] = 0xc2
	}
	binary.BigEndian.PutUint16(file[at+5:], h)
	binary.BigEndian.PutUint16(file[at+7:], w)
	return file
}

// scans repeats the one scan of a JPEG.
func scans(file []byte, n int) []byte {
	at := bytes.Index(file, []byte{0xff, 0xda})
	end := len(file) - 2
	return append(append(bytes.Clone(file[:at]), bytes.Repeat(file[at:end], n)...), file[end:]...)
}

func zeros(mb int) []byte {
	var b bytes.Buffer
	w := zlib.NewWriter(&b)
	for range mb {
		w.Write(make([]byte, 1<<20))
	}
	w.Close()
	return b.Bytes()
}

func greedy(t *testing.T) map[string][]byte {
	smallJPEG, smallPNG := jpegOf(t, corners(16, 16)), pngOf(t, corners(16, 16))
	notes := smallPNG
	flood := append([]byte("a\x00\x00"), zeros(200)...)
	for range 100 {
		notes = withChunk(notes, "zTXt", flood)
	}
	return map[string][]byte{
		"a PNG of 50 000 × 50 000":               sized(smallPNG, 50000, 50000),
		"a PNG of two thousand million each way": sized(smallPNG, 1<<31-1, 1<<31-1),
		"a JPEG of 50 000 × 50 000":              sizedJPEG(smallJPEG, 50000, 50000, false),
		"a JPEG that is large once progressive":  sizedJPEG(smallJPEG, 8000, 8000, true),
		"a JPEG just small enough":               sizedJPEG(smallJPEG, 8000, 4000, true),
		"scans without end":                      scans(smallJPEG, 10000),
		"segments without end":                   append([]byte("\xff\xd8"), bytes.Repeat([]byte("\xff\xe5\x00\x02"), 10<<20)...),
		"notes without end":                      notes,
		"a large note":                           withChunk(smallPNG, "tEXt", bytes.Repeat([]byte("a"), 60<<20)),
		"a profile that is a flood":              withChunk(smallPNG, "iCCP", append([]byte("p\x00\x00"), zeros(200)...)),
		"the largest JPEG":                       jpegOf(t, image.NewYCbCr(image.Rect(0, 0, 12400, 12400), image.YCbCrSubsampleRatio420)),
		"the largest PNG":                        pngOf(t, image.NewNRGBA(image.Rect(0, 0, 7700, 7700))),
		"zeros":                                  make([]byte, photo.MaxBytes),
	}
}

// No photograph costs more than these to look at or to print.
func TestBounds(t *testing.T) {
	const mostMB, most = 300, 5 * time.Second
	if toolcheck.InChild(t, func(path string) {
		path, print := strings.CutSuffix(path, " print")
		file, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if print {
			_, err = photo.Print(file, 2500, 2500)
		} else {
			_, err = photo.Look(file)
		}
		if strings.HasPrefix(filepath.Base(path), "good") != (err == nil) {
			t.Error(err)
		}
	}) {
		return
	}
	toolcheck.Long(t)
	for name, file := range greedy(t) {
		path := filepath.Join(t.TempDir(), "bad")
		if strings.HasPrefix(name, "the largest") || strings.Contains(name, "note") || strings.Contains(name, "profile") {
			path = filepath.Join(t.TempDir(), "good")
		}
		if err := os.WriteFile(path, file, 0o600); err != nil {
			t.Fatal(err)
		}
		for _, what := range []string{"", " print"} {
			mb, took := toolcheck.Cost(t, path+what)
			t.Logf("%-45s %3d MB %5.2f s", name+what, mb, took.Seconds())
			if mb > mostMB || took > most {
				t.Errorf("%s: %d MB, %v", name+what, mb, took)
			}
		}
	}
}

// Cut short anywhere, it is no photograph.
func TestCutShort(t *testing.T) {
	for _, file := range [][]byte{jpegOf(t, corners(48, 32)), pngOf(t, corners(48, 32))} {
		if _, err := photo.Look(file); err != nil {
			t.Fatal(err)
		}
		for n := range len(file) {
			if _, err := photo.Look(file[:n]); err == nil {
				t.Fatalf("%d of %d bytes are a photograph", n, len(file))
			}
		}
	}
}

func TestLook(t *testing.T) {
	const folder = "/usr/share/color/icc/ghostscript/"
	a, err := photo.Look(withSegment(jpegOf(t, corners(48, 32)), 0xe1, append([]byte("Exif\x00\x00"), exif(binary.BigEndian, 6)...)))
	if err != nil || a.Type != "jpeg" || a.Width != 32 || a.Height != 48 || a.Profile != "" || a.Converted {
		t.Errorf("%+v, %v", a, err)
	}
	toolcheck.Require(t, folder+"a98.icc", folder+"default_cmyk.icc")
	for name, want := range map[string]struct {
		name      string
		converted bool
	}{"a98": {"A98", true}, "default_cmyk": {"Artifex", false}} {
		icc, err := os.ReadFile(folder + name + ".icc")
		if err != nil {
			t.Fatal(err)
		}
		file := jpegOf(t, corners(48, 32))
		for i := 0; i*60000 < len(icc); i++ { // the last part goes in first, and so stands last
			n := (len(icc) + 59999) / 60000
			part := icc[(n-1-i)*60000 : min(len(icc), (n-i)*60000)]
			file = withSegment(file, 0xe2, append([]byte("ICC_PROFILE\x00"+string([]byte{byte(n - i), byte(n)})), part...))
		}
		a, err := photo.Look(file)
		if err != nil || !strings.Contains(a.Profile, want.name) || a.Converted != want.converted {
			t.Errorf("%s: %+v, %v", name, a, err)
		}
	}
}
