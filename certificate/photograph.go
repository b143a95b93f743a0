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
	title         string
}

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
	w, h, err := photo.Size(file)
	return photograph{file, w, h, c.words.Photograph.With("title", c.title)}, err
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
