package tell

// englishActs is what an act at the bench gives to think about, and what it
// comes to.
var englishActs = map[string]Message{
	"left-without-cloth":  "note: meant to carry no cloth, so left out: {panels}",
	"meant-without-cloth": "note: {panels}: meant to carry no cloth, as far as recorded",
	"of-batch-not":        `note: of batch {batch} this leaves out {panels}; if that was forgotten, "backleaf repeat" adds it`,
	"repeats":             "repeats {entry}",
	"not-taken-over": "note: what was measured or remarked then is not taken over:{amount, if { amount {amount}}}{wet, if { wet film {wet}}}{dry, if { dry film {dry}}}" +
		"{temperature, if { temperature {temperature}}}{humidity, if { humidity {humidity}}}{note, if { “{note}”}}; say it again if it holds",
}
