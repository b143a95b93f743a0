package verify

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"

	"backleaf/record"
	"backleaf/record/bag"
	"backleaf/record/deed"
	"backleaf/record/pdf"
	"backleaf/record/safefile"
	"backleaf/record/seal"
)

// MaxProblems bounds how many problems of a deposit are told one by one.
const MaxProblems = 20

// Names of the files by which a deposit is signed as a whole.
const (
	DepositSignature = "signature.txt"
	SignedManifest   = "tagmanifest-sha512.txt"
	otherManifest    = "tagmanifest-sha256.txt"
)

// depositCheck is a deposit being checked.
type depositCheck struct {
	Checker
	root     *os.Root
	dir      string
	signed   *seal.Deposit // nil: not signed as a whole
	archive  Archive       // nil: there is no journal in it, or nobody to read it
	results  []deed.Result
	counts   map[Kind]int
	unsigned []string
	keys     []seal.PublicKey
	panels   []record.Number
	told     int // problems told one by one
	more     int
}

func (c *depositCheck) say(v deed.Verdict, code string, values ...record.Value) {
	c.results = append(c.results, deed.Found(v, code, values...))
}

// part says a result about one file, up to a bound of them.
func (c *depositCheck) part(file string, r deed.Result) {
	if c.told++; c.told > MaxProblems {
		if r.Verdict != deed.Since {
			c.more++
		}
		return
	}
	values := append([]record.Value{record.With("file", file), record.With("about", record.Code(r.Said.Code))}, r.Said.Values...)
	code := "part"
	switch {
	case r.Newer:
		code = "part-newer"
	case r.Verdict == deed.Since:
		code = "part-since"
	}
	c.results = append(c.results, deed.Result{Verdict: r.Verdict, Said: record.Said{Code: code, Values: values}, Newer: r.Newer})
}

// deposit checks the bag and every record, certificate and book in it, each by
// itself and against the others.
func (c Checker) deposit(ctx context.Context, dir string) ([]deed.Result, []record.Number, error) {
	report, err := bag.Validate(ctx, dir)
	if err != nil {
		return nil, nil, err
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		return nil, nil, fmt.Errorf("cannot read %w", err)
	}
	defer root.Close()
	d := &depositCheck{Checker: c, root: root, dir: dir, counts: map[Kind]int{}}
	d.signature(report)
	d.bag(report)
	if c.Books != nil {
		var results []deed.Result
		d.archive, results = c.Books.Deposit(ctx, dir, root, report, d.signed)
		d.results = append(d.results, results...)
		if d.archive == nil && d.signed != nil {
			d.say(deed.Fails, "deposit-signed-of-nothing", record.With("entries", d.signed.Entries))
		}
	}
	if d.signed != nil {
		for _, w := range c.Witnesses {
			results, err := w.Deposit(ctx, *d.signed)
			if err != nil {
				return nil, nil, err
			}
			d.results = append(d.results, results...)
		}
	}
	if err := d.parts(ctx); err != nil {
		return nil, nil, err
	}
	d.end()
	return d.results, d.panels, nil
}

// signature checks the word by which the deposit is signed as a whole. It is
// over the list of the lists of all files, which the bag is held against.
func (c *depositCheck) signature(report bag.Report) {
	note, err := safefile.ReadIn(c.root, DepositSignature, seal.MaxNoteBytes)
	if errors.Is(err, fs.ErrNotExist) {
		c.say(deed.Unknown, "deposit-not-signed")
		return
	}
	var signed seal.Deposit
	if err == nil {
		signed, err = seal.OpenDeposit(note)
	}
	var list []byte
	if err == nil {
		list, err = safefile.ReadIn(c.root, SignedManifest, 1<<20)
	}
	switch {
	case err != nil:
		c.say(deed.Fails, "deposit-signature-wrong", deed.Why(err))
		return
	case seal.DigestOf(list) != signed.Manifest:
		c.say(deed.Fails, "deposit-lists-changed", record.With("file", SignedManifest))
		return
	}
	for _, f := range report.Unlisted {
		if f != DepositSignature {
			c.say(deed.Fails, "deposit-added", record.With("file", f))
		}
	}
	for _, f := range report.Empty {
		c.say(deed.Fails, "deposit-added", record.With("file", f))
	}
	// The lists of lists are in no list themselves.
	lists, _ := fs.Glob(c.root.FS(), "tagmanifest-*")
	for _, f := range lists {
		if f != SignedManifest && f != otherManifest {
			c.say(deed.Fails, "deposit-added", record.With("file", f))
		}
	}
	if !slices.Contains(lists, otherManifest) {
		c.say(deed.Fails, "deposit-missing", record.With("file", otherManifest))
	}
	c.signed = &signed
	c.keys = append(c.keys, signed.Key)
	c.say(deed.Holds, "deposit-signed", record.With("key", signed.Key.Fingerprint().Groups()), record.With("journal", signed.Origin),
		record.With("entries", signed.Entries), record.With("panels", signed.Panels), record.With("made", signed.Made))
}

