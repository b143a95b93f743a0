// Package pdf reads and writes PDF files as objects (ISO 32000-1): it takes
// attachments out of a stranger's file, and lets record/paper complete a file
// of its own.
//
// A file may have plain cross-reference tables, cross-reference streams and
// object streams, updates and a linearised order (7.5). It is read as it is
// written: nothing is guessed, searched for or mended, since another program
// might mend it otherwise and show other bytes. A file that might lead another
// program to another document is refused, see [ErrAmbiguous]. What a stranger's file can
// make the reader do is bounded: bytes unpacked, objects, nesting, references
// to references, and bytes looked at, however its parts overlap. TestBounds
// holds the bounds.
//
// An encrypted file is not opened, see [ErrEncrypted].
//
// TestSavedAgain takes the attachments out of files that another program has
// saved again in each of these ways, and compares them with that program's.
package pdf
