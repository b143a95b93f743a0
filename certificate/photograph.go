package certificate

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"math"

	"backleaf/certificate/photo"
	"backleaf/record"
	"backleaf/record/paper"
)

// printDPI is what a printer shows of a photograph.
const printDPI = 300

// A photograph is that of the front; of width 0 if there is none.
type photograph struct {
	file          []byte
	width, height int // upright
	title, credit string
	about         photo.About
}

// placed is how large a photograph stands on the page.
type placed struct{ widthMM, heightMM float64 }

// takePhotograph reads the last photograph of the front and holds it against
// the digest on record.
func (c *content) takePhotograph() (photograph, error) {
	var last record.Photograph
	for _, p := range record.Each[record.Photograph](c.in.Panel) {
		if p.Body.Role == record.PhotoFront {
			last = p.Body
		}
	}
	if last.SHA256 == "" {
		return photograph{}, nil
	}
	if c.in.Photograph == nil {
		return photograph{}, errors.New("a photograph is on record, but there is none to draw")
	}
	file, err := c.in.Photograph(last)
	if err != nil {
		return photograph{}, err
	}
	if sum := sha256.Sum256(file); hex.EncodeToString(sum[:]) != last.SHA256 {
		return photograph{}, fmt.Errorf("the photograph is not the one on record: its SHA-256 is %x, not %s", sum, last.SHA256)
	}
	about, err := photo.Look(file)
	p := photograph{file: file, width: about.Width, height: about.Height, title: c.words.T("photograph").With("title", c.title), about: about}
	p.credit = c.teller.Credit(last)
	return p, err
}

// creditLine says who took the photograph and when, for the right edge below
// it; it is empty if neither is on record.
func (p photograph) creditLine(width float64) (*column, error) {
	col := &column{width: width}
	if p.credit == "" {
		return col, nil
	}
	b, err := paper.Compose(width, paper.Span{Style: sized(name, 7.5), Text: p.credit, Field: "credit of the photograph"})
	col.shapes, col.height = []paper.Shape{paper.Text{X: width, Y: 1, Block: b, Align: paper.Right}}, 1+b.HeightMM()
	return col, err
}

func (p photograph) aspect() float64 { return float64(p.width) / float64(p.height) }

// fit is the largest size in an area that keeps the proportions.
func (p photograph) fit(w, h float64) placed {
	if w/h > p.aspect() {
		return placed{h * p.aspect(), h}
	}
	return placed{w, w / p.aspect()}
}

// shape draws the photograph with no more pixels than a printer can show.
func (p photograph) shape(x, y, w, h float64) (paper.Shape, error) {
	dots := func(mm float64) int { return int(math.Ceil(mm / 25.4 * printDPI)) }
	img, err := photo.Print(p.file, dots(w), dots(h))
	if err != nil {
		return nil, err
	}
	return paper.Picture{X: x, Y: y, W: w, H: h, Image: img, Title: p.title}, nil
}

// Photo is what is to be known of the photograph of a certificate before it is
// printed. Without one, PixelsWide is 0.
type Photo struct {
	PixelsWide, PixelsHigh int
	WidthMM, HeightMM      float64 // on the page
	PixelsPerInch          float64 // as printed: below 150 it shows
	// Ratio is width to height of the photograph by that of the panel: 1 if
	// they agree, 0 if the size of the panel is not known.
	Ratio float64
	// Turned says that one is upright and the other lies.
	Turned bool
	// Profile is the name of the colour profile in the file, text from outside;
	// Converted says that its colours are printed by it.
	Profile   string
	Converted bool
}

func (p photograph) facts(at placed, panel record.Size) Photo {
	if p.width == 0 {
		return Photo{}
	}
	f := Photo{PixelsWide: p.width, PixelsHigh: p.height, WidthMM: at.widthMM, HeightMM: at.heightMM, PixelsPerInch: float64(p.width) / at.widthMM * 25.4,
		Profile: p.about.Profile, Converted: p.about.Converted}
	h, ok := panel.Height.Micrometers()
	w, too := panel.Width.Micrometers()
	if ok && too && h > 0 && w > 0 {
		aspect := float64(w) / float64(h)
		f.Ratio = p.aspect() / aspect
		f.Turned = (p.aspect() > 1) != (aspect > 1) && p.aspect() != 1 && aspect != 1
	}
	return f
}
