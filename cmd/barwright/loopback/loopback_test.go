package loopback

import (
	"bufio"
	"context"
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"
)

const policy = "default-src 'none'"

var paths = Paths{Events: "/events", Pieces: "/pieces/"}

func server() *Server {
	return New(8000, paths, policy, Page{1, []byte("<p>one</p>"), func(name string) []byte {
		if name != "plan" {
			return nil
		}
		return []byte("<p>a plan</p>")
	}})
}

// TestAnswersNobodyElse asks as browsers and others do.
func TestAnswersNobodyElse(t *testing.T) {
	tests := []struct {
		method, path, host string
		headers            []string // name, value
		want               int
	}{
		{"GET", "/", "127.0.0.1:8000", nil, 200},
		{"GET", "/", "localhost:8000", nil, 200},
		{"GET", "/", "LocalHost:8000", nil, 200},
		{"GET", "/", "[::1]:8000", nil, 200},
		{"HEAD", "/", "127.0.0.1:8000", nil, 200},
		{"HEAD", "/events", "127.0.0.1:8000", nil, 200},
		{"GET", "/", "127.0.0.1:8000", []string{"Sec-Fetch-Site", "none"}, 200},
		{"GET", "/", "127.0.0.1:8000", []string{"Sec-Fetch-Site", "same-origin", "Origin", "http://127.0.0.1:8000"}, 200},

		{"GET", "/", "127.0.0.1:8001", nil, 403},
		{"GET", "/", "127.0.0.1", nil, 403},
		{"GET", "/", "shed.example:8000", nil, 403},
		{"GET", "/", "localhost.shed.example:8000", nil, 403},
		{"GET", "/", "127.0.0.1:8000.shed.example", nil, 403},
		{"GET", "/events", "shed.example:8000", nil, 403},
		{"GET", "/", "", nil, 403},
		{"GET", "/", "127.0.0.1:8000", []string{"Sec-Fetch-Site", "cross-site"}, 403},
		{"GET", "/events", "localhost:8000", []string{"Sec-Fetch-Site", "same-site"}, 403}, // another port
		{"GET", "/", "127.0.0.1:8000", []string{"Origin", "http://shed.example"}, 403},
		{"GET", "/", "127.0.0.1:8000", []string{"Origin", "null"}, 403},
		{"GET", "/events", "127.0.0.1:8000", []string{"Origin", "http://localhost:8000"}, 403},
		{"GET", "/", "127.0.0.1:8000", []string{"Origin", "https://127.0.0.1:8000"}, 403},

		{"POST", "/", "127.0.0.1:8000", nil, 405},
		{"OPTIONS", "/events", "127.0.0.1:8000", nil, 405},
		{"TRACE", "/", "127.0.0.1:8000", nil, 405},
		{"GET", "/bar.hcl", "127.0.0.1:8000", nil, 404},
		{"GET", "//", "127.0.0.1:8000", nil, 404},
		{"GET", "/../bar.hcl", "127.0.0.1:8000", nil, 404},
		{"GET", "/%2e%2e/bar.hcl", "127.0.0.1:8000", nil, 404},
		{"GET", "/events/", "127.0.0.1:8000", nil, 404},

		{"GET", "/pieces/plan", "127.0.0.1:8000", nil, 200},
		{"GET", "/pieces/plan", "shed.example:8000", nil, 403},
		{"GET", "/pieces/plan", "127.0.0.1:8000", []string{"Sec-Fetch-Site", "cross-site"}, 403},
		{"POST", "/pieces/plan", "127.0.0.1:8000", nil, 405},
		{"GET", "/pieces/", "127.0.0.1:8000", nil, 404},
		{"GET", "/pieces/../bar.hcl", "127.0.0.1:8000", nil, 404},
	}
	for _, test := range tests {
		r := httptest.NewRequest(test.method, test.path, nil)
		r.Host = test.host
		for i := 0; i < len(test.headers); i += 2 {
			r.Header.Set(test.headers[i], test.headers[i+1])
		}
		w := httptest.NewRecorder()
		server().ServeHTTP(w, r.WithContext(canceled()))
		if w.Code != test.want {
			t.Errorf("%s %s at %q, %q: %d, not %d", test.method, test.path, test.host, test.headers, w.Code, test.want)
		}
		if strings.Contains(w.Body.String(), "one") != (w.Code == 200 && test.path == "/") {
			t.Errorf("%s %s at %q, %q gives %q", test.method, test.path, test.host, test.headers, w.Body)
		}
		if strings.Contains(w.Body.String(), "plan") != (w.Code == 200 && test.path == "/pieces/plan") {
			t.Errorf("%s %s at %q, %q gives %q", test.method, test.path, test.host, test.headers, w.Body)
		}
		for name, want := range map[string]string{
			"Cache-Control": "no-store", "X-Content-Type-Options": "nosniff",
			"Content-Security-Policy": policy + "; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
		} {
			if got := w.Header().Get(name); got != want {
				t.Errorf("%s %s: %s is %q, not %q", test.method, test.path, name, got, want)
			}
		}
		if got := w.Header().Get("Access-Control-Allow-Origin"); got != "" {
			t.Errorf("%s %s lets %s read it", test.method, test.path, got)
		}
	}
}

