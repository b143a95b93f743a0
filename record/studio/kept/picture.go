package kept

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"image"

	"backleaf/certificate/photo"
	"backleaf/record"
	"backleaf/record/safefile"
	"backleaf/record/studio/refuse"
)

// Load reads a picture file, and says what it is in p.
func Load(path string, p *record.Photograph) ([]byte, error) {
	data, err := safefile.Read(path, photo.MaxBytes)
	if err != nil {
		return nil, err
	}
	return data, Identify(path, data, p)
}

// Identify says in p what a picture is, and that it can be read; name is for the
// error.
func Identify(name string, data []byte, p *record.Photograph) error {
	about, err := photo.Look(data)
	if errors.Is(err, photo.ErrKind) {
		return refuse.Cannot("no-picture", "%s is neither a JPEG nor a PNG picture", name)
	}
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	// The sides as the file has them: which way is up stands in the file.
	cfg, _, err := image.DecodeConfig(bytes.NewReader(data))
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	sum := sha256.Sum256(data)
	p.SHA256, p.Type = hex.EncodeToString(sum[:]), "image/"+about.Type
	p.Width, p.Height = int64(cfg.Width), int64(cfg.Height)
	return nil
}
