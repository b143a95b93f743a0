package book_test

import (
	"context"
	"errors"
	"sync"
	"testing"
	"time"

	"backleaf/record/book"
)

// TestManyAtOnce uses one open book from many goroutines, as a page at the
// bench does.
func TestManyAtOnce(t *testing.T) {
	b := newBook(t)
	put(t, b, afternoon()...)
	var wg sync.WaitGroup
	for i := range 6 {
		wg.Go(func() {
			for range 10 {
				if i < 3 {
					if _, err := b.Append(ctx, clock, note(i)); err != nil {
						t.Error(err)
					}
				}
				if w, err := b.WorkshopOf(ctx, number(1)); err != nil || w.Panel(number(1)) == nil {
					t.Error(err)
				}
			}
		})
	}
	wg.Wait()
	if r, err := b.Verify(ctx, nil); err != nil || r.Entries != 46 {
		t.Error(r, err)
	}
}

func TestCancelled(t *testing.T) {
	b := newBook(t)
	put(t, b, afternoon()...)
	gone, cancel := context.WithCancel(ctx)
	cancel()
	if _, err := b.Append(gone, clock, note(1)); !errors.Is(err, context.Canceled) {
		t.Error(err)
	}
	if _, err := b.Entries(gone, book.Filter{}); !errors.Is(err, context.Canceled) {
		t.Error(err)
	}
	half, cancel := context.WithCancel(ctx)
	_, err := b.Verify(half, func(done, total int64) {
		if done == 8 {
			cancel()
		}
		if done > 8 || total != 16 {
			t.Error("went on to", done, total)
		}
	})
	if !errors.Is(err, context.Canceled) || errors.Is(err, book.ErrBroken) {
		t.Error(err)
	}

	// Waiting for another process ends when the caller gives up.
	other, err := book.Open(ctx, b.Path())
	if err != nil {
		t.Fatal(err)
	}
	defer other.Close()
	inside, done := make(chan bool), make(chan bool)
	go other.Compose(ctx, clock, wait(inside, done))
	<-inside
	soon, cancel := context.WithTimeout(ctx, 50*time.Millisecond)
	defer cancel()
	if _, err := b.Append(soon, clock, note(1)); err == nil {
		t.Error("two at once")
	}
	close(done)
	put(t, b, `{"kind":"note","text":"the book is free again"}`)
	if r := holds(t, b.Path()); r.Entries != 17 {
		t.Error(r)
	}
}
