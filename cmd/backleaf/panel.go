package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"image"
	_ "image/jpeg" // the two kinds of photograph that are kept
	_ "image/png"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/paper"
	"backleaf/record/safefile"
)

func newPanel(a *app) *cobra.Command {
	return folder("panel", "panels: cut, list, show, describe, photograph, brace, discard",
		panelAdd(a), listAs(a, "panel list"), showAs(a, "panel show"), panelDescribe(a), panelPhoto(a), panelBrace(a), panelDiscard(a))
}

func panelAdd(a *app) *cobra.Command {
	var o bench
	var cut record.Cut
	var count int
	var batch, size, boardKey, grain, loss, rough, settled, degreased, keyed string
	c := &cobra.Command{
		Use: "add", Short: "number new panels: boards cut to size, one batch",
		Example: `  backleaf panel add --count 14 --batch may --size "30 x 40 cm x 3 mm" --board birch-1 --grain width
  backleaf panel add --size "8 x 10 x 1/8 in" --board mdf-3mm --own-reference "old no. 17" --at 1998~`,
		Args: wanted(0, 0, "no words, only flags"),
		RunE: func(c *cobra.Command, _ []string) error {
			if size == "" {
				return usage("height x width x depth, like --size \"30 x 40 cm x 3 mm\"; --size unknown x unknown if nobody knows", "how large are they?")
			}
			if count < 1 || count > 1000 {
				return usage("", "--count: expected 1 to 1000")
			}
			return a.write(c.Context(), func(b *book.Book) error {
				s, err := a.look(c.Context(), b, &o, nil)
				if err != nil {
					return err
				}
				if err := s.texts(text{"--size", size, &cut.Size}, text{"--saw-loss", loss, &cut.SawLoss}, text{"--settled", settled, &cut.Settled}); err != nil {
					return err
				}
				if err := words(wordFor("--grain", grain, "Grain", &cut.Grain), wordFor("--rough-side", rough, "Face", &cut.Rough),
					wordFor("--degreased", degreased, "Answer", &cut.Degreased), wordFor("--keyed", keyed, "Answer", &cut.Keyed)); err != nil {
					return err
				}
				switch boardKey {
				case "":
				case record.Unknown:
					cut.Board = record.Unknown
				default:
					if cut.Board, cut.Lot, err = s.onShelf(record.Key(boardKey)); err != nil {
						return err
					}
				}
				cut.Batch = record.Key(strings.ToLower(orElse(batch, s.batchName())))
				return a.compose(c.Context(), s, "new, batch "+string(cut.Batch)+", "+cut.Size.String(),
					func(d *book.Draft) ([]record.Entry, map[int]book.Private, error) {
						ns, err := newNumbers(d, s, count)
						return []record.Entry{{At: s.at, Panels: ns, Body: cut}}, nil, err
					})
			})
		},
	}
	o.timeFlag(c)
	f := c.Flags()
	f.IntVar(&count, "count", 1, "how many")
	f.StringVar(&batch, "batch", "", "name of the batch (default: the day they were cut, or \"older\" if that is not exact)")
	f.StringVar(&size, "size", "", "height x width x depth: \"30 x 40 cm x 3 mm\", \"8 x 10 x 1/8 in\"; without a unit, in the studio's")
	f.StringVar(&boardKey, "board", "", "lot or material of the board")
	f.StringVar(&grain, "grain", "", "run of the face grain: height, width, unknown")
	f.StringVar(&loss, "saw-loss", "", "width of board lost at each cut: \"3 mm\"")
	f.StringVar(&rough, "rough-side", "", "screen side of a hardboard: front or back")
	f.StringVar(&settled, "settled", "", "time the board stood open in the workroom: \"3 d\"")
	f.StringVar(&degreased, "degreased", "", "yes, no, unknown")
	f.StringVar(&keyed, "keyed", "", "surface roughened: yes, no, unknown")
	f.StringVar(&cut.Owner, "own-reference", "", "your own older number")
	f.StringVar(&cut.Note, "note", "", "remark")
	return c
}

// newNumbers gives the next numbers of the year in which they are written down,
// while no other process can take them.
func newNumbers(d *book.Draft, s *benchState, count int) ([]record.Number, error) {
	year := s.now.In(s.zone).Year()
	next, err := d.NextSerial(year)
	if err != nil {
		return nil, err
	}
	var ns []record.Number
	for i := range count {
		n, err := record.NewNumber(s.shop.Studio.Mark, year, next+i, s.shop.Studio.NAAN)
		if err != nil {
			return nil, err
		}
		ns = append(ns, n)
	}
	return ns, nil
}

