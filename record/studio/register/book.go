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
	w, err := b.Workshop(ctx)
	if err != nil {
		j.say(deed.Fails, "whole-book-fails", deed.Why(err))
		return j
	}
	j.files(name, w)
	if err := j.heads(ctx, b, w, name); err != nil {
		j.say(deed.Fails, "whole-book-fails", deed.Why(err))
	}
	return j
}

// files looks at what is kept beside a book.
func (j *judgement) files(path string, w *record.Workshop) {
	n, good := map[string]int{}, map[string]int{}
	for _, f := range kept.In(w) {
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
	}
	for _, folder := range []string{kept.Photographs, kept.Papers} {
		if n[folder] > 0 {
			v := deed.Holds
			if good[folder] < n[folder] {
				v = deed.Fails
			}
			j.say(v, "kept-"+folder, record.With("n", n[folder]), record.With("good", good[folder]))
		}
	}
}

// heads says how far the newest signed head reaches, and what a rewrite of the
// whole book would need to stay unseen.
func (j *judgement) heads(ctx context.Context, b *book.Book, w *record.Workshop, path string) error {
	ring, err := deed.Keys(w.Keys)
	if err != nil {
		return err
	}
	heads, err := b.Heads(ctx)
	if err != nil {
		return err
	}
	size, _, err := b.Tree(ctx)
	if err != nil {
		return err
	}
	origin, _ := seal.Origin(w.Studio.Mark, w.Studio.Journal)
	newest := int64(0)
	for _, h := range heads {
		signed, err := openHead([]byte(h.Note), ring, origin)
		if err == nil && (signed.Size != h.Size || signed.Root != h.Root) {
			err = errors.New("its note speaks of another one")
		}
		if err != nil {
			j.say(deed.Fails, "kept-head-wrong", record.With("entries", h.Size), deed.Why(err))
			continue
		}
		newest = max(newest, h.Size)
	}
	issued, err := j.issued(ctx, b, w, path, ring, origin)
	if err != nil {
		return err
	}
	if newest > 0 {
		j.say(deed.Holds, "newest-head", record.With("n", len(heads)), record.With("reaches", newest), record.With("after", size-newest))
	}
	current, ok := ring.Current()
	switch {
	case !ok:
		j.say(deed.Unknown, "rewrite-without-key")
		return nil
	case keys.There(path):
		j.keyFile(path, current)
	}
	if newest == 0 && issued == 0 {
		j.say(deed.Unknown, "rewrite-without-head")
	} else {
		j.say(deed.Unknown, "rewrite-unseen", record.With("key", current.Fingerprint().Short()))
	}
	return nil
}

// issued holds the kept certificates against the journal: each carries a signed
// head of the day on which it was issued. It returns how many do.
func (j *judgement) issued(ctx context.Context, b *book.Book, w *record.Workshop, path string, ring deed.Keyring, origin string) (n int, err error) {
	r := Register{book: b, shop: w, ring: ring}
	if r.size, r.root, err = b.Tree(ctx); err != nil {
		return 0, err
	}
	for _, p := range w.Panels {
		for _, c := range record.Each[record.Issued](p) {
			f, ok := kept.Named(c.Body)
			if !ok {
				continue
			}
			data, err := kept.Read(path, f)
			if err != nil {
				continue // it was said
			}
			e := verify.Read(f.Name, data)[0]
			if e.Unread != nil || e.Files.Head == nil {
				continue // it was issued without a key
			}
			h, err := openHead(e.Files.Head, ring, origin)
			if err == nil && seal.DigestOf(e.Files.Record).String() != c.Body.Record {
				err = errors.New("its record is not the one on record")
			}
			if err == nil {
				same, failed := r.begins(ctx, h.Size, h.Root)
				if failed != nil {
					return n, failed
				}
				if !same {
					err = fmt.Errorf("the journal does not begin with the %d entries of its signed head", h.Size)
				}
			}
			if err != nil {
				j.say(deed.Fails, "kept-certificate-parts", record.With("entry", record.EntryRef(c.Seq)), record.With("panel", p.Number), deed.Why(err))
				continue
			}
			n++
		}
	}
	return n, nil
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
