package main

import (
	"fmt"
	"io"
	"os"

	"backleaf/cmd/internal/terminal"
	"backleaf/record/studio/keys"
)

func keyRecover(a *app) {
	a.reads("studio key recover", flags{"passphrase-file": &a.passphraseFile}, func(r *run) error {
		in := a.in
		if len(r.args) == 1 && r.args[0] != "-" {
			f, err := os.Open(r.args[0])
			if err != nil {
				return fmt.Errorf("cannot read the recovery text: %w", err)
			}
			defer f.Close()
			in = f
		} else {
			a.noted("type-groups")
		}
		text, err := terminal.Waiting(a.interrupted, func() ([]byte, error) { return io.ReadAll(io.LimitReader(in, 1<<16)) })
		if err != nil {
			return fmt.Errorf("cannot read the recovery text: %w", err)
		}
		return a.done(keys.Recover(r.ctx, r.Session, holder{a}, string(text)))
	})
}
