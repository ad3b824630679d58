// Package loopback serves one page, which changes, to browsers on the same machine and to
// nobody else: it answers on the loopback address, only where it is called by that, and
// only pages that it has served itself. It takes pages as bytes and tells by events that
// there is another. It reads no file.
package loopback

import (
	"context"
	"fmt"
	"io"
	"log"
	"net"
	"net/http"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"
)

// Address is the one that is listened on.
const Address = "127.0.0.1"

// Listen takes a port of the loopback address, any that is free for 0.
func Listen(port int) (net.Listener, error) {
	return net.Listen("tcp4", net.JoinHostPort(Address, strconv.Itoa(port)))
}

// Page is what is served: whole, and by a number that no other page of this server has.
type Page struct {
	Number int
	HTML   []byte
	Piece  func(name string) []byte // what the page asks for when it is to be seen, nil where there is none; may be nil
}

// Paths are where a server answers beside /.
type Paths struct {
	Events string
	Pieces string // before the name of each
}

// Server serves the newest page at / and its pieces and, at a path of its own, its number as an event,
// then that of each page that takes its place.
type Server struct {
	paths   Paths
	policy  string // what the pages may do: Content-Security-Policy
	hosts   []string
	mu      sync.Mutex
	page    Page
	changed chan struct{} // closed when another page is there
}

// New is a server on a port, with the page that it serves first.
func New(port int, paths Paths, policy string, first Page) *Server {
	s := &Server{paths: paths, policy: policy + "; base-uri 'none'; form-action 'none'; frame-ancestors 'none'", page: first, changed: make(chan struct{})}
	for _, name := range []string{Address, "localhost", "[::1]"} {
		s.hosts = append(s.hosts, name+":"+strconv.Itoa(port))
		if port == 80 { // goes without saying
			s.hosts = append(s.hosts, name)
		}
	}
	return s
}

// Show serves another page.
func (s *Server) Show(p Page) {
	s.mu.Lock()
	defer s.mu.Unlock()
	close(s.changed)
	s.page, s.changed = p, make(chan struct{})
}

// now is the page that is served, and what is closed when it is no longer.
func (s *Server) now() (Page, <-chan struct{}) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.page, s.changed
}

// grace is how long a browser may take to read what it has been promised when the server ends.
const grace = 2 * time.Second

// patience is how long a browser may take to read an answer, or an event.
const patience = 30 * time.Second

// Serve answers until the context ends; then all events end, and the port is free.
func (s *Server) Serve(ctx context.Context, l net.Listener) error {
	server := http.Server{
		Handler:           s,
		BaseContext:       func(net.Listener) context.Context { return ctx },
		ReadHeaderTimeout: 5 * time.Second,
		WriteTimeout:      patience,
		IdleTimeout:       time.Minute,
		MaxHeaderBytes:    1 << 14,
		ErrorLog:          log.New(io.Discard, "", 0), // it tells of browsers that hang up
	}
	stopped := make(chan struct{})
	stop := context.AfterFunc(ctx, func() {
		defer close(stopped)
		late, cancel := context.WithTimeout(context.WithoutCancel(ctx), grace)
		defer cancel()
		if server.Shutdown(late) != nil {
			server.Close()
		}
	})
	if err := server.Serve(l); stop() {
		return err // it has not been asked to end
	}
	<-stopped
	return nil
}

// ServeHTTP answers one request.
func (s *Server) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	h := w.Header()
	h.Set("Cache-Control", "no-store")
	h.Set("Content-Security-Policy", s.policy)
	h.Set("Cross-Origin-Opener-Policy", "same-origin")
	h.Set("Cross-Origin-Resource-Policy", "same-origin")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("X-Content-Type-Options", "nosniff")
	piece, asked := strings.CutPrefix(r.URL.Path, s.paths.Pieces)
	switch {
	case !s.called(r):
		http.Error(w, "This page is for the machine that it is served on: open it by the address that barwright view prints.", http.StatusForbidden)
	case !asksItself(r):
		http.Error(w, "Another site asks for this page. Open it by its address.", http.StatusForbidden)
	case r.URL.Path != "/" && r.URL.Path != s.paths.Events && !asked:
		http.Error(w, "There is nothing here.", http.StatusNotFound)
	case r.Method != http.MethodGet && r.Method != http.MethodHead:
		h.Set("Allow", "GET, HEAD")
		http.Error(w, "This page is only to be read.", http.StatusMethodNotAllowed)
	case r.URL.Path == "/":
		page, _ := s.now()
		reply(w, page.HTML)
	case asked:
		page, _ := s.now()
		if page.Piece != nil {
			if html := page.Piece(piece); html != nil {
				reply(w, html)
				return
			}
		}
		http.Error(w, "There is nothing here.", http.StatusNotFound)
	default:
		h.Set("Content-Type", "text/event-stream")
		if r.Method == http.MethodGet {
			s.tell(w, r)
		}
	}
}

func reply(w http.ResponseWriter, html []byte) {
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.Header().Set("Content-Length", strconv.Itoa(len(html)))
	w.Write(html)
}

// called reports whether the server is called by its address: a name that somebody else
// has pointed at it is none.
func (s *Server) called(r *http.Request) bool {
	return slices.Contains(s.hosts, strings.ToLower(r.Host))
}

// asksItself reports whether a page of this server asks, or a person; browsers say so.
func asksItself(r *http.Request) bool {
	site, origin := r.Header.Get("Sec-Fetch-Site"), r.Header.Get("Origin")
	return (site == "" || site == "same-origin" || site == "none") && (origin == "" || strings.EqualFold(origin, "http://"+r.Host))
}

// tell sends the number of the page, and that of each that takes its place, until one
// side ends.
func (s *Server) tell(w http.ResponseWriter, r *http.Request) {
	to := http.NewResponseController(w)
	for {
		page, changed := s.now()
		to.SetWriteDeadline(time.Now().Add(patience)) // where there is one
		if _, err := fmt.Fprintf(w, "retry: 500\ndata: %d\n\n", page.Number); err != nil || to.Flush() != nil {
			return
		}
		to.SetWriteDeadline(time.Time{})
		select {
		case <-changed:
		case <-r.Context().Done():
			return
		}
	}
}
