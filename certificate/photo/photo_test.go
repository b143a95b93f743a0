package photo_test

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"backleaf/certificate/photo"
	"backleaf/record/toolcheck"
)

// corners is a picture whose four corners differ.
func corners(w, h int) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			c := color.RGBA{200, 30, 30, 255} // top left
			switch {
			case x >= w/2 && y < h/2:
				c = color.RGBA{30, 160, 30, 255}
			case x < w/2 && y >= h/2:
				c = color.RGBA{30, 30, 200, 255}
			case x >= w/2:
				c = color.RGBA{220, 220, 40, 255}
			}
			img.SetRGBA(x, y, c)
		}
	}
	return img
}

func jpegOf(t testing.TB, img image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, &jpeg.Options{Quality: 100}); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func pngOf(t testing.TB, img image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// exif is an Exif structure with one tag, in either byte order.
func exif(order binary.AppendByteOrder, orientation uint16) []byte {
	head := []byte("II*\x00")
	if order == binary.AppendByteOrder(binary.BigEndian) {
		head = []byte("MM\x00*")
	}
	b := order.AppendUint32(head, 8)
	b = order.AppendUint16(b, 1)
	b = order.AppendUint16(b, 0x0112)
	b = order.AppendUint16(b, 3)
	b = order.AppendUint32(b, 1)
	b = order.AppendUint16(b, orientation)
	b = order.AppendUint16(b, 0)
	return order.AppendUint32(b, 0)
}

// withSegment puts a segment right after the start of a JPEG file.
func withSegment(file []byte, marker byte, body []byte) []byte {
	out := append([]byte{}, file[:2]...)
	out = append(out, 0xff, marker)
	out = binary.BigEndian.AppendUint16(out, uint16(len(body)+2))
	return append(append(out, body...), file[2:]...)
}

// withChunk puts a chunk after the header of a PNG file.
func withChunk(file []byte, kind string, body []byte) []byte {
	const header = 8 + 25
	out := append([]byte{}, file[:header]...)
	out = binary.BigEndian.AppendUint32(out, uint32(len(body)))
	named := append([]byte(kind), body...)
	out = append(out, named...)
	out = binary.BigEndian.AppendUint32(out, crc32.ChecksumIEEE(named))
	return append(out, file[header:]...)
}

func printed(t testing.TB, file []byte, w, h int) *image.RGBA {
	t.Helper()
	img, err := photo.Print(file, w, h)
	if err != nil {
		t.Fatal(err)
	}
	return img.(*image.RGBA)
}

// imageMagick is called by another name on each system.
func imageMagick(t testing.TB) string {
	return toolcheck.OneOf(t, "magick", "convert-im6.q16", "convert")
}

// convert runs another program on the file and reads the PNG that it writes.
func convert(t testing.TB, file []byte, args ...string) image.Image {
	t.Helper()
	dir := t.TempDir()
	in, out := filepath.Join(dir, "in"), filepath.Join(dir, "out.png")
	if err := os.WriteFile(in, file, 0o600); err != nil {
		t.Fatal(err)
	}
	if msg, err := exec.Command(imageMagick(t), append(append([]string{in}, args...), "-strip", "-depth", "8", "PNG24:"+out)...).CombinedOutput(); err != nil {
		t.Fatalf("convert: %v\n%s", err, msg)
	}
	f, err := os.Open(out)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	img, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	return img
}

// near compares two pictures in the middle of each square of 8 pixels: at the
// edges of colours readers of JPEG differ.
func near(t testing.TB, got, want image.Image, within int) {
	t.Helper()
	if got.Bounds().Size() != want.Bounds().Size() {
		t.Fatalf("size %v, want %v", got.Bounds().Size(), want.Bounds().Size())
	}
	for y := 3; y < got.Bounds().Dy(); y += 8 {
		for x := 3; x < got.Bounds().Dx(); x += 8 {
			r, g, b, _ := got.At(got.Bounds().Min.X+x, got.Bounds().Min.Y+y).RGBA()
			r2, g2, b2, _ := want.At(want.Bounds().Min.X+x, want.Bounds().Min.Y+y).RGBA()
			for _, d := range []int{int(r>>8) - int(r2>>8), int(g>>8) - int(g2>>8), int(b>>8) - int(b2>>8)} {
				if d > within || d < -within {
					t.Fatalf("at %d, %d: %d %d %d, want %d %d %d", x, y, r>>8, g>>8, b>>8, r2>>8, g2>>8, b2>>8)
				}
			}
		}
	}
}

// The eight orientations of CIPA DC-008, in JPEG and PNG and both byte orders,
// come out as another program turns them.
func TestOrientation(t *testing.T) {
	plainJPEG, plainPNG := jpegOf(t, corners(48, 32)), pngOf(t, corners(48, 32))
	for o := uint16(1); o <= 8; o++ {
		for _, order := range []binary.AppendByteOrder{binary.LittleEndian, binary.BigEndian} {
			file := withSegment(plainJPEG, 0xe1, append([]byte("Exif\x00\x00"), exif(order, o)...))
			want := convert(t, file, "-auto-orient")
			near(t, printed(t, file, 1000, 1000), want, 3)
			near(t, printed(t, withChunk(plainPNG, "eXIf", exif(order, o)), 1000, 1000), want, 3)
			w, h, err := photo.Size(file)
			if err != nil || w != want.Bounds().Dx() || h != want.Bounds().Dy() {
				t.Errorf("orientation %d: size %d × %d, %v", o, w, h, err)
			}
		}
	}
	for _, o := range []uint16{0, 9, 65535} { // no such orientation: as it is
		near(t, printed(t, withSegment(plainJPEG, 0xe1, append([]byte("Exif\x00\x00"), exif(binary.BigEndian, o)...)), 99, 99), corners(48, 32), 4)
	}
}

// patches is a picture of flat patches, so that scaling and sampling do not
// blur what is compared.
func patches() *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, 6*8, 6*8))
	for y := range 48 {
		for x := range 48 {
			i, j := x/8, y/8
			img.SetRGBA(x, y, color.RGBA{uint8(40 + 30*i), uint8(210 - 25*j), uint8(60 + 14*(i+j)), 255})
		}
	}
	return img
}

