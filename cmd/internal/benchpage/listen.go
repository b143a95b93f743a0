package benchpage

import (
	"context"
	"errors"
	"net"
	"net/http"
	"os"
	"strconv"
	"strings"
	"time"
)

// Listen serves the page on a port, 0 for any that is free, until ctx ends: to
// this computer, and to others in its networks if there is a door. opened is
// told the addresses once they answer.
func (s *Server) Listen(ctx context.Context, port int, opened func(addresses []string)) error {
	host, names := "127.0.0.1", []string{"127.0.0.1"}
	if s.Door != nil {
		host, names = "", append(names, hostNames()...)
	}
	l, err := net.Listen("tcp", net.JoinHostPort(host, strconv.Itoa(port)))
	if err != nil {
		return err
	}
	defer l.Close()
	var addresses []string
	for _, n := range append(names, "localhost", "[::1]") {
		at := strings.ToLower(n) + ":" + strconv.Itoa(l.Addr().(*net.TCPAddr).Port)
		s.Hosts = append(s.Hosts, at)
		addresses = append(addresses, "http://"+at+"/")
	}
	h, err := s.Handler()
	if err != nil {
		return err
	}
	opened(addresses[:len(names)])
	if s.Door != nil {
		if err := s.Door.Open(ctx); err != nil {
			return err
		}
	}
	srv := Serving(h)
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
