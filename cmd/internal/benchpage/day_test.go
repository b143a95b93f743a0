package benchpage_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/go-json-experiment/json"

	"backleaf/record/book"
	"backleaf/record/toolcheck"
)

// find is a script that returns what a person means by words on the page: a
// link, button, box or field, the one that is seen.
const find = `(words => {
  const seen = e => e.getClientRects().length > 0 && getComputedStyle(e).visibility !== "hidden";
  const text = e => (e.innerText || "").replace(/\s+/g, " ").trim();
  const fits = e => text(e) === words || text(e).startsWith(words + " ") || text(e).startsWith(words + ":");
  for (const at of ["#said button, #said a", "main a.button, main button, main summary", "label.chip", "label", "a, button, summary"])
    for (const e of document.querySelectorAll(at)) if (seen(e) && fits(e)) {
      if (e.htmlFor) return document.getElementById(e.htmlFor);
      return e;
    }
})`

// tap taps what bears these words, in the middle, as a finger does.
func (p *tablet) tap(words string) {
	p.Helper()
	if p.keyboard {
		p.press(words)
		return
	}
	p.taps++
	var at []float64
	for range 1000 {
		at = value[[]float64](p, `(e => { if (!e) return []; e.scrollIntoView({block: "center", behavior: "instant"}); const r = e.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2, r.width, r.height] })(`+find+`(`+strconv.Quote(words)+`))`)
		if len(at) > 0 {
			break
		}
		time.Sleep(30 * time.Millisecond)
	}
	if len(at) == 0 {
		p.Fatalf("nothing at %s bears the words %q:\n%s", value[string](p, "location.href"), words, p.text())
	}
	if at[2] < 48 || at[3] < 48 {
		p.Errorf("%q is %.0f × %.0f px, smaller than 48", words, at[2], at[3])
	}
	p.do(chromedp.MouseClickXY(at[0], at[1]))
	time.Sleep(60 * time.Millisecond)
	p.settle()
}

// fill types into the field of these words.
func (p *tablet) fill(words, text string) {
	p.Helper()
	p.tap(words)
	p.do(chromedp.KeyEvent(text))
	p.settle()
}

// press does with the keyboard what tap does with a finger: the Tab key leads
// to it, an arrow chooses in a group, the space bar or Enter does it.
func (p *tablet) press(words string) {
	p.Helper()
	const at = `(e => {
  const a = document.activeElement, box = e && (e.matches("input, select, textarea") ? e : e.querySelector("input")) || e;
  if (!box) return "";
  const group = box.type === "radio" ? [...document.getElementsByName(box.name)] : [box];
  if (!group.includes(a)) return "on";
  if (box.type === "radio") return a === box ? (box.checked ? "done" : "space") : "arrow";
  return box.type === "checkbox" ? "space" : box.matches("input, textarea") ? "done" : "enter";
})(`
	for range 200 {
		switch how := value[string](p, at+find+`(`+strconv.Quote(words)+`))`); how {
		case "on":
			p.stroke(kb.Tab)
		case "arrow":
			p.stroke(kb.ArrowDown)
		case "space", "enter":
			p.stroke(map[string]string{"space": " ", "enter": kb.Enter}[how])
			time.Sleep(60 * time.Millisecond)
			p.settle()
			return
		case "done":
			return
		default:
			time.Sleep(30 * time.Millisecond)
		}
	}
	p.Fatalf("the keyboard does not lead to %q:\n%s", words, p.text())
}

func (p *tablet) stroke(key string) {
	p.Helper()
	p.taps++
	p.do(chromedp.KeyEvent(key))
}

// theDay is a working day as it is done on the page: 14 panels in three sizes,
// two without cloth, one lifted and laid again, one forgotten back, warm air on
// four, extra on edges, one lifted corner, one discarded.
func theDay(p *tablet, wait func(time.Duration)) {
	p.tap("Cut new panels")
	p.fill("How many", "8")
	p.fill("Height × width × depth", "30 x 40 cm x 3 mm")
	p.tap("More")
	p.fill("2. How many", "4")
	p.fill("2. Height × width × depth", "24 x 30 cm x 3 mm")
	p.fill("3. How many", "2")
	p.fill("3. Height × width × depth", "40 x 50 cm x 3 mm")
	p.tap("birch plywood, thin")
	p.fill("Name of the batch", "may")
	p.write()

	p.tap("No cloth meant")
	p.only(13, 14)
	p.write()

	wait(10 * time.Minute)
	p.tap("Coat") // all round, more on the edges: so it stands in the form
	p.tap("acrylic dispersion sealer and adhesive")
	p.fill("Wet amount, all panels together", "430 g")
	p.write()

	wait(40 * time.Minute)
	p.tap("Lay cloth") // on the twelve that are to carry cloth
	p.tap("linen, fine")
	p.tap("acrylic dispersion sealer and adhesive")
	p.fill("Wet amount, all panels together", "380 g")
	p.write()

	p.tap("Warm air")
	p.only(5, 6, 7, 8)
	p.fill("How long", "10 min")
	p.write()

	wait(20 * time.Minute)
	p.tap("Trim")
	p.write()

	p.tap("Lay cloth") // one had lifted: the same cloth again
	p.only(3)
	p.tap("the same cloth as before, laid again")
	p.tap("acrylic dispersion sealer and adhesive")
	p.write()

	wait(40 * time.Minute)
	p.tap("Coat") // what the back lacks
	p.tap("0003") // was laid twice, and lacks more: now it gets one like the others
	p.tap("0007") // this one is forgotten
	p.write()

	wait(10 * time.Minute)
	p.tap("Coat") // and is still due
	p.only(7)
	p.write()

	p.tap("Inspect")
	p.only(9)
	p.tap("lifting")
	p.fill("Remarks", "lower left corner")
	p.write()

	p.tap("Discard the panel")
	p.only(12)
	p.fill("Because", "split at the edge")
	p.write()
}

