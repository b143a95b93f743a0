package seal

import (
	"bytes"
	"crypto/ed25519"
	"errors"
	"fmt"

	"github.com/go-json-experiment/json/jsontext"
)

const (
	// RecordPrefix begins every record that can be signed. Canonical JSON sorts members, so "backleaf" must be the first name of the record's
	// outermost object in that order.
	RecordPrefix = `{"backleaf":"record/`
	// MaxRecordBytes bounds a record, so that a hostile file cannot fill the memory.
	MaxRecordBytes = 16 << 20
	// SignatureSize is the size of record.sig in bytes.
	SignatureSize = ed25519.SignatureSize
)

// ErrSignature: the signature does not hold for these bytes and this key: one of the three was changed.
var ErrSignature = errors.New("the signature does not hold")

// SignRecord returns the raw Ed25519 signature over the exact bytes of a record. It refuses bytes that are not canonical JSON (RFC 8785)
// or do not begin with RecordPrefix.
func (k Key) SignRecord(record []byte) ([]byte, error) {
	if k.private == nil {
		return nil, errors.New("cannot sign the record: there is no key")
	}
	if err := recordShape(record); err != nil {
		return nil, fmt.Errorf("cannot sign the record: %w", err)
	}
	value := jsontext.Value(bytes.Clone(record))
	if err := value.Canonicalize(); err != nil {
		return nil, fmt.Errorf("cannot sign the record: %w", err)
	}
	if !bytes.Equal(value, record) {
		return nil, errors.New("cannot sign the record: it is not in canonical form")
	}
	return ed25519.Sign(k.private, record), nil
}

// VerifyRecord returns nil if sig is the key's signature over the exact bytes of the record, else ErrSignature or what is wrong with its shape.
func (p PublicKey) VerifyRecord(record, sig []byte) error {
	if err := recordShape(record); err != nil {
		return err
	}
	if len(sig) != SignatureSize {
		return fmt.Errorf("a record's signature has %d bytes, not %d", SignatureSize, len(sig))
	}
	if !ed25519.Verify(p[:], record, sig) {
		return ErrSignature
	}
	return nil
}

func recordShape(record []byte) error {
	if len(record) > MaxRecordBytes {
		return fmt.Errorf("a record has at most %d bytes", MaxRecordBytes)
	}
	if !bytes.HasPrefix(record, []byte(RecordPrefix)) {
		return fmt.Errorf("a record begins with %s", RecordPrefix)
	}
	return nil
}
