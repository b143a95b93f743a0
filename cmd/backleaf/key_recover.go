package main

import (
	"io"
	"os"

	"backleaf/cmd/internal/terminal"
	"backleaf/record/studio/keys"
)

func keyRecover(a *app) {
	a.reads("studio key recover", flags{"passphrase-file": &a.passphraseFile}, func(r *run) error {
		return a.done(keys.Recover(r.ctx, r.Session, holder{a}, func() ([]byte, error) {
			in := a.in
			if len(r.args) == 1 && r.args[0] != "-" {
				f, err := os.Open(r.args[0])
				if err != nil {
					return nil, err
				}
				defer f.Close()
				in = f
			} else {
				a.noted("type-groups")
			}
			return terminal.Waiting(a.interrupted, func() ([]byte, error) { return io.ReadAll(io.LimitReader(in, 1<<16)) })
		}))
	})
}
