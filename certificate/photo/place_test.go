package photo_test

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"fmt"
	"image"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"backleaf/certificate/photo"
	"backleaf/record/toolcheck"
)

func TestPlacesByAnotherReader(t *testing.T) {
	toolcheck.Long(t)
	toolcheck.Require(t, "exiftool")
	for _, c := range []struct {
		name, picture string
		write         []string
		places        []photo.Place
		kept          string // what must still be there
	}{
		{"nothing", "jpg", nil, nil, ""},
		{"no place", "jpg", []string{"-Artist=Ada Example", "-Orientation#=6", "-XMP:Title=Evening", "-IPTC:Keywords=linen"}, nil, "Ada Example"},
		{"a clock without satellites", "jpg", []string{"-GPSVersionID=2 3 0 0", "-GPSDateStamp=2026:05:02"}, nil, ""},
		{"Exif", "jpg", []string{"-GPSLatitude=47.5", "-GPSLatitudeRef=N", "-GPSLongitude=8.25", "-GPSLongitudeRef=E", "-Artist=Ada Example", "-Orientation#=6", "-DateTimeOriginal=2026:05:02 14:05:00"},
			[]photo.Place{photo.InExif}, "Ada Example"},
		{"Exif of big-endian cameras", "jpg", []string{"-ExifByteOrder=MM", "-GPSLatitude=47.5", "-GPSLongitude=8.25", "-GPSAreaInformation=a bridge", "-Artist=Ada Example"}, []photo.Place{photo.InExif}, "Ada Example"},
		{"a destination", "jpg", []string{"-GPSDestLatitude=47.5", "-GPSDestLongitude=8.25"}, []photo.Place{photo.InExif}, ""},
		{"XMP", "jpg", []string{"-XMP:GPSLatitude=47.5", "-XMP:GPSLongitude=8.25", "-EXIF:Artist=Ada Example"}, []photo.Place{photo.InNote}, "Ada Example"},
		{"a city in XMP", "jpg", []string{"-XMP-photoshop:City=Avon"}, []photo.Place{photo.InNote}, ""},
		{"a location in XMP", "jpg", []string{"-XMP-iptcExt:LocationCreatedCity=Avon"}, []photo.Place{photo.InNote}, ""},
		{"IPTC", "jpg", []string{"-IPTC:City=Avon", "-EXIF:Artist=Ada Example"}, []photo.Place{photo.InNote}, "Ada Example"},
		{"both", "jpg", []string{"-EXIF:GPSLatitude=47.5", "-XMP:GPSLongitude=8.25"}, []photo.Place{photo.InExif, photo.InNote}, ""},
		{"PNG, Exif", "png", []string{"-EXIF:GPSLatitude=47.5", "-EXIF:GPSLongitude=8.25", "-EXIF:Artist=Ada Example"}, []photo.Place{photo.InExif}, "Ada Example"},
		{"PNG, XMP", "png", []string{"-XMP:GPSLatitude=47.5", "-EXIF:Artist=Ada Example"}, []photo.Place{photo.InNote}, "Ada Example"},
		{"PNG, IPTC packed", "png", []string{"-api", "Compress=1", "-IPTC:City=Avon"}, []photo.Place{photo.InNote}, ""},
	} {
		file := jpegOf(t, corners(48, 32))
		if c.picture == "png" {
			file = pngOf(t, corners(48, 32))
		}
		path := filepath.Join(t.TempDir(), "a."+c.picture)
		if err := os.WriteFile(path, file, 0o600); err != nil {
			t.Fatal(err)
		}
		if c.write != nil {
			toolcheck.Run(t, "exiftool", append(c.write, "-q", "-overwrite_original", path)...)
		}
		file, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		checkPlaces(t, c.name, file, c.places, c.kept)
	}
}

