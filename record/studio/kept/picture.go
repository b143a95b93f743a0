package kept

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"image"
	_ "image/jpeg" // the two kinds of photograph that are kept
	_ "image/png"
	"os"

	"backleaf/record"
	"backleaf/record/studio/refuse"
)

// Load reads a picture file, and says what it is in p.
func Load(path string, p *record.Photograph) ([]byte, error) {
	st, err := os.Stat(path)
	if err != nil {
		return nil, fmt.Errorf("cannot read the photograph: %w", err)
	}
	if st.Size() > MaxBytes || !st.Mode().IsRegular() {
		return nil, fmt.Errorf("%s is not a file of at most %d MB", path, MaxBytes>>20)
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, fmt.Errorf("cannot read the photograph: %w", err)
	}
	return data, Identify(path, data, p)
}

// Identify says in p what a picture is; name is for the error.
func Identify(name string, data []byte, p *record.Photograph) error {
	cfg, kind, err := image.DecodeConfig(bytes.NewReader(data))
	if err != nil || kind != "jpeg" && kind != "png" {
		return refuse.Cannot("no-picture", "%s is neither a JPEG nor a PNG picture", name)
	}
	sum := sha256.Sum256(data)
	p.SHA256, p.Type = hex.EncodeToString(sum[:]), "image/"+kind
	p.Width, p.Height = int64(cfg.Width), int64(cfg.Height)
	return nil
}
