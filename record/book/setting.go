package book

import (
	"context"
	"time"
)

// Setting returns a preference of this copy of the book; empty if not set.
func (b *Book) Setting(ctx context.Context, name string) (value string, err error) {
	err = b.view(ctx, func(s *session) error { value, err = s.setting(name); return err })
	return value, err
}

func (s *session) setting(name string) (value string, err error) {
	_, err = s.one("SELECT value FROM setting WHERE name = ?", []any{name}, &value)
	return value, err
}

// Setting is [Book.Setting] beside what is written.
func (d *Draft) Setting(name string) (string, error) { return d.s.setting(name) }

// SetSetting sets a preference of this copy; an empty value takes it away.
func (b *Book) SetSetting(ctx context.Context, name, value string) error {
	return b.update(ctx, func(s *session) error { return (&Draft{s: s}).SetSetting(name, value) })
}

// SetSetting is [Book.SetSetting] beside what is written.
func (d *Draft) SetSetting(name, value string) error {
	if value == "" {
		return d.s.exec("DELETE FROM setting WHERE name = ?", name)
	}
	return d.s.exec("INSERT INTO setting (name, value) VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET value = excluded.value", name, value)
}

const lastBackup = "last-backup"

// LastBackup returns when the book was last backed up; false if never.
func (d *Draft) LastBackup() (time.Time, bool, error) {
	v, err := d.Setting(lastBackup)
	if err != nil || v == "" {
		return time.Time{}, false, err
	}
	t, err := time.Parse(time.RFC3339, v)
	return t, err == nil, err
}
