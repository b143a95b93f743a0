package main

import (
	"context"
	"errors"
	"fmt"
	"net"

	"backleaf/cmd/internal/benchpage"
	"backleaf/record"
	"backleaf/record/seal"
	"backleaf/record/studio/keys"
)

func newBench(a *app) {
	var port int
	var lan, readOnly bool
	a.command("bench", flags{"port": &port, "lan": &lan, "read-only": &readOnly, "passphrase-file": &a.passphraseFile}, func(r *run) error {
		open := r.writing
		if readOnly {
			open = r.reading
		}
		return open(func(r *run) error {
			page := &benchpage.Server{Studio: r.Session, Words: a.lang, ReadOnly: readOnly,
				Key: func(ctx context.Context) (*seal.Key, error) { return keys.Current(ctx, r.Book, holder{a}) }}
			if lan {
				page.Door = &benchpage.Door{Clock: a.now, Show: func(code string) { a.told("pair-code", record.With("code", code)) }}
				if !readOnly {
					page.Door.Book = r.Book
				}
			}
			err := page.Listen(r.ctx, port, func(addresses []string) {
				for _, at := range addresses {
					a.told("bench-serves", record.With("address", at))
				}
				a.noted("bench-how", record.With("writes", yesNo(!readOnly)))
				if lan {
					a.noted("bench-open")
				}
			})
			if o, taken := errors.AsType[*net.OpError](err); taken {
				return &failure{fmt.Errorf("the page cannot be served on port %d: %w", port, o.Err), "choose another --port, or none for a free one", exitError}
			}
			return err
		})
	})
}
