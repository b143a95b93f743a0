package papers

import (
	"context"
	"path/filepath"
	"testing"
	"time"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
)

// afterwards is over from the moment at which a book holds more entries than it
// did: somebody stops the program when the entry is written and what follows it
// is not.
type afterwards struct {
	context.Context
	watched *book.Book
	held    int64
}

var over = func() chan struct{} { c := make(chan struct{}); close(c); return c }()

func (a afterwards) Done() <-chan struct{} {
	if n, _, err := a.watched.Tree(context.Background()); err == nil && n > a.held {
		return over
	}
	return nil
}

func (a afterwards) Err() error {
	if a.Done() != nil {
		return context.Canceled
	}
	return nil
}

// What is on record is told as recorded, and is finished.
func TestStoppedAfterTheEntry(t *testing.T) {
	ctx, path := context.Background(), filepath.Join(t.TempDir(), "studio.sqlite")
	now := time.Date(2026, 5, 2, 16, 0, 0, 0, time.UTC)
	clock := func() time.Time { return now }
	must := func(err error) {
		if err != nil {
			t.Helper()
			t.Fatal(err)
		}
	}
	must(studio.Create(ctx, path, clock, nil, record.Studio{Maker: "Anna", Mark: "KB", Zone: "UTC"}))
	b, err := book.Open(ctx, path)
	must(err)
	defer b.Close()
	watched, err := book.Open(ctx, path)
	must(err)
	defer watched.Close()
	key, err := seal.NewKey()
	must(err)
	_, err = b.Append(ctx, now, record.Entry{Body: deed.KeyMade(key.Public())})
	must(err)
	size, err := record.ParseSize("20 x 20 cm x 6 mm")
	must(err)
	s := &studio.Session{Book: b, Clock: clock}
	for i, act := range []func(ctx context.Context, v *studio.View) error{
		func(ctx context.Context, v *studio.View) error {
			_, err := bench.Cut(ctx, v, record.Moment(now), []record.Cut{{Size: size}})
			return err
		},
		func(ctx context.Context, v *studio.View) error {
			_, err := bench.Do(ctx, v, record.Moment(now), record.PaintLayer{Medium: "oil"})
			return err
		},
		func(ctx context.Context, v *studio.View) error {
			old, err := bench.Entry(context.Background(), b, 4)
			must(err)
			_, _, err = bench.Correct(ctx, v, record.Moment(now), old, record.Withdrawn{Entry: old.Seq, Because: "once"})
			return err
		},
		func(ctx context.Context, v *studio.View) error {
			_, err := Issue(ctx, s, CertificateOrder{Panel: string(v.Panels[0]), Anyway: true, File: filepath.Join(filepath.Dir(path), "c.pdf"),
				Key: func(context.Context) (*seal.Key, error) { return &key, nil }})
			return err
		},
	} {
		var terms []string
		if i > 0 {
			terms = []string{"1"}
		}
		v, err := s.Look(ctx, terms, nil)
		must(err)
		held, _, err := b.Tree(ctx)
		must(err)
		if err := act(afterwards{ctx, watched, held}, v); err != nil {
			t.Errorf("act %d: %v", i+1, err)
		}
		if now, _, err := b.Tree(ctx); err != nil || now <= held {
			t.Errorf("act %d: %d entries, were %d, %v", i+1, now, held, err)
		}
	}
}
