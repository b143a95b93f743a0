// Package schema holds what is published about the files of this project: the
// SQL of the book. A stranger can read a book with these texts and general
// tools alone.
package schema

import _ "embed"

// Book is the SQL that makes an empty book (SQLite).
//
//go:embed book.sql
var Book string

// Lookup is the SQL of its look-up tables.
//
//go:embed lookup.sql
var Lookup string
