package verify

import "testing"

// What some program would write over a part of a record, or take for it: names
// that end in C at a zero byte, on NTFS at a colon, on Windows without the final
// dot; what is not seen; capitals and their widths (Unicode, DefaultIgnorable,
// NFKD); the language mark of ISO 32000-2, 7.9.2.2.
func TestNamesThatPassForParts(t *testing.T) {
	for _, part := range Names {
		for _, unseen := range []string{"\x00", "\x00.pdf", " ", "\u00a0", "\ufeff", "\u200b", "\u034f", "\u2800", "\u3164", "\ufe0f", "\U000e0041", "\u00ad", "\x1b", "\r", ".", ":x", "\x1ben\x1b"} {
			for _, name := range []string{part + unseen, part + unseen + unseen} {
				if !passesForPart(name) {
					t.Errorf("%q passes for no %s", name, part)
				}
			}
			if unseen != "." && unseen != ":x" && unseen[0] != 0 && !passesForPart(part[:3]+unseen+part[3:]) {
				t.Errorf("%q inside passes for no %s", unseen, part)
			}
		}
	}
	for _, name := range []string{"RECORD.JSON", "ｒecord.json", "record\uff0ejson", "Head.Txt", "record.json\u200b…"} {
		if !passesForPart(name) {
			t.Errorf("%q passes for no part", name)
		}
	}
	for _, name := range []string{"", "record", "record.json.pdf", "record (1).json", "my-record.json", "invoice.pdf", "…"} {
		if passesForPart(name) {
			t.Errorf("%q is taken for a part", name)
		}
	}
}
