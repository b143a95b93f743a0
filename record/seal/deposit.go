package seal

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"golang.org/x/mod/sumdb/tlog"
)

const depositTitle = " deposit"

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

var errDeposit = errors.New("not the signature of a deposit: its lines are not those of one, or not in their order")

// Sign returns the word as a note signed with the key.
func (d Deposit) Sign(k Key) ([]byte, error) {
	if k.private == nil {
		return nil, errors.New("cannot sign the deposit: there is no key")
	}
	d.Key = k.Public()
	text, err := d.text()
	if err == nil {
		_, err = parseDeposit(text)
	}
	if err != nil {
		return nil, fmt.Errorf("cannot sign the deposit: %w", err)
	}
	return k.signNote(text)
}

// OpenDeposit reads the word for a deposit and checks its signature with the key that it names itself. Whether that is the studio's key is for
// the caller to find out.
func OpenDeposit(msg []byte) (Deposit, error) {
	text, err := unsignedText(msg)
	if err != nil {
		return Deposit{}, err
	}
	d, err := parseDeposit(text)
	if err != nil {
		return Deposit{}, err
	}
	if _, err := openNote(msg, d.Key); err != nil {
		return Deposit{}, err
	}
	return d, nil
}

func (d Deposit) text() (string, error) {
	return formatFields(d.Origin+depositTitle, []field{
		{"tagmanifest-sha512.txt", d.Manifest.String()}, {"entries", strconv.FormatInt(d.Entries, 10)}, {"root", d.Root.String()},
		{"panels", strconv.FormatInt(d.Panels, 10)}, {"made", d.Made}, {"key", d.Key.line()},
	})
}

func parseDeposit(text string) (Deposit, error) {
	first, values := parseFields(text)
	origin, ok := strings.CutSuffix(first, depositTitle)
	if !ok || !validOrigin(origin) || !isDate(values["made"]) {
		return Deposit{}, errDeposit
	}
	d := Deposit{Origin: origin, Made: values["made"]}
	var errs [5]error
	d.Manifest, errs[0] = ParseDigest(values["tagmanifest-sha512.txt"])
	d.Entries, errs[1] = strconv.ParseInt(values["entries"], 10, 64)
	d.Root, errs[2] = tlog.ParseHash(values["root"])
	d.Panels, errs[3] = strconv.ParseInt(values["panels"], 10, 64)
	d.Key, errs[4] = parsePublicLine(values["key"])
	if err := errors.Join(errs[:]...); err != nil {
		return Deposit{}, errDeposit
	}
	if again, err := d.text(); err != nil || again != text || d.Entries < 0 || d.Panels < 0 {
		return Deposit{}, errDeposit
	}
	return d, nil
}
