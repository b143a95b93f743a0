package register

import (
	"context"
	"errors"
	"fmt"

	"backleaf/record/deed"
	"backleaf/record/seal"
)

// begins reports whether the journal begins with one of that size and root.
func (r *Register) begins(ctx context.Context, size int64, root seal.Hash) (bool, error) {
	if size > r.size {
		return false, nil
	}
	was, err := seal.Root(size, r.book.HashReader(ctx))
	return was == root, err
}

// judgeHead says whether a head is one of the book here.
func (r *Register) judgeHead(ctx context.Context, f deed.Files) ([]deed.Result, error) {
	var j judgement
	if f.Head == nil {
		return nil, nil
	}
	h, err := r.openHead(f.Head)
	if err != nil {
		j.say(deed.Fails, "the head against the book here: %v", err)
		return j, nil
	}
	ok, err := r.begins(ctx, h.Size, h.Root)
	switch {
	case err != nil:
		return nil, err
	case ok:
		j.say(deed.Holds, "the journal in the book here begins with the %d entries of this head, unchanged", h.Size)
	default:
		j.say(deed.Fails, "the journal in the book here does not begin with the %d entries of this head", h.Size)
	}
	return j, nil
}

// openHead opens a head that any key of the studio signed.
func (r *Register) openHead(msg []byte) (seal.Head, error) {
	for _, p := range r.ring.Keys {
		h, err := seal.OpenHead(msg, p)
		if errors.Is(err, seal.ErrOtherKey) {
			continue
		}
		if mine, _ := seal.Origin(r.shop.Studio.Mark, r.shop.Studio.Journal); err == nil && h.Origin != mine {
			err = fmt.Errorf("it is of journal %s", h.Origin)
		}
		return h, err
	}
	return seal.Head{}, errors.New("no key of the studio signed it")
}
