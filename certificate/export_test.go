package certificate

import "backleaf/record/paper"

// DrawA1b draws the same pages without the files, in the older format for
// which a validator is at hand.
func DrawA1b(in Input) ([]byte, error) {
	d, err := draw(in, paper.A1b)
	return d.PDF, err
}
