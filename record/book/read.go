package book

import (
	"cmp"
	"context"
	"encoding/json"
	"fmt"
	"runtime"
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/form"
)

// Filter chooses entries. Its zero value chooses all.
type Filter struct {
	// Panels chooses all that is needed to fold these panels: what names
	// them, studio, shelf and whatever names no panel, and corrections of
	// these.
	Panels   []record.Number
	Kinds    []record.Kind // of these kinds only
	From, To int64         // of these numbers only, both included; 0: no bound
	Last     int           // at most this many, the latest; 0: no bound
}

// needing lists the entries that a query names, and what corrects them.
func needing(query string) string {
	return "WITH RECURSIVE need (seq) AS (" + query + " UNION SELECT c.seq FROM correction c JOIN need n ON c.of = n.seq)"
}

// corrected reads them.
func corrected(query string) string {
	return needing(query) + " SELECT seq, bytes FROM entry WHERE seq IN need ORDER BY seq"
}

// needed lists what must be folded for panels given as a JSON array.
var needed = needing(`SELECT seq FROM mention WHERE panel IN (SELECT value FROM json_each(?1))
	UNION SELECT seq FROM about WHERE panels = 0 AND kind NOT IN ('amended', 'withdrawn')`)

// Entries returns entries in the order of the journal.
func (b *Book) Entries(ctx context.Context, f Filter) (out []form.Stored, err error) {
	err = b.Read(ctx, f, func(st form.Stored) error { out = append(out, st); return nil })
	return out, err
}

// Read gives entries to each, in the order of the journal: more than memory
// holds. An error of it ends the reading.
func (b *Book) Read(ctx context.Context, f Filter, each func(form.Stored) error) error {
	var where []string
	args := []any{nil, f.From, f.To, int64(-1), nil}
	query := ""
	if f.Panels != nil {
		args[0], query = jsonList(f.Panels), needed
		where = append(where, "seq IN (SELECT seq FROM need)")
	}
	if f.Kinds != nil {
		args[4] = jsonList(f.Kinds)
		where = append(where, "seq IN (SELECT seq FROM about WHERE kind IN (SELECT value FROM json_each(?5)))")
	}
	if f.Last > 0 {
		args[3] = int64(f.Last)
	}
	// SQLite refuses an argument that the query does not mention: hence the last two.
	where = append(where, "seq >= ?2", "(?3 = 0 OR seq <= ?3)", "(?1 IS NULL OR 1)", "(?5 IS NULL OR 1)")
	query += " SELECT seq, bytes FROM (SELECT seq, bytes FROM entry WHERE " + strings.Join(where, " AND ") + " ORDER BY seq DESC LIMIT ?4) ORDER BY seq"
	return b.view(ctx, func(s *session) error {
		return s.decoded(ctx, query, args, form.Decode, func(st form.Stored, err error) error {
			if err = placed(st, err); err == nil {
				err = each(st)
			}
			return err
		})
	})
}

// stored reads entries and looks at the context between them.
func (s *session) stored(ctx context.Context, query string, args []any, f func(form.Stored)) error {
	return s.decoded(ctx, query, args, form.Decode, func(st form.Stored, err error) error {
		if err = placed(st, err); err == nil {
			f(st)
		}
		return err
	})
}

// placed wants an entry that was read to stand where it says that it stands.
func placed(st form.Stored, err error) error {
	if err == nil && st.Entry.Seq != st.Seq {
		err = fmt.Errorf("it says that it is entry %d", st.Entry.Seq)
	}
	if err != nil {
		return &BadEntry{st.Seq, err.Error()}
	}
	return nil
}

// portion is how many entries are decoded at a time.
const portion = 64

// decoded reads entries, decodes them on all cores, and gives each to f in the
// order in which it was read, with what was wrong with it.
func (s *session) decoded(ctx context.Context, query string, args []any, decode func([]byte) (record.Entry, error), f func(form.Stored, error) error) error {
	type read struct {
		form.Stored
		err error
	}
	var now []read
	var waiting []chan []read // portions being decoded
	send := func() {
		part, done := now, make(chan []read, 1)
		work := func() {
			for i := range part {
				part[i].Entry, part[i].err = decode(part[i].Bytes)
			}
			done <- part
		}
		if now, waiting = nil, append(waiting, done); len(part) < portion {
			work()
		} else {
			go work()
		}
	}
	leave := func(most int) error {
		for ; len(waiting) > most; waiting = waiting[1:] {
			for _, r := range <-waiting[0] {
				if err := ctx.Err(); err != nil {
					return err
				}
				if err := f(r.Stored, r.err); err != nil {
					return err
				}
			}
		}
		return ctx.Err()
	}
	var failed error
	err := s.each(query, args, func(scan func(...any) error) error {
		var r read
		if err := scan(&r.Seq, &r.Bytes); err != nil {
			return err
		}
		if now = append(now, r); len(now) < portion {
			return nil
		}
		send()
		failed = leave(runtime.GOMAXPROCS(0))
		return failed
	})
	if failed != nil {
		return failed
	}
	send() // what was read before an error too: it is named by what comes after
	return cmp.Or(leave(0), err)
}

func (s *session) entries(query string, args ...any) (out []record.Entry, err error) {
	err = s.stored(context.Background(), query, args, func(st form.Stored) { out = append(out, st.Entry) })
	return out, err
}

func jsonList[T ~string | ~int64](list []T) string {
	data, err := json.Marshal(list)
	if err != nil {
		panic("book: such a list is always JSON: " + err.Error())
	}
	return string(data)
}