// checkPlaces finds the places and takes them out; another reader finds none
// after that, and the picture is the same.
func checkPlaces(t *testing.T, name string, file []byte, places []photo.Place, kept string) {
	t.Helper()
	a, err := photo.Look(file)
	if err != nil || !slices.Equal(a.Places, places) {
		t.Errorf("%s: %v, %v", name, a.Places, err)
	}
	without, err := photo.WithoutPlaces(file)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	if places == nil {
		if !bytes.Equal(without, file) {
			t.Errorf("%s: there was nothing to take out", name)
		}
		return
	}
	b, err := photo.Look(without)
	if err != nil || len(b.Places) != 0 || b.Width != a.Width {
		t.Errorf("%s: still %+v, %v", name, b, err)
	}
	path := filepath.Join(t.TempDir(), "a")
	if err := os.WriteFile(path, without, 0o600); err != nil {
		t.Fatal(err)
	}
	said := toolcheck.Run(t, "exiftool", "-a", "-G1", "-s", "-ee3", "-U", path)
	for line := range strings.Lines(said) {
		group, rest, _ := strings.Cut(line, "]")
		tag, _, _ := strings.Cut(strings.TrimSpace(rest), " ")
		for _, w := range []string{"GPS", "City", "Location", "Latitude", "Longitude"} {
			if strings.Contains(group+tag, w) {
				t.Errorf("%s: %s", name, line)
			}
		}
	}
	if strings.Contains(said, "Warning") || !strings.Contains(said, kept) {
		t.Errorf("%s: another reader says\n%s", name, said)
	}
	if !bytes.Equal(pixels(t, file), pixels(t, without)) {
		t.Errorf("%s: the picture is another", name)
	}
}

func pixels(t *testing.T, file []byte) []byte {
	t.Helper()
	img, _, err := image.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	out := fmt.Append(nil, img.Bounds())
	for y := range img.Bounds().Dy() {
		for x := range img.Bounds().Dx() {
			r, g, b, a := img.At(x, y).RGBA()
			out = fmt.Append(out, r, g, b, a)
		}
	}
	return out
}

// exifWithPlace is an Exif structure with an orientation and a latitude.
func exifWithPlace() []byte {
	order := binary.BigEndian
	b := order.AppendUint32([]byte("MM\x00*"), 8)
	entry := func(tag, kind uint16, count, value uint32) {
		b = order.AppendUint32(order.AppendUint32(order.AppendUint16(order.AppendUint16(b, tag), kind), count), value)
	}
	b = order.AppendUint16(b, 2)
	entry(0x0112, 3, 1, 6<<16)
	entry(0x8825, 4, 1, 38)
	b = order.AppendUint32(b, 0)
	b = order.AppendUint16(b, 1) // at 38
	entry(2, 5, 3, 56)
	b = order.AppendUint32(b, 0)
	return append(b, "47 degrees 30 minutes 00"...) // at 56: three pairs of four bytes
}

// What no other program at hand writes.
func TestHiddenPlaces(t *testing.T) {
	plainJPEG, plainPNG := jpegOf(t, corners(48, 32)), pngOf(t, corners(48, 32))
	telephone := withSegment(plainJPEG, 0xe1, append([]byte("Exif\x00\x00"), exifWithPlace()...))
	long := []byte("<x exif:GPSLatitude='47,30N'/>")
	extended := func(part []byte, offset int) []byte {
		b := append([]byte("http://ns.adobe.com/xmp/extension/\x00"), bytes.Repeat([]byte("0"), 32)...)
		b = binary.BigEndian.AppendUint32(b, uint32(len(long)))
		return append(binary.BigEndian.AppendUint32(b, uint32(offset)), part...)
	}
	digits := fmt.Sprintf("Raw profile type exif\x00\nexif\n%8d\n%x\n", 6+len(exifWithPlace()), append([]byte("Exif\x00\x00"), exifWithPlace()...))
	key, text, _ := strings.Cut(digits, "\x00")
	for name, c := range map[string]struct {
		file   []byte
		places []photo.Place
	}{
		"Exif":                   {telephone, []photo.Place{photo.InExif}},
		"behind the picture":     {append(bytes.Clone(plainJPEG), telephone...), []photo.Place{photo.InBehind}},
		"in a film behind it":    {append(bytes.Clone(plainJPEG), "\x00\x00\x00\x20ftypmp42 \xa9xyz+47.5+008.25/"...), []photo.Place{photo.InBehind}},
		"harmless, behind it":    {append(bytes.Clone(plainJPEG), 0, 0, 0), nil},
		"cut in two":             {withSegment(withSegment(plainJPEG, 0xe1, extended(long[12:], 12)), 0xe1, extended(long[:12], 0)), []photo.Place{photo.InNote}},
		"a comment":              {withSegment(plainJPEG, 0xfe, []byte(`{"latitude": 47.5}`)), []photo.Place{photo.InNote}},
		"two bytes a character":  {withSegment(plainJPEG, 0xe1, []byte("x\x00G\x00P\x00S\x00L\x00a\x00t\x00i\x00t\x00u\x00d\x00e\x00")), []photo.Place{photo.InNote}},
		"Exif in another note":   {withSegment(plainJPEG, 0xeb, append([]byte("JP\x00\x01Exif\x00\x00"), exifWithPlace()...)), []photo.Place{photo.InNote}},
		"PNG":                    {withChunk(plainPNG, "eXIf", exifWithPlace()), []photo.Place{photo.InExif}},
		"PNG, digits":            {withChunk(plainPNG, "tEXt", []byte(digits)), []photo.Place{photo.InNote}},
		"PNG, digits, packed":    {withChunk(plainPNG, "zTXt", append([]byte(key+"\x00\x00"), packed(text)...)), []photo.Place{photo.InNote}},
		"PNG, XMP, packed":       {withChunk(plainPNG, "iTXt", append([]byte("XML:com.adobe.xmp\x00\x01\x00\x00\x00"), packed(string(long))...)), []photo.Place{photo.InNote}},
		"PNG, a keyword":         {withChunk(plainPNG, "tEXt", []byte("exif:GPSLatitude\x0047/1")), []photo.Place{photo.InNote}},
		"a title that is no map": {withSegment(plainJPEG, 0xfe, []byte("Platitudes, with a location in mind, from the city")), nil},
	} {
		checkPlaces(t, name, c.file, c.places, "")
	}
	// What leads to the place goes, what else Exif says stays.
	without, err := photo.WithoutPlaces(telephone)
	if err != nil || bytes.Contains(without, []byte("degrees")) || len(without) != len(telephone) {
		t.Errorf("%v, %d bytes of %d", err, len(without), len(telephone))
	}
	if w, h, err := photo.Size(without); err != nil || w != 32 || h != 48 {
		t.Errorf("turned: %d × %d, %v", w, h, err)
	}
}