func panelDescribe(a *app) *cobra.Command {
	var o bench
	var d record.Described
	var made, meant string
	c := &cobra.Command{
		Use: "describe " + panelWords, Short: "title, date of the work, inscription, signature, subject",
		Example: `  backleaf panel describe 0142 --title "Low tide, evening" --made 2026 --signed "lower right, in paint"
  backleaf panel describe 0143 --subject "harbour with two boats" --inscription "on the back: for M."`,
		Args: wanted(1, -1, "the panels to describe"),
		RunE: func(c *cobra.Command, args []string) error {
			err := a.atBench(c.Context(), &o, args, func(s *benchState) ([]record.Body, string, error) {
				if err := s.texts(text{"--meant-for-rh", meant, &d.MeantFor}); err != nil {
					return nil, "", err
				}
				if made != "" {
					var err error
					if d.Made, err = parseAt(made, s.now, s.zone); err != nil {
						return nil, "", err
					}
				}
				if d == (record.Described{}) {
					return nil, "", usage("see \"backleaf panel describe --help\"", "nothing to describe")
				}
				what := "described"
				if d.Title != "" {
					what += ", “" + d.Title + "”"
				}
				return []record.Body{d}, what, nil
			})
			if err == nil {
				a.warnUnprintable(d.Title, d.Subject, d.Inscription, d.Signed, d.Features, d.Medium)
			}
			return err
		},
	}
	o.flags(c)
	f := c.Flags()
	f.StringVar(&d.Title, "title", "", "title of the work")
	f.StringVar(&made, "made", "", "date of the work: 2026, 2026-05, 1998~ (about)")
	f.StringVar(&d.Subject, "subject", "", "what it shows")
	f.StringVar(&d.Inscription, "inscription", "", "what is written on it and where")
	f.StringVar(&d.Signed, "signed", "", "where and how it is signed")
	f.StringVar(&d.Features, "features", "", "marks by which it can be told from another")
	f.StringVar(&d.Type, "type", "", "type of object (default painting)")
	f.StringVar(&d.Medium, "medium-line", "", "medium and support in your own words")
	f.StringVar(&meant, "meant-for-rh", "", "humidity of the room it is to hang in: 50%")
	f.StringVar(&d.Owner, "own-reference", "", "your own number")
	f.StringVar(&d.Note, "note", "", "remark")
	return c
}

// warnUnprintable says at once when a text holds a character that no face at
// hand has: it is recorded as it is, but no label or certificate can be drawn.
func (a *app) warnUnprintable(texts ...string) {
	for _, t := range texts {
		if _, err := paper.Compose(0, paper.Span{Style: paper.Body, Text: t, Field: quoted(t)}); err != nil {
			a.talk("note: written down as it is, but it cannot be printed on a label or certificate: %v", err)
		}
	}
}

// maxPhoto bounds a kept photograph.
const maxPhoto = 64 << 20

func panelPhoto(a *app) *cobra.Command {
	var o bench
	var p record.Photograph
	var role string
	c := &cobra.Command{
		Use: "photo NUMBER FILE", Short: "keep a photograph with a panel",
		Long: `Keep a photograph with a panel. The file is copied, named by its SHA-256, into the
folder "photographs" beside the book; the journal keeps its digest and size.`,
		Example: `  backleaf panel photo 0142 front.jpg
  backleaf panel photo 0142 weave.png --role weave-detail --caption "lower left, scale in mm"`,
		Args: wanted(2, 2, "one panel and one file"),
		RunE: func(c *cobra.Command, args []string) error {
			var err error
			if p.Role, err = word[record.PhotoRole]("--role", role, "PhotoRole"); err != nil {
				return err
			}
			data, err := readPhoto(args[1], &p)
			if err != nil {
				return err
			}
			return a.atBench(c.Context(), &o, args[:1], func(s *benchState) ([]record.Body, string, error) {
				// The picture is on disk before the entry that names it.
				if err := keepPhoto(a.path(), p, data); err != nil {
					return nil, "", err
				}
				return []record.Body{p}, fmt.Sprintf("photograph kept, %s, %d x %d pixels", p.Role, p.Width, p.Height), nil
			})
		},
	}
	o.timeFlag(c)
	c.Flags().StringVar(&role, "role", "front", strings.Join(record.Words("PhotoRole"), ", "))
	c.Flags().StringVar(&p.Caption, "caption", "", "what there is to see")
	return c
}

