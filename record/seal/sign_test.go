package seal_test

import (
	"bytes"
	"crypto/ed25519"
	"encoding/hex"
	"errors"
	"strings"
	"testing"

	"backleaf/record/seal"
)

// RFC 8032 section 7.1, TEST 1 to 3 and TEST SHA(abc).
var rfc8032 = []struct{ seed, public, message, signature string }{
	{test1Seed, test1Public, "",
		"e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b"},
	{"4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb", "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c", "72",
		"92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00"},
	{"c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7", "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025", "af82",
		"6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a"},
	{"833fe62409237b9d62ec77587520911e9a759cec1d19755b7da901b96dca3d42", "ec172b93ad5e563bf4932c70e1245034c35467ef2efd4d64ebf819683467e2bf",
		"ddaf35a193617abacc417349ae20413112e6fa4e89a97ea20a9eeee64b55d39a2192992a274fc1a836ba3c23a3feebbd454d4423643ce80e2a9ac94fa54ca49f",
		"dc2a4459e7369633a52b1bf277839a00201009a3efbf3ecb69bea2186c26b58909351fc9ac90b3ecfdfbc7c66431e0303dca179c138ac17ad9bef1177331a704"},
}

// The messages of RFC 8032 are not records, so the keys are checked through the package and the signatures on the same seed and public key.
func TestRFC8032(t *testing.T) {
	for i, v := range rfc8032 {
		k, err := seal.KeyFromSeed(unhex(t, v.seed))
		if err != nil {
			t.Fatal(err)
		}
		if got := hex.EncodeToString(pub(k)); got != v.public {
			t.Errorf("case %d: public key %s, want %s", i, got, v.public)
		}
		sig := ed25519.Sign(ed25519.NewKeyFromSeed(k.Seed()), unhex(t, v.message))
		if got := hex.EncodeToString(sig); got != v.signature {
			t.Errorf("case %d: signature %s, want %s", i, got, v.signature)
		}
		if !ed25519.Verify(pub(k), unhex(t, v.message), sig) {
			t.Errorf("case %d: signature does not hold", i)
		}
		if _, err := k.SignRecord(unhex(t, v.message)); err == nil {
			t.Errorf("case %d: signed as a record", i)
		}
	}
}

const record1 = `{"backleaf":"record/1","number":"KB26-0142-1","title":"Évening"}`

func TestSignRecord(t *testing.T) {
	k := key1(t)
	sig, err := k.SignRecord([]byte(record1))
	if err != nil || len(sig) != seal.SignatureSize {
		t.Fatalf("%d bytes, %v", len(sig), err)
	}
	if err := k.Public().VerifyRecord([]byte(record1), sig); err != nil {
		t.Error(err)
	}
	if !ed25519.Verify(pub(k), []byte(record1), sig) {
		t.Error("not the plain signature over the exact bytes")
	}
	if err := seal.DemoKey().Public().VerifyRecord([]byte(record1), sig); !errors.Is(err, seal.ErrSignature) {
		t.Errorf("another key: %v", err)
	}
	for _, n := range []int{0, 63, 65} {
		if err := k.Public().VerifyRecord([]byte(record1), make([]byte, n)); err == nil {
			t.Errorf("signature of %d bytes accepted", n)
		}
	}
}

func TestSignRecordRefuses(t *testing.T) {
	k := key1(t)
	for name, s := range map[string]string{
		"nothing":       "",
		"another type":  `{"a":1}`,
		"a note":        "backleaf/KB\n1\n",
		"white space":   strings.Replace(record1, ",", ", ", 1),
		"order":         `{"backleaf":"record/1","b":1,"a":2}`,
		"twice":         `{"backleaf":"record/1","c":1,"c":2}`,
		"number":        `{"backleaf":"record/1","c":1.0}`,
		"cut short":     record1[:len(record1)-1],
		"text after":    record1 + "\n",
		"invalid UTF-8": `{"backleaf":"record/1","c":"` + "\xff" + `"}`,
		"too long":      `{"backleaf":"record/1","c":"` + strings.Repeat("x", seal.MaxRecordBytes) + `"}`,
	} {
		if _, err := k.SignRecord([]byte(s)); err == nil {
			t.Errorf("%s: signed", name)
		}
	}
	if _, err := (seal.Key{}).SignRecord([]byte(record1)); err == nil {
		t.Error("signed without a key")
	}
}

// Every bit of a record and of its signature, flipped, is refused.
func TestRecordFlips(t *testing.T) {
	k := key1(t)
	sig, err := k.SignRecord([]byte(record1))
	if err != nil {
		t.Fatal(err)
	}
	eachFlip([]byte(record1), func(i int, changed []byte) {
		if k.Public().VerifyRecord(changed, sig) == nil {
			t.Errorf("record byte %d changed: still holds", i)
		}
	})
	eachFlip(sig, func(i int, changed []byte) {
		if k.Public().VerifyRecord([]byte(record1), changed) == nil {
			t.Errorf("signature byte %d changed: still holds", i)
		}
	})
	p := k.Public()
	eachFlip(p[:], func(i int, changed []byte) {
		if seal.PublicKey(changed).VerifyRecord([]byte(record1), sig) == nil {
			t.Errorf("key byte %d changed: still holds", i)
		}
	})
}

// eachFlip calls f with data changed in one bit, for every bit.
func eachFlip(data []byte, f func(i int, changed []byte)) {
	for i := range data {
		for bit := range 8 {
			changed := bytes.Clone(data)
			changed[i] ^= 1 << bit
			f(i, changed)
		}
	}
}

// eachEdit calls f with data changed in one bit, with one byte doubled, and with one byte taken out, for every byte.
func eachEdit(data []byte, f func(i int, changed []byte)) {
	eachFlip(data, f)
	for i := range data {
		f(i, append(bytes.Clone(data[:i+1]), data[i:]...))
		f(i, append(bytes.Clone(data[:i]), data[i+1:]...))
	}
}