// bag says what is wrong with the files as they are listed.
func (c *depositCheck) bag(report bag.Report) {
	if report.Valid {
		c.say(deed.Holds, "deposit-whole", record.With("files", report.Files), record.With("algorithms", report.Algorithms))
	}
	for _, s := range Problems(report) {
		c.results = append(c.results, deed.Result{Verdict: deed.Fails, Said: s})
	}
	for i, n := range report.Notes {
		if i == MaxProblems {
			break
		}
		c.say(deed.Unknown, "deposit-problem", record.With("file", n.Path), record.With("why", n.What))
	}
}

// Problems says what is wrong with the files of a bag, each once however many
// lists name it. The count of them all follows from what is wrong with one.
func Problems(report bag.Report) (out []record.Said) {
	of := map[[2]string]bool{}
	byFile := slices.ContainsFunc(report.Problems, func(p bag.Problem) bool { return p.Kind != "" && p.Kind != bag.Miscounted })
	for i, p := range report.Problems {
		key := [2]string{p.Path, string(p.Kind)}
		switch {
		case p.Kind != "" && of[key], p.Kind == bag.Miscounted && byFile:
			continue
		case len(out) == MaxProblems:
			return append(out, record.Say("and-more-problems", record.With("n", len(report.Problems)-i+report.More)))
		}
		of[key] = true
		out = append(out, record.Say("deposit-"+cmp.Or(string(p.Kind), "problem"), record.With("file", p.File()), record.With("with", p.With), record.With("why", p.What)))
	}
	return out
}

// parts looks at every record, certificate and book.
func (c *depositCheck) parts(ctx context.Context) error {
	return fs.WalkDir(c.root.FS(), "data", func(p string, d fs.DirEntry, err error) error {
		if err != nil || ctx.Err() != nil || !d.Type().IsRegular() {
			return ctx.Err() // what cannot be read was said above
		}
		e, ok := c.evidence(p)
		if !ok {
			return nil
		}
		c.counts[e.Kind]++
		var results []deed.Result
		switch {
		case e.Unread != nil:
			results = []deed.Result{*e.Unread}
		case e.Kind == Book:
			results = c.book(ctx, filepath.Join(c.dir, filepath.FromSlash(p)))
		default:
			results = c.record(p, e)
		}
		for _, r := range results {
			if r.Verdict == deed.Fails || r.Newer || e.Unread != nil {
				c.part(p, r)
			}
		}
		if e.Kind != Book && e.Unread == nil {
			return c.asked(ctx, p, e)
		}
		return nil
	})
}

// asked asks the witnesses of a record or certificate. What became of it since is
// no fault of a deposit; that the studio never knew it is.
func (c *depositCheck) asked(ctx context.Context, p string, e Evidence) error {
	rep := deed.Verify(e.Files)
	for _, w := range c.Witnesses {
		results, err := w.Paper(ctx, e, rep)
		if err != nil {
			return err
		}
		for _, r := range results {
			switch became := slices.ContainsFunc(standings, func(s standing) bool { return s.became && slices.Contains(s.from, r.Said.Code) }); {
			case r.Verdict != deed.Fails, became && e.Kind != Certificate:
				continue
			case became:
				r.Verdict = deed.Since
			}
			c.part(p, r)
		}
	}
	return nil
}

