// Package certificate draws the certificate of a finished work: one page, A4
// or Letter, that its owner can frame and that anyone can check.
//
// The page holds the photograph, what a cataloguer asks for (the categories of
// Object ID; dimensions after Cataloging Cultural Objects 3.2.1), the build-up
// in words and as a drawing, care, the maker's statement, what the certificate
// is not, places for signature, date and stamp, and how to check it. What is
// not recorded is said to be so. What does not fit at a smaller size goes to a
// second page, and the first says what stands there.
//
// The file is built to PDF/A-3b and carries record.json and, if the studio has
// a key, what proves it (package deed). A symbol on the page holds the signed
// statement, so that the paper alone can be checked: TestSymbolsAreRead reads
// it back from the page, TestOpenSSL checks the files with openssl alone,
// TestPreflight and TestA3bRules hold the file against the archive format.
//
// The buyer's name and the price stand on the page only if they are given. The
// same input gives the same bytes.
package certificate
