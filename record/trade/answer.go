package trade

import "backleaf/record"

// Is makes an answer of what is certain.
func Is(b bool) record.Answer {
	if b {
		return yes
	}
	return no
}

// Some is yes if one of the answers is, no only if all are.
func Some(as ...record.Answer) record.Answer {
	out := record.No
	for _, a := range as {
		switch a {
		case record.Yes:
			return record.Yes
		case record.No:
		default:
			out = record.Unknown
		}
	}
	return out
}

// agreed is what all the answers say; unknown where they differ or are none.
func agreed(as []record.Answer) record.Answer {
	for _, a := range as {
		if a != as[0] {
			return record.Unknown
		}
	}
	if len(as) == 0 || as[0] == "" {
		return record.Unknown
	}
	return as[0]
}
