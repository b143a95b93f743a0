package book

import (
	"context"
	"errors"
	"fmt"
)

// posting is what the context of a write says of the form it came of.
type posting struct {
	token string
	trial bool
}

type postingKey struct{}

// Once returns a context for what is written because of one form, known by a
// token of its own. What is first written with it notes the token in the same
// transaction; whatever is written with it later is not, and the error is a
// [*Posted].
func Once(ctx context.Context, token string) context.Context {
	return context.WithValue(ctx, postingKey{}, posting{token: token})
}

// Trial returns a context in which entries are judged and returned as they
// would be written, and nothing is.
func Trial(ctx context.Context) context.Context {
	of, _ := ctx.Value(postingKey{}).(posting)
	of.trial = true
	return context.WithValue(ctx, postingKey{}, of)
}

// IsTrial reports that nothing is written in this context.
func IsTrial(ctx context.Context) bool {
	f, _ := ctx.Value(postingKey{}).(posting)
	return f.trial
}

// errTried takes back what was only tried.
var errTried = errors.New("this was a trial")

// Posted is the error of a form that was posted before: what came of it.
type Posted struct{ First, Last int64 }

func (p *Posted) Error() string {
	return fmt.Sprintf("this was written down before, as E%d to E%d", p.First, p.Last)
}

// PostedWith returns the entries that came of the form with this token; false
// if none did.
func (b *Book) PostedWith(ctx context.Context, token string) (p Posted, ok bool, err error) {
	err = b.view(ctx, func(s *session) error {
		ok, err = s.one("SELECT first, last FROM posted WHERE token = ?", []any{token}, &p.First, &p.Last)
		return err
	})
	return p, ok, err
}

// posted fails if something came of the form before.
func (d *Draft) posted(token string) error {
	if token == "" {
		return nil
	}
	var p Posted
	if ok, err := d.s.one("SELECT first, last FROM posted WHERE token = ?", []any{token}, &p.First, &p.Last); err != nil || !ok {
		return err
	}
	return &p
}

// post notes which entries came of a form; they are written already.
func (d *Draft) post(token string) error {
	if token == "" || d.size == d.began {
		return nil
	}
	return d.s.write("posted", "INSERT INTO posted (token, first, last) VALUES (?, ?, ?)", token, d.began+1, d.size)
}