func readPhoto(path string, p *record.Photograph) ([]byte, error) {
	st, err := os.Stat(path)
	if err != nil {
		return nil, fmt.Errorf("cannot read the photograph: %w", err)
	}
	if st.Size() > maxPhoto || !st.Mode().IsRegular() {
		return nil, fmt.Errorf("%s is not a file of at most %d MB", path, maxPhoto>>20)
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, fmt.Errorf("cannot read the photograph: %w", err)
	}
	cfg, kind, err := image.DecodeConfig(bytes.NewReader(data))
	if err != nil || kind != "jpeg" && kind != "png" {
		return nil, hinted(fmt.Errorf("%s is neither a JPEG nor a PNG picture", path), "save it as one of these")
	}
	sum := sha256.Sum256(data)
	p.SHA256, p.Type = hex.EncodeToString(sum[:]), "image/"+kind
	p.Width, p.Height = int64(cfg.Width), int64(cfg.Height)
	return data, nil
}

// photoPath is where a photograph of a book is kept.
func photoPath(bookPath string, p record.Photograph) string {
	return filepath.Join(filepath.Dir(bookPath), "photographs", p.SHA256+strings.Replace(p.Type, "image/", ".", 1))
}

// keepPhoto writes the file unless it is there already.
func keepPhoto(bookPath string, p record.Photograph, data []byte) error {
	path := photoPath(bookPath, p)
	if old, err := os.ReadFile(path); err == nil && bytes.Equal(old, data) {
		return nil
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return fmt.Errorf("cannot keep the photograph: %w", err)
	}
	err := safefile.Write(path, 0o644, func(f *os.File) error { _, err := f.Write(data); return err })
	if err != nil {
		return fmt.Errorf("cannot keep the photograph: %w", err)
	}
	return nil
}

func panelBrace(a *app) *cobra.Command {
	var o bench
	var b record.Braced
	var kind, fixing, run string
	c := &cobra.Command{
		Use: "brace " + panelWords, Short: "write down a cradle, battens or a strainer on the back",
		Example: `  backleaf panel brace 0142 --with cradle --fixing sliding
  backleaf panel brace 0143 --with battens --fixing rigid --run across-grain`,
		Args: wanted(1, -1, "the panels that were braced"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.atBench(c.Context(), &o, args, func(*benchState) ([]record.Body, string, error) {
				err := words(wordFor("--with", kind, "Bracing", &b.Bracing), wordFor("--fixing", fixing, "Fixing", &b.Fixing), wordFor("--run", run, "Moving", &b.Run))
				return []record.Body{b}, "braced, " + orElse(string(b.Bracing), "kind not recorded"), err
			})
		},
	}
	o.flags(c)
	c.Flags().StringVar(&kind, "with", "", strings.Join(record.Words("Bracing"), ", "))
	c.Flags().StringVar(&fixing, "fixing", "", "rigid, or sliding so that the board can move")
	c.Flags().StringVar(&run, "run", "", "against the face grain: along-grain, across-grain")
	c.Flags().StringVar(&b.Note, "note", "", "remark")
	return c
}

func panelDiscard(a *app) *cobra.Command {
	var o bench
	var why string
	c := &cobra.Command{
		Use: "discard " + panelWords, Short: "give a panel up, with the reason; its number is never used again",
		Example: `  backleaf panel discard 0147 --because "cloth lifted along the lower edge"
  backleaf panel discard 0150..0152 --because "numbered by mistake"`,
		Args: wanted(1, -1, "the panels to give up"),
		RunE: func(c *cobra.Command, args []string) error {
			if why == "" {
				return usage("", "say --because: a reader will ask")
			}
			return a.atBench(c.Context(), &o, args, func(*benchState) ([]record.Body, string, error) {
				return []record.Body{record.Discarded{Because: why}}, "discarded", nil
			})
		},
	}
	o.flags(c)
	c.Flags().StringVar(&why, "because", "", "the reason")
	return c
}

// batchName names a batch after the day it was cut. Today's date would say
// something of older panels that nobody recorded.
func (s *benchState) batchName() string {
	at := s.at.String()
	if at == "" {
		return s.now.In(s.zone).Format("2006-01-02")
	}
	if s.at.Date().IsExactDay() {
		day, _, _ := strings.Cut(at, "T")
		return day
	}
	return "older"
}
