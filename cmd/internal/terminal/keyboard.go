package terminal

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"

	"golang.org/x/term"
)

// Waiting runs a read that may wait for ever, such as that of a terminal, and
// gives it up when the run is interrupted.
func Waiting[T any](stop <-chan struct{}, read func() (T, error)) (T, error) {
	type result struct {
		value T
		err   error
	}
	got := make(chan result, 1)
	go func() {
		v, err := read()
		got <- result{v, err}
	}()
	select {
	case r := <-got:
		return r.value, r.err
	case <-stop:
		return *new(T), context.Canceled
	}
}

// Interactive reports whether a reader or writer is a terminal.
func Interactive(of any) bool {
	f, ok := of.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}

// Ask reads a line from the terminal without showing it; nil where there is no
// terminal.
func Ask(stop <-chan struct{}, in io.Reader, out io.Writer, prompt string) ([]byte, error) {
	if !Interactive(in) {
		return nil, nil
	}
	f := in.(*os.File)
	shown, err := term.GetState(int(f.Fd()))
	if err != nil {
		return nil, fmt.Errorf("cannot read the passphrase: %w", err)
	}
	fmt.Fprintf(out, "%s: ", Wrap(prompt, 0))
	p, err := Waiting(stop, func() ([]byte, error) { return term.ReadPassword(int(f.Fd())) })
	fmt.Fprintln(out)
	if errors.Is(err, context.Canceled) { // the read is still there, and the typing unseen
		err = errors.Join(err, term.Restore(int(f.Fd()), shown))
	}
	if err != nil {
		return nil, fmt.Errorf("cannot read the passphrase: %w", err)
	}
	return p, nil
}
