package register

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"

	"backleaf/record"
	"backleaf/record/bag"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/safefile"
	"backleaf/record/seal"
	"backleaf/record/studio/deposit"
	"backleaf/record/studio/verify"
)

// archive is the journal of a deposit, against which its parts are read.
type archive struct {
	journal deposit.Journal
	shop    *record.Workshop
	ring    deed.Keyring
	origin  string
	seen    map[record.Number]bool // panels whose record was read
}

// Deposit reads the journal of a deposit against the book, the keys and the
// heads in it, and makes its pages anew.
func (k Books) Deposit(ctx context.Context, dir string, root *os.Root, report bag.Report, signed *seal.Deposit) (verify.Archive, []deed.Result) {
	var j judgement
	journal, err := deposit.ReadJournal(ctx, dir, root)
	switch {
	case errors.Is(err, fs.ErrNotExist), errors.Is(err, book.ErrNoBook):
		j.say(deed.Unknown, "deposit-without-journal")
		return nil, j
	case err != nil:
		j.say(deed.Fails, "deposit-journal-wrong", deed.Why(err))
		return nil, j
	}
	j.say(deed.Holds, "deposit-journal-good", record.With("entries", len(journal.Entries)), record.With("signed", answer(journal.Signed)))
	a := &archive{journal: journal, seen: map[record.Number]bool{}}
	if a.shop, err = journal.Fold(); err == nil {
		a.ring, err = deed.Keys(a.shop.Keys)
	}
	if err == nil {
		a.origin, err = seal.Origin(a.shop.Studio.Mark, a.shop.Studio.Journal)
	}
	if err != nil {
		j.say(deed.Fails, "deposit-journal-wrong", deed.Why(err))
		return nil, j
	}
	a.word(&j, root, signed)
	a.keys(&j, root)
	a.heads(&j, root)
	_, err = root.Lstat(verify.DepositSignature)
	if !k.Quick && report.Valid && (signed != nil) == (err == nil) && !j.fails() {
		k.derive(ctx, &j, dir, root, report.Info, signed)
	} else { // it is not as it was made: that was said
		j.say(deed.Unknown, "deposit-not-derived")
	}
	return a, j
}

// derive says whether pages, tables and papers are what this program makes of
// the journal.
func (k Books) derive(ctx context.Context, j *judgement, dir string, root *os.Root, info []bag.Field, signed *seal.Deposit) {
	signer, other := "", deed.Fails
	if signed != nil { // who signed them may have made them with another program
		signer, other = signed.Key.Fingerprint().Groups(), deed.Unknown
	}
	x, err := deposit.Derive(ctx, dir, root, info, signer, k.Progress)
	for _, f := range x.Other {
		j.say(other, "deposit-made-otherwise", record.With("file", f))
	}
	for _, f := range x.Added {
		j.say(deed.Fails, "deposit-not-made", record.With("file", f))
	}
	switch {
	case err != nil:
		j.say(deed.Unknown, "deposit-not-derived", deed.Why(err))
	case x.Words != x.Own:
		j.say(deed.Unknown, "deposit-other-words", record.With("words", x.Words), record.With("own", x.Own))
	case x.Other == nil && x.Added == nil:
		j.say(deed.Holds, "deposit-derived", record.With("files", x.Files), record.With("drawn", answer(signed == nil)))
	}
}

func answer(yes bool) record.Answer {
	if yes {
		return record.Yes
	}
	return record.No
}

// word compares what the signature of the whole says with the journal.
func (a *archive) word(j *judgement, root *os.Root, w *seal.Deposit) {
	if w == nil {
		if _, err := root.Lstat(verify.DepositSignature); err == nil {
			return // said by who reads the signature
		}
		// Who makes a deposit with the key signs all of it: the head, the records and the whole.
		if a.journal.Signed {
			j.say(deed.Fails, "deposit-signature-gone")
		} else if current, ok := a.ring.Current(); ok {
			j.say(deed.Unknown, "deposit-key-unused", record.With("key", current.Fingerprint().Short()))
		}
		return
	}
	switch {
	case w.Origin != a.origin, w.Entries != int64(len(a.journal.Entries)), w.Root != a.journal.Root, w.Panels != int64(len(a.shop.Panels)):
		j.say(deed.Fails, "deposit-signature-of-other")
	case a.ring.Standing(w.Key) != deed.Current:
		j.say(deed.Fails, "deposit-key-not-current", record.With("standing", record.Code(a.ring.Standing(w.Key))))
	}
}

