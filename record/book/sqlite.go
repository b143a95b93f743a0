package book

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"net/url"
	"path/filepath"
	"strings"

	"modernc.org/sqlite"
)

// The only file that knows the driver.

// access is how a file is opened.
type access string

const (
	readWrite access = "mode=rw&_txlock=immediate"
	// shared reads with the locks and the log of a book at work.
	shared   access = "mode=rw"
	readOnly access = "mode=ro"
	// frozen reads without locks, from a folder in which no lock can be made.
	frozen access = "mode=ro&immutable=1"
)

// busyMillis is how long a reader waits while another process recovers the log.
const busyMillis = 60_000

// settings hold for every connection and are read back after opening.
var settings = [][2]string{
	{"busy_timeout", fmt.Sprint(busyMillis)},
	{"synchronous", "2"}, // FULL: a commit is on the disk before it is acknowledged
	{"foreign_keys", "1"},
	{"recursive_triggers", "1"}, // so that REPLACE runs the guards too
	{"secure_delete", "1"},      // what is erased is overwritten
	{"trusted_schema", "0"},
	{"cell_size_check", "1"},
}

// dsn names a file for the driver. The path is percent-encoded and always has
// the prefix "file:", without which the driver ignores the mode.
func dsn(path string, how access) (string, error) {
	abs, err := filepath.Abs(path)
	if err != nil {
		return "", err
	}
	p := filepath.ToSlash(abs)
	if !strings.HasPrefix(p, "/") {
		p = "/" + p
	}
	name := (&url.URL{Scheme: "file", Path: p}).String() + "?" + string(how)
	for _, s := range settings {
		name += "&_pragma=" + s[0] + "(" + s[1] + ")"
	}
	return name, nil
}

// openFile opens a database file that must be there already.
func openFile(path string, how access) (*sql.DB, error) {
	name, err := dsn(path, how)
	if err != nil {
		return nil, err
	}
	db, err := sql.Open("sqlite", name)
	if err == nil {
		db.SetMaxIdleConns(-1) // a session that is closed leaves no temporary tables to the next
	}
	return db, err
}

// openMemory opens an empty database in memory, for one connection.
func openMemory() (*sql.DB, error) {
	db, err := sql.Open("sqlite", "file::memory:?_pragma=foreign_keys(1)&_pragma=recursive_triggers(1)")
	if err == nil {
		db.SetMaxOpenConns(1)
	}
	return db, err
}

// checkSettings reads the settings back: a misspelt pragma is silent.
func checkSettings(ctx context.Context, c *sql.Conn) error {
	for _, s := range settings {
		var got string
		if err := c.QueryRowContext(ctx, "PRAGMA "+s[0]).Scan(&got); err != nil {
			return err
		}
		if got != s[1] {
			return fmt.Errorf("the database has %s %s instead of %s", s[0], got, s[1])
		}
	}
	return nil
}

// maxValueBytes bounds a value that SQLite reads or makes: an entry that names
// all panels of a large studio has some megabytes.
const maxValueBytes = 16 << 20

// bound keeps a hostile book from filling the memory with one value.
func bound(c *sql.Conn) error {
	const limitLength = 0 // SQLITE_LIMIT_LENGTH, https://www.sqlite.org/c3ref/c_limit_attached.html
	_, err := sqlite.Limit(c, limitLength, maxValueBytes)
	return err
}

// Primary result codes of SQLite (https://www.sqlite.org/rescode.html).
const (
	codeBusy     = 5
	codeReadOnly = 8
	codeCorrupt  = 11
	codeCantOpen = 14
	codeNotADB   = 26
)

// hasCode reports that an error carries one of these primary result codes.
func hasCode(err error, codes ...int) bool {
	var e *sqlite.Error
	if !errors.As(err, &e) {
		return false
	}
	for _, c := range codes {
		if e.Code()&0xff == c {
			return true
		}
	}
	return false
}
