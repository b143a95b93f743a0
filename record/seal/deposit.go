package seal

import (
	"errors"
	"strconv"
)

// A Deposit is the signed word for a folder as a whole. Signed, it reads
//
//	backleaf/KB deposit
//	tagmanifest-sha512.txt: e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855
//	entries: 142
//	root: CsUYapGGPo4dkMgIAUqom/Xajj7h2fB2MPA3j2jxq2I=
//	panels: 14
//	made: 2026-06-01
//	key: MCowBQYDK2VwAyEA11qYAYKxCrfVS/7TyWQHOg7hcvPapiMlrwIaaPcHURo=
//
//	— backleaf/KB AbCd…
//
// The first value is what sha256sum prints for that file, which lists the checksums of all others; entries and root are those of the journal's
// head, key is the middle line of the public key's PEM file.
type Deposit struct {
	Origin   string // see Origin
	Manifest Digest // SHA-256 of tagmanifest-sha512.txt
	Entries  int64
	Root     Hash
	Panels   int64
	Made     string    // YYYY-MM-DD
	Key      PublicKey // set by Sign
}

var deposits = word[Deposit]{
	what: "the deposit", title: " deposit", wrong: errors.New("not the signature of a deposit: its lines are not those of one, or not in their order"),
	fields: func(d Deposit) (string, []field) {
		return d.Origin, []field{
			{"tagmanifest-sha512.txt", d.Manifest.String()}, {"entries", strconv.FormatInt(d.Entries, 10)}, {"root", d.Root.String()},
			{"panels", strconv.FormatInt(d.Panels, 10)}, {"made", d.Made}, {"key", d.Key.line()},
		}
	},
	read: func(origin string, v *values) Deposit {
		return Deposit{Origin: origin, Manifest: v.digest("tagmanifest-sha512.txt"), Entries: v.count("entries"), Root: v.root("root"),
			Panels: v.count("panels"), Made: v.day("made"), Key: v.key("key")}
	},
}

// Sign returns the word as a note signed with the key.
func (d Deposit) Sign(k Key) ([]byte, error) {
	d.Key = k.public()
	return deposits.sign(d, k)
}

// OpenDeposit reads the word for a deposit and checks its signature with the key that it names itself. Whether that is the studio's key is for
// the caller to find out.
func OpenDeposit(msg []byte) (Deposit, error) {
	return deposits.open(msg, func(d Deposit) PublicKey { return d.Key })
}
