package kept

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"image"

	"backleaf/certificate/photo"
	"backleaf/record"
	"backleaf/record/safefile"
	"backleaf/record/studio/refuse"
)

// Bounds of a studio's mark: it is printed a few centimetres wide.
const (
	markBytes  = 1 << 20
	markPixels = 2000 // a side
	markPrints = 700  // of these, at most
)

// KeepMark keeps a PNG picture that is to be the studio's mark.
func KeepMark(bookPath, path string) (p record.Picture, err error) {
	data, err := safefile.Read(path, photo.MaxBytes)
	if err != nil {
		return p, err
	}
	about, err := photo.Look(data)
	switch {
	case err != nil || about.Type != "png":
		return p, refuse.Cannot("no-mark-picture", "%s is no PNG picture", path)
	case len(data) > markBytes || max(about.Width, about.Height) > markPixels:
		return p, refuse.Cannot("mark-too-large", "%s has %d × %d pixels in %d bytes: a mark has at most %d on a side and %d bytes", path, about.Width, about.Height, len(data), markPixels, markBytes)
	}
	sum := sha256.Sum256(data)
	p = record.Picture{SHA256: hex.EncodeToString(sum[:]), Type: "image/png", Width: int64(about.Width), Height: int64(about.Height)}
	return p, Keep(bookPath, Mark(p), data)
}

// Mark is the file of a studio's mark.
func Mark(p record.Picture) File { return picture(p.SHA256, p.Type) }

// MarkOf reads the studio's mark for print; nil if it has none.
func MarkOf(bookPath string, s record.Studio) (image.Image, error) {
	if s.Picture == (record.Picture{}) {
		return nil, nil
	}
	data, err := Read(bookPath, Mark(s.Picture))
	if err != nil {
		return nil, refuse.Because("mark-not-read", fmt.Errorf("cannot read the studio's mark: %w", err))
	}
	img, err := photo.Print(data, markPrints, markPrints)
	return img, refuse.Because("mark-not-read", err)
}
