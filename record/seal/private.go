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
	// ErrPassphraseWrong: the private key does not open with the passphrase given, or the file is damaged.
	ErrPassphraseWrong = errors.New("the passphrase does not open the private key, or its file is damaged")

	errPrivateKey = errors.New("it is another file than a private key, or damaged (expected: Ed25519, PKCS#8, PEM)")
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
	e, ok := parseEncrypted(der)
	if !ok {
		return Key{}, errPrivateKey
	}
	if len(passphrase) == 0 {
		return Key{}, ErrPassphraseNeeded
	}
	return e.decrypt(passphrase)
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

// encrypted is what is needed to decrypt a private key.
type encrypted struct {
	kdf  kdfParams
	iv   []byte
	data []byte
}

const (
	plainBytes  = 48 // the PKCS#8 DER of an Ed25519 private key
	paddedBytes = plainBytes + 16
)

// parseEncrypted reads the one kind of container that this package writes, in its one spelling. A huge count would occupy the machine for hours.
func parseEncrypted(der []byte) (encrypted, bool) {
	var info encryptedInfo
	var scheme pbes2Params
	var e encrypted
	if !unmarshal(der, &info) || !unmarshal(info.Algorithm.Parameters.FullBytes, &scheme) ||
		!unmarshal(scheme.KDF.Parameters.FullBytes, &e.kdf) || !unmarshal(scheme.Cipher.Parameters.FullBytes, &e.iv) {
		return encrypted{}, false
	}
	e.data = info.Data
	if e.kdf.Iterations < 1 || e.kdf.Iterations > maxIterations || len(e.kdf.Salt) < 8 || len(e.kdf.Salt) > 64 || len(e.iv) != 16 ||
		len(e.data) != paddedBytes {
		return encrypted{}, false
	}
	e.kdf.PRF = pkix.AlgorithmIdentifier{Algorithm: oidHMACSHA256, Parameters: asn1.NullRawValue}
	scheme.KDF = pkix.AlgorithmIdentifier{Algorithm: oidPBKDF2, Parameters: raw(e.kdf)}
	scheme.Cipher = pkix.AlgorithmIdentifier{Algorithm: oidAES256CBC, Parameters: raw(e.iv)}
	info.Algorithm = pkix.AlgorithmIdentifier{Algorithm: oidPBES2, Parameters: raw(scheme)}
	return e, bytes.Equal(raw(info).FullBytes, der)
}

// decrypt uses the library's parts instead of its reader, which checks neither the padding nor what follows the key.
func (e encrypted) decrypt(passphrase []byte) (Key, error) {
	kdf := pkcs8.PBKDF2Opts{IterationCount: e.kdf.Iterations, HMACHash: crypto.SHA256}
	secret, _, err := kdf.DeriveKey(passphrase, e.kdf.Salt, pkcs8.AES256CBC.KeySize())
	if err != nil {
		return Key{}, err
	}
	plain, err := pkcs8.AES256CBC.Decrypt(secret, e.iv, e.data)
	if err != nil {
		return Key{}, err
	}
	k, err := privateFromDER(plain[:plainBytes])
	if err != nil || !bytes.Equal(plain[plainBytes:], bytes.Repeat([]byte{16}, 16)) {
		return Key{}, ErrPassphraseWrong
	}
	return k, nil
}

func unmarshal(der []byte, into any) bool {
	_, err := asn1.Unmarshal(der, into)
	return err == nil
}

// raw returns a value's DER, or nothing if it has none, which then equals no input.
func raw(value any) asn1.RawValue {
	der, _ := asn1.Marshal(value)
	return asn1.RawValue{FullBytes: der}
}
