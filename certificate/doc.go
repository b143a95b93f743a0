// Package certificate draws the certificate of a finished work: a front for the
// wall and a reverse for the file, A4 or Letter, printed on one sheet or two.
//
// The front shows the work first: the photograph as large as its proportions
// and the page allow, title, maker, date, medium, dimensions (after Cataloging
// Cultural Objects 3.2.1), how it is signed and inscribed, what is dangerous,
// the maker's statement above the room for a hand and a round stamp of 35 mm, the
// number that stands on the back of the panel, and the whole fingerprint of the
// studio's key. The reverse repeats title,
// maker, number and digest, so that the two cannot be parted, and holds the
// build-up as a drawing, care, what is not recorded (with the categories of
// Object ID), what was corrected, what the certificate is not, and how to check
// it. What the reverse has no room for goes to further pages, and it says so.
// Text to be read is 9 pt at least.
//
// The file is built to PDF/A-3b and carries record.json and, if the studio has
// a key, what proves it (package deed). A symbol on the reverse holds the signed
// statement, so that the paper alone can be checked: TestSymbolsAreRead reads
// it back from the page, TestOpenSSL checks the files with openssl alone,
// TestPreflight and TestA3bRules hold the file against the archive format.
//
// A preview has the layout that will be issued, with the room kept for what is
// made then (TestPreview). The buyer's name and the price stand on the page only
// if they are given. The same input gives the same bytes.
package certificate