// Embedded profiles of matrix and curves lead to the same sRGB values as in an
// independent colour management system.
func TestColourByAnotherProgram(t *testing.T) {
	const folder = "/usr/share/color/icc/ghostscript/"
	grey := image.NewGray(image.Rect(0, 0, 48, 48))
	for i := range grey.Pix {
		grey.Pix[i] = uint8(20 + 40*(i%48/8))
	}
	for name, img := range map[string]image.Image{"a98": patches(), "rommrgb": patches(), "srgb": patches(), "default_rgb": patches(), "ps_gray": grey, "default_gray": grey} {
		t.Run(name, func(t *testing.T) {
			toolcheck.Require(t, folder+name+".icc", folder+"srgb.icc")
			profile, err := os.ReadFile(folder + name + ".icc")
			if err != nil {
				t.Fatal(err)
			}
			file := withSegment(jpegOf(t, img), 0xe2, append([]byte("ICC_PROFILE\x00\x01\x01"), profile...))
			want := convert(t, file, "-intent", "relative", "-profile", folder+"srgb.icc")
			near(t, printed(t, file, 1000, 1000), want, 3)
		})
	}
}

// In PNG the profile is deflated.
func TestColourInPNG(t *testing.T) {
	const folder = "/usr/share/color/icc/ghostscript/"
	toolcheck.Require(t, folder+"a98.icc", folder+"srgb.icc")
	dir := t.TempDir()
	in, tagged := filepath.Join(dir, "in.png"), filepath.Join(dir, "tagged.png")
	if err := os.WriteFile(in, pngOf(t, patches()), 0o600); err != nil {
		t.Fatal(err)
	}
	if msg, err := exec.Command(imageMagick(t), in, "-set", "colorspace", "sRGB", "-profile", folder+"a98.icc", tagged).CombinedOutput(); err != nil {
		t.Fatalf("convert: %v\n%s", err, msg)
	}
	file, err := os.ReadFile(tagged)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(file, []byte("iCCP")) {
		t.Fatal("the other program wrote no profile")
	}
	near(t, printed(t, file, 1000, 1000), convert(t, file, "-intent", "relative", "-profile", folder+"srgb.icc"), 3)
}

