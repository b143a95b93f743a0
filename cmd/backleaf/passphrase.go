package main

import (
	"bytes"

	"backleaf/cmd/internal/terminal"
	"backleaf/record"
	"backleaf/record/studio/keys"
)

// passphraseVariable holds the passphrase for scripts.
const passphraseVariable = "BACKLEAF_PASSPHRASE"

// withKey adds a command that writes with the studio's current key.
func (a *app) withKey(name string, fs flags, do func(*run) error) {
	a.writes(name, merged([]flags{fs, {"passphrase-file": &a.passphraseFile}}), func(r *run) (err error) {
		if r.key, err = keys.Needed(r.ctx, r.Book, holder{a}); err != nil {
			return err
		}
		return do(r)
	})
}

// holder is the person at the terminal, who holds the key.
type holder struct{ *app }

// Warn says a remark about the key file.
func (h holder) Warn(s record.Said) { h.warn(nil, []record.Said{s}) }

// Passphrase takes the passphrase from where scripts put it, else from the
// terminal, unseen. Without any of these it is nil.
func (h holder) Passphrase(file string) ([]byte, error) {
	if h.passphrase != nil {
		return h.passphrase, nil
	}
	if s := h.env(passphraseVariable); s != "" {
		return []byte(s), nil
	}
	return h.unseen("passphrase of " + file)
}

// NewPassphrase asks for a passphrase twice; empty if there is to be none, nil
// where there is no terminal.
func (h holder) NewPassphrase() ([]byte, error) {
	if h.passphrase != nil || h.env(passphraseVariable) != "" {
		return h.Passphrase("")
	}
	for {
		p, err := h.unseen("new passphrase (empty: none)")
		if err != nil || len(p) == 0 {
			return p, err
		}
		again, err := h.unseen("the same once more")
		if err != nil {
			return nil, err
		}
		if bytes.Equal(p, again) {
			return p, nil
		}
		h.talk("these were two different ones")
	}
}

// unseen asks for a line that is not shown; nil where there is no terminal.
func (h holder) unseen(prompt string) ([]byte, error) {
	return terminal.Ask(h.interrupted, h.in, h.err, prompt)
}
