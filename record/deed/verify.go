package deed

import (
	"errors"
	"fmt"

	"backleaf/record/seal"
)

// Verdict is what can be said about one promise.
type Verdict string

// Verdicts.
const (
	Holds   Verdict = "holds"
	Fails   Verdict = "does not hold"
	Unknown Verdict = "cannot be known"
)

// Result is one thing that was looked at, in plain words.
type Result struct {
	Verdict Verdict `json:"verdict"`
	Text    string  `json:"text"`
	Newer   bool    `json:"newer,omitzero"` // a later program wrote what it is about
}

// Files are the files of a deed; what is not at hand is nil.
type Files struct {
	Record    []byte // record.json
	Signature []byte // record.sig
	Key       []byte // studio.pem
	Head      []byte // head.txt
	Proof     []byte // proof.json
	Statement []byte // the signed text of the paper
}

// Names of the files, as a certificate attaches them.
const (
	RecordName    = "record.json"
	SignatureName = "record.sig"
	KeyName       = "studio.pem"
	HeadName      = "head.txt"
	ProofName     = "proof.json"
	StatementName = "statement.txt"
)

// Named returns the place of a file by its name; nil for any other name.
func (f *Files) Named(name string) *[]byte {
	switch name {
	case RecordName:
		return &f.Record
	case SignatureName:
		return &f.Signature
	case KeyName:
		return &f.Key
	case HeadName:
		return &f.Head
	case ProofName:
		return &f.Proof
	case StatementName:
		return &f.Statement
	}
	return nil
}

// Files returns the files of a deed.
func (d Deed) Files() Files {
	f := Files{Record: d.Record}
	if d.Signature != nil {
		f.Signature, f.Key, f.Head, f.Proof, f.Statement = d.Signature, d.Key.PEM(), d.Head, d.Proof, d.Statement
	}
	return f
}

// Report says what was found in some files.
type Report struct {
	Results   []Result
	Record    *Record         // nil if there is none that can be read
	Key       *seal.PublicKey // studio.pem, or the key that a statement names
	Head      *seal.Head      // nil if there is none that holds
	Statement *seal.Statement // nil if there is none that holds
}

// Holds reports that nothing fails. It does not say that everything could be
// known.
func (r Report) Holds() bool {
	for _, x := range r.Results {
		if x.Verdict == Fails {
			return false
		}
	}
	return true
}

func (r *Report) say(v Verdict, format string, args ...any) {
	r.Results = append(r.Results, Result{Verdict: v, Text: fmt.Sprintf(format, args...)})
}

// Verify checks whatever files of one deed are at hand, each by itself and
// against the others. It needs no book and no network.
func Verify(f Files) Report {
	r := &Report{}
	r.key(f)
	r.record(f)
	r.signature(f)
	r.head(f)
	r.proof(f)
	r.statement(f)
	r.ring()
	r.limits()
	return *r
}

func (r *Report) later(format string, args ...any) {
	r.Results = append(r.Results, Result{Verdict: Unknown, Text: fmt.Sprintf(format, args...), Newer: true})
}

func (r *Report) key(f Files) {
	if f.Key == nil {
		return
	}
	p, err := seal.ParsePublicPEM(f.Key)
	if err != nil {
		r.say(Fails, "%s: %v", KeyName, err)
		return
	}
	r.Key = &p
}

func (r *Report) record(f Files) {
	if f.Record == nil {
		return
	}
	sum := seal.DigestOf(f.Record)
	rec, err := Read(f.Record)
	switch {
	case errors.Is(err, ErrNewer):
		r.later("newer: what %s says (SHA-256 %s) cannot be read by this program", RecordName, sum)
		return
	case err != nil:
		r.say(Fails, "%s (SHA-256 %s): %v", RecordName, sum, err)
		return
	}
	r.Record = &rec
	if rec.Newer {
		r.later("newer: what %s adds up to may be out of date here, for a later program wrote some of it", RecordName)
	}
	day, _ := rec.Issued.Exact()
	r.say(Holds, "%s is the record of %s by %s, made on %s from %d entries; SHA-256 %s", RecordName, rec.Number, rec.Workshop.Studio.Maker,
		day.Format("2 January 2006"), len(rec.Entries), sum)
}

func (r *Report) signature(f Files) {
	switch {
	case f.Record == nil && f.Signature == nil:
	case f.Record == nil:
		r.say(Unknown, "what %s was signed over: %s is missing", SignatureName, RecordName)
	case f.Signature == nil:
		r.say(Unknown, "who signed %s: %s is missing", RecordName, SignatureName)
	case f.Key == nil:
		r.say(Unknown, "whether the signature over %s is good: %s is missing", RecordName, KeyName)
	case r.Key == nil: // said already
	default:
		if err := r.Key.VerifyRecord(f.Record, f.Signature); err != nil {
			r.say(Fails, "the signature over %s: %v", RecordName, err)
			return
		}
		r.say(Holds, "the signature over %s is that of the key in %s", RecordName, KeyName)
	}
}

