package book

import (
	"database/sql"
	"reflect"
)

// compareRows runs one query on both sides and calls differ for the first
// pair of rows that are not the same; a side that has ended is nil.
func compareRows(mine, fresh *session, query string, differ func(mine, fresh []any) error) error {
	a, err := openRows(mine, query)
	if err != nil {
		return err
	}
	defer a.Close()
	b, err := openRows(fresh, query)
	if err != nil {
		return err
	}
	defer b.Close()
	for {
		x, err := nextRow(a)
		if err != nil {
			return err
		}
		y, err := nextRow(b)
		if err != nil {
			return err
		}
		if x == nil && y == nil {
			return nil
		}
		if !reflect.DeepEqual(x, y) {
			return differ(x, y)
		}
	}
}

func openRows(s *session, query string) (*sql.Rows, error) {
	st, err := s.prepare(query)
	if err != nil {
		return nil, err
	}
	return st.Query()
}

// nextRow returns the next row, nil at the end.
func nextRow(rows *sql.Rows) ([]any, error) {
	if !rows.Next() {
		return nil, rows.Err()
	}
	cols, err := rows.Columns()
	if err != nil {
		return nil, err
	}
	row, into := make([]any, len(cols)), make([]any, len(cols))
	for i := range row {
		into[i] = &row[i]
	}
	return row, rows.Scan(into...)
}
