package book

import (
	"context"
	"crypto/rand"
	"database/sql"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"sync"

	"backleaf/record/safefile"
	"backleaf/schema"
)

var (
	// ErrNoBook: there is no such file.
	ErrNoBook = errors.New("there is no book here")
	// ErrNotBook: the file is something else.
	ErrNotBook = errors.New("this is not a book")
	// ErrTwoNames: the file has a second name (a hard link). Each would have a
	// log of its own, and two programs would write past each other.
	ErrTwoNames = errors.New("the file has more than one name: programs that use the other would write past this one")
	// ErrOtherLog: a backup was copied over a book that had left a log. To read
	// that log with it would destroy the backup.
	ErrOtherLog = errors.New("the log beside it is of the book that stood here before")
	// ErrNewer: the book was written by a newer program.
	ErrNewer = errors.New("this book is newer than this program")
)

const (
	applicationID = 0x424C4653 // "BLFS"
	rollbackMode  = 1          // in the header of a file that has no write-ahead log
	maxIdle       = 4          // readers kept at rest
)

// version is the version of the form of a book; a test has a next one.
var version int64 = 1

// Book is an open book. Its methods may be called from several goroutines.
type Book struct {
	// Random names a new journal; Open sets it to the system's own source.
	Random io.Reader

	seen  seen
	path  string
	aside string // folder of the copy that is read; empty: the book itself is
	db    *sql.DB
	newer bool      // the book was written by a newer program: it is only read
	look  freshness // of the look-up tables when it was opened

	mu     sync.Mutex // held while writing
	writer *session   // nil if the book was opened for reading

	rest   sync.Mutex
	idle   []*session // readers at rest
	closed bool       // readers are not put to rest any more
}

// Create makes a new book, which must not be there yet, and opens it. A run
// that is killed leaves no part of it under its name.
func Create(ctx context.Context, path string) (*Book, error) {
	if err := Vacant(path); err != nil {
		return nil, err
	}
	err := safefile.Create(path, 0o600, func(f *os.File) error {
		db, err := openFile(f.Name(), readWrite)
		if err != nil {
			return err
		}
		_, err = db.ExecContext(ctx, "BEGIN IMMEDIATE;\n"+schema.Book+schema.Lookup+madeBy()+"COMMIT;")
		return errors.Join(err, db.Close())
	})
	if err != nil {
		return nil, err
	}
	return Open(ctx, path)
}

// Open opens a book for reading and writing.
func Open(ctx context.Context, path string) (*Book, error) {
	return open(ctx, path, readWrite)
}

// OpenReadOnly opens a book that is only read. It may lie in a folder in which
// nothing can be written. What is committed while it is open may stay unseen.
func OpenReadOnly(ctx context.Context, path string) (*Book, error) {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real
	}
	if log, err := os.Stat(path + "-wal"); err == nil && log.Size() > 0 {
		if err := checkHeader(path, false); err != nil {
			return nil, fmt.Errorf("cannot open %s: %w", path, err)
		}
		if b, err := openAside(ctx, path); !errors.Is(err, errBusyLog) {
			return b, err
		}
	}
	// First as any reader; then with what can be read where nothing can be
	// written. Without a log there is nothing to share: the file is all there is.
	for _, how := range []access{shared, readOnly} {
		b, err := open(ctx, path, how)
		if !hasCode(err, codeCantOpen, codeReadOnly) {
			return b, err
		}
	}
	return open(ctx, path, frozen)
}

