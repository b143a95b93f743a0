package label_test

import (
	"bytes"
	"fmt"
	"image"
	"image/jpeg"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"

	"backleaf/label"
	"backleaf/record/paper"
	"backleaf/record/toolcheck"
)

// readingLink is what the symbols say: 31 characters, version 3 at level Q.
const readingLink = "HTTPS://EXAMPLE.ORG/P/KB2601421"

// A harm is what happens to a symbol between the printer and the reader.
type harm struct {
	name string
	do   func(scan) scan
	// sure says that at least two readers must read it from 200 dpi up.
	sure bool
}

// harms are what a label meets in its life. Measures are in modules, so that
// they harm alike at every resolution; seeds are fixed.
var harms = []harm{
	{"clean", func(s scan) scan { return s }, true},
	{"blurred, σ 0.3 modules", func(s scan) scan { return s.blurred(0.3) }, true},
	{"blurred, σ 0.45 modules", func(s scan) scan { return s.blurred(0.45) }, false},
	{"blurred, σ 0.6 modules", func(s scan) scan { return s.blurred(0.6) }, false},
	{"dot gain, 2 dots of 600 dpi on each edge", func(s scan) scan { return s.gained(0.2) }, true},
	{"dot loss, 2 dots of 600 dpi on each edge", func(s scan) scan { return s.gained(-0.2) }, true},
	{"JPEG, quality 60", func(s scan) scan { return s.jpeg(60) }, true},
	{"rotated 1.5°", func(s scan) scan { return s.turned(1.5) }, true},
	{"rotated 5°", func(s scan) scan { return s.turned(5) }, true},
	{"rotated 15°", func(s scan) scan { return s.turned(15) }, true},
	{"rotated 30°", func(s scan) scan { return s.turned(30) }, true},
	{"rotated 45°", func(s scan) scan { return s.turned(45) }, true},
	{"skewed 10°", func(s scan) scan { return s.skewed(10) }, true},
	{"skewed 20°", func(s scan) scan { return s.skewed(20) }, true},
	{"ink 110 on paper 190 of 255", func(s scan) scan { return s.pale(110, 190) }, true},
	{"ink 140 on paper 180 of 255", func(s scan) scan { return s.pale(140, 180) }, false},
	{"noise, σ 25 of 255", func(s scan) scan { return s.noisy(25) }, true},
	{"noise, σ 40 of 255", func(s scan) scan { return s.noisy(40) }, false},
	{"noise, σ 60 of 255", func(s scan) scan { return s.noisy(60) }, false},
	{"stain over 5 % at a corner", func(s scan) scan { return s.stained(0.05) }, false},
	{"stain over 10 % at a corner", func(s scan) scan { return s.stained(0.10) }, false},
	{"stain over 15 % at a corner", func(s scan) scan { return s.stained(0.15) }, false},
	{"stain over 20 % at a corner", func(s scan) scan { return s.stained(0.20) }, false},
	{"stain over 25 % at a corner", func(s scan) scan { return s.stained(0.25) }, false},
}

var readingDPI = []float64{150, 200, 300, 600}

