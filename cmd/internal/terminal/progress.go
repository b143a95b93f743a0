package terminal

import (
	"cmp"
	"fmt"
	"io"

	"github.com/schollz/progressbar/v3"
)

// A Stage has the words for long work: how far it has come, or what it is.
type Stage struct{ Busy, Far string }

// Progress shows how far long work has come and how long it will still take,
// on a terminal only: else both functions are nil. clear takes the picture away
// before something else is said.
func Progress(w io.Writer, stages map[string]Stage) (show func(stage string, done, total int64), clear func()) {
	if !Interactive(w) {
		return nil, nil
	}
	var bar *progressbar.ProgressBar
	var of string
	shown := false
	clear = func() {
		if shown {
			fmt.Fprint(w, "\r\x1b[K")
		}
		shown = false
	}
	return func(stage string, done, total int64) {
		words := stages[stage]
		switch {
		case words.Far != "":
			if bar == nil || stage != of {
				of, bar = stage, progressbar.NewOptions64(cmp.Or(total, 1), progressbar.OptionSetWriter(w), progressbar.OptionSetDescription(words.Far),
					progressbar.OptionShowCount(), progressbar.OptionSetWidth(20), progressbar.OptionSetPredictTime(true), progressbar.OptionThrottle(100e6))
			}
			_ = bar.Set64(done) // a picture of the work, not the work
		case done == 0 && total > 0:
			fmt.Fprintf(w, words.Busy+" …", total)
		case done == 0:
			fmt.Fprint(w, words.Busy+" …")
		}
		if shown = true; done == total && total > 0 {
			bar = nil
			clear()
		}
	}, clear
}
