package paper_test

import (
	"fmt"
	"image"
	_ "image/png"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"

	"backleaf/record/paper"
	"backleaf/record/toolcheck"
)

// Capacities of ISO/IEC 18004, table of data capacities (from memory, equal to
// what another encoder was measured to hold): bytes, versions 1 to 10.
var byteCapacity = map[paper.Level][]int{
	paper.LevelL: {17, 32, 53, 78, 106, 134, 154, 192, 230, 271},
	paper.LevelM: {14, 26, 42, 62, 84, 106, 122, 152, 180, 213},
	paper.LevelQ: {11, 20, 32, 46, 60, 74, 86, 108, 130, 151},
	paper.LevelH: {7, 14, 24, 34, 44, 58, 64, 84, 98, 119},
}

// Alphanumeric capacities of the same table, level Q, versions 1 to 6 (from memory).
var alphanumericQ = []int{16, 29, 47, 67, 87, 108}

func symbol(t testing.TB, text string, level paper.Level) paper.Symbol {
	t.Helper()
	s, err := paper.NewSymbol(text, level)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestCapacities(t *testing.T) {
	for level, row := range byteCapacity {
		for i, n := range row {
			for more, version := range map[int]int{0: i + 1, 1: i + 2} {
				if got := symbol(t, strings.Repeat("x", n+more), level).Version(); got != version {
					t.Errorf("level %d, %d bytes: version %d, want %d", level, n+more, got, version)
				}
			}
		}
	}
	for i, n := range alphanumericQ {
		if got := symbol(t, strings.Repeat("A", n), paper.LevelQ).Version(); got != i+1 {
			t.Errorf("%d capitals: version %d, want %d", n, got, i+1)
		}
	}
	if s := symbol(t, "x", paper.LevelL); s.Modules() != 21 {
		t.Errorf("version 1 has %d modules, want 21", s.Modules())
	}
	// ISO/IEC 18004: version 40-L holds 2953 bytes, 40-H 1273.
	for level, n := range map[paper.Level]int{paper.LevelL: 2953, paper.LevelH: 1273} {
		symbol(t, strings.Repeat("x", n), level)
		if _, err := paper.NewSymbol(strings.Repeat("x", n+1), level); err == nil {
			t.Errorf("%d bytes were encoded", n+1)
		}
	}
	if _, err := paper.NewSymbol("", paper.LevelQ); err == nil {
		t.Error("an empty symbol was made")
	}
}

const link = "HTTPS://EXAMPLE.ORG/P/KB26-0142-1"

func TestSmallSymbolsAreRefused(t *testing.T) {
	s := symbol(t, link, paper.LevelQ)
	smallest := s.SideMM(5 * 25.4 / 300) // 0.423 mm: the first whole dot above 0.4 mm
	if _, _, err := s.Fit(0, 0, smallest-0.01); err == nil {
		t.Error("a symbol below the smallest module was drawn")
	} else if !strings.Contains(err.Error(), fmt.Sprintf("%.1f mm", smallest)) {
		t.Errorf("the error does not say what is needed: %v", err)
	}
	if _, side, err := s.Fit(0, 0, smallest+0.01); err != nil || math.Abs(side-smallest) > 1e-9 {
		t.Errorf("%v, side %.3f", err, side)
	}
}

func TestModulesAreWholeDots(t *testing.T) {
	for want := 0.4; want < 2; want += 0.013 {
		m := paper.SnapModule(want)
		for _, dpi := range []float64{300, 600} {
			if dots := m * dpi / 25.4; math.Abs(dots-math.Round(dots)) > 1e-6 || m > want+1e-9 {
				t.Errorf("%.3f mm: %.3f dots at %.0f dpi", want, dots, dpi)
			}
		}
	}
}

// Two independent readers decode what is printed, at four resolutions.
func TestSymbolIsRead(t *testing.T) {
	d := &paper.Document{Info: paper.Info{Title: "symbol", Created: day}}
	page := d.Page(30, 30)
	shape, side, err := symbol(t, link, paper.LevelQ).Fit(2, 2, 18)
	if err != nil {
		t.Fatal(err)
	}
	// Ink right up to the border: the quiet zone is inside.
	page.Draw(paper.Rect{W: 30, H: 30, Fill: paper.Black}, paper.Rect{X: 2, Y: 2, W: side, H: side, Fill: paper.White}, shape)
	pdf := save(t, "qr.pdf", finish(t, d, paper.A1b))
	for _, dpi := range []string{"150", "200", "300", "600"} {
		base := filepath.Join(t.TempDir(), "qr")
		toolcheck.Run(t, "pdftoppm", "-r", dpi, "-png", "-singlefile", pdf, base)
		if got := strings.TrimSpace(toolcheck.Run(t, "zbarimg", "--raw", "-q", base+".png")); got != link {
			t.Errorf("zbarimg at %s dpi: %q", dpi, got)
		}
		if got, err := zxing(base + ".png"); err != nil || got != link {
			t.Errorf("gozxing at %s dpi: %q, %v", dpi, got, err)
		}
	}
}

func zxing(path string) (string, error) {
	f, err := os.Open(path)
	if err != nil {
		return "", err
	}
	defer f.Close()
	img, _, err := image.Decode(f)
	if err != nil {
		return "", err
	}
	bitmap, err := gozxing.NewBinaryBitmapFromImage(img)
	if err != nil {
		return "", err
	}
	result, err := qrcode.NewQRCodeReader().Decode(bitmap, map[gozxing.DecodeHintType]any{gozxing.DecodeHintType_TRY_HARDER: true})
	if err != nil {
		return "", err
	}
	return result.GetText(), nil
}

func BenchmarkSymbol(b *testing.B) {
	for b.Loop() {
		symbol(b, link, paper.LevelQ)
	}
}

// Scheme and host may be written in capitals (RFC 3986, 3.1 and 3.2.2), a path
// never: then, and only then, a symbol of the alphanumeric mode holds it.
func TestInCapitals(t *testing.T) {
	for address, want := range map[string]string{
		"https://example.org/P/KB260142": "HTTPS://EXAMPLE.ORG/P/KB260142", "https://example.org/p/KB260142": "https://example.org/p/KB260142",
		"https://example.org:8080/KB260142": "HTTPS://EXAMPLE.ORG:8080/KB260142", "https://example.org?of=KB260142": "https://example.org?of=KB260142",
		"HTTPS://EXAMPLE.ORG/P/KB260142": "HTTPS://EXAMPLE.ORG/P/KB260142", "KB26-0142": "KB26-0142",
	} {
		if s, err := paper.NewSymbol(address, paper.LevelQ); err != nil || s.Text != want {
			t.Errorf("%s: %s, want %s", address, s.Text, want)
		}
	}
	small, _ := paper.NewSymbol("https://panels.example.org/p/KB260142", paper.LevelQ)
	large, _ := paper.NewSymbol("https://panels.example.org/P/KB260142", paper.LevelQ)
	if large.Version() >= small.Version() {
		t.Errorf("versions %d and %d", small.Version(), large.Version())
	}
}