// TestReading prints the table of what three independent readers make of the
// symbol of the small label, the hardest of the three sizes: modules of 0.42
// mm. No reader may ever read something else. BACKLEAF_KEEP names a folder
// that keeps the table.
func TestReading(t *testing.T) {
	toolcheck.Long(t)
	ls, err := label.Arrange([]label.Input{finished()}, options(label.Small))
	if err != nil {
		t.Fatal(err)
	}
	readers := []reader{{"gozxing", readZxing}}
	if zbar := zbarReader(t); zbar.read != nil {
		readers = append(readers, zbar)
	}
	if jsqr := jsqrReader(t); jsqr.read != nil {
		readers = append(readers, jsqr)
	}
	var scans []scan
	for _, h := range harms {
		for _, dpi := range readingDPI {
			scans = append(scans, h.do(printed(t, ls[0], dpi)))
		}
	}
	read := make([][]string, len(readers))
	for i, r := range readers {
		read[i] = r.read(t, scans)
	}
	var names, table strings.Builder
	for _, r := range readers {
		names.WriteString(" " + r.name)
	}
	fmt.Fprintf(&table, "| symbol | 150 dpi | 200 dpi | 300 dpi | 600 dpi |\n|---|---|---|---|---|\n")
	for i, h := range harms {
		fmt.Fprintf(&table, "| %s |", h.name)
		for j, dpi := range readingDPI {
			n := 0
			for k, r := range readers {
				switch got := read[k][i*len(readingDPI)+j]; got {
				case readingLink:
					n++
					fmt.Fprintf(&table, " %s", r.name)
				case "":
					fmt.Fprintf(&table, " –")
				default:
					t.Errorf("%s read %q from a symbol %s at %.0f dpi", r.name, got, h.name, dpi)
				}
			}
			table.WriteString(" |")
			// Two readers of the three must read a sure one. A machine that
			// lacks a reader still holds the clean symbol against the others.
			if h.sure && dpi >= 200 && len(readers) == 3 && n < 2 || i == 0 && n < len(readers) {
				t.Errorf("%s at %.0f dpi: read by %d of%s", h.name, dpi, n, names.String())
			}
		}
		table.WriteString("\n")
	}
	t.Logf("readers:%s\n%s", names.String(), table.String())
	if dir := os.Getenv("BACKLEAF_KEEP"); dir != "" {
		if err := os.WriteFile(filepath.Join(dir, "reading.md"), []byte(table.String()), 0o600); err != nil {
			t.Fatal(err)
		}
	}
}

// A scan is a grey picture of a symbol with white around it.
type scan struct {
	pix       []float64 // 0 black to 255 white
	w, h      int
	module    float64 // in pixels
	left, top float64 // of the dark part
	side      float64
}

// printed is the symbol of a label as an ideal printer and scanner give it:
// every pixel as grey as it is covered.
func printed(t *testing.T, l label.Layout, dpi float64) scan {
	t.Helper()
	s, err := paper.NewSymbol(readingLink, paper.LevelQ)
	if err != nil {
		t.Fatal(err)
	}
	module := 0.0
	for _, b := range l.Boxes {
		if b.Field == label.QR {
			module = b.W / float64(s.Modules()+8)
		}
	}
	shape, side, err := s.Fit(0, 0, module*float64(s.Modules()+8)+1e-6)
	if err != nil {
		t.Fatal(err)
	}
	scale := dpi / 25.4
	around := math.Ceil(0.3 * side * scale) // so that it can be turned
	n := int(side*scale+0.5) + 2*int(around)
	out := scan{pix: make([]float64, n*n), w: n, h: n, module: module * scale,
		left: around + 4*module*scale, top: around + 4*module*scale, side: float64(s.Modules()) * module * scale}
	for i := range out.pix {
		out.pix[i] = 255
	}
	for _, a := range shape.(interface{ Areas() []paper.Rect }).Areas() {
		x0, y0 := a.X*scale+around, a.Y*scale+around
		x1, y1 := x0+a.W*scale, y0+a.H*scale
		for y := int(y0); y < int(math.Ceil(y1)) && y < n; y++ {
			for x := int(x0); x < int(math.Ceil(x1)) && x < n; x++ {
				cover := (min(x1, float64(x+1)) - max(x0, float64(x))) * (min(y1, float64(y+1)) - max(y0, float64(y)))
				out.pix[y*n+x] -= 255 * cover
			}
		}
	}
	return out
}

func (s scan) at(x, y float64) float64 {
	x, y = x-0.5, y-0.5
	x0, y0 := math.Floor(x), math.Floor(y)
	fx, fy := x-x0, y-y0
	get := func(i, j int) float64 {
		if i < 0 || j < 0 || i >= s.w || j >= s.h {
			return 255
		}
		return s.pix[j*s.w+i]
	}
	i, j := int(x0), int(y0)
	return (get(i, j)*(1-fx)+get(i+1, j)*fx)*(1-fy) + (get(i, j+1)*(1-fx)+get(i+1, j+1)*fx)*fy
}