func open(ctx context.Context, path string, how access) (*Book, error) {
	fail := func(err error) (*Book, error) { return nil, fmt.Errorf("cannot open %s: %w", path, err) }
	// What is kept with a book, its log too, stands beside the real file.
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real
	}
	if err := checkHeader(path, how == readWrite); err != nil {
		return fail(err)
	}
	if how == readWrite {
		if err := onlyName(path); err != nil {
			return fail(err)
		}
	}
	db, err := openFile(path, how)
	if err != nil {
		return fail(err)
	}
	b := &Book{Random: rand.Reader, path: path, db: db}
	s, err := newSession(ctx, db)
	if err == nil {
		s.seen = &b.seen
		err = checkBook(ctx, s, how)
	}
	if err == nil {
		err = b.settle(ctx, s, how)
	}
	if err != nil {
		if s != nil {
			s.close()
		}
		db.Close()
		switch {
		case hasCode(err, codeNotADB):
			err = fmt.Errorf("%w: %w", ErrNotBook, err)
		case hasCode(err, codeCorrupt):
			err = damaged(err)
		case hasCode(err, codeCantOpen, codeReadOnly) && how == readWrite:
			err = fmt.Errorf("the file or its folder cannot be written to: %w", err)
		}
		return fail(err)
	}
	if how == readWrite {
		b.writer = s
	} else {
		b.idle = append(b.idle, s)
	}
	return b, nil
}

// onlyName refuses to write to a file that has a second name.
func onlyName(path string) error {
	n, err := names(path)
	if err == nil && n > 1 {
		err = ErrTwoNames
	}
	return err
}

// settle looks at the look-up tables and makes the first session ready. Stale
// ones are rebuilt: in a book that is opened for writing, else beside it.
func (b *Book) settle(ctx context.Context, s *session, how access) error {
	v, err := s.version()
	if err != nil {
		return err
	}
	b.newer = v > version
	if how == readWrite && b.newer {
		return ErrNewer
	}
	if how == readWrite && v < version {
		if err := s.migrate(ctx, v); err != nil {
			return err
		}
	}
	if b.look, err = s.lookups(); err != nil {
		return err
	}
	if b.newer {
		b.look = ahead // its tables may have another form altogether
	}
	if how != readWrite {
		return b.prepare(ctx, s)
	}
	switch b.look {
	case ahead:
		return ErrNewer
	case stale:
		if err := s.within(ctx, "BEGIN IMMEDIATE", func() error { return s.rebuild(ctx, false) }); err != nil {
			return err
		}
		b.look = fresh
	}
	return s.impatient(ctx)
}

// prepare makes a session a reader, which cannot write.
func (b *Book) prepare(ctx context.Context, s *session) error {
	if b.look != fresh {
		if err := s.within(ctx, "BEGIN", func() error { return s.rebuild(ctx, true) }); err != nil {
			return err
		}
	}
	_, err := s.conn.ExecContext(ctx, "PRAGMA query_only = 1")
	return err
}

// Newer reports that a newer program wrote the book. Its entries can be read
// and verified; what they add up to may be out of date, and it cannot be
// written to.
func (b *Book) Newer() bool { return b.newer }

// checkHeader looks at the file before SQLite does, so that a file of another
// program is not touched. Places: https://www.sqlite.org/fileformat2.html.
func checkHeader(path string, writing bool) error {
	switch info, err := os.Stat(path); {
	case errors.Is(err, fs.ErrNotExist):
		return ErrNoBook
	case err != nil:
		return err
	case !info.Mode().IsRegular():
		return ErrNotBook
	}
	f, err := safefile.Open(path, safefile.Unbounded)
	if err != nil {
		return err
	}
	defer f.Close()
	var head [100]byte
	if _, err := io.ReadFull(f, head[:]); err != nil || string(head[:16]) != "SQLite format 3\x00" ||
		binary.BigEndian.Uint32(head[68:]) != applicationID {
		return ErrNotBook
	}
	// Whoever begins to work with a backup marks it so before there is a log.
	if log, err := os.Stat(path + "-wal"); head[18] == rollbackMode && err == nil && log.Size() > 0 {
		return ErrOtherLog
	}
	if writing && int64(binary.BigEndian.Uint32(head[60:])) > version {
		return ErrNewer // before SQLite writes anything of its own
	}
	return nil
}

