package main

import (
	"backleaf/record/studio/deposit"
	"backleaf/record/studio/verify"
)

// importDeposit reads a deposit back into an empty book.
func (r *run) importDeposit(dir string, highest []string) error {
	return r.done(deposit.Import(r.ctx, dir, r.path(), highest, r.now, r.progress(), func() error {
		return r.sound(verify.Evidence{Name: dir, Kind: verify.Deposit})
	}))
}
