// Package deed makes and checks the signed record of one panel: what a
// certificate carries, and what a stranger can check with general tools.
//
// # record.json
//
// The record is one JSON object in the canonical form of RFC 8785. Its
// members, in that order:
//
//	backleaf     "record/1"
//	corrections  what later entries changed in earlier ones, told for a reader
//	effective    every corrected entry as it stands for this panel now
//	entries      the entries of the journal that this panel follows from
//	findings     what the rules of thumb said on the day of issue
//	gaps         what a reader would need and nobody recorded
//	head         size and root of the journal at that moment
//	issued       when the record was made, with offset
//	number       the number of the panel
//	photographs  the digests of its photographs
//	studio       maker and mark
//
// entries holds the exact objects of the journal, byte for byte, for their
// hashes must lead to the root: the studio as it stood, the life of its keys,
// the materials and lots that were used, everything that names the panel, and
// every correction of these. An entry that names many panels stays whole, so a
// record also shows the numbers of panels that were worked together with this
// one. Folded (package record) they give the panel; corrections, effective and
// photographs follow from them and are there for the eye. Findings and gaps
// are of the day.
//
// What is private (buyer, price, address) stands outside the journal and so
// never in a record; an entry holds at most a salted digest of it.
//
// # The other files
//
//	record.sig   raw Ed25519 signature over the bytes of record.json
//	studio.pem   the public key
//	head.txt     the head of the journal, a signed note
//	proof.json   inclusion proofs of exactly the entries of the record
//
// They prove that what the record shows stands in the journal, not that it
// shows all of it: whoever holds the key could leave an entry out. Only the
// book tells.
//
// Package seal gives their form. A signed statement for the paper names the
// SHA-256 of record.json.
//
// Meaning is never changed: a record of version 1 stays readable, and what is
// added gets a new version. TestSamePanel and TestOneByte hold the package to
// this, TestOpenSSL holds it against openssl.
package deed
