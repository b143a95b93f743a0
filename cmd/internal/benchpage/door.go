package benchpage

import (
	"cmp"
	"context"
	"crypto/rand"
	"crypto/sha256"
	"crypto/subtle"
	"encoding/hex"
	"fmt"
	"math/big"
	"net"
	"net/http"
	"slices"
	"strings"
	"sync"
	"time"

	"github.com/go-json-experiment/json"

	"backleaf/record/book"
	"backleaf/record/studio/refuse"
)

// Door lets paired devices in. A device is paired once, with a code that only
// the computer shows; it then holds a secret of its own in a cookie, of which
// the book keeps the digest.
type Door struct {
	Show  func(code string) // shows a new code on the computer
	Clock func() time.Time
	Book  *book.Book               // keeps the pairings; nil: they end with the program
	Home  func(*http.Request) bool // a request of this computer itself; nil: by its address

	mu      sync.Mutex
	code    string
	made    time.Time
	wrong   int
	closed  time.Time // until then no code is taken
	devices []Device
}

// Device is a paired device.
type Device struct {
	Name   string    `json:"name"`
	Digest string    `json:"sha256"`
	Since  time.Time `json:"since"`
}

const (
	cookie    = "backleaf"
	codeLasts = 10 * time.Minute
	mostWrong = 5             // tries before another code is made
	closedFor = time.Minute   // and the door stays closed
	mostNamed = 40            // characters of a device's name
	pairings  = "bench-pairs" // the setting that keeps them
	codeSpace = 1_000_000
)

// Open reads the pairings and shows a code.
func (d *Door) Open(ctx context.Context) error {
	if d.Book != nil {
		kept, err := d.Book.Setting(ctx, pairings)
		if err != nil {
			return err
		}
		if kept != "" {
			if err := json.Unmarshal([]byte(kept), &d.devices); err != nil {
				return fmt.Errorf("cannot read which devices are paired: %w", err)
			}
		}
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.renew()
}

// renew makes another code.
func (d *Door) renew() error {
	n, err := rand.Int(rand.Reader, big.NewInt(codeSpace))
	if err != nil {
		return err
	}
	d.code, d.made, d.wrong = fmt.Sprintf("%06d", n), d.Clock(), 0
	d.Show(d.code)
	return nil
}

// lets reports that a request comes from this computer or a paired device.
func (d *Door) lets(r *http.Request) bool {
	if d.Home == nil && home(r) || d.Home != nil && d.Home(r) {
		return true
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.device(r) >= 0
}

// home reports that a request comes from this computer itself.
func home(r *http.Request) bool {
	host, _, err := net.SplitHostPort(r.RemoteAddr)
	ip := net.ParseIP(host)
	return err == nil && ip != nil && ip.IsLoopback()
}

func (d *Door) device(r *http.Request) int {
	c, err := r.Cookie(cookie)
	if err != nil {
		return -1
	}
	sum := digest(c.Value)
	return slices.IndexFunc(d.devices, func(x Device) bool { return subtle.ConstantTimeCompare([]byte(x.Digest), []byte(sum)) == 1 })
}

func digest(secret string) string {
	sum := sha256.Sum256([]byte(secret))
	return hex.EncodeToString(sum[:])
}

// pair takes a code. It returns the secret of the device, or a code for why not.
func (d *Door) pair(ctx context.Context, typed, name string) (secret, why string, err error) {
	d.mu.Lock()
	defer d.mu.Unlock()
	now := d.Clock()
	switch {
	case now.Before(d.closed):
		return "", "pair-closed", nil
	case now.Sub(d.made) > codeLasts:
		return "", "pair-old", d.renew()
	case subtle.ConstantTimeCompare([]byte(strings.ReplaceAll(typed, " ", "")), []byte(d.code)) != 1:
		if d.wrong++; d.wrong < mostWrong {
			return "", "pair-wrong", nil
		}
		d.closed = now.Add(closedFor)
		return "", "pair-closed", d.renew()
	}
	secret = rand.Text()
	if len(name) > mostNamed {
		name = strings.ToValidUTF8(name[:mostNamed], "")
	}
	d.devices = append(d.devices, Device{cmp.Or(strings.TrimSpace(name), "tablet"), digest(secret), now})
	if err := d.keep(ctx); err != nil {
		return "", "", err
	}
	return secret, "", d.renew()
}

// end ends a pairing.
func (d *Door) end(ctx context.Context, digest string) error {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.devices = slices.DeleteFunc(d.devices, func(x Device) bool { return x.Digest == digest })
	return d.keep(ctx)
}

func (d *Door) keep(ctx context.Context) error {
	if d.Book == nil {
		return nil
	}
	b, err := json.Marshal(d.devices)
	if err != nil {
		return err
	}
	return d.Book.SetSetting(ctx, pairings, string(b))
}

func (s *Server) askCode(w http.ResponseWriter, status int, why string) {
	v := view{Title: s.text("page-pair"), Tell: s.Words}
	if why != "" {
		v.Body = s.text(why)
	}
	if err := s.write(w, status, "pair", v); err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
	}
}

// pair pairs a device.
func (s *Server) pair(w http.ResponseWriter, r *http.Request) {
	if s.Door == nil {
		http.Redirect(w, r, "/", http.StatusSeeOther)
		return
	}
	secret, why, err := s.Door.pair(r.Context(), r.FormValue("code"), r.FormValue("name"))
	switch {
	case err != nil:
		http.Error(w, err.Error(), http.StatusInternalServerError)
	case why != "":
		s.askCode(w, http.StatusForbidden, why)
	default:
		http.SetCookie(w, &http.Cookie{Name: cookie, Value: secret, Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode, MaxAge: 365 * 24 * 3600})
		http.Redirect(w, r, "/", http.StatusSeeOther)
	}
}

// devices lists what is paired.
func (d *desk) devices() error {
	if d.Door == nil {
		return noPage("this page is for this computer only: nothing is paired")
	}
	d.Door.mu.Lock()
	list := slices.Clone(d.Door.devices)
	d.Door.mu.Unlock()
	return d.show("devices", d.say("page-devices"), list)
}

// endPairing ends a pairing.
func (d *desk) endPairing() error {
	if d.Door == nil {
		return noPage("nothing is paired")
	}
	if err := d.Door.end(d.ctx, d.r.FormValue("device")); err != nil {
		return refuse.Because("not-written", err)
	}
	http.Redirect(d.w, d.r, "/devices", http.StatusSeeOther)
	return nil
}
