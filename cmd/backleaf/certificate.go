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
		o.Panel = r.args[0]
		if err := o.Acceptable(); err != nil {
			return err
		}
		if asIssued {
			return r.reading(func(r *run) error {
				e, err := papers.AsIssued(r.ctx, r.Session, o)
				if err == nil {
					a.told("certificate-again", record.With("file", o.File), record.With("panel", e.Panels[0]), record.With("entry", record.EntryRef(e.Seq)))
				}
				return err
			})
		}
		open := r.writing
		if o.Preview {
			open = r.reading
		}
		return open(func(r *run) error {
			o.Key = func(ctx context.Context) (*seal.Key, error) { return keys.Current(ctx, r.Book, holder{a}) }
			made, err := papers.Issue(r.ctx, r.Session, o)
			if err == nil {
				a.sayCertificate(o.File, made)
			}
			return err
		})
	})
}

// sayCertificate says what was issued.
func (a *app) sayCertificate(file string, c papers.Certificate) {
	defer a.warn(nil, c.Warnings)
	defer a.warn(nil, c.Photo)
	if c.Entry == 0 {
		a.told("certificate-preview", record.With("file", file), record.With("panel", c.Panel))
		return
	}
	a.told("certificate-written", record.With("entry", record.EntryRef(c.Entry)), record.With("panel", c.Panel), record.With("replaces", record.EntryRef(c.Replaces)))
	if c.SignedBy != nil {
		a.told("file-signed", record.With("file", file), record.With("key", c.SignedBy.Fingerprint().Short()))
	} else {
		a.told("file-not-signed", record.With("file", file))
	}
	a.told("take-back-certificate", record.With("panel", c.Panel))
}

func certificateWithdraw(a *app) {
	var why string
	a.writes("certificate withdraw", flags{"because": needed{&why}}, func(r *run) error {
		v, err := r.Look(r.ctx, r.args, nil)
		if err != nil {
			return err
		}
		done, old, err := papers.TakeBack(r.ctx, v, record.Moment(v.Local()), why)
		if err == nil {
			e := done.Entries[0]
			a.told("certificate-taken-back", record.With("entry", record.EntryRef(e.Seq)), record.With("panel", e.Panels[0]), record.With("of", record.EntryRef(old)), record.With("because", why))
		}
		return err
	})
}
