package book

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"time"

	"backleaf/record"
	"backleaf/record/form"
	"backleaf/schema"
)

// SetFault lets a test see every step of an append and make it fail.
func (b *Book) SetFault(f func(step string) error) { b.writer.fault = f }

// LastBackup is [Draft.LastBackup] beside nothing that is written.
func (b *Book) LastBackup(ctx context.Context) (at time.Time, ok bool, err error) {
	err = b.view(ctx, func(s *session) error { at, ok, err = (&Draft{s: s}).LastBackup(); return err })
	return at, ok, err
}

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

// LookupForm is what the look-up tables are made by, as the program has it and
// as it is.
func LookupForm() (version int, form, is string) {
	h := sha256.New()
	h.Write([]byte(schema.Lookup))
	for _, k := range record.Kinds() {
		var free func(prefix string, fs []record.Field)
		free = func(prefix string, fs []record.Field) {
			for _, f := range fs {
				if f.Free() {
					fmt.Fprintln(h, prefix+f.Name)
				}
				free(prefix+f.Name+"/", f.Fields)
			}
		}
		free(string(k)+"/", k.Fields())
	}
	return lookupVersion, lookupForm, hex.EncodeToString(h.Sum(nil))
}
