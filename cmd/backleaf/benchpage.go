package main

import (
	"context"
	"errors"
	"net"
	"net/http"
	"os"
	"strconv"
	"strings"
	"time"

	"backleaf/cmd/internal/benchpage"
	"backleaf/record"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/keys"
)

func newBench(a *app) {
	var port int
	var lan, readOnly bool
	a.command("bench", flags{"port": &port, "lan": &lan, "read-only": &readOnly, "passphrase-file": &a.passphraseFile}, func(r *run) error {
		open := r.writing
		if readOnly {
			open = r.reading
		}
		return open(func(r *run) error { return a.serve(r.ctx, r.Session, port, lan, readOnly) })
	})
}

// serve serves the page until the run is interrupted.
func (a *app) serve(ctx context.Context, s *studio.Session, port int, lan, readOnly bool) error {
	host := "127.0.0.1"
	if lan {
		host = ""
	}
	l, err := net.Listen("tcp", net.JoinHostPort(host, strconv.Itoa(port)))
	if err != nil {
		return hinted(err, "choose another --port, or none for a free one")
	}
	defer l.Close()
	at := strconv.Itoa(l.Addr().(*net.TCPAddr).Port)
	page := &benchpage.Server{Studio: s, Words: a.lang, ReadOnly: readOnly,
		Key: func(ctx context.Context) (*seal.Key, error) { return keys.Current(ctx, s.Book, holder{a}) }}
	names := []string{"127.0.0.1", "localhost", "[::1]"}
	if lan {
		names = append(names, hostNames()...)
		page.Door = &benchpage.Door{Clock: a.now, Show: func(code string) { a.told("pair-code", record.With("code", code)) }}
		if !readOnly {
			page.Door.Book = s.Book
		}
	}
	for _, n := range names {
		page.Hosts = append(page.Hosts, strings.ToLower(n)+":"+at)
	}
	h, err := page.Handler()
	if err != nil {
		return err
	}
	a.told("bench-serves", record.With("address", "http://"+page.Hosts[0]+"/"))
	if lan {
		for _, n := range page.Hosts[3:] {
			a.told("bench-serves", record.With("address", "http://"+n+"/"))
		}
		a.noted("bench-open")
		if err := page.Door.Open(ctx); err != nil {
			return err
		}
	}
	srv := benchpage.Serving(h)
	stopped := context.AfterFunc(ctx, func() {
		last, cancel := context.WithTimeout(context.Background(), 5*time.Second)
		defer cancel()
		srv.Shutdown(last)
	})
	defer stopped()
	if err := srv.Serve(l); !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return nil
}

// hostNames are the names and addresses of this computer in its networks.
func hostNames() (out []string) {
	addresses, _ := net.InterfaceAddrs()
	for _, a := range addresses {
		n, ok := a.(*net.IPNet)
		if !ok || n.IP.IsLoopback() || n.IP.IsLinkLocalUnicast() {
			continue
		}
		if n.IP.To4() != nil {
			out = append(out, n.IP.String())
		} else {
			out = append(out, "["+n.IP.String()+"]")
		}
	}
	if name, err := os.Hostname(); err == nil {
		out = append(out, name, name+".local")
	}
	return out
}
