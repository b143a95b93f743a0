package book

import (
	"cmp"
	"context"
	"database/sql"
	"errors"
	"math/rand/v2"
	"sync"
	"time"
)

// session is one connection with its prepared statements. It serves one
// goroutine at a time.
//
// Its statements run without the caller's context, which would cost more than
// the statement itself; long work looks at the context between entries.
type session struct {
	conn  *sql.Conn
	stmts map[string]*sql.Stmt
	fault func(step string) error // fault injection in tests
	seen  *seen

	// Writes that wait for their turn on the other core, in a large import;
	// whatever is read comes after them.
	queue   chan func() error
	waiting sync.WaitGroup
	failed  error // of the first of them; what comes after it is not written
}

// writeBehind lets writes be done beside what comes until [session.writeAtOnce].
func (s *session) writeBehind() {
	s.queue = make(chan func() error, 256)
	go func(queue chan func() error) {
		for write := range queue {
			if s.failed == nil {
				s.failed = write()
			}
			s.waiting.Done()
		}
	}(s.queue)
}

// writeAtOnce ends it.
func (s *session) writeAtOnce() error {
	err := s.caughtUp()
	if s.queue != nil {
		close(s.queue)
	}
	s.queue, s.failed = nil, nil
	return err
}

// caughtUp waits until nothing waits to be written.
func (s *session) caughtUp() error {
	if s.queue == nil {
		return nil
	}
	s.waiting.Wait()
	return s.failed
}

func newSession(ctx context.Context, db *sql.DB) (*session, error) {
	c, err := db.Conn(ctx)
	if err != nil {
		return nil, err
	}
	if err := bound(c); err != nil {
		return nil, errors.Join(err, c.Close())
	}
	return &session{conn: c, stmts: map[string]*sql.Stmt{}, seen: &seen{}}, nil
}

func (s *session) close() error {
	var errs []error
	for _, st := range s.stmts {
		errs = append(errs, st.Close())
	}
	return errors.Join(append(errs, s.conn.Close())...)
}

// forget closes the prepared statements: the tables they name are about to
// change.
func (s *session) forget() {
	for _, st := range s.stmts {
		st.Close()
	}
	clear(s.stmts)
}

// prepare readies a statement that is run at once.
func (s *session) prepare(query string) (*sql.Stmt, error) {
	if err := s.caughtUp(); err != nil {
		return nil, err
	}
	return s.ready(query)
}

func (s *session) ready(query string) (*sql.Stmt, error) {
	if st := s.stmts[query]; st != nil {
		return st, nil
	}
	st, err := s.conn.PrepareContext(context.Background(), query)
	if err == nil {
		s.stmts[query] = st
	}
	return st, err
}

// exec runs a prepared statement.
func (s *session) exec(query string, args ...any) error {
	st, err := s.prepare(query)
	if err != nil {
		return err
	}
	_, err = st.Exec(args...)
	return err
}

// write is exec for a step of an append, at which tests let it fail.
func (s *session) write(step, query string, args ...any) error {
	return s.later(func() error {
		if err := s.at("before " + step); err != nil {
			return err
		}
		st, err := s.ready(query)
		if err == nil {
			_, err = st.Exec(args...)
		}
		if err == nil {
			err = s.at("after " + step)
		}
		return err
	})
}

// later does work after all that waits to be written, or at once.
func (s *session) later(work func() error) error {
	if s.queue == nil {
		return work()
	}
	s.waiting.Add(1)
	s.queue <- work
	return nil
}

func (s *session) at(step string) error {
	if s.fault == nil {
		return nil
	}
	return s.fault(step)
}

// one reads one row; ok is false if there is none.
func (s *session) one(query string, args []any, into ...any) (ok bool, err error) {
	st, err := s.prepare(query)
	if err != nil {
		return false, err
	}
	err = st.QueryRow(args...).Scan(into...)
	if errors.Is(err, sql.ErrNoRows) {
		return false, nil
	}
	return err == nil, err
}

// each calls f for every row.
func (s *session) each(query string, args []any, f func(scan func(...any) error) error) error {
	st, err := s.prepare(query)
	if err != nil {
		return err
	}
	rows, err := st.Query(args...)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		if err := f(rows.Scan); err != nil {
			return err
		}
	}
	return rows.Err()
}

// rows calls f with the values of every row; a query has one argument, or nil.
func (s *session) rows(query string, arg any, f func([]any)) error {
	st, err := s.prepare(query)
	if err != nil {
		return err
	}
	var args []any
	if arg != nil {
		args = []any{arg}
	}
	rows, err := st.Query(args...)
	if err != nil {
		return err
	}
	defer rows.Close()
	columns, err := rows.Columns()
	for err == nil && rows.Next() {
		row, into := make([]any, len(columns)), make([]any, len(columns))
		for i := range row {
			into[i] = &row[i]
		}
		if err = rows.Scan(into...); err == nil {
			f(row)
		}
	}
	return cmp.Or(err, rows.Err())
}

// within runs f in one transaction, begun with the given statement.
func (s *session) within(ctx context.Context, begin string, f func() error) error {
	err := s.patiently(ctx, func() error { return s.run(ctx, begin) })
	if err == nil {
		err = f()
	}
	if err == nil {
		err = s.at("before commit")
	}
	if err == nil {
		if err = s.run(context.Background(), "COMMIT"); err == nil {
			return s.at("after commit")
		}
	}
	// A failed commit may have ended the transaction already, and a cancelled
	// begin may have begun one: afterwards there is none, and that is what is
	// wanted.
	s.conn.ExecContext(context.Background(), "ROLLBACK")
	return err
}

// run is exec with a context, by which a writer may stop to wait.
func (s *session) run(ctx context.Context, query string) error {
	st, err := s.ready(query)
	if err == nil {
		_, err = st.ExecContext(ctx)
	}
	return err
}

// patience is how long a writer waits for its turn.
const patience = 2 * time.Minute

// patiently tries again while another process is writing. SQLite's own waiting
// looks only every tenth of a second and can miss its turn for minutes when
// others write without a pause; see impatient.
func (s *session) patiently(ctx context.Context, f func() error) error {
	for end := time.Now().Add(patience); ; {
		err := f()
		if !hasCode(err, codeBusy) || time.Now().After(end) {
			return err
		}
		select {
		case <-ctx.Done():
			return ctx.Err()
		case <-time.After(time.Millisecond + rand.N(2*time.Millisecond)):
		}
	}
}

// impatient makes SQLite answer at once when another process is writing.
func (s *session) impatient(ctx context.Context) error {
	_, err := s.conn.ExecContext(ctx, "PRAGMA busy_timeout = 0")
	return err
}
