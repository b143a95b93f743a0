package benchpage

import (
	"bytes"
	"io"
	"net/http"
	"slices"
	"strings"
	"time"

	"backleaf/certificate/photo"
)

// Bounds of what is served.
const (
	maxForm                     = 256 << 10        // bytes of a form without a picture
	mostAtOnce                  = 32               // requests answered at once; the others wait
	patience                    = 20 * time.Second // how long they wait
	perSecond                   = 20               // forms a second, all devices together
	formsAtOnce, picturesAtOnce = 64, 4            // received at once
	formWithin                  = 10 * time.Second // time to send one
)

// policy lets a page use what this computer serves and nothing else: no script
// or style within a page, no frame, no other place.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

// guarded keeps out what no page of this server asks for: another host name
// (DNS rebinding), a form of another site, a device that is not paired, and more
// than one computer can answer.
func (s *Server) guarded(next http.Handler) http.Handler {
	atOnce, forms, pictures := make(places, mostAtOnce), make(places, formsAtOnce), make(places, picturesAtOnce)
	posts := &bucket{}
	bounded := http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "same-origin")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Cache-Control", "no-store")
		if !slices.Contains(s.Hosts, strings.ToLower(r.Host)) {
			http.Error(w, "this page is not served under that name", http.StatusMisdirectedRequest)
			return
		}
		if r.Method == http.MethodPost && !posts.take(s.Studio.Clock()) {
			refuseFor(w, "2", "too many forms at once: nothing was written; send it again", http.StatusTooManyRequests)
			return
		}
		if s.Door != nil && !s.Door.lets(r) && r.URL.Path != "/pair" && r.URL.Path != "/bench.css" && r.URL.Path != "/icon.svg" {
			http.Redirect(w, r, "/pair", http.StatusSeeOther)
			return
		}
		if r.Method != http.MethodPost {
			atOnce.serve(w, r, next)
		} else if strings.HasPrefix(r.Header.Get("Content-Type"), "multipart/form-data") {
			r.Body = http.MaxBytesReader(w, r.Body, photo.MaxBytes+maxForm)
			pictures.serve(w, r, next)
		} else {
			r.Body = http.MaxBytesReader(w, r.Body, maxForm)
			forms.serve(w, r, received(atOnce, next))
		}
	})
	return http.NewCrossOriginProtection().Handler(bounded)
}

// places are those of requests that are served at once; the others wait.
type places chan struct{}

func (p places) serve(w http.ResponseWriter, r *http.Request, next http.Handler) {
	wait := time.NewTimer(patience)
	defer wait.Stop()
	select {
	case p <- struct{}{}:
		defer func() { <-p }()
		next.ServeHTTP(w, r)
	case <-r.Context().Done():
	case <-wait.C:
		refuseFor(w, "5", "too much at once: nothing was written; send it again", http.StatusServiceUnavailable)
	}
}

// received serves a form once all of it is here, so that one that is sent byte
// by byte keeps no place from others.
func received(then places, next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		c := http.NewResponseController(w)
		c.SetReadDeadline(time.Now().Add(formWithin))
		body, err := io.ReadAll(r.Body)
		if err != nil {
			refuseFor(w, "5", "the form was not received whole: nothing was written; send it again", http.StatusRequestEntityTooLarge)
			return
		}
		c.SetReadDeadline(time.Time{}) // else it would end the request while it is answered
		r.Body = io.NopCloser(bytes.NewReader(body))
		then.serve(w, r, next)
	})
}

// refuseFor asks for the same once more after some seconds. It closes the
// connection: else the server reads what is left of the form before it answers.
func refuseFor(w http.ResponseWriter, seconds, why string, status int) {
	w.Header().Set("Connection", "close")
	w.Header().Set("Retry-After", seconds)
	http.Error(w, why, status)
}

// Serving is an HTTP server whose times bound slow clients.
func Serving(h http.Handler) *http.Server {
	return &http.Server{Handler: h, ReadHeaderTimeout: 5 * time.Second, ReadTimeout: time.Minute, WriteTimeout: 2 * time.Minute,
		IdleTimeout: time.Minute, MaxHeaderBytes: 32 << 10}
}
