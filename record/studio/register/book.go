package register

import (
	"context"
	"errors"
	"fmt"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/kept"
	"backleaf/record/studio/keys"
	"backleaf/record/studio/verify"
)

// Books reads the books among what is checked. It is a [verify.Books].
type Books struct {
	Progress studio.Progress
	Quick    bool // the pages of a deposit are not made anew
}

// Book says what holds of a book: the journal, its look-up tables, the heads,
// the photographs and papers beside it, and its key file.
func (k Books) Book(ctx context.Context, name string) []deed.Result {
	var j judgement
	b, err := book.OpenReadOnly(ctx, name)
	if err != nil {
		j.say(deed.Fails, "whole-book-fails", deed.Why(err))
		return j
	}
	defer b.Close()
	r, err := b.Verify(ctx, k.Progress.Of("entries"))
	if err != nil {
		j.say(deed.Fails, "whole-book-fails", deed.Why(err))
		return j
	}
	j.say(deed.Holds, "whole-book-holds", record.With("entries", r.Entries), record.With("root", fmt.Sprintf("%x", r.Root[:])))
	for _, m := range r.Remarks {
		j.say(deed.Unknown, "remark", record.With("text", m))
	}
	for _, m := range r.Missing {
		j.say(deed.Unknown, "private-elsewhere", record.With("entry", record.EntryRef(m)))
	}
	if b.Newer() {
		j.say(deed.Unknown, "whole-book-form-newer")
	}
	if r.Newer > 0 {
		j.say(deed.Unknown, "whole-book-newer", record.With("n", r.Newer))
		j[len(j)-1].Newer = true
	}
	if err = j.files(ctx, b, name); err == nil {
		err = j.heads(ctx, b, name)
	}
	if err != nil {
		j.say(deed.Fails, "whole-book-fails", deed.Why(err))
	}
	return j
}

// files looks at what is kept beside a book.
func (j *judgement) files(ctx context.Context, b *book.Book, path string) error {
	n, good := map[string]int{}, map[string]int{}
	err := kept.Each(ctx, b, func(f kept.File) error {
		n[f.Folder]++
		switch err := kept.Check(path, f); {
		case err == nil:
			good[f.Folder]++
		case f.Private && errors.Is(err, kept.ErrMissing): // a deposit holds none
			n[f.Folder]--
			j.say(deed.Unknown, "private-paper-elsewhere", record.With("entry", record.EntryRef(f.Entry)), record.With("panel", f.Panel))
		default:
			code := "kept-file-bad"
			if f.Panel == "" {
				code = "kept-mark-bad"
			}
			j.say(deed.Fails, code, record.With("entry", record.EntryRef(f.Entry)), record.With("panel", f.Panel), record.With("what", record.Code(f.Folder)), deed.Why(err))
		}
		return nil
	})
	for _, folder := range []string{kept.Photographs, kept.Papers} {
		if n[folder] > 0 {
			v := deed.Holds
			if good[folder] < n[folder] {
				v = deed.Fails
			}
			j.say(v, "kept-"+folder, record.With("n", n[folder]), record.With("good", good[folder]))
		}
	}
	return err
}

// heads says how far the newest signed head reaches, and what a rewrite of the
// whole book would need to stay unseen.
func (j *judgement) heads(ctx context.Context, b *book.Book, path string) error {
	r, err := Of(ctx, b)
	if err != nil {
		return err
	}
	heads, err := b.Heads(ctx)
	if err != nil {
		return err
	}
	newest := int64(0)
	for _, h := range heads {
		signed, err := r.openHead([]byte(h.Note))
		if err == nil && (signed.Size != h.Size || signed.Root != h.Root) {
			err = errors.New("its note speaks of another one")
		}
		if err != nil {
			j.say(deed.Fails, "kept-head-wrong", record.With("entries", h.Size), deed.Why(err))
			continue
		}
		newest = max(newest, h.Size)
	}
	issued, err := r.certificates(ctx, j, path)
	if err != nil {
		return err
	}
	if newest > 0 {
		j.say(deed.Holds, "newest-head", record.With("n", len(heads)), record.With("reaches", newest), record.With("after", r.size-newest))
	}
	current, ok := r.ring.Current()
	switch {
	case !ok:
		kept := record.No
		if newest > 0 || issued > 0 {
			kept = record.Yes
		}
		j.say(deed.Unknown, "rewrite-without-key", record.With("kept", kept))
		return nil
	case keys.There(path):
		j.keyFile(path, current)
	default:
		j.say(deed.Unknown, "key-file-missing", record.With("file", keys.File(path)))
	}
	if newest == 0 && issued == 0 {
		j.say(deed.Unknown, "rewrite-without-head")
	} else {
		j.say(deed.Unknown, "rewrite-unseen", record.With("key", current.Fingerprint().Short()))
	}
	return nil
}

// certificates holds the kept certificates against the journal: each carries a signed
// head of the day on which it was issued. It returns how many do.
func (r *Register) certificates(ctx context.Context, j *judgement, path string) (n int, err error) {
	one := func(p *record.Panel, c record.Done[record.Issued]) error {
		f, ok := kept.Named(c.Body)
		if !ok {
			return nil
		}
		data, err := kept.Read(path, f)
		if err != nil {
			return nil // it was said
		}
		e := verify.Read(f.Name, data)[0]
		if e.Unread != nil || e.Files.Head == nil {
			return nil // it was issued without a key
		}
		h, err := r.openHead(e.Files.Head)
		if err == nil && seal.DigestOf(e.Files.Record).String() != c.Body.Record {
			err = errors.New("its record is not the one on record")
		}
		if err == nil {
			same, failed := r.begins(ctx, h.Size, h.Root)
			if failed != nil {
				return failed
			}
			if !same {
				err = fmt.Errorf("the journal does not begin with the %d entries of its signed head", h.Size)
			}
		}
		if err != nil {
			j.say(deed.Fails, "kept-certificate-parts", record.With("entry", record.EntryRef(c.Seq)), record.With("panel", p.Number), deed.Why(err))
			return nil
		}
		n++
		return nil
	}
	err = r.book.Walk(ctx, book.Narrow{Kinds: []record.Kind{record.Issued{}.Kind()}}, func(p *record.Panel) error {
		for _, c := range record.Each[record.Issued](p) {
			if err := one(p, c); err != nil {
				return err
			}
		}
		return nil
	})
	return n, err
}

// keyFile says whether the key file beside a book is that of its current key,
// where it can be opened without asking anybody.
func (j *judgement) keyFile(path string, current seal.PublicKey) {
	file := record.With("file", keys.File(path))
	k, loose, err := seal.LoadKey(keys.File(path), nil)
	switch {
	case errors.Is(err, seal.ErrPassphraseNeeded):
		j.say(deed.Unknown, "key-file-closed", file)
	case err != nil:
		j.say(deed.Fails, "key-file-unreadable", file, deed.Why(err))
	case k.Public() != current:
		j.say(deed.Fails, "key-file-other", file)
	default:
		j.say(deed.Holds, "key-file-current", file)
	}
	if loose {
		j.say(deed.Unknown, "key-file-open", file)
	}
}