// keys compares the files of public keys with those of the journal.
func (a *archive) keys(j *judgement, root *os.Root) {
	there := map[seal.PublicKey]bool{}
	names, _ := fs.Glob(root.FS(), "data/keys/*.pem")
	for i, name := range names {
		if i > 1000 {
			break
		}
		data, err := safefile.ReadIn(root, name, seal.MaxNoteBytes)
		var p seal.PublicKey
		if err == nil {
			p, err = seal.ParsePublicPEM(data)
		}
		if err == nil && a.ring.Standing(p) == deed.Unrecorded {
			err = errors.New("the journal does not know it")
		}
		if err != nil {
			j.say(deed.Fails, "deposit-key-wrong", record.With("file", name), deed.Why(err))
			continue
		}
		there[p] = true
	}
	for _, p := range a.ring.Keys {
		if !there[p] {
			j.say(deed.Fails, "deposit-key-missing", record.With("key", p.Fingerprint().Short()))
		}
	}
}

// heads compares the kept heads with the journal.
func (a *archive) heads(j *judgement, root *os.Root) {
	names, _ := fs.Glob(root.FS(), "data/keys/heads/*.txt")
	var tree seal.Tree
	roots := map[int64]seal.Hash{}
	for _, e := range a.journal.Entries {
		if tree.Append(e.Bytes) != nil {
			return
		}
	}
	wrong := 0
	for _, name := range names {
		note, err := safefile.ReadIn(root, name, seal.MaxNoteBytes)
		var h seal.Head
		if err == nil {
			h, err = openHead(note, a.ring, a.origin)
		}
		if err == nil && h.Size > tree.Size() {
			err = fmt.Errorf("it is over %d entries, of which the journal has %d", h.Size, tree.Size())
		}
		if err == nil {
			if _, ok := roots[h.Size]; !ok {
				roots[h.Size], err = seal.Root(h.Size, &tree)
			}
			if err == nil && roots[h.Size] != h.Root {
				err = errors.New("the journal does not begin with its entries")
			}
		}
		if err == nil {
			continue
		}
		if wrong++; wrong <= verify.MaxProblems {
			j.say(deed.Fails, "deposit-head-wrong", record.With("file", name), deed.Why(err))
		}
	}
}

// Record says what of a record or certificate is not as in the journal.
func (a *archive) Record(kind verify.Kind, rec deed.Record, key *seal.PublicKey) []deed.Result {
	var j judgement
	if key != nil && a.ring.Standing(*key) == deed.Unrecorded {
		j.say(deed.Fails, "key-not-of-book")
	}
	if origin, _ := seal.Origin(rec.Workshop.Studio.Mark, rec.Workshop.Studio.Journal); origin != a.origin {
		j.say(deed.Fails, "other-journal", record.With("journal", origin))
		return j
	}
	for _, e := range rec.Entries {
		if e.Seq >= int64(len(a.journal.Entries)) || !bytes.Equal(a.journal.Entries[e.Seq].Bytes, e.Bytes) {
			j.say(deed.Fails, "entry-differs", record.With("entry", record.EntryRef(e.Seq+1)))
			return j
		}
	}
	if a.shop.Panel(rec.Number) == nil {
		j.say(deed.Fails, "panel-not-in-book", record.With("panel", rec.Number))
	}
	if kind == verify.Folder {
		a.seen[rec.Number] = true
		if rec.Size != int64(len(a.journal.Entries)) || rec.Root != a.journal.Root {
			j.say(deed.Fails, "record-of-other-moment")
		}
	}
	return j
}

// End names panels without their record.
func (a *archive) End() []deed.Result {
	var j judgement
	var missing []record.Number
	for _, p := range a.shop.Panels {
		if !a.seen[p.Number] && len(p.Newer) == 0 {
			missing = append(missing, p.Number)
		}
	}
	if len(missing) > 0 {
		j.say(deed.Fails, "deposit-record-missing", record.With("panels", missing))
	}
	return j
}
