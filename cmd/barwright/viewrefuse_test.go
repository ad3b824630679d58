package main

import (
	"bufio"
	"fmt"
	"io"
	"net"
	"net/http"
	"strings"
	"testing"
	"time"
)

// ask sends a request as it stands to a view, and gives the status of the answer and its text.
func (v *viewed) ask(t *testing.T, request string) (status int, text string) {
	t.Helper()
	c, err := net.Dial("tcp4", strings.Trim(strings.TrimPrefix(v.address, "http:"), "/"))
	if err != nil {
		t.Fatal(err)
	}
	defer c.Close()
	c.SetDeadline(time.Now().Add(time.Minute))
	if _, err := io.WriteString(c, request); err != nil {
		t.Fatal(err)
	}
	answer, err := http.ReadResponse(bufio.NewReader(c), nil)
	if err != nil {
		t.Fatalf("%q: %v", request, err)
	}
	defer answer.Body.Close()
	body, _ := io.ReadAll(answer.Body)
	return answer.StatusCode, string(body)
}

// A view answers for its page and nothing else, whatever is sent to it: paths that lead
// elsewhere, other names of the machine, other sites, and requests that two readers could
// read in two ways.
func TestViewRefuses(t *testing.T) {
	v := serveCopy(t, "steps/1", nil)
	host := strings.Trim(strings.TrimPrefix(v.address, "http:"), "/")
	port := host[strings.LastIndex(host, ":"):]
	const end = " HTTP/1.1\r\nConnection: close\r\nHost: "
	if status, text := v.ask(t, "GET /"+end+host+"\r\n\r\n"); status != 200 || !strings.Contains(text, "<svg") {
		t.Fatalf("the page itself: status %d", status)
	}
	var requests []string
	for _, path := range []string{
		"/bar.hcl", "/stock.hcl", "/model.json", "/index.html", "/../bar.hcl", "/../../../etc/passwd", "/./bar.hcl", "//", "//etc/passwd",
		"/%2e%2e/bar.hcl", "/..%2fbar.hcl", "/%2e%2e%5cbar.hcl", "/%00", "/bar.hcl%00.html", "/;/bar.hcl", "/events/../bar.hcl",
		"/.git/config", "/debug/pprof/", "file:///etc/passwd", "*", "/bar.hcl?x=/", "/" + strings.Repeat("a/", 4000),
	} {
		requests = append(requests, "GET "+path+end+host+"\r\n\r\n")
	}
	for _, name := range []string{"shed.example" + port, "shed.example", "127.0.0.1", "127.0.0.2" + port, "0.0.0.0" + port, "[::ffff:127.0.0.1]" + port, "127.0.0.1" + port + ".shed.example", "localhost." + port, "2130706433" + port} {
		requests = append(requests, "GET /"+end+name+"\r\n\r\n")
	}
	for _, header := range []string{
		"Sec-Fetch-Site: cross-site", "Sec-Fetch-Site: same-site", "Origin: http://shed.example", "Origin: null",
		"Origin: http://localhost" + port, "Sec-Fetch-Site: cross-site\r\nSec-Fetch-Mode: navigate",
	} {
		requests = append(requests, "GET /"+end+host+"\r\n"+header+"\r\n\r\n", "GET /events"+end+host+"\r\n"+header+"\r\n\r\n")
	}
	requests = append(requests,
		"GET http://shed.example/"+end+host+"\r\n\r\n",
		"GET http://"+host+"/bar.hcl"+end+host+"\r\n\r\n",
		"CONNECT shed.example:80"+end+host+"\r\n\r\n",
		"OPTIONS /"+end+host+"\r\nOrigin: http://shed.example\r\nAccess-Control-Request-Method: PUT\r\nAccess-Control-Request-Private-Network: true\r\n\r\n",
		"PUT /"+end+host+"\r\nContent-Length: 3\r\n\r\nrun",
		"DELETE /"+end+host+"\r\n\r\n",
		"POST /"+end+host+"\r\nContent-Length: 3\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n",
		"GET /"+end+host+"\r\nHost: shed.example\r\n\r\n",
		"GET / HTTP/1.1\r\nConnection: close\r\n\r\n",
		"GET / HTTP/1.0\r\n\r\n",
		"GET / HTTP/9.9\r\n\r\n",
		"GET /"+end+host+"\r\nX: "+strings.Repeat("x", 1<<16)+"\r\n\r\n",
		"\x16\x03\x01\x00\xa5\x01\x00\r\n\r\n",
	)
	for _, request := range requests {
		status, text := v.ask(t, request)
		line, _, _ := strings.Cut(request, "\r\n")
		if status < 400 || len(text) > 200 {
			t.Errorf("%.200q: status %d, %.200q", line, status, text)
		}
		for _, own := range []string{"<svg", "carcass", "root:", v.dir} {
			if strings.Contains(text, own) {
				t.Errorf("%.200q tells %q", line, own)
			}
		}
	}
	t.Logf("%d requests are refused", len(requests))
}

// Who sends nothing, or half a request, keeps nobody else waiting.
func TestViewServesBesideTheSlow(t *testing.T) {
	v := serveCopy(t, "steps/1", nil)
	host := strings.Trim(strings.TrimPrefix(v.address, "http:"), "/")
	for i := range 200 {
		c, err := net.Dial("tcp4", host)
		if err != nil {
			t.Fatal(err)
		}
		defer c.Close()
		if i%2 == 0 {
			fmt.Fprintf(c, "GET / HTTP/1.1\r\nHost: %s\r\nX: ", host)
		}
	}
	if !strings.Contains(v.page(t), "<svg") {
		t.Error("the page is not served")
	}
}

// A view listens on the loopback address, and on no other of the machine.
func TestViewListensToNobodyElse(t *testing.T) {
	v := serveCopy(t, "steps/1", nil)
	port := v.address[strings.LastIndex(v.address, ":")+1 : len(v.address)-1]
	addresses, err := net.InterfaceAddrs()
	if err != nil {
		t.Fatal(err)
	}
	others := 0
	for _, a := range addresses {
		ip := a.(*net.IPNet).IP
		if ip.String() == "127.0.0.1" || ip.IsLinkLocalUnicast() {
			continue
		}
		others++
		if c, err := net.DialTimeout("tcp", net.JoinHostPort(ip.String(), port), 5*time.Second); err == nil {
			c.Close()
			t.Errorf("it listens on %s", ip)
		}
	}
	t.Logf("%d other addresses", others)
}