// canceled is the context of a browser that has gone.
func canceled() context.Context {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	return ctx
}

// TestUsualPort leaves out of the address what browsers leave out.
func TestUsualPort(t *testing.T) {
	s := New(80, paths, policy, Page{})
	r := httptest.NewRequest("GET", "/", nil)
	r.Host = "localhost"
	w := httptest.NewRecorder()
	if s.ServeHTTP(w, r); w.Code != 200 {
		t.Error(w.Code)
	}
}

// TestEvents hears of each page, and the end; then the port is free.
func TestEvents(t *testing.T) {
	l, err := Listen(0)
	if err != nil {
		t.Fatal(err)
	}
	port := l.Addr().(*net.TCPAddr).Port
	s := New(port, paths, policy, Page{1, []byte("one"), nil})
	ctx, end := context.WithCancel(t.Context())
	served := make(chan error, 1)
	go func() { served <- s.Serve(ctx, l) }()

	reply, err := http.Get("http://" + l.Addr().String() + "/events")
	if err != nil {
		t.Fatal(err)
	}
	defer reply.Body.Close()
	if got := reply.Header.Get("Content-Type"); got != "text/event-stream" {
		t.Error(got)
	}
	events := bufio.NewScanner(reply.Body)
	next := func() string {
		for events.Scan() {
			if number, ok := strings.CutPrefix(events.Text(), "data: "); ok {
				return number
			}
		}
		return "the end"
	}
	for i, want := range []string{"1", "2", "3"} {
		if got := next(); got != want {
			t.Errorf("event %s, not %s", got, want)
		}
		s.Show(Page{i + 2, []byte("more"), nil})
	}
	if got := next(); got != "4" {
		t.Error(got)
	}
	end()
	if got := next(); got != "the end" {
		t.Errorf("event %s after the end", got)
	}
	select {
	case err := <-served:
		if err != nil {
			t.Error(err)
		}
	case <-time.After(10 * time.Second):
		t.Fatal("it does not end")
	}
	again, err := Listen(port)
	if err != nil {
		t.Fatal("the port is not free:", err)
	}
	again.Close()
}

// TestTaken does not share a port.
func TestTaken(t *testing.T) {
	l, err := Listen(0)
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	if second, err := Listen(l.Addr().(*net.TCPAddr).Port); err == nil {
		second.Close()
		t.Error("two listen on one port")
	}
}

// TestServeFails tells an error that is not the end.
func TestServeFails(t *testing.T) {
	l, err := Listen(0)
	if err != nil {
		t.Fatal(err)
	}
	l.Close()
	if err := server().Serve(t.Context(), l); err == nil || err == io.EOF {
		t.Error(err)
	}
}
