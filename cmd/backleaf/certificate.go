package main

import (
	"context"

	"backleaf/record"
	"backleaf/record/seal"
	"backleaf/record/studio/keys"
	"backleaf/record/studio/papers"
)

func newCertificate(a *app) {
	var o papers.CertificateOrder
	var asIssued bool
	a.command("certificate", flags{"output": needed{&o.File}, "paper": &o.Paper, "buyer": &o.Buyer, "price": &o.Price, "because": &o.Because, "anyway": &o.Anyway,
		"preview": &o.Preview, "as-issued": &asIssued, "passphrase-file": &a.passphraseFile}, func(r *run) error {
		o.Panel, o.Progress = r.args[0], a.progress()
		if err := o.Acceptable(); err != nil {
			return err
		}
		if asIssued {
			return r.reading(func(r *run) error { return a.done(papers.AsIssued(r.ctx, r.Session, o)) })
		}
		open := r.writing
		if o.Preview {
			open = r.reading
		}
		return open(func(r *run) error {
			o.Key = func(ctx context.Context) (*seal.Key, error) {
				if a.passphrase == nil {
					return keys.Current(ctx, r.Book, holder{a})
				}
				k, err := keys.Needed(ctx, r.Book, holder{a}) // a passphrase was given: unsigned is not what was asked for
				return &k, err
			}
			made, err := papers.Issue(r.ctx, r.Session, o)
			if err != nil {
				return err
			}
			return a.done(made.Written, nil)
		})
	})
}

func certificateWithdraw(a *app) {
	var why string
	a.writes("certificate withdraw", flags{"because": needed{&why}}, func(r *run) error {
		v, err := r.Look(r.ctx, r.args, nil)
		if err != nil {
			return err
		}
		return a.done(papers.TakeBack(r.ctx, v, record.Moment(v.Local()), why))
	})
}
