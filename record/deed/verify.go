package deed

import (
	"errors"

	"backleaf/record"
	"backleaf/record/seal"
)

// Verdict is what can be said about one promise. Its words are those of the
// codes "verdict-holds" and so on.
type Verdict string

// Verdicts.
const (
	Holds   Verdict = "holds"
	Fails   Verdict = "fails"
	Unknown Verdict = "unknown" // it cannot be known
	Since   Verdict = "since"   // it happened after a paper was made
)

// Result is one thing that was looked at: a code with its values.
type Result struct {
	Verdict Verdict     `json:"verdict"`
	Said    record.Said `json:"result"`
	Newer   bool        `json:"newer,omitzero"` // a later program wrote what it is about
}

// Found makes a result.
func Found(v Verdict, code string, values ...record.Value) Result {
	return Result{Verdict: v, Said: record.Say(code, values...)}
}

// Why is the text of an error as a value of a result.
func Why(err error) record.Value { return record.With("why", err.Error()) }

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

func (r *Report) say(v Verdict, code string, values ...record.Value) {
	r.Results = append(r.Results, Found(v, code, values...))
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

func (r *Report) later(code string, values ...record.Value) {
	r.say(Unknown, code, values...)
	r.Results[len(r.Results)-1].Newer = true
}

func (r *Report) key(f Files) {
	if f.Key == nil {
		return
	}
	p, err := seal.ParsePublicPEM(f.Key)
	if err != nil {
		r.say(Fails, "key-not-read", Why(err))
		return
	}
	r.Key = &p
}

func (r *Report) record(f Files) {
	if f.Record == nil {
		return
	}
	sum := record.With("digest", seal.DigestOf(f.Record).String())
	rec, err := Read(f.Record)
	switch {
	case errors.Is(err, ErrNewer):
		r.later("record-newer", sum)
		return
	case err != nil:
		r.say(Fails, "record-not-read", sum, Why(err))
		return
	}
	r.Record = &rec
	if rec.Newer {
		r.later("record-partly-newer")
	}
	r.say(Holds, "record-read", record.With("panel", rec.Number), record.With("maker", rec.Workshop.Studio.Maker), record.With("issued", rec.Issued),
		record.With("entries", len(rec.Entries)), sum)
}

func (r *Report) signature(f Files) {
	switch {
	case f.Record == nil && f.Signature == nil:
	case f.Record == nil:
		r.say(Unknown, "signature-of-nothing")
	case f.Signature == nil:
		r.say(Unknown, "record-not-signed")
	case f.Key == nil:
		r.say(Unknown, "signature-without-key")
	case r.Key == nil: // said already
	default:
		if err := r.Key.VerifyRecord(f.Record, f.Signature); err != nil {
			r.say(Fails, "signature-wrong", Why(err))
			return
		}
		r.say(Holds, "signature-good", keyNamed(*r.Key))
	}
}

func keyNamed(p seal.PublicKey) record.Value { return record.With("key", p.Fingerprint().Groups()) }

func (r *Report) head(f Files) {
	switch {
	case f.Head == nil:
		return
	case f.Key == nil:
		if h, err := seal.UnverifiedHead(f.Head); err != nil {
			r.say(Fails, "head-not-read", Why(err))
		} else {
			r.say(Unknown, "head-without-key", record.With("journal", h.Origin), record.With("entries", h.Size))
		}
		return
	case r.Key == nil:
		return
	}
	h, err := seal.OpenHead(f.Head, *r.Key)
	if err != nil {
		r.say(Fails, "head-not-read", Why(err))
		return
	}
	r.Head = &h
	r.say(Holds, "head-signed", record.With("journal", h.Origin), record.With("entries", h.Size), keyNamed(*r.Key))
	if r.Record == nil {
		return
	}
	if origin, _ := seal.Origin(r.Record.Workshop.Studio.Mark, r.Record.Workshop.Studio.Journal); origin != h.Origin {
		r.say(Fails, "head-of-other-journal", record.With("journal", h.Origin), record.With("own", origin))
	}
	if h.Size != r.Record.Size || h.Root != r.Record.Root {
		r.say(Fails, "head-not-of-record")
	}
}

func (r *Report) proof(f Files) {
	if f.Proof == nil {
		return
	}
	p, err := seal.ParseProof(f.Proof)
	if err != nil {
		r.say(Fails, "proof-not-read", Why(err))
		return
	}
	if r.Record == nil {
		r.say(Unknown, "proof-of-nothing")
		return
	}
	err = p.Verify(seal.Head{Size: r.Record.Size, Root: r.Record.Root}, r.Record.Entries)
	switch {
	case err != nil:
		r.say(Fails, "proof-wrong", Why(err))
	case r.Head == nil:
		r.say(Unknown, "proof-without-head")
	default:
		r.say(Holds, "proof-good")
	}
}

func (r *Report) statement(f Files) {
	if f.Statement == nil {
		return
	}
	s, err := seal.OpenStatement(seal.FromPaper(f.Statement))
	if err != nil {
		r.say(Fails, "statement-wrong", Why(err))
		return
	}
	r.Statement = &s
	r.say(Holds, "statement-good", record.With("panel", record.Number(s.Number)), keyNamed(s.Key))
	if r.Key == nil {
		r.Key = &s.Key
	} else if *r.Key != s.Key {
		r.say(Fails, "statement-of-other-key")
	}
	switch {
	case f.Record == nil:
		r.say(Unknown, "statement-alone", record.With("digest", s.Record.String()))
	case seal.DigestOf(f.Record) != s.Record:
		r.say(Fails, "statement-of-other-record")
	case r.Record != nil && string(r.Record.Number) != s.Number:
		r.say(Fails, "statement-of-other-panel", record.With("panel", record.Number(s.Number)), record.With("own", r.Record.Number))
	default:
		r.say(Holds, "statement-of-record")
	}
}

// ring looks at what the record itself says of the key.
func (r *Report) ring() {
	if r.Record == nil || r.Key == nil {
		return
	}
	ring, err := Keys(r.Record.Workshop.Keys)
	if err != nil {
		r.say(Fails, "keys-wrong", Why(err))
		return
	}
	switch s := ring.Standing(*r.Key); s {
	case Current:
		r.say(Holds, "key-of-journal")
	case Unrecorded:
		r.say(Fails, "key-not-of-journal")
	default:
		r.say(Fails, "key-ended-before", record.With("standing", record.Code(s)))
	}
	for _, p := range ring.Keys {
		heir, named := ring.Heir(p)
		switch {
		case named:
			r.say(Holds, "key-named-successor", record.With("key", p.Fingerprint().Short()), record.With("successor", heir.Short()))
		case p == *r.Key:
		case ring.Standing(p) == Lost:
			r.say(Unknown, "key-without-heir", record.With("key", p.Fingerprint().Groups()))
		default: // the studio has one key at a time
			r.say(Unknown, "key-beside", record.With("key", p.Fingerprint().Groups()))
		}
	}
}

// limits says what no check of these files can tell.
func (r *Report) limits() {
	switch {
	case r.Key == nil:
	case r.Key.IsDemo():
		r.say(Unknown, "anyone-signs")
	default:
		r.say(Unknown, "whose-key", keyNamed(*r.Key))
	}
	if r.Record == nil {
		return
	}
	if len(r.Record.Findings) > 0 {
		r.say(Unknown, "findings-by-rules")
	}
	r.say(Unknown, "record-as-told")
}
