package seal

import (
	"bytes"
	"encoding/base64"
	"errors"
	"fmt"
	"slices"
	"strings"
)

const (
	statusTitle = " status"
	// MaxStatusBytes bounds a status: some thirteen thousand papers.
	MaxStatusBytes = 1_000_000
	maxSuccessions = 50 // of which each is opened again for each
)

// A Status says on a day how the papers of a studio stand, each named by the digest of its record: who lacks the paper learns nothing from it.
// Signed, it reads
//
//	backleaf/KB status
//	date: 2026-06-01
//	size: 142
//	root: CsUYapGGPo4dkMgIAUqom/Xajj7h2fB2MPA3j2jxq2I=
//	key: MCowBQYDK2VwAyEA11qYAYKxCrfVS/7TyWQHOg7hcvPapiMlrwIaaPcHURo=
//	succession: YmFja2xlYWYvS0Iga2V5IHN1Y2Nlc3Npb24K…
//	retired: 5b3a…
//	issued: e3b0…
//	issued: f00d…
//	withdrawn: f00d…
//
//	— backleaf/KB AbCd…
//
// size and root are those of the journal that day, key is the one that signs it. A succession is the base64 of a retired key's word for its heir (see
// Succession), so that a paper of that key can be held against the status; retired and lost are fingerprints of earlier keys. The words that follow are those of [Standings], in that order, their digests ascending. A paper can have several: issued and withdrawn.
type Status struct {
	Origin string // see Origin
	Date   string // YYYY-MM-DD
	Size   int64
	Root   Hash
	Key    PublicKey // set by Sign

	Successions [][]byte // signed notes, in the order of the keys
	Papers      map[Standing][]Digest
}

// A Standing is what a status says of a key, of the record of a certificate, or of that of a page.
type Standing string

// The standings.
const (
	KeyRetired Standing = "retired"   // a key that named its successor
	KeyLost    Standing = "lost"      // a key that was declared lost
	Issued     Standing = "issued"    // a certificate
	Replaced   Standing = "replaced"  // a certificate
	Withdrawn  Standing = "withdrawn" // a certificate
	Stolen     Standing = "stolen"    // the maker reports the panel stolen
	Missing    Standing = "missing"   // the maker reports the panel lost
	Discarded  Standing = "discarded" // the panel was
	Earlier    Standing = "earlier"   // a certificate of a work that another took the place of on the panel
	Shown      Standing = "page"      // the page of a panel
)

// Standings lists them in the order of a status.
var Standings = []Standing{KeyRetired, KeyLost, Issued, Replaced, Withdrawn, Stolen, Missing, Discarded, Earlier, Shown}

var errStatus = errors.New("not the status of a studio: its lines are not those of one, or not in their order")

// Sign returns the status as a note signed with the key.
func (s Status) Sign(k Key) ([]byte, error) {
	s.Key = k.public()
	text := s.text()
	_, err := parseStatus(text)
	var msg []byte
	if err == nil {
		msg, err = k.sign(text)
	}
	if err == nil && len(msg) > MaxStatusBytes {
		err = fmt.Errorf("it has more than %d bytes", MaxStatusBytes)
	}
	if err != nil {
		return nil, fmt.Errorf("cannot sign the status: %w", err)
	}
	return msg, nil
}

// OpenStatus reads a status and checks its signature with the key that it names itself. Whether that is the studio's key is for the caller to
// find out.
func OpenStatus(msg []byte) (Status, error) {
	if len(msg) > MaxStatusBytes {
		return Status{}, fmt.Errorf("a status has at most %d bytes", MaxStatusBytes)
	}
	text, _, ok := bytes.Cut(msg, []byte("\n\n"))
	if text = append(bytes.Clone(text), '\n'); !ok || !validNoteText(string(text)) {
		return Status{}, errStatus
	}
	s, err := parseStatus(string(text))
	if err != nil {
		return Status{}, err
	}
	return s, checkNote(msg, string(text), s.Origin, s.Key)
}

// Says returns what the status says of a digest, in the order of [Standings].
func (s Status) Says(d Digest) (out []Standing) {
	for _, w := range Standings {
		if _, ok := slices.BinarySearchFunc(s.Papers[w], d, compareDigests); ok {
			out = append(out, w)
		}
	}
	return out
}

// SpeaksFor reports whether the status is signed with a key or with one that it led to: each key signed the word for its heir. What it says of other keys
// anyone can write.
func (s Status) SpeaksFor(p PublicKey) bool {
	for range s.Successions { // they are in the order of the keys, but a stranger's may run in circles
		for _, n := range s.Successions {
			if p == s.Key {
				return true
			}
			if heir, err := OpenSuccession(n, p); err == nil && heir.Origin == s.Origin {
				p = heir.New
			}
		}
	}
	return p == s.Key
}

func compareDigests(a, b Digest) int { return bytes.Compare(a[:], b[:]) }

func (s Status) text() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s%s\ndate: %s\nsize: %d\nroot: %s\nkey: %s\n", s.Origin, statusTitle, s.Date, s.Size, s.Root, s.Key.line())
	for _, n := range s.Successions {
		fmt.Fprintf(&b, "succession: %s\n", base64.StdEncoding.EncodeToString(n))
	}
	for _, w := range Standings {
		for _, d := range slices.Compact(slices.SortedFunc(slices.Values(s.Papers[w]), compareDigests)) {
			fmt.Fprintf(&b, "%s: %s\n", w, d)
		}
	}
	return b.String()
}

func parseStatus(text string) (Status, error) {
	lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	origin, ok := strings.CutSuffix(lines[0], statusTitle)
	if !ok || len(lines) < 5 || !validOrigin(origin) {
		return Status{}, errStatus
	}
	s := Status{Origin: origin, Papers: map[Standing][]Digest{}}
	value := func(i int) string { _, v, _ := strings.Cut(lines[i], ": "); return v }
	h, err := parseHead(origin + "\n" + value(2) + "\n" + value(3) + "\n")
	if err != nil {
		return Status{}, errStatus
	}
	s.Size, s.Root = h.Size, h.Root
	if s.Date = value(1); !isDate(s.Date) {
		return Status{}, errStatus
	}
	if s.Key, err = parsePublicLine(value(4)); err != nil {
		return Status{}, err
	}
	for _, line := range lines[5:] {
		word, sum, _ := strings.Cut(line, ": ")
		if word == "succession" {
			n, err := base64.StdEncoding.DecodeString(sum)
			if err != nil || len(s.Successions) == maxSuccessions {
				return Status{}, errStatus
			}
			s.Successions = append(s.Successions, n)
			continue
		}
		d, err := ParseDigest(sum)
		if err != nil || !slices.Contains(Standings, Standing(word)) {
			return Status{}, errStatus
		}
		s.Papers[Standing(word)] = append(s.Papers[Standing(word)], d)
	}
	if s.text() != text {
		return Status{}, errStatus
	}
	return s, nil
}
