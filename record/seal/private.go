package seal

import (
	"bytes"
	"crypto"
	"crypto/ed25519"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/asn1"
	"encoding/pem"
	"errors"

	"github.com/youmark/pkcs8"
)

const (
	// pbkdf2Iterations is the count for PBKDF2-HMAC-SHA-256 that the OWASP password storage guidance gives (600 000, 2023).
	pbkdf2Iterations = 600_000
	// maxIterations keeps a hostile file from occupying the machine for hours.
	maxIterations = 10_000_000
)

var (
	// ErrPassphraseNeeded: the private key is encrypted and no passphrase was given.
	ErrPassphraseNeeded = errors.New("the private key is encrypted: a passphrase is needed")
	// ErrPassphraseWrong: the private key does not open with the passphrase given.
	ErrPassphraseWrong = errors.New("the passphrase does not open the private key")

	errPrivateKey = errors.New("not an Ed25519 private key in PKCS#8 PEM form as this program or openssl writes it")
)

// PrivatePEM returns the private key as a PKCS#8 PEM file, encrypted if the passphrase is not empty.
func (k Key) PrivatePEM(passphrase []byte) ([]byte, error) {
	if k.private == nil {
		return nil, errors.New("cannot write a private key: there is none")
	}
	der, err := pkcs8.MarshalPrivateKey(k.private, passphrase, &pkcs8.Opts{
		Cipher:  pkcs8.AES256CBC,
		KDFOpts: pkcs8.PBKDF2Opts{SaltSize: 16, IterationCount: pbkdf2Iterations, HMACHash: crypto.SHA256},
	})
	if err != nil {
		return nil, err
	}
	kind := "PRIVATE KEY"
	if len(passphrase) > 0 {
		kind = "ENCRYPTED PRIVATE KEY"
	}
	return pem.EncodeToMemory(&pem.Block{Type: kind, Bytes: der}), nil
}

// ParsePrivatePEM reads a private key, with the passphrase if it is encrypted; a plain key needs none and ignores one.
//
// PKCS#8 encryption carries no check value: a damaged file can open as another key. Compare Public with the public key on record before use.
func ParsePrivatePEM(data, passphrase []byte) (Key, error) {
	if der, err := onlyBlock(data, "PRIVATE KEY"); err == nil {
		return privateFromDER(der)
	}
	der, err := onlyBlock(data, "ENCRYPTED PRIVATE KEY")
	if err != nil {
		return Key{}, errPrivateKey
	}
	if !soundEncryption(der) {
		return Key{}, errPrivateKey
	}
	if len(passphrase) == 0 {
		return Key{}, ErrPassphraseNeeded
	}
	parsed, _, err := pkcs8.ParsePrivateKey(der, passphrase)
	private, ok := parsed.(ed25519.PrivateKey)
	if err != nil || !ok {
		return Key{}, ErrPassphraseWrong
	}
	return Key{private}, nil
}

func privateFromDER(der []byte) (Key, error) {
	parsed, err := x509.ParsePKCS8PrivateKey(der)
	private, ok := parsed.(ed25519.PrivateKey)
	if err != nil || !ok {
		return Key{}, errPrivateKey
	}
	again, err := x509.MarshalPKCS8PrivateKey(private)
	if err != nil || !bytes.Equal(again, der) {
		return Key{}, errPrivateKey
	}
	return Key{private}, nil
}

// The ASN.1 of an encrypted private key: RFC 5208 section 6, RFC 8018 appendix A.
type (
	encryptedInfo struct {
		Algorithm pkix.AlgorithmIdentifier
		Data      []byte
	}
	pbes2Params struct{ KDF, Cipher pkix.AlgorithmIdentifier }
	kdfParams   struct {
		Salt       []byte
		Iterations int
		PRF        pkix.AlgorithmIdentifier `asn1:"optional"`
	}
)

var (
	oidPBES2      = asn1.ObjectIdentifier{1, 2, 840, 113549, 1, 5, 13}
	oidPBKDF2     = asn1.ObjectIdentifier{1, 2, 840, 113549, 1, 5, 12}
	oidHMACSHA256 = asn1.ObjectIdentifier{1, 2, 840, 113549, 2, 9}
	oidAES256CBC  = asn1.ObjectIdentifier{2, 16, 840, 1, 101, 3, 4, 1, 42}
)

// soundEncryption reports whether the container is the one kind this package writes, with sizes that the decrypting library (which checks
// none of them) can take: an IV of another size would make it panic, a huge count would make it run for hours.
func soundEncryption(der []byte) bool {
	var info encryptedInfo
	var scheme pbes2Params
	var kdf kdfParams
	var iv []byte
	return unmarshalAll(der, &info) && info.Algorithm.Algorithm.Equal(oidPBES2) &&
		unmarshalAll(info.Algorithm.Parameters.FullBytes, &scheme) &&
		scheme.KDF.Algorithm.Equal(oidPBKDF2) && scheme.Cipher.Algorithm.Equal(oidAES256CBC) &&
		unmarshalAll(scheme.KDF.Parameters.FullBytes, &kdf) && unmarshalAll(scheme.Cipher.Parameters.FullBytes, &iv) &&
		kdf.PRF.Algorithm.Equal(oidHMACSHA256) && kdf.Iterations > 0 && kdf.Iterations <= maxIterations &&
		len(kdf.Salt) >= 8 && len(kdf.Salt) <= 64 && len(iv) == 16 &&
		len(info.Data) == 64 // the 48 bytes of an Ed25519 private key and 16 of padding
}

func unmarshalAll(der []byte, into any) bool {
	rest, err := asn1.Unmarshal(der, into)
	return err == nil && len(rest) == 0
}