// mapped draws the scan anew: back gives the place each new point comes from,
// both measured from the middle.
func (s scan) mapped(back func(x, y float64) (float64, float64)) scan {
	out := s
	out.pix = make([]float64, len(s.pix))
	cx, cy := float64(s.w)/2, float64(s.h)/2
	for j := range s.h {
		for i := range s.w {
			x, y := back(float64(i)+0.5-cx, float64(j)+0.5-cy)
			out.pix[j*s.w+i] = s.at(x+cx, y+cy)
		}
	}
	return out
}

func (s scan) turned(degrees float64) scan {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return s.mapped(func(x, y float64) (float64, float64) { return x*cos + y*sin, y*cos - x*sin })
}

// skewed is sheared by an angle, as in a view from the side.
func (s scan) skewed(degrees float64) scan {
	shear := math.Tan(degrees * math.Pi / 180)
	return s.mapped(func(x, y float64) (float64, float64) { return x - shear*y, y })
}

func (s scan) blurred(modules float64) scan {
	sigma := modules * s.module
	reach := int(3*sigma) + 1
	kernel := make([]float64, 2*reach+1)
	sum := 0.0
	for i := range kernel {
		d := float64(i - reach)
		kernel[i] = math.Exp(-d * d / (2 * sigma * sigma))
		sum += kernel[i]
	}
	pass := func(in []float64, dx, dy int) []float64 {
		out := make([]float64, len(in))
		for j := range s.h {
			for i := range s.w {
				v := 0.0
				for k, weight := range kernel {
					x, y := i+dx*(k-reach), j+dy*(k-reach)
					if x < 0 || y < 0 || x >= s.w || y >= s.h {
						v += 255 * weight
					} else {
						v += in[y*s.w+x] * weight
					}
				}
				out[j*s.w+i] = v / sum
			}
		}
		return out
	}
	s.pix = pass(pass(s.pix, 1, 0), 0, 1)
	return s
}

func (s scan) each(f func(i int, v float64) float64) scan {
	out := s
	out.pix = make([]float64, len(s.pix))
	for i, v := range s.pix {
		out.pix[i] = min(255, max(0, f(i, v)))
	}
	return out
}

func (s scan) pale(ink, ground float64) scan {
	return s.each(func(_ int, v float64) float64 { return ink + v/255*(ground-ink) })
}

func (s scan) noisy(sigma float64) scan {
	r := rand.New(rand.NewPCG(9706, 11798))
	return s.each(func(_ int, v float64) float64 { return v + sigma*r.NormFloat64() })
}

// stained covers a square at the corner without a finder pattern, for a
// share of the symbol.
func (s scan) stained(share float64) scan {
	side := s.side * math.Sqrt(share)
	x, y := s.left+s.side-side, s.top+s.side-side
	return s.each(func(i int, v float64) float64 {
		if px, py := float64(i%s.w), float64(i/s.w); px >= x && py >= y && px < s.left+s.side && py < s.top+s.side {
			return 60
		}
		return v
	})
}

// gained moves every edge between dark and light outwards by a share of a
// module, or inwards.
func (s scan) gained(modules float64) scan {
	r := math.Abs(modules) * s.module
	pick := math.Min
	if modules < 0 {
		pick = math.Max
	}
	return s.each(func(i int, v float64) float64 {
		x, y := float64(i%s.w)+0.5, float64(i/s.w)+0.5
		for _, dx := range []float64{-r, 0, r} {
			for _, dy := range []float64{-r, 0, r} {
				v = pick(v, s.at(x+dx, y+dy))
			}
		}
		return v
	})
}

// jpeg is the scan as a camera would keep it.
func (s scan) jpeg(quality int) scan {
	var b bytes.Buffer
	if err := jpeg.Encode(&b, s.gray(), &jpeg.Options{Quality: quality}); err != nil {
		panic(err) // a picture of a few hundred pixels in memory
	}
	img, err := jpeg.Decode(&b)
	if err != nil {
		panic(err)
	}
	kept := img.(*image.Gray)
	return s.each(func(i int, _ float64) float64 { return float64(kept.GrayAt(i%s.w, i/s.w).Y) })
}

func (s scan) gray() *image.Gray {
	img := image.NewGray(image.Rect(0, 0, s.w, s.h))
	for i, v := range s.pix {
		img.Pix[i] = uint8(v + 0.5)
	}
	return img
}

