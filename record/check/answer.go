package check

import (
	"backleaf/record"
	"backleaf/record/trade"
)

// Questions are answered yes, no or unknown, and answers are joined so that an
// unknown never decides (Kleene's strong logic). A verdict made of such
// answers stays as it was or becomes "not recorded" when the record knows less.

var (
	is   = trade.Is
	some = trade.Some
)

func not(a record.Answer) record.Answer {
	switch a {
	case record.Yes:
		return record.No
	case record.No:
		return record.Yes
	}
	return record.Unknown
}

// all is yes if every answer is, and no if one is no.
func all(answers ...record.Answer) record.Answer {
	out := record.Answer(record.Yes)
	for _, a := range answers {
		switch a {
		case record.No:
			return record.No
		case record.Yes:
		default:
			out = record.Unknown
		}
	}
	return out
}

// outcome turns two answers into an outcome: whether a rule is for a thing,
// and whether the thing is as the rule asks.
func outcome(applies, good record.Answer) Outcome {
	switch {
	case applies == record.No:
		return NotApplicable
	case applies != record.Yes || good != record.Yes && good != record.No:
		return NotRecorded
	case good == record.Yes:
		return Holds
	}
	return FallsShort
}

// evenSo holds where a thing is as the rule asks, even if the rule may not be
// for it.
func (o Outcome) evenSo(good record.Answer) Outcome {
	if good == record.Yes {
		return Holds
	}
	return o
}
