package book

import (
	"context"
	"fmt"
)

// migrations holds, for each version of the form of a book but the last, what
// makes the next one of it: SQL that adds tables or guards. The table of
// entries, what stands in it, and the hashes never change.
var migrations = map[int64]string{}

// migrate brings an older book to the version of this program, in one
// transaction: a run that is killed leaves the older book.
func (s *session) migrate(ctx context.Context, from int64) error {
	s.forget()
	err := s.within(ctx, "BEGIN IMMEDIATE", func() error {
		for v := from; v < version; v++ {
			sql, ok := migrations[v]
			if !ok {
				return fmt.Errorf("there is no way from version %d to %d", v, v+1)
			}
			if _, err := s.conn.ExecContext(ctx, sql+fmt.Sprintf("\nPRAGMA user_version = %d;", v+1)); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return fmt.Errorf("cannot bring the book from version %d to %d: %w", from, version, err)
	}
	return nil
}
