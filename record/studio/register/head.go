package register

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/seal"
)

// judgeHead says whether a head is one of the book here.
func (r *Register) judgeHead(ctx context.Context, f deed.Files) ([]deed.Result, error) {
	var j judgement
	if f.Head == nil {
		return nil, nil
	}
	h, err := r.openHead(f.Head)
	if err != nil {
		j.say(deed.Fails, "head-not-of-book", deed.Why(err))
		return j, nil
	}
	return r.follows(ctx, j, h.Size, h.Root, deed.Fails)
}

// follows says whether the book begins with so many entries of this root;
// older is the verdict where the book has fewer.
func (r *Register) follows(ctx context.Context, j judgement, size int64, root seal.Hash, older deed.Verdict) ([]deed.Result, error) {
	same, err := r.begins(ctx, size, root)
	switch {
	case err != nil:
		return nil, err
	case same:
		j.say(deed.Holds, "book-begins-with-head", record.With("entries", size))
	case size > r.size:
		j.say(older, "book-older", record.With("entries", size), record.With("own", r.size))
	default:
		j.say(deed.Fails, "head-parts", record.With("entries", size))
	}
	return j, nil
}

// Status says whether a status of the studio speaks of a history that the book
// has.
func (r *Register) Status(ctx context.Context, s seal.Status) (j []deed.Result, err error) {
	if mine, _ := seal.Origin(r.shop.Studio.Mark, r.shop.Studio.Journal); s.Origin != mine || !slices.ContainsFunc(r.ring.Keys, s.SpeaksFor) {
		return nil, nil // that is said of each paper
	}
	same, err := r.begins(ctx, s.Size, s.Root)
	switch {
	case err != nil || same:
		return nil, err
	case s.Size > r.size:
		return []deed.Result{deed.Found(deed.Unknown, "book-before-status", record.With("entries", s.Size), record.With("own", r.size))}, nil
	}
	return []deed.Result{deed.Found(deed.Fails, "head-parts", record.With("entries", s.Size))}, nil
}

// Deposit says whether the word over a deposit is of the studio's journal.
func (r *Register) Deposit(ctx context.Context, d seal.Deposit) (out []deed.Result, err error) {
	var j judgement
	if r.otherJournal(&j, d.Origin) {
		return j, nil
	}
	if r.ring.Standing(d.Key) == deed.Unrecorded {
		j.say(deed.Fails, "key-not-of-book")
		return j, nil
	}
	return r.follows(ctx, j, d.Entries, d.Root, deed.Unknown)
}

// openHead opens a head that any key of the studio signed.
func (r *Register) openHead(msg []byte) (seal.Head, error) {
	mine, _ := seal.Origin(r.shop.Studio.Mark, r.shop.Studio.Journal)
	return openHead(msg, r.ring, mine)
}

func openHead(msg []byte, ring deed.Keyring, origin string) (seal.Head, error) {
	for _, p := range ring.Keys {
		h, err := seal.OpenHead(msg, p)
		if errors.Is(err, seal.ErrOtherKey) {
			continue
		}
		if err == nil && h.Origin != origin {
			err = fmt.Errorf("it is of journal %s", h.Origin)
		}
		return h, err
	}
	if h, err := seal.UnverifiedHead(msg); err == nil && h.Origin != origin {
		return seal.Head{}, fmt.Errorf("no key of the studio signed it: it is of another studio or journal (%s)", h.Origin)
	}
	return seal.Head{}, errors.New("no key of the studio signed it")
}
