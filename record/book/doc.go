// Package book keeps the journal of a studio in one SQLite file.
//
// The form of the file is schema/book.sql. Each entry is stored as canonical
// JSON (RFC 8785, see package record) and hashed into a tree (RFC 6962) in
// the same transaction that updates the look-up tables. The look-up tables are
// only an index: [Book.Rebuild] makes them anew from the journal, and
// [Book.Verify] compares them with such a rebuild.
//
// # What is promised
//
//   - An append is whole or not there at all, and it is on the disk before
//     [Book.Append] returns (TestCrashTable, TestKilled).
//   - Several processes may write at once: each waits for its turn
//     (TestTwoWriters).
//   - Nothing is changed or removed; what was, by whatever means, is found and
//     named (TestTampering, TestEveryByte). Whoever holds the file can replace
//     all of it, with all its hashes: against that only a signed head helps
//     that is kept elsewhere.
//   - A backup is a verified copy, made while others write, and never takes
//     the place of a file (TestBackup).
//
// The private part of an entry (buyer, price) stands outside the journal and
// can be erased; the entry holds only its salted digest.
package book
