package benchpage

import (
	"net/http"
	"slices"
	"strings"
	"time"

	"backleaf/certificate/photo"
)

// Bounds of what is served.
const (
	maxForm    = 256 << 10        // bytes of a form without a picture
	mostAtOnce = 32               // requests answered at once; the others wait
	patience   = 20 * time.Second // how long they wait
	perSecond  = 20               // forms a second, all devices together
)

// policy lets a page use what this computer serves and nothing else: no script
// or style within a page, no frame, no other place.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

// guarded keeps out what no page of this server asks for: another host name
// (DNS rebinding), a form of another site, a device that is not paired, and more
// than one computer can answer.
func (s *Server) guarded(next http.Handler) http.Handler {
	atOnce := make(chan struct{}, mostAtOnce)
	forms := &bucket{}
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
		if r.Method == http.MethodPost && !forms.take(s.Studio.Clock()) {
			w.Header().Set("Retry-After", "2")
			http.Error(w, "too many forms at once: nothing was written; send it again", http.StatusTooManyRequests)
			return
		}
		r.Body = http.MaxBytesReader(w, r.Body, bodyBound(r))
		if s.Door != nil && !s.Door.lets(r) && r.URL.Path != "/pair" && r.URL.Path != "/bench.css" && r.URL.Path != "/icon.svg" {
			http.Redirect(w, r, "/pair", http.StatusSeeOther)
			return
		}
		wait := time.NewTimer(patience)
		defer wait.Stop()
		select {
		case atOnce <- struct{}{}:
			defer func() { <-atOnce }()
			next.ServeHTTP(w, r)
		case <-r.Context().Done():
		case <-wait.C:
			w.Header().Set("Retry-After", "5")
			http.Error(w, "too much at once: nothing was written; send it again", http.StatusServiceUnavailable)
		}
	})
	return http.NewCrossOriginProtection().Handler(bounded)
}

// bodyBound is how large what is sent may be.
func bodyBound(r *http.Request) int64 {
	if strings.HasPrefix(r.Header.Get("Content-Type"), "multipart/form-data") {
		return photo.MaxBytes + maxForm
	}
	return maxForm
}

// Serving is an HTTP server whose times bound slow clients.
func Serving(h http.Handler) *http.Server {
	return &http.Server{Handler: h, ReadHeaderTimeout: 5 * time.Second, ReadTimeout: time.Minute, WriteTimeout: 2 * time.Minute,
		IdleTimeout: time.Minute, MaxHeaderBytes: 32 << 10}
}
