package paper

// This is the one file that imports the QR library.

import (
	"fmt"
	"image"
	"math"
	"strconv"
	"strings"

	qrcode "github.com/skip2/go-qrcode"
)

// A Level is how much of a symbol may be lost (ISO/IEC 18004).
type Level int

// The levels: about 7, 15, 25 and 30 % of the codewords can be restored.
const (
	LevelL Level = iota
	LevelM
	LevelQ
	levelH
)

// MinModuleMM is the smallest module that is drawn: cameras and printers of
// every day do not hold a smaller one.
const MinModuleMM = 0.4

// quietModules is the empty border that ISO/IEC 18004 asks for on each side.
const quietModules = 4

// A Symbol is a QR symbol. It is encoded where it is drawn: that takes longest
// of all on a page, and pages are made ready on all cores.
type Symbol struct {
	Text    string
	Level   Level
	version int
}

var levels = [...]qrcode.RecoveryLevel{qrcode.Low, qrcode.Medium, qrcode.High, qrcode.Highest}

// NewSymbol returns the smallest symbol that holds a text. Figures,
// capitals and "$%*+-./: " need about a third less room than other text, so a web
// address is encoded in capitals where that makes it no other.
func NewSymbol(text string, level Level) (Symbol, error) {
	text = inCapitals(text)
	if text == "" {
		return Symbol{}, fmt.Errorf("cannot make QR symbol: nothing to encode")
	}
	if level < LevelL || level > levelH {
		return Symbol{}, fmt.Errorf("cannot make QR symbol: no such level %d", level)
	}
	q, err := qrcode.New(text, levels[level])
	if err != nil {
		return Symbol{}, fmt.Errorf("cannot make QR symbol: %d bytes are too long for level %s", len(text), "LMQH"[level:level+1])
	}
	return Symbol{text, level, q.VersionNumber}, nil
}

// inCapitals returns a web address as a symbol holds it in the fewest modules:
// scheme and host in capitals, which changes nothing (RFC 3986, 6.2.2.1), if what
// follows has no small letter. A path is never changed.
func inCapitals(address string) string {
	host := strings.Index(address, "://")
	if host < 0 {
		return address
	}
	end := len(address)
	if i := strings.IndexAny(address[host+3:], "/?#"); i >= 0 {
		end = host + 3 + i
	}
	if rest := address[end:]; rest != strings.ToUpper(rest) {
		return address
	}
	return strings.ToUpper(address[:end]) + address[end:]
}

// Modules returns the number of modules on a side, without the quiet zone.
func (s Symbol) Modules() int { return 17 + 4*s.version }

// Version returns the version of the symbol, 1 to 40.
func (s Symbol) Version() int { return s.version }

// across is the number of modules on a side, quiet zone included.
func (s Symbol) across() int { return s.Modules() + 2*quietModules }

// SideMM returns the side of the symbol, quiet zone included, for a module size.
func (s Symbol) SideMM(moduleMM float64) float64 { return float64(s.across()) * moduleMM }

// snapModule returns the largest module that is not above moduleMM and is a
// whole number of dots at 300 dpi, and so at 600, so that no printer has to round.
func snapModule(moduleMM float64) float64 {
	const dot = 25.4 / 300
	return math.Floor(moduleMM/dot+1e-9) * dot
}

// Fit draws the symbol in the square of sideMM at x, y with the largest module
// of whole printer dots, quiet zone inside, and returns the side it takes. It
// refuses what would not scan.
func (s Symbol) Fit(x, y, sideMM float64) (Shape, float64, error) {
	module := snapModule(sideMM / float64(s.across()))
	if module < MinModuleMM {
		return nil, 0, fmt.Errorf("cannot draw QR symbol in %.1f mm: its %d modules need %.1f mm with their quiet zone",
			sideMM, s.Modules(), s.SideMM(snapUp(MinModuleMM)))
	}
	return placed{s, x, y, module}, s.SideMM(module), nil
}

// placed is a symbol in its place.
type placed struct {
	Symbol
	x, y, module float64
}

func (p placed) svg(w *svgWriter) { Rects{p.Areas()}.svg(w) }

// ready encodes the symbol.
func (p placed) ready() Shape {
	var path []byte
	for _, a := range p.areas() {
		for _, n := range []int{a.Min.X, a.Min.Y, a.Dx(), a.Dy()} {
			path = append(strconv.AppendInt(path, int64(n), 10), ' ')
		}
		path = append(path, "re\n"...)
	}
	return drawn{p, append(path, 'f')}
}

// snapUp returns the smallest module of whole dots that is not below moduleMM.
func snapUp(moduleMM float64) float64 {
	const dot = 25.4 / 300
	return math.Ceil(moduleMM/dot-1e-9) * dot
}

// Areas are what is black, in millimetres.
func (p placed) Areas() (out []Rect) {
	for _, a := range p.areas() {
		out = append(out, Rect{X: p.x + float64(a.Min.X)*p.module, Y: p.y + float64(a.Min.Y)*p.module, W: float64(a.Dx()) * p.module, H: float64(a.Dy()) * p.module})
	}
	return out
}

// areas merges dark modules: runs of a row, and equal runs below each other.
// Areas share whole edges at most, so that no hairline shows between them.
func (s Symbol) areas() []image.Rectangle {
	q, err := qrcode.New(s.Text, levels[s.Level])
	if err != nil {
		return nil // NewSymbol made it of the same
	}
	modules := q.Bitmap()
	n := len(modules)
	out := make([]image.Rectangle, 0, n*n/4)
	above, row := make([]int, n), make([]int, n) // the areas, from 1, by where they begin
	for y, cells := range modules {
		clear(row)
		for i := 0; i < n; i++ {
			if !cells[i] {
				continue
			}
			from := i
			for i < n && cells[i] {
				i++
			}
			at := above[from]
			if at > 0 && out[at-1].Max.X == i {
				out[at-1].Max.Y++
			} else {
				out = append(out, image.Rect(from, y, i, y+1))
				at = len(out)
			}
			row[from] = at
		}
		above, row = row, above
	}
	return out
}
