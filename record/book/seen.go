package book

import (
	"context"
	"sync"

	"backleaf/record"
	"backleaf/record/form"
)

// seen keeps what was decoded: an act looks at the same few entries when it is
// judged and when it is written. They are found by all of their bytes, so
// nothing that changed in the file is overlooked. They are shared, and nobody
// changes them.
type seen struct {
	mu   sync.Mutex
	of   map[string]record.Entry
	size int

	root string           // of the journal of which shop is a fold
	shop *record.Workshop // what the last act was judged by
}

// mostSeen bounds the bytes of the entries that are kept.
const mostSeen = 1 << 20

func (k *seen) decode(data []byte) (record.Entry, error) {
	k.mu.Lock()
	e, known := k.of[string(data)]
	k.mu.Unlock()
	if known {
		return e, nil
	}
	e, err := form.Decode(data)
	if err != nil || len(data) > mostSeen/16 {
		return e, err
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.size += len(data); k.of == nil || k.size > mostSeen {
		k.of, k.size = map[string]record.Entry{}, len(data)
	}
	k.of[string(data)] = e
	return e, nil
}

// keep hands a fold of a few panels on to the write that may follow.
func (k *seen) keep(root []byte, shop *record.Workshop) {
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.root, k.shop = string(root), shop; len(shop.Panels) >= folding {
		k.shop = nil
	}
}

// foldOf is the fold that was kept, if it is one of the journal with this root;
// of any other it would be stale.
func (k *seen) foldOf(root []byte) *record.Workshop {
	k.mu.Lock()
	defer k.mu.Unlock()
	if len(root) == 0 || k.root != string(root) {
		return nil
	}
	return k.shop
}

// few reads entries that an act is likely to look at again.
func (s *session) few(query string, args ...any) (out []record.Entry, err error) {
	err = s.decoded(context.Background(), query, args, s.seen.decode, func(st form.Stored, err error) error {
		if err = placed(st, err); err == nil {
			out = append(out, st.Entry)
		}
		return err
	})
	return out, err
}