// record checks a record or certificate by itself and against the journal.
func (c *depositCheck) record(p string, e Evidence) []deed.Result {
	rep := deed.Verify(e.Files)
	results := append(e.Remarks, rep.Results...)
	if rep.Key != nil {
		if c.signed != nil && e.Kind == Folder && *rep.Key != c.signed.Key {
			results = append(results, deed.Found(deed.Fails, "deposit-record-other-key", record.With("key", rep.Key.Fingerprint().Short())))
		}
		c.keys = append(c.keys, *rep.Key)
	}
	switch {
	case e.Kind == Folder && stripped(e.Files, rep) && e.Files.Signature == nil && e.Files.Proof == nil:
		c.unsigned = append(c.unsigned, p)
	case stripped(e.Files, rep):
		results = append(results, partsMissing)
	}
	if rep.Record != nil {
		c.panels = append(c.panels, rep.Record.Number)
	}
	if c.archive != nil && rep.Record != nil {
		results = append(results, c.archive.Record(e.Kind, *rep.Record, rep.Key)...)
	}
	return results
}

// end says what is said once for all parts.
func (c *depositCheck) end() {
	if c.more > 0 {
		c.say(deed.Fails, "and-more-problems", record.With("n", c.more))
	}
	if c.archive != nil {
		c.results = append(c.results, c.archive.End()...)
	}
	if c.counts[Folder]+c.counts[Certificate]+c.counts[Book] > 0 {
		c.say(deed.Holds, "deposit-parts", record.With("records", c.counts[Folder]), record.With("certificates", c.counts[Certificate]), record.With("books", c.counts[Book]))
	}
	// A deposit may be made where the key is not. But then no record of it is signed.
	n, all := len(c.unsigned), c.counts[Folder]
	for i, p := range c.unsigned {
		if n < all && i < MaxProblems {
			c.part(p, partsMissing)
		}
	}
	if n > 0 && n == all {
		c.say(deed.Unknown, "deposit-records-unsigned")
	}
	said := map[seal.PublicKey]bool{}
	for _, k := range c.keys {
		if said[k] || len(said) > MaxProblems {
			continue
		}
		said[k] = true
		if k.IsDemo() {
			c.say(deed.Unknown, "anyone-signs")
		} else {
			c.say(deed.Unknown, "whose-key", record.With("key", k.Fingerprint().Groups()))
		}
	}
	if c.archive == nil {
		c.say(deed.Unknown, "deposit-not-derived")
	}
}

// evidence reads a file of a deposit if it is one that can be checked.
func (c *depositCheck) evidence(p string) (e Evidence, ok bool) {
	fail := func(err error) (Evidence, bool) {
		e.Unread = unread(deed.Unknown, "part-not-read", deed.Why(err))
		return e, true
	}
	switch {
	case path.Base(p) == deed.RecordName:
		e = Evidence{Name: p, Kind: Folder}
		var err error
		if e.Files, _, err = deedIn(c.root, path.Dir(p)); err != nil {
			return fail(err)
		}
		e.Remarks = mended(&e.Files)
		// The key may stand once for all records.
		for dir := path.Dir(p); e.Files.Key == nil && dir != "."; dir = path.Dir(dir) {
			if above, err := safefile.ReadIn(c.root, path.Join(path.Dir(dir), deed.KeyName), maxPart); err == nil {
				e.Files.Key = above
			}
		}
		return e, true
	case path.Ext(p) == ".pdf":
		e = Evidence{Name: p, Kind: Certificate}
		data, err := safefile.ReadIn(c.root, p, pdf.MaxBytes)
		if err != nil {
			return fail(err)
		}
		e = certificateIn(p, data)
		// A label or dossier is a PDF without a record.
		return e, e.Kind != Bare
	case path.Ext(p) == ".sqlite":
		return Evidence{Name: p, Kind: Book}, true
	}
	return e, false
}
