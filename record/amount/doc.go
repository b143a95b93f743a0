// Package amount reckons what of each application is on a panel: how thick its
// films are, and what of each lot went into it and what that cost. It is pure:
// the record in, figures out, and where there is none the reason why.
package amount