func checkBook(ctx context.Context, s *session, how access) error {
	if how == readWrite {
		// A backup has no write-ahead log; a book at work does.
		var mode string
		if err := s.conn.QueryRowContext(ctx, "PRAGMA journal_mode = WAL").Scan(&mode); err != nil {
			return err
		}
		if mode != "wal" {
			return fmt.Errorf("the database has journal mode %s instead of wal", mode)
		}
	}
	// A view in the place of a table could go on for ever.
	var strange string
	switch err := s.conn.QueryRowContext(ctx, `SELECT name FROM sqlite_schema WHERE type = 'view' OR
		name IN ('entry', 'hash', 'tip', 'head', 'private', 'setting') AND (sql NOT LIKE 'CREATE TABLE%' OR sql LIKE '% AS (%') LIMIT 1`).Scan(&strange); {
	case err == nil:
		return fmt.Errorf("%w: %s is no table that this program makes", ErrBroken, strange)
	case !errors.Is(err, sql.ErrNoRows):
		return err
	}
	if err := checkSettings(ctx, s.conn); err != nil {
		return err
	}
	var id int64
	if err := s.conn.QueryRowContext(ctx, "PRAGMA application_id").Scan(&id); err != nil {
		return err
	}
	if id != applicationID {
		return ErrNotBook
	}
	_, err := s.one("SELECT 1 FROM entry LIMIT 1", nil, new(int))
	return err
}

// version returns the version of the form of a book.
func (s *session) version() (v int64, err error) {
	err = s.conn.QueryRowContext(context.Background(), "PRAGMA user_version").Scan(&v)
	if err == nil && v < 1 {
		err = fmt.Errorf("%w: it has version %d", ErrNotBook, v)
	}
	return v, err
}

// Path returns the path by which the book was opened.
func (b *Book) Path() string { return b.path }

// Close closes the book.
func (b *Book) Close() error {
	b.mu.Lock()
	defer b.mu.Unlock()
	var errs []error
	b.rest.Lock()
	for _, s := range b.idle {
		errs = append(errs, s.close())
	}
	b.idle, b.closed = nil, true
	b.rest.Unlock()
	if b.writer != nil {
		errs = append(errs, b.writer.close())
		b.writer = nil
	}
	errs = append(errs, b.db.Close())
	if b.aside != "" {
		errs = append(errs, os.RemoveAll(b.aside))
	}
	return errors.Join(errs...)
}

// reader takes a resting session or makes one, which cannot write.
func (b *Book) reader(ctx context.Context) (*session, error) {
	b.rest.Lock()
	if n := len(b.idle); n > 0 {
		s := b.idle[n-1]
		b.idle = b.idle[:n-1]
		b.rest.Unlock()
		return s, nil
	}
	b.rest.Unlock()
	s, err := newSession(ctx, b.db)
	if err != nil {
		return nil, err
	}
	s.seen = &b.seen
	if err := b.prepare(ctx, s); err != nil {
		return nil, errors.Join(err, s.close())
	}
	return s, nil
}

// view runs f on one consistent state of the book.
func (b *Book) view(ctx context.Context, f func(*session) error) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	s, err := b.reader(ctx)
	if err != nil {
		return err
	}
	err = s.within(ctx, "BEGIN", func() error { return f(s) })
	b.rest.Lock()
	keep := !b.closed && len(b.idle) < maxIdle
	if keep {
		b.idle = append(b.idle, s)
	}
	b.rest.Unlock()
	if !keep {
		err = errors.Join(err, s.close())
	}
	return err
}

// update runs f in a transaction that writes.
func (b *Book) update(ctx context.Context, f func(*session) error) error {
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.writer == nil {
		return fmt.Errorf("the book was opened for reading only")
	}
	if err := errors.Join(onlyName(b.path), checkHeader(b.path, true)); err != nil {
		return err
	}
	err := b.writer.within(ctx, "BEGIN IMMEDIATE", func() error { return f(b.writer) })
	if hasCode(err, codeReadOnly, codeCantOpen) {
		err = fmt.Errorf("the file or its folder cannot be written to: %w", err)
	}
	return err
}
