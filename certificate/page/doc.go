// Package page draws the page behind the symbol: what a collector meets who
// scans a label or a certificate. It is a file for a plain host, and says what
// the papers say, drawn from the same words: the work and its photograph, what
// is dangerous, the build-up as a drawing and in words, care, how the
// certificates stand, what is not recorded, who made it.
//
// # What it carries
//
// A page carries the record, its signature, key, head and proof as data, and
// the studio's signed word ([seal.Page]) for what it states and for its
// pictures. Its script (check.js) checks all of that in the browser; without
// it the page is as readable, and says how to do it by hand. What a page states
// is hashed by [Stated], which the script does again over what the browser
// made of the file.
//
// Other files (style, script, pictures, the files to save) are assets named by
// their SHA-256, in the folder [Assets] beside the folders of the panels. The
// page asks nothing of any other place: its Content-Security-Policy says so.
//
// # What holds it
//
// The same record gives the same bytes. TestHostileText puts markup into every
// text of a record, TestDataIsRead reads the data back. In cmd/internal/sitecheck
// Chromium checks true and forged pages (TestChangedPages,
// TestForgedAndOldPages), and axe-core and an HTML validator look at them
// (TestAccessible, TestValid).
package page
