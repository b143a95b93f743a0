package seal

import (
	"bytes"
	"errors"

	"filippo.io/edwards25519"
)

var errWeakKey = errors.New("not a public key that a private key can have: under it, signatures that nobody made would hold")

// strong reports whether the bytes are those of a key that NewKey could make: a point of the curve, in its one encoding (RFC 8032 section 5.1.3), and
// not one of the eight whose order divides eight. RFC 8032 leaves the last two to the program, and crypto/ed25519 accepts them.
func (p PublicKey) strong() bool {
	point, err := new(edwards25519.Point).SetBytes(p[:])
	if err != nil || !bytes.Equal(point.Bytes(), p[:]) {
		return false
	}
	return point.MultByCofactor(point).Equal(edwards25519.NewIdentityPoint()) == 0
}
