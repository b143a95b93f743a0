package main

import (
	"context"
	"fmt"

	"backleaf/record"
	"backleaf/record/studio/deposit"
	"backleaf/record/studio/verify"
)

// importDeposit reads a deposit back into an empty book.
func (a *app) importDeposit(ctx context.Context, dir string, highest []string) error {
	x, problems, err := deposit.Import(ctx, dir, a.path(), highest, a.now, a.progress())
	for i, p := range problems {
		if i == verify.MaxProblems {
			a.noted("and-more", record.With("n", len(problems)-i))
			break
		}
		a.talk("%s", p)
	}
	a.warn(nil, x.Warnings)
	if err != nil {
		return err
	}
	if len(x.Entries) == 0 {
		a.told("no-entries", record.With("file", x.Name))
	}
	a.sayImported(x.Entries, x.Name)
	a.told("same-journal", record.With("root", fmt.Sprintf("%x", x.Root[:])), record.With("n", x.Kept))
	if x.Missing > 0 {
		return &failure{fmt.Errorf("%s not in the deposit as recorded", deposit.Count(x.Missing, "kept file")), "the journal is whole; look for them in another copy", exitIntegrity}
	}
	return nil
}
