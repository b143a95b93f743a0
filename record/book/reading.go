package book

import (
	"context"
	"time"

	"github.com/go-json-experiment/json"

	"backleaf/record"
)

// brief is the longest that a reading can last which is found by when it begins.
const brief = 24 * time.Hour

// reads writes when a reading of the room begins.
func (d *Draft) reads(e record.Entry) error {
	if _, is := e.Body.(record.Climate); !is || len(e.Panels) > 0 || !e.At.Known() {
		return nil
	}
	var first any
	from, ok1 := e.At.Earliest()
	if to, ok2 := e.At.Latest(); ok1 && ok2 && to.Sub(from) <= brief {
		first = from.Unix()
	}
	return d.s.write("reading", "INSERT INTO reading (seq, first) VALUES (?, ?)", e.Seq, first)
}

// correctedAir writes it anew, as its corrections leave it.
func (d *Draft) correctedAir(e record.Entry) error {
	if _, is := e.Body.(record.Climate); !is || len(e.Panels) > 0 {
		return nil
	}
	w, err := d.standing(e.Seq)
	if err == nil {
		err = d.s.write("reading", "DELETE FROM reading WHERE seq = ?", e.Seq)
	}
	if err == nil && len(w.Climate) > 0 {
		e.At = w.Climate[0].At
		err = d.reads(e)
	}
	return err
}

// AtBench folds what acts on these panels are judged by: what names them,
// studio, makers and shelf, and of the readings of the room those that may
// speak for their layers.
func (b *Book) AtBench(ctx context.Context, numbers ...record.Number) (w *record.Workshop, err error) {
	err = b.view(ctx, func(s *session) error {
		es, err := s.few(corrected("SELECT seq FROM mention WHERE panel IN (SELECT value FROM json_each(?1)) UNION SELECT seq FROM described"), jsonList(numbers))
		if err != nil {
			return err
		}
		air, err := airOver(s.few, es)
		if err == nil {
			w, err = record.Fold(merged(es, air))
		}
		var root []byte
		if err == nil {
			_, err = s.one("SELECT root FROM tip", nil, &root)
		}
		if err == nil {
			s.seen.keep(root, w)
		}
		return err
	})
	return w, err
}

// airOver reads the readings of the room that may speak for layers. A layer
// counts by all times that were ever recorded of it.
func airOver(read func(string, ...any) ([]record.Entry, error), es []record.Entry) ([]record.Entry, error) {
	spans := [][2]int64{} // between which moments they begin, in Unix seconds
	for _, e := range es {
		if a, is := e.Body.(record.Amended); is {
			var change struct {
				At record.When `json:"at"`
			}
			_ = json.Unmarshal(a.Change, &change) // what cannot be read is not read by folding either
			e.At = change.At
		} else if !e.Kind().Traits().Layer {
			continue
		}
		from, to, near, ok := e.At.Air()
		if !ok {
			continue
		}
		span := [2]int64{from.Add(-near - brief).Unix(), to.Add(near).Unix()}
		if len(spans) == 0 || spans[len(spans)-1] != span {
			spans = append(spans, span)
		}
	}
	list, err := json.Marshal(spans)
	if err != nil {
		return nil, err
	}
	return read(corrected(`SELECT seq FROM reading WHERE first IS NULL
		UNION SELECT seq FROM json_each(?1) CROSS JOIN reading WHERE first BETWEEN value ->> 0 AND value ->> 1`), string(list))
}