func (r *Report) head(f Files) {
	switch {
	case f.Head == nil:
		return
	case f.Key == nil:
		if h, err := seal.UnverifiedHead(f.Head); err != nil {
			r.say(Fails, "the head of the journal (%s): %v", HeadName, err)
		} else {
			r.say(Unknown, "who signed the head of journal %s over %d entries: %s is missing", h.Origin, h.Size, KeyName)
		}
		return
	case r.Key == nil:
		return
	}
	h, err := seal.OpenHead(f.Head, *r.Key)
	if err != nil {
		r.say(Fails, "the head of the journal (%s): %v", HeadName, err)
		return
	}
	r.Head = &h
	r.say(Holds, "the head of journal %s over %d entries is signed with the key in %s", h.Origin, h.Size, KeyName)
	if r.Record == nil {
		return
	}
	if origin, _ := seal.Origin(r.Record.Workshop.Studio.Mark, r.Record.Workshop.Studio.Journal); origin != h.Origin {
		r.say(Fails, "the head is of another journal than that of the record: %s, not %s", h.Origin, origin)
	}
	if h.Size != r.Record.Size || h.Root != r.Record.Root {
		r.say(Fails, "the head is another one than the record names")
	}
}

func (r *Report) proof(f Files) {
	if f.Proof == nil {
		return
	}
	p, err := seal.ParseProof(f.Proof)
	if err != nil {
		r.say(Fails, "%s: %v", ProofName, err)
		return
	}
	if r.Record == nil {
		r.say(Unknown, "which entries %s is about: there is no %s that can be read", ProofName, RecordName)
		return
	}
	err = p.Verify(seal.Head{Size: r.Record.Size, Root: r.Record.Root}, r.Record.Entries)
	switch {
	case err != nil:
		r.say(Fails, "that the entries of the record stand in the journal: %v", err)
	case r.Head == nil:
		r.say(Unknown, "whether the journal in which the entries of the record stand is the studio's: there is no signed head that holds")
	default:
		r.say(Holds, "every entry of the record stands in that journal, unchanged")
	}
}

func (r *Report) statement(f Files) {
	if f.Statement == nil {
		return
	}
	s, err := seal.OpenStatement(seal.FromPaper(f.Statement))
	if err != nil {
		r.say(Fails, "the statement from the paper: %v", err)
		return
	}
	r.Statement = &s
	r.say(Holds, "the statement is signed with the key that it names: %s", inWords(s))
	if r.Key == nil {
		r.Key = &s.Key
	} else if *r.Key != s.Key {
		r.say(Fails, "the statement is signed with another key than that in %s", KeyName)
	}
	switch {
	case f.Record == nil:
		r.say(Unknown, "the whole record: the statement only names its SHA-256, %s", s.Record)
	case seal.DigestOf(f.Record) != s.Record:
		r.say(Fails, "the statement is about another record than %s", RecordName)
	case r.Record != nil && string(r.Record.Number) != s.Number:
		r.say(Fails, "the statement is about panel %s, the record about %s", s.Number, r.Record.Number)
	default:
		r.say(Holds, "the statement is about this very record")
	}
}

// inWords repeats a statement for a reader.
func inWords(s seal.Statement) string {
	out := s.Number
	for _, x := range []struct{ before, value string }{{"title ", s.Title}, {"by ", s.Maker}, {"", s.Size}, {"made ", s.Made}, {"issued ", s.Issued}} {
		if x.value != "" {
			out += ", " + x.before + x.value
		}
	}
	return out
}

// ring looks at what the record itself says of the key.
func (r *Report) ring() {
	if r.Record == nil || r.Key == nil {
		return
	}
	ring, err := Keys(r.Record.Workshop.Keys)
	if err != nil {
		r.say(Fails, "the life of the studio's keys as the record tells it: %v", err)
		return
	}
	switch s := ring.Standing(*r.Key); s {
	case Current:
		r.say(Holds, "the key is the one that the studio's journal names")
	case Unrecorded:
		r.say(Fails, "the key is none that the studio's journal names")
	default:
		r.say(Fails, "the key was %s before this record was made", s)
	}
	for _, p := range ring.Keys {
		if heir, ok := ring.Heir(p); ok {
			r.say(Holds, "the older key %s named its successor %s", p.Fingerprint().Short(), heir.Short())
		}
	}
}

// limits says what no check of these files can tell.
func (r *Report) limits() {
	if r.Key != nil {
		if r.Key.IsDemo() {
			r.say(Unknown, "who signed: this is a demonstration, and anyone can sign with its key")
		} else {
			r.say(Unknown, "whose key this is: compare its fingerprint with one you have from the studio by another way: %s", r.Key.Fingerprint().Groups())
		}
	}
	if r.Record == nil {
		return
	}
	if len(r.Record.Findings) > 0 {
		r.say(Unknown, "whether the findings of that day are right: they follow rules of thumb; the record tells them one by one")
	}
	r.say(Unknown, "whether what the maker recorded is true and all of it, and what happened since: a signature only says that it was not changed")
}
