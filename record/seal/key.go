package seal

import (
	"crypto/ed25519"
	"crypto/rand"
	"crypto/sha256"
	"crypto/x509"
	"encoding/base64"
	"encoding/pem"
	"errors"
	"fmt"
)

// SeedSize is the size in bytes of the secret from which a key is made.
const SeedSize = ed25519.SeedSize

// maxPEMBytes bounds a key file; the largest form, an encrypted private key, takes less than 400 bytes.
const maxPEMBytes = 4096

// demoPhrase is public on purpose: anyone can sign with the key made from it.
const demoPhrase = "backleaf demonstration key: public, so it proves nothing"

// A Key is a studio's private key. It prints as the fingerprint of its public key, never as the secret.
type Key struct{ private ed25519.PrivateKey }

// NewKey makes a key from the system's random source.
func NewKey() (Key, error) {
	_, private, err := ed25519.GenerateKey(rand.Reader)
	if err != nil {
		return Key{}, fmt.Errorf("cannot make a key: %w", err)
	}
	return Key{private}, nil
}

// KeyFromSeed makes the key of a 32-byte seed (RFC 8032 section 5.1.5).
func KeyFromSeed(seed []byte) (Key, error) {
	if len(seed) != SeedSize {
		return Key{}, fmt.Errorf("a key seed has %d bytes, not %d", SeedSize, len(seed))
	}
	return Key{ed25519.NewKeyFromSeed(seed)}, nil
}

// DemoKey returns the key of the demonstration, whose seed is the SHA-256 of a public phrase.
func DemoKey() Key {
	seed := sha256.Sum256([]byte(demoPhrase))
	return Key{ed25519.NewKeyFromSeed(seed[:])}
}

// Seed returns a copy of the 32-byte secret.
func (k Key) Seed() []byte { return append([]byte(nil), k.private.Seed()...) }

// Public returns the public half.
func (k Key) Public() PublicKey { return PublicKey(k.private.Public().(ed25519.PublicKey)) }

// public is Public, of no key too.
func (k Key) public() (p PublicKey) {
	if k.private != nil {
		p = k.Public()
	}
	return p
}

// String names the key by its fingerprint, so that a key printed by mistake gives nothing away.
func (k Key) String() string {
	if k.private == nil {
		return "no key"
	}
	return "key " + k.Public().Fingerprint().Short()
}

// GoString is String: %#v must not show the secret either.
func (k Key) GoString() string { return k.String() }

// A PublicKey is the 32 bytes of an Ed25519 public key.
type PublicKey [ed25519.PublicKeySize]byte

// der returns the SubjectPublicKeyInfo form of RFC 8410.
func (p PublicKey) der() []byte {
	der, err := x509.MarshalPKIXPublicKey(ed25519.PublicKey(p[:]))
	if err != nil {
		panic(err) // an Ed25519 key of the right size always marshals
	}
	return der
}

// PEM returns the public key as the file studio.pem holds it.
func (p PublicKey) PEM() []byte {
	return pem.EncodeToMemory(&pem.Block{Type: "PUBLIC KEY", Bytes: p.der()})
}

// Fingerprint returns the SHA-256 of the SubjectPublicKeyInfo DER.
func (p PublicKey) Fingerprint() Digest { return DigestOf(p.der()) }

// IsDemo reports whether this is the demonstration's key, with which anyone can sign.
func (p PublicKey) IsDemo() bool { return p == DemoKey().Public() }

// line returns the base64 of the DER: the middle line of the PEM file.
func (p PublicKey) line() string { return base64.StdEncoding.EncodeToString(p.der()) }

// parsePublicLine reads what line writes.
func parsePublicLine(s string) (PublicKey, error) {
	if len(s) > maxPEMBytes {
		return PublicKey{}, errPublicKey
	}
	return ParsePublicPEM([]byte("-----BEGIN PUBLIC KEY-----\n" + s + "\n-----END PUBLIC KEY-----\n"))
}

var errPublicKey = errors.New("not an Ed25519 public key in PEM form as this program writes it")

// ParsePublicPEM reads what PublicKey.PEM (or openssl) writes: one block, no headers, nothing before or after. Keys under which anyone can sign are
// refused.
func ParsePublicPEM(data []byte) (PublicKey, error) {
	der, err := onlyBlock(data, "PUBLIC KEY")
	if err != nil {
		return PublicKey{}, errPublicKey
	}
	parsed, err := x509.ParsePKIXPublicKey(der)
	if err != nil {
		return PublicKey{}, errPublicKey
	}
	raw, ok := parsed.(ed25519.PublicKey)
	if !ok {
		return PublicKey{}, errPublicKey
	}
	p := PublicKey(raw)
	if string(p.PEM()) != string(data) {
		return PublicKey{}, errPublicKey
	}
	if !p.strong() {
		return PublicKey{}, errWeakKey
	}
	return p, nil
}

// onlyBlock returns the DER of a PEM file that holds one block of the given type in its one spelling.
func onlyBlock(data []byte, kind string) ([]byte, error) {
	if len(data) > maxPEMBytes {
		return nil, fmt.Errorf("a key file has at most %d bytes", maxPEMBytes)
	}
	block, _ := pem.Decode(data)
	if block == nil || block.Type != kind || len(block.Headers) != 0 || string(pem.EncodeToMemory(block)) != string(data) {
		return nil, fmt.Errorf("not one PEM block of type %s", kind)
	}
	return block.Bytes, nil
}
