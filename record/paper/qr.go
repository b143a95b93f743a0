package paper

// This is the one file that imports the QR library.

import (
	"fmt"
	"math"
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

// A Symbol is an encoded QR symbol.
type Symbol struct {
	Text    string
	Level   Level
	modules [][]bool // quiet zone included
}

// NewSymbol encodes text in the smallest symbol that holds it. Figures,
// capitals and "$%*+-./: " need about a third less room than other text, so a web
// address is encoded in capitals where that makes it no other.
func NewSymbol(text string, level Level) (Symbol, error) {
	text = inCapitals(text)
	if text == "" {
		return Symbol{}, fmt.Errorf("cannot make QR symbol: nothing to encode")
	}
	recovery := [...]qrcode.RecoveryLevel{qrcode.Low, qrcode.Medium, qrcode.High, qrcode.Highest}
	if level < LevelL || level > levelH {
		return Symbol{}, fmt.Errorf("cannot make QR symbol: no such level %d", level)
	}
	q, err := qrcode.New(text, recovery[level])
	if err != nil {
		return Symbol{}, fmt.Errorf("cannot make QR symbol: %d bytes are too long for level %s", len(text), "LMQH"[level:level+1])
	}
	return Symbol{text, level, q.Bitmap()}, nil
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
func (s Symbol) Modules() int { return len(s.modules) - 2*quietModules }

// Version returns the version of the symbol, 1 to 40.
func (s Symbol) Version() int { return (s.Modules() - 17) / 4 }

// SideMM returns the side of the symbol, quiet zone included, for a module size.
func (s Symbol) SideMM(moduleMM float64) float64 { return float64(len(s.modules)) * moduleMM }

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
	module := snapModule(sideMM / float64(len(s.modules)))
	if module < MinModuleMM {
		return nil, 0, fmt.Errorf("cannot draw QR symbol in %.1f mm: its %d modules need %.1f mm with their quiet zone",
			sideMM, s.Modules(), s.SideMM(snapUp(MinModuleMM)))
	}
	return Rects{s.areas(x, y, module)}, s.SideMM(module), nil
}

// snapUp returns the smallest module of whole dots that is not below moduleMM.
func snapUp(moduleMM float64) float64 {
	const dot = 25.4 / 300
	return math.Ceil(moduleMM/dot-1e-9) * dot
}

// areas merges dark modules: runs of a row, and equal runs below each other.
// Areas share whole edges at most, so that no hairline shows between them.
func (s Symbol) areas(x, y, module float64) []Rect {
	type run struct{ from, to int }
	open := map[run]int{} // run in the row above -> index of its area
	var out []Rect
	for row, cells := range s.modules {
		next := map[run]int{}
		for i := 0; i < len(cells); i++ {
			if !cells[i] {
				continue
			}
			r := run{from: i}
			for i < len(cells) && cells[i] {
				i++
			}
			r.to = i
			at, ok := open[r]
			if ok {
				out[at].H += module
			} else {
				at = len(out)
				out = append(out, Rect{X: x + float64(r.from)*module, Y: y + float64(row)*module,
					W: float64(r.to-r.from) * module, H: module})
			}
			next[r] = at
		}
		open = next
	}
	return out
}
