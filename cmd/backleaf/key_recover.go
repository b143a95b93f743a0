package main

import (
	"fmt"
	"io"
	"os"

	"backleaf/cmd/internal/terminal"
	"backleaf/record"
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
		p, err := keys.Recover(r.ctx, r.Session, holder{a}, string(text))
		if err == nil {
			a.told("key-as-it-was", record.With("file", keys.File(a.path())), record.With("key", p.Fingerprint().Short()))
		}
		return err
	})
}
