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

// Load reads a picture file to be kept; see [Picture].
func Load(path string, p *record.Photograph, keepPlace bool) (data []byte, said []record.Said, err error) {
	if data, err = safefile.Read(path, photo.MaxBytes); err != nil {
		return nil, nil, err
	}
	return Picture(path, data, p, keepPlace)
}

// Picture makes a picture ready to be kept: it decodes it once and says what it
// is in p. Where it was taken is left out of what is kept unless keepPlace; said
// tells so, and what becomes of its colours. path is what the file is called.
func Picture(path string, data []byte, p *record.Photograph, keepPlace bool) (_ []byte, said []record.Said, err error) {
	about, err := photo.Look(data)
	if errors.Is(err, photo.ErrKind) {
		return nil, nil, refuse.Cannot("no-picture", "%s is neither a JPEG nor a PNG picture", path)
	}
	if err != nil {
		return nil, nil, fmt.Errorf("%s: %w", path, err)
	}
	switch {
	case len(about.Places) > 0 && keepPlace:
		said = append(said, record.Say("photograph-place-kept", record.With("file", path)))
	case len(about.Places) > 0:
		if data, err = photo.WithoutPlaces(data); err != nil {
			return nil, nil, fmt.Errorf("%s: %w", path, err)
		}
		said = append(said, record.Say("photograph-place-out", record.With("file", path)))
	}
	if about.Profile != "" && !about.Converted {
		said = append(said, record.Say("photograph-profile", record.With("file", path), record.With("profile", about.Profile)))
	}
	// The sides as the file has them: which way is up stands in the file.
	cfg, _, err := image.DecodeConfig(bytes.NewReader(data))
	if err != nil {
		return nil, nil, fmt.Errorf("%s: %w", path, err)
	}
	sum := sha256.Sum256(data)
	p.SHA256, p.Type = hex.EncodeToString(sum[:]), "image/"+about.Type
	p.Width, p.Height = int64(cfg.Width), int64(cfg.Height)
	return data, said, nil
}
