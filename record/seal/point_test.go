package seal_test

import (
	"crypto/ed25519"
	"encoding/hex"
	"strings"
	"testing"

	"filippo.io/edwards25519"

	"backleaf/record/seal"
)

// Encodings of the eight points of small order: those in their one encoding, then those in another (Chalkias, Garillot, Nikolaenko, "Taming the many
// EdDSAs", IACR ePrint 2020/1244, table of small order points; typed from memory, so TestWeakKeys first finds that each is what it is said to be).
var (
	smallOrder = []string{
		"0100000000000000000000000000000000000000000000000000000000000000",
		"ecffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff7f",
		"0000000000000000000000000000000000000000000000000000000000000000",
		"0000000000000000000000000000000000000000000000000000000000000080",
		"26e8958fc2b227b045c3f489f2ef98f0d5dfac05d3c63339b13802886d53fc05",
		"26e8958fc2b227b045c3f489f2ef98f0d5dfac05d3c63339b13802886d53fc85",
		"c7176a703d4dd84fba3c0b760d10670f2a2053fa2c39ccc64ec7fd7792ac037a",
		"c7176a703d4dd84fba3c0b760d10670f2a2053fa2c39ccc64ec7fd7792ac03fa",
	}
	smallOrderOtherwise = []string{
		"0100000000000000000000000000000000000000000000000000000000000080",
		"ecffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff",
		"eeffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff7f",
		"eeffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff",
		"edffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff7f",
		"edffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff",
	}
)

func weak(t *testing.T, raw string) seal.PublicKey { return seal.PublicKey(unhex(t, raw)) }

func TestWeakKeys(t *testing.T) {
	for i, raw := range append(smallOrder, smallOrderOtherwise...) {
		point, err := new(edwards25519.Point).SetBytes(unhex(t, raw))
		if err != nil || new(edwards25519.Point).MultByCofactor(point).Equal(edwards25519.NewIdentityPoint()) != 1 ||
			(hex.EncodeToString(point.Bytes()) == raw) != (i < len(smallOrder)) {
			t.Fatalf("%s is not such a point: %v", raw, err)
		}
		if _, err := seal.ParsePublicPEM(weak(t, raw).PEM()); err == nil {
			t.Errorf("%s was accepted", raw)
		}
	}
	// Numbers at and above 2^255 - 19, of any order: a second encoding of 0 to 18 (RFC 8032 section 5.1.3, step 1).
	onCurve := 0
	for low := 0xed; low <= 0xff; low++ {
		for _, high := range []byte{0x7f, 0xff} {
			raw := []byte(strings.Repeat("\xff", 32))
			raw[0], raw[31] = byte(low), high
			if _, err := new(edwards25519.Point).SetBytes(raw); err == nil {
				onCurve++
			}
			if _, err := seal.ParsePublicPEM(seal.PublicKey(raw).PEM()); err == nil {
				t.Errorf("%x was accepted", raw)
			}
		}
	}
	if onCurve < 10 {
		t.Errorf("only %d of them are on the curve", onCurve)
	}
	if _, err := seal.ParsePublicPEM(weak(t, "0200000000000000000000000000000000000000000000000000000000000000").PEM()); err == nil {
		t.Error("a point that is not on the curve was accepted")
	}
}

// What a key of order one would do: one signature, made by nobody, holds for every record. The library accepts it.
func TestOneSignatureForAll(t *testing.T) {
	key, sig := weak(t, smallOrder[0]), append(unhex(t, smallOrder[0]), make([]byte, 32)...)
	for _, record := range []string{record1, strings.Replace(record1, "0142", "0143", 1)} {
		if !ed25519.Verify(key[:], []byte(record), sig) {
			t.Fatal("the library refuses it: this test has nothing to show")
		}
	}
	if _, err := seal.ParsePublicPEM(key.PEM()); err == nil {
		t.Error("the key was accepted")
	}
}