// A reader reads many scans; what it cannot read is empty.
type reader struct {
	name string
	read func(*testing.T, []scan) []string
}

func readZxing(t *testing.T, scans []scan) []string {
	out := make([]string, len(scans))
	for i, s := range scans {
		bitmap, err := gozxing.NewBinaryBitmapFromImage(s.gray())
		if err != nil {
			t.Fatal(err)
		}
		if r, err := qrcode.NewQRCodeReader().Decode(bitmap, map[gozxing.DecodeHintType]any{gozxing.DecodeHintType_TRY_HARDER: true}); err == nil {
			out[i] = r.GetText()
		}
	}
	return out
}

// pgm writes scans as grey pictures and returns their paths.
func pgm(t *testing.T, scans []scan) []string {
	dir := t.TempDir()
	paths := make([]string, len(scans))
	for i, s := range scans {
		paths[i] = filepath.Join(dir, fmt.Sprintf("%03d.pgm", i))
		if err := os.WriteFile(paths[i], append(fmt.Appendf(nil, "P5\n%d %d\n255\n", s.w, s.h), s.gray().Pix...), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return paths
}

// zbarReader needs zbarimg. Without it the table has a column less, unless
// all tools are asked for.
func zbarReader(t *testing.T) reader {
	if _, err := exec.LookPath("zbarimg"); err != nil && !toolcheck.Thorough() {
		t.Log("zbarimg is not installed")
		return reader{}
	}
	toolcheck.Require(t, "zbarimg")
	return reader{"zbar", func(t *testing.T, scans []scan) []string {
		out := make([]string, len(scans))
		for i, path := range pgm(t, scans) {
			// It ends with an error where it reads nothing.
			got, _ := exec.Command("zbarimg", "-q", "--nodbus", "--raw", "--set", "disable", "--set", "qrcode.enable", path).Output()
			out[i] = strings.TrimSpace(string(got))
		}
		return out
	}}
}

// jsqrVersion is installed into a folder of the test's own where all tools
// are asked for and BACKLEAF_JSQR names no folder that holds it.
const jsqrVersion = "1.4.0"

// jsqrReader needs node and the package jsqr.
func jsqrReader(t *testing.T) reader {
	dir := os.Getenv("BACKLEAF_JSQR")
	if dir == "" {
		if !toolcheck.Thorough() {
			t.Log("BACKLEAF_JSQR names no folder with the package jsqr")
			return reader{}
		}
		toolcheck.Require(t, "npm")
		dir = t.TempDir()
		if out, err := exec.Command("npm", "install", "--no-save", "--ignore-scripts", "--prefix", dir, "jsqr@"+jsqrVersion).CombinedOutput(); err != nil {
			t.Fatalf("cannot install jsqr: %v\n%s", err, out)
		}
	}
	toolcheck.Require(t, "node")
	const script = `
const fs = require("fs"), path = require("path");
const jsQR = require(path.join(process.argv[1], "node_modules", "jsqr"));
for (const file of process.argv.slice(2)) {
  const data = fs.readFileSync(file);
  const [, w, h] = data.subarray(0, 40).toString("latin1").match(/^P5\n(\d+) (\d+)\n255\n/).map(Number);
  const grey = data.subarray(data.length - w * h), rgba = new Uint8ClampedArray(4 * w * h);
  for (let i = 0; i < grey.length; i++) rgba.set([grey[i], grey[i], grey[i], 255], 4 * i);
  const code = jsQR(rgba, w, h);
  console.log(JSON.stringify(code ? code.data : ""));
}`
	return reader{"jsQR", func(t *testing.T, scans []scan) []string {
		var complaints bytes.Buffer
		cmd := exec.Command("node", append([]string{"-e", script, dir}, pgm(t, scans)...)...)
		cmd.Stderr = &complaints
		got, err := cmd.Output()
		if err != nil {
			t.Fatalf("node: %v\n%s", err, complaints.String())
		}
		var out []string
		for _, l := range strings.Split(strings.TrimSpace(string(got)), "\n") {
			out = append(out, strings.Trim(l, `"`))
		}
		if len(out) != len(scans) {
			t.Fatalf("jsQR answered %d times, not %d", len(out), len(scans))
		}
		return out
	}}
}