// Needed returns what must be folded for one panel, among the first size
// entries; 0 means all. See [deed.Journal].
func (b *Book) Needed(ctx context.Context, n record.Number, size int64) ([]form.Stored, error) {
	return b.Entries(ctx, Filter{Panels: []record.Number{n}, To: size})
}

// Workshop folds the whole journal.
func (b *Book) Workshop(ctx context.Context) (*record.Workshop, error) {
	return b.fold(ctx, Filter{})
}

// WorkshopOf folds what these panels need. Other panels that share an entry
// with them are not in it.
func (b *Book) WorkshopOf(ctx context.Context, numbers ...record.Number) (*record.Workshop, error) {
	return b.fold(ctx, Filter{Panels: append([]record.Number{}, numbers...)})
}

// Around folds what these panels need, together with the panels that shared an
// entry with them: an amount for a batch says nothing of one panel without the
// sizes of the others.
func (b *Book) Around(ctx context.Context, ns ...record.Number) (*record.Workshop, error) {
	w, err := b.WorkshopOf(ctx, ns...)
	if err != nil {
		return nil, err
	}
	all := slices.Clone(ns)
	for _, p := range w.Panels {
		for _, e := range p.Events {
			all = append(all, e.Panels...)
		}
	}
	slices.Sort(all)
	if all = slices.Compact(all); len(all) == len(ns) {
		return w, nil
	}
	return b.WorkshopOf(ctx, all...)
}

// Story folds what is told of one panel: what names it, studio, makers and
// materials, of the lots only those that went into it. The air of the room, by
// which rules judge, is not in it.
func (b *Book) Story(ctx context.Context, n record.Number) (*record.Workshop, error) {
	return b.described(ctx, `SELECT seq FROM mention WHERE panel = ?1 UNION SELECT seq FROM described WHERE kind NOT IN ('lot', 'recipe')
		UNION SELECT seq FROM used JOIN described ON kind = 'lot' AND 'lot ' || name = thing WHERE panel = ?1`, string(n))
}

// Shelf folds the studio, its makers and what is on the shelf.
func (b *Book) Shelf(ctx context.Context) (*record.Workshop, error) {
	return b.described(ctx, "SELECT seq FROM described")
}

// Named folds what of the shelf bears one of these keys.
func (b *Book) Named(ctx context.Context, keys []string) (*record.Workshop, error) {
	return b.described(ctx, "SELECT seq FROM described WHERE kind IN ('material', 'lot') AND name IN (SELECT value FROM json_each(?1))", jsonList(keys))
}

// described folds the entries that a query names, with what corrects them.
func (b *Book) described(ctx context.Context, query string, args ...any) (w *record.Workshop, err error) {
	err = b.view(ctx, func(s *session) error {
		es, err := s.entries(corrected(query), args...)
		if err == nil {
			w, err = record.Fold(es)
		}
		return err
	})
	return w, err
}

func (b *Book) fold(ctx context.Context, f Filter) (*record.Workshop, error) {
	stored, err := b.Entries(ctx, f)
	if err != nil {
		return nil, err
	}
	return record.Fold(form.Entries(stored))
}

// Roll returns the numbers this book knows. Where each of terms is a whole
// number or "batch:NAME" that is there, it holds only their batches: whatever
// else a book holds, these mean the same.
func (b *Book) Roll(ctx context.Context, terms ...string) (record.Roll, error) {
	ns, batches := []record.Number{}, []string{}
	for _, t := range terms {
		for one := range strings.SplitSeq(t, ",") {
			if name, is := strings.CutPrefix(one, "batch:"); is {
				batches = append(batches, strings.ToLower(name))
			} else if n, err := record.ParseNumber(one, ""); err == nil {
				ns = append(ns, n)
			} else {
				return b.roll(ctx, "")
			}
		}
	}
	if len(terms) == 0 {
		return b.roll(ctx, "")
	}
	r, err := b.roll(ctx, "WHERE batch IN (SELECT batch FROM panel WHERE number IN (SELECT value FROM json_each(?)) UNION SELECT value FROM json_each(?))", jsonList(ns), jsonList(batches))
	missing := slices.ContainsFunc(ns, func(n record.Number) bool { return !slices.Contains(r.Numbers, n) }) ||
		slices.ContainsFunc(batches, func(k string) bool { return r.Batches[record.Key(k)] == nil })
	if err != nil || !missing {
		return r, err
	}
	return b.roll(ctx, "") // the nearest are named
}

func (b *Book) roll(ctx context.Context, where string, args ...any) (r record.Roll, err error) {
	r.Batches, r.Called, r.Written = map[record.Key][]record.Number{}, map[string][]record.Number{}, map[string]string{}
	err = b.view(ctx, func(s *session) error {
		st, _, err := s.studio()
		if err != nil {
			return err
		}
		r.NAAN = st.NAAN
		return s.each("SELECT number, batch, own, title FROM panel "+where+" ORDER BY year, serial", args, func(scan func(...any) error) error {
			var n, batch, own, title string
			if err := scan(&n, &batch, &own, &title); err != nil {
				return err
			}
			for _, written := range []string{own, title} {
				if name := record.CalledAs(written); name != "" && !slices.Contains(r.Called[name], record.Number(n)) {
					r.Called[name], r.Written[name] = append(r.Called[name], record.Number(n)), written
				}
			}
			r.Numbers = append(r.Numbers, record.Number(n))
			r.Batches[record.Key(batch)] = append(r.Batches[record.Key(batch)], record.Number(n))
			return nil
		})
	})
	return r, err
}

// NextSerial returns the next free serial number of a year. To take it, ask
// inside [Book.Compose].
func (b *Book) NextSerial(ctx context.Context, year int) (n int, err error) {
	err = b.view(ctx, func(s *session) error { n, err = s.nextSerial(year); return err })
	return n, err
}