func packed(s string) []byte {
	var b bytes.Buffer
	w := zlib.NewWriter(&b)
	w.Write([]byte(s))
	w.Close()
	return b.Bytes()
}

// Thousands of entries that lead to thousands of entries, within each other.
func TestPlacesWithoutEnd(t *testing.T) {
	order := binary.LittleEndian
	confusing := func(n int) []byte {
		b := order.AppendUint32([]byte("Exif\x00\x00II*\x00"), 8)
		b = order.AppendUint16(b, uint16(n))
		for range n {
			b = order.AppendUint16(order.AppendUint16(b, 0x8825), 4)
			b = order.AppendUint32(order.AppendUint32(b, 1), 8)
		}
		return order.AppendUint32(b, 8)
	}
	note := bytes.Repeat(confusing(10), 400)
	file := withSegment(withSegment(jpegOf(t, corners(48, 32)), 0xe1, confusing(4900)), 0xeb, note)
	file = append(file, bytes.Repeat(confusing(60000), 20)...)
	began := time.Now()
	a, err := photo.Look(file)
	without, err2 := photo.WithoutPlaces(file)
	if err != nil || err2 != nil || len(a.Places) != 3 {
		t.Fatalf("%+v, %v, %v", a, err, err2)
	}
	if a, err = photo.Look(without); err != nil || len(a.Places) != 0 {
		t.Errorf("still %+v, %v", a, err)
	}
	if took := time.Since(began); took > 5*time.Second {
		t.Errorf("it took %v", took)
	}
}

// Whatever Exif and notes are made of: no panic, the picture stays, and what was
// found is gone.
func FuzzPlaces(f *testing.F) {
	f.Add(exifWithPlace(), []byte("exif:GPSLatitude"))
	f.Add(exifWithPlace()[:60], []byte("Photoshop 3.0\x008BIM\x04\x04\x00\x00\x00\x00\x00\x07\x1c\x02\x5a\x00\x02ab"))
	f.Add([]byte("II*\x00\x08\x00\x00\x00\x02\x00\x25\x88\x04\x00\x01\x00\x00\x00\x08\x00\x00\x00\x25\x88\x04\x00\x01\x00\x00\x00\x0a\x00\x00\x00"), []byte("Exif\x00\x00"))
	jpg, png := jpegOf(f, corners(16, 8)), pngOf(f, corners(16, 8))
	f.Fuzz(func(t *testing.T, exif, note []byte) {
		if len(exif) > 60000 || len(note) > 60000 {
			return
		}
		for _, file := range [][]byte{
			append(withSegment(withSegment(jpg, 0xed, note), 0xe1, append([]byte("Exif\x00\x00"), exif...)), note...),
			withChunk(withChunk(png, "zTXt", note), "eXIf", exif),
		} {
			without, err := photo.WithoutPlaces(file)
			if err != nil {
				t.Fatal(err)
			}
			a, err := photo.Look(without)
			if err != nil || len(a.Places) > 0 || a.Width*a.Height != 16*8 {
				t.Fatalf("%+v, %v", a, err)
			}
		}
	})
}
