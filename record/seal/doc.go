// Package seal holds the keys, hashes and proofs of a book: what lets a stranger check, with openssl and sha256sum alone, that a panel's
// record is the one the studio signed and that its entries stand in the studio's journal.
//
// It knows nothing of panels, papers or storage: it takes bytes and gives bytes.
//
// # Keys
//
// A studio has one Ed25519 key pair (RFC 8032). The public key is a PEM file in SubjectPublicKeyInfo form (RFC 8410), the private key a PEM
// file in PKCS#8 form, encrypted when a passphrase is set (PBES2 of RFC 8018: PBKDF2 with HMAC-SHA-256 and 600 000 iterations, AES-256-CBC).
// openssl reads all three. The fingerprint of a key is the SHA-256 of its SubjectPublicKeyInfo DER:
//
//	openssl pkey -pubin -in studio.pem -outform DER | sha256sum
//
// It is printed as sixteen groups of four hexadecimal digits; where room is short, the first four groups.
//
// # What is signed
//
// A key signs two kinds of bytes, and one can never pass for the other:
//
//   - A record (record.json) is RFC 8785 canonical JSON that begins with [RecordPrefix], so its first byte is "{". Its signature
//     (record.sig) is the raw 64 bytes of Ed25519 over exactly those bytes.
//   - A note (C2SP signed-note) begins with a line that begins with the origin of the journal, "backleaf/" and the studio mark. Its
//     signature stands in the note itself and covers the text up to and including the newline before the blank line.
//
// There are five kinds of note, told apart by their first line:
//
//	backleaf/KB                    a head: size and root of the journal (C2SP tlog-checkpoint)
//	backleaf/KB panel statement    what a certificate's second QR symbol says
//	backleaf/KB key succession     a retired key names the next one
//	backleaf/KB panel page         what the page of a panel states
//	backleaf/KB status             how the papers of a studio stand on a day
//
// The origin is a name without a scheme, as C2SP asks, but not a domain: a studio need not own one. Two studios may carry the same mark;
// only the key tells them apart.
//
// # One spelling
//
// Whatever a parser of this package accepts is written back as the same bytes: no second spelling of a number, a base64 text or a line
// passes. A note carries exactly one signature. Fuzz tests hold every parser to this.
//
// # The tree
//
// Entries are the leaves of an RFC 6962 hash tree with SHA-256: a leaf is SHA-256(0x00 || entry), a node SHA-256(0x01 || left || right).
// A head gives the number of leaves and the root.
//
// # What a signature does not say
//
// A signature that holds says that the owner of the key signed these bytes. It does not say who that is, nor that what was recorded is true.
//
// Tests hold the package against RFC 8032 section 7.1, RFC 8037 appendix A, the tree of RFC 6962 section 2.1 with the figures of the
// Certificate Transparency reference tests, the example of C2SP signed-note, and openssl.
package seal
