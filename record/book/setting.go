package book

import (
	"context"
	"time"
)

// Setting returns a preference of this copy of the book; empty if not set.
func (b *Book) Setting(ctx context.Context, name string) (value string, err error) {
	err = b.view(ctx, func(s *session) error {
		_, err := s.one("SELECT value FROM setting WHERE name = ?", []any{name}, &value)
		return err
	})
	return value, err
}

// SetSetting sets a preference of this copy; an empty value takes it away.
func (b *Book) SetSetting(ctx context.Context, name, value string) error {
	return b.update(ctx, func(s *session) error {
		if value == "" {
			return s.exec("DELETE FROM setting WHERE name = ?", name)
		}
		return s.exec("INSERT INTO setting (name, value) VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET value = excluded.value", name, value)
	})
}

const lastBackup = "last-backup"

// LastBackup returns when the book was last backed up; false if never.
func (b *Book) LastBackup(ctx context.Context) (time.Time, bool, error) {
	v, err := b.Setting(ctx, lastBackup)
	if err != nil || v == "" {
		return time.Time{}, false, err
	}
	t, err := time.Parse(time.RFC3339, v)
	return t, err == nil, err
}
