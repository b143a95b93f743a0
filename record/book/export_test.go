package book

import (
	"context"

	"backleaf/record/form"
)

// SetFault lets a test see every step of an append and make it fail.
func (b *Book) SetFault(f func(step string) error) { b.writer.fault = f }

// PutRaw appends the bytes of entries that a later program might write.
func (b *Book) PutRaw(ctx context.Context, texts ...string) error {
	return b.update(ctx, func(s *session) error {
		d, err := newDraft(s, nil)
		if err != nil {
			return err
		}
		for _, text := range texts {
			e, err := form.Read([]byte(text))
			if err == nil {
				err = d.put(e, []byte(text))
			}
			if err != nil {
				return err
			}
		}
		return d.finish(ctx)
	})
}

// NextVersion makes this program one of the next version of the form for a
// while: it adds a table.
func NextVersion(sql string) (undo func()) {
	migrations[version] = sql
	version++
	return func() { version--; delete(migrations, version) }
}

// LookupForm is what the look-up tables are made by.
func LookupForm() (int, string) { return lookupVersion, lookupForm() }