// only ticks some panels and no others.
func (p *tablet) only(serials ...int) {
	p.Helper()
	p.tap("none")
	for _, n := range serials {
		p.tap(fmt.Sprintf("%04d", n))
	}
}

// write taps the big button, once what it will write has been shown.
func (p *tablet) write() {
	p.Helper()
	said := value[string](p, `document.querySelector("#said").innerText`)
	if words := "Write it down"; strings.Contains(said, "all the same") {
		p.tap(words + " all the same")
	} else {
		p.tap(words)
	}
	for range 3000 {
		if strings.Contains(p.text(), "Take it back") || !strings.Contains(p.text(), "will be written") && strings.Contains(p.text(), "Written down") {
			return
		}
		time.Sleep(30 * time.Millisecond)
	}
	p.Fatalf("it is not said to be written:\n%s", p.text())
}

// TestWorkingDay plays a day on a tablet and a phone with taps only, and with
// the keyboard only. What is written is what the commands write of such a day,
// but for times.
func TestWorkingDay(t *testing.T) {
	toolcheck.Long(t)
	for _, c := range []struct {
		name          string
		width, height int64
		keyboard      bool
	}{{"tablet", 820, 1180, false}, {"phone", 390, 844, false}, {"keyboard", 1024, 768, true}} {
		t.Run(c.name, func(t *testing.T) {
			s := in(t, 0, nil)
			s.add(time.Since(s.read())) // the commands go by this computer's clock
			p := open(t, s.url, c.width, c.height, false)
			p.keyboard = c.keyboard
			theDay(p, func(d time.Duration) { s.add(d); p.to("/batch/may") })
			t.Logf("%d taps or keys, fields typed not counted", p.taps)
			if len(p.Faults()) > 0 {
				t.Errorf("the console reports %q", p.Faults())
			}
			got := journal(t, s.session.Book.Path())
			if want := byCommands(t); got != want {
				t.Errorf("by the page\n%s\nby commands\n%s", got, want)
			}
			if dir := os.Getenv("BACKLEAF_SHOTS"); dir != "" {
				p.shot(filepath.Join(dir, c.name+"-day.png"))
			}
		})
	}
}

// byCommands is the journal of the same day as it is typed.
func byCommands(t testing.TB) string {
	t.Helper()
	path := in(t, 0, nil).session.Book.Path()
	for _, args := range [][]string{
		{"panel", "add", "8 of 30 x 40 cm x 3 mm, 4 of 24 x 30 cm x 3 mm, 2 of 40 x 50 cm x 3 mm", "--batch", "may", "--board", "birch-ply-3mm"},
		{"panel", "intend", "13-14", "--cloth", "no"},
		{"coat", "batch:may", "--as", "sealer", "--on", "all", "--extra", "edges", "--with", "acrylic-sealer", "--amount", "430 g"},
		{"cloth", "1-12", "--cloth", "linen-fine", "--with", "acrylic-sealer", "--amount", "380 g"},
		{"warm", "5-8", "--for", "10 min"},
		{"trim", "1-12"},
		{"cloth", "3", "--again", "--with", "acrylic-sealer"},
		{"coat", "1-6", "8-12", "--as", "sealer", "--on", "back", "--with", "acrylic-sealer"},
		{"coat", "7", "--as", "sealer", "--on", "back", "--with", "acrylic-sealer"},
		{"inspect", "9", "--edges", "lifting", "--remarks", "lower left corner"},
		{"panel", "discard", "12", "--because", "split at the edge"},
	} {
		command(t, path, args...)
	}
	return journal(t, path)
}

// journal is what a book says was done with panels, without times and what
// names entries.
func journal(t testing.TB, path string) string {
	t.Helper()
	b, err := book.OpenReadOnly(context.Background(), path)
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	es, err := b.Entries(context.Background(), book.Filter{})
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	for _, e := range es {
		if len(e.Entry.Panels) == 0 {
			continue
		}
		body, err := json.Marshal(e.Entry.Body, json.Deterministic(true))
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&out, "%s %v %s\n", e.Entry.Kind(), e.Entry.Panels, body)
	}
	return out.String()
}