// Grey, CMYK, palettes, 16 bits and transparency: all come out as colours on
// white.
func TestKindsOfPicture(t *testing.T) {
	grey := image.NewGray(image.Rect(0, 0, 20, 20))
	deep := image.NewNRGBA64(image.Rect(0, 0, 20, 20))
	clear := image.NewNRGBA(image.Rect(0, 0, 20, 20))
	for i := range grey.Pix {
		grey.Pix[i] = 120
	}
	for y := range 20 {
		for x := range 20 {
			deep.SetNRGBA64(x, y, color.NRGBA64{0x7878, 0x7878, 0x7878, 0xffff})
			clear.SetNRGBA(x, y, color.NRGBA{255, 0, 0, 128})
		}
	}
	for _, c := range []struct {
		name string
		file []byte
		want color.RGBA
	}{
		{"grey JPEG", jpegOf(t, grey), color.RGBA{120, 120, 120, 255}},
		{"grey PNG", pngOf(t, grey), color.RGBA{120, 120, 120, 255}},
		{"16 bits", pngOf(t, deep), color.RGBA{120, 120, 120, 255}},
		{"half transparent red on white", pngOf(t, clear), color.RGBA{255, 127, 127, 255}},
		{"nothing but transparent", pngOf(t, image.NewNRGBA(image.Rect(0, 0, 20, 20))), color.RGBA{255, 255, 255, 255}},
	} {
		img := printed(t, c.file, 10, 10)
		if got := img.RGBAAt(5, 5); abs(int(got.R)-int(c.want.R)) > 2 || abs(int(got.G)-int(c.want.G)) > 2 || got.A != 255 {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
		if img.Bounds().Dx() != 10 {
			t.Errorf("%s: %v, not scaled down", c.name, img.Bounds())
		}
	}
}

// A JPEG in CMYK, written by another program, keeps its colours roughly: it
// carries no profile, so there is no exact answer.
func TestCMYK(t *testing.T) {
	dir := t.TempDir()
	in, out := filepath.Join(dir, "in.png"), filepath.Join(dir, "out.jpg")
	if err := os.WriteFile(in, pngOf(t, corners(40, 40)), 0o600); err != nil {
		t.Fatal(err)
	}
	if msg, err := exec.Command(imageMagick(t), in, "-colorspace", "CMYK", "-quality", "100", out).CombinedOutput(); err != nil {
		t.Fatalf("convert: %v\n%s", err, msg)
	}
	file, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	if c, _, _ := image.DecodeConfig(bytes.NewReader(file)); c.ColorModel != color.CMYKModel {
		t.Fatal("the other program did not write CMYK")
	}
	img := printed(t, file, 100, 100)
	for _, p := range []struct {
		x, y int
		want color.RGBA
	}{{8, 8, color.RGBA{200, 30, 30, 255}}, {32, 8, color.RGBA{30, 160, 30, 255}}, {8, 32, color.RGBA{30, 30, 200, 255}}, {32, 32, color.RGBA{220, 220, 40, 255}}} {
		got := img.RGBAAt(p.x, p.y)
		if abs(int(got.R)-int(p.want.R)) > 12 || abs(int(got.G)-int(p.want.G)) > 12 || abs(int(got.B)-int(p.want.B)) > 12 {
			t.Errorf("at %d, %d: %v, want about %v", p.x, p.y, got, p.want)
		}
	}
}

func abs(n int) int { return max(n, -n) }

// Proportions are kept and nothing is scaled up.
func TestSizes(t *testing.T) {
	for _, c := range []struct{ w, h, maxW, maxH, wantW, wantH int }{
		{400, 300, 100, 100, 100, 75}, {300, 400, 100, 100, 75, 100}, {40, 30, 100, 100, 40, 30}, {1000, 1, 100, 100, 100, 1}, {1, 1, 1, 1, 1, 1},
	} {
		if b := printed(t, jpegOf(t, corners(c.w, c.h)), c.maxW, c.maxH).Bounds(); b.Dx() != c.wantW || b.Dy() != c.wantH {
			t.Errorf("%d × %d in %d × %d: %v", c.w, c.h, c.maxW, c.maxH, b)
		}
	}
}

// Each pixel is the mean of what it covers, whole or in part.
func TestMeans(t *testing.T) {
	for _, c := range []struct {
		row  []uint8
		want []uint8
	}{
		{[]uint8{10, 20, 30, 40}, []uint8{15, 35}},
		{[]uint8{0, 90, 240}, []uint8{30, 190}},            // (0 + 90/2) / 1.5, (90/2 + 240) / 1.5
		{[]uint8{10, 20, 30, 40, 50}, []uint8{14, 30, 46}}, // (10 + 20 × 2/3) / (5/3) …
		{[]uint8{7, 8, 9}, []uint8{7, 8, 9}},
		{[]uint8{0, 255, 0, 255, 0, 255, 255}, []uint8{146}}, // 4/7 of 255
	} {
		for _, upright := range []bool{false, true} {
			g := image.NewGray(image.Rect(0, 0, len(c.row), 1))
			maxW, maxH := len(c.want), 1
			if upright {
				g = image.NewGray(image.Rect(0, 0, 1, len(c.row)))
				maxW, maxH = 1, len(c.want)
			}
			copy(g.Pix, c.row)
			if g.Stride == 1 && !upright {
				t.Fatal("the rows are not what is meant")
			}
			img := printed(t, pngOf(t, g), maxW, maxH)
			for i, want := range c.want {
				at := img.RGBAAt(i, 0)
				if upright {
					at = img.RGBAAt(0, i)
				}
				if at != (color.RGBA{want, want, want, 255}) {
					t.Errorf("%v in %d, upright %v: %v at %d, want %d", c.row, len(c.want), upright, at, i, want)
				}
			}
		}
	}
}

func TestWhatIsRefused(t *testing.T) {
	flood := pngOf(t, corners(4, 4))
	binary.BigEndian.PutUint32(flood[16:], 60000)
	binary.BigEndian.PutUint32(flood[20:], 60000)
	binary.BigEndian.PutUint32(flood[29:], crc32.ChecksumIEEE(flood[12:29]))
	for name, file := range map[string][]byte{"nothing": nil, "text": []byte("no picture"), "cut short": jpegOf(t, corners(40, 40))[:200], "a flood of pixels": flood,
		"another kind": []byte("GIF89a\x01\x00\x01\x00\x00\x00\x00;")} {
		if img, err := photo.Print(file, 100, 100); err == nil || img != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := photo.Print(jpegOf(t, corners(4, 4)), 0, 10); err == nil {
		t.Error("no room, and no error")
	}
}

// Damaged tags never cost the picture.
func FuzzTags(f *testing.F) {
	f.Add(exif(binary.LittleEndian, 6), []byte("ICC_PROFILE\x00\x01\x01acsp"))
	f.Add(exif(binary.BigEndian, 3)[:9], []byte("ICC_PROFILE\x00\x02\x01"))
	for _, name := range []string{"a98", "sgray"} {
		if p, err := os.ReadFile(fmt.Sprintf("/usr/share/color/icc/ghostscript/%s.icc", name)); err == nil {
			f.Add(exif(binary.BigEndian, 8), append([]byte("ICC_PROFILE\x00\x01\x01"), p...))
		}
	}
	plain := jpegOf(f, corners(16, 8))
	f.Fuzz(func(t *testing.T, exif, icc []byte) {
		if len(exif) > 60000 || len(icc) > 60000 {
			return
		}
		file := withSegment(withSegment(plain, 0xe2, icc), 0xe1, append([]byte("Exif\x00\x00"), exif...))
		img, err := photo.Print(file, 16, 16)
		if err != nil || img.Bounds().Dx()*img.Bounds().Dy() != 16*8 {
			t.Fatalf("%v", err)
		}
	})
}
