package main

import (
	"fmt"

	"backleaf/record"
	"backleaf/record/studio/deposit"
	"backleaf/record/studio/verify"
)

// importDeposit reads a deposit back into an empty book.
func (r *run) importDeposit(dir string, highest []string) error {
	x, problems, err := deposit.Import(r.ctx, dir, r.path(), highest, r.now, r.progress(), func() error {
		return r.sound(verify.Evidence{Name: dir, Kind: verify.Deposit})
	})
	for i, p := range problems {
		if i == verify.MaxProblems {
			r.noted("and-more", record.With("n", len(problems)-i))
			break
		}
		r.talk("%s", p)
	}
	r.warn(nil, x.Warnings)
	if err != nil {
		return err
	}
	if x.Last == 0 {
		r.told("no-entries", record.With("file", x.Name))
	} else {
		r.sayImported(x.Taken, x.Name)
	}
	r.told("same-journal", record.With("root", fmt.Sprintf("%x", x.Root[:])), record.With("n", x.Kept))
	if x.Missing > 0 {
		return &failure{fmt.Errorf("%s not in the deposit as recorded", deposit.Count(x.Missing, "kept file")), "the journal is whole; look for them in another copy", exitIntegrity}
	}
	return nil
}
