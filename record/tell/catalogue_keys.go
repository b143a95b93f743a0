package tell

// englishKeys is what stands on the page from which a key can be made again.
var englishKeys = table{
	{"key-sheet", "Recovery sheet"},
	{"key-sheet-of", "Recovery sheet of a signing key"},
	{"key-sheet-whose", "of the key with which {maker}, mark {mark}, signs the records of painting panels"},
	{"key-sheet-demo", "A demonstration: this key is public, and anyone can sign with it."},
	{"key-sheet-warning", "Whoever reads this page can sign as the studio."},
	{"key-sheet-keep", "Keep it where you keep deeds and passports: dry, out of the light, away from the computer, in a closed envelope with your name over the flap. Tell one person you trust where it is. Do not photograph, scan or send it. Delete the file it was printed from."},
	{"key-sheet-letters", "The key in letters"},
	{"key-sheet-signs", "Only the letters A to Z and the figures 2 to 7 occur: what looks like 0, 1 or 8 is O, I or B. The last group checks the others."},
	{"key-sheet-symbol", "The same as a symbol"},
	{"key-sheet-use", "To use it"},
	{"key-sheet-how", "Lay the studio’s book in place, then: backleaf studio key recover. It asks for the letters and writes the key file again. Without the program: the first thirteen groups are the 32 bytes of an Ed25519 seed (RFC 8032) in base32 (RFC 4648), which openssl reads once the sixteen bytes 302e020100300506032b657004220420 stand before them."},
	{"key-sheet-fingerprint", "Fingerprint of the public key"},
	{"key-sheet-printed", "Printed on {at}. When the key is retired or declared lost, destroy this page."},
}
