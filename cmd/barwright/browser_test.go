package main

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"os/exec"
	"testing"
	"time"
)

// browser is a page in Chromium, told what to do over a pair of pipes: messages of the
// DevTools protocol in JSON, each ended by a zero byte.
type browser struct {
	to      io.Writer
	from    *bufio.Reader
	asked   int
	session string
}

// browse opens an empty page. The test is skipped where Chromium is missing.
func browse(t testing.TB) *browser {
	t.Helper()
	path, err := exec.LookPath("chromium")
	if err != nil {
		if os.Getenv("BARWRIGHT_OUTSIDE") == "required" {
			t.Fatal(err)
		}
		t.Skip("OUTSIDE CHECK SKIPPED: there is no chromium; the view is not looked at in a browser:", err)
	}
	reads, to, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	from, writes, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(path, "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
		"--disable-component-update", "--disable-sync", "--remote-debugging-pipe", "--window-size=1280,900", "--user-data-dir="+t.TempDir())
	cmd.ExtraFiles = []*os.File{reads, writes} // 3 and 4
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	reads.Close()
	writes.Close()
	late := time.AfterFunc(2*time.Minute, func() { from.Close() })
	b := &browser{to: to, from: bufio.NewReader(from)}
	t.Cleanup(func() {
		b.send(t, "Browser.close", nil)
		cmd.Wait()
		late.Stop()
		to.Close()
		from.Close()
	})
	return b.tab(t)
}

// tab opens a further empty page, in sight before all others.
func (b *browser) tab(t testing.TB) *browser {
	t.Helper()
	b = &browser{to: b.to, from: b.from, asked: b.asked}
	var target struct{ TargetID string }
	b.call(t, "Target.createTarget", map[string]any{"url": "about:blank"}, &target)
	var attached struct{ SessionID string }
	b.call(t, "Target.attachToTarget", map[string]any{"targetId": target.TargetID, "flatten": true}, &attached)
	b.session = attached.SessionID
	return b
}

func (b *browser) send(t testing.TB, method string, params any) {
	t.Helper()
	b.asked++
	message := map[string]any{"id": b.asked, "method": method}
	if params != nil {
		message["params"] = params
	}
	if b.session != "" && method != "Browser.close" {
		message["sessionId"] = b.session
	}
	text, err := json.Marshal(message)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := b.to.Write(append(text, 0)); err != nil {
		t.Fatal(err)
	}
}

// call asks for something and demands an answer.
func (b *browser) call(t testing.TB, method string, params, result any) {
	t.Helper()
	if refused := b.ask(t, method, params, result); refused != "" {
		t.Fatalf("%s: %s", method, refused)
	}
}

// ask asks for something and reads the answer, or why there is none; events in between are passed over.
func (b *browser) ask(t testing.TB, method string, params, result any) (refused string) {
	t.Helper()
	b.send(t, method, params)
	for {
		text, err := b.from.ReadBytes(0)
		if err != nil {
			t.Fatalf("%s: %v", method, err)
		}
		var reply struct {
			ID     int
			Result json.RawMessage
			Error  *struct{ Message string }
		}
		if err := json.Unmarshal(text[:len(text)-1], &reply); err != nil {
			t.Fatal(err)
		}
		switch {
		case reply.ID != b.asked:
			continue
		case reply.Error != nil:
			return reply.Error.Message
		}
		if err := json.Unmarshal(reply.Result, result); err != nil {
			t.Fatal(err)
		}
		return ""
	}
}

// open goes to an address.
func (b *browser) open(t testing.TB, url string) {
	t.Helper()
	b.call(t, "Page.navigate", map[string]any{"url": url}, &struct{}{})
	b.wait(t, fmt.Sprintf("document.readyState === 'complete' && location.href === %q", url))
}

// value is what an expression comes to, a promise awaited.
func (b *browser) value(t testing.TB, expression string) string {
	t.Helper()
	value, refused := b.evaluate(t, expression)
	if refused != "" {
		t.Fatalf("%s: %s", expression, refused)
	}
	return value
}

// evaluate tells what an expression comes to, or why the browser does not evaluate it.
func (b *browser) evaluate(t testing.TB, expression string) (value, refused string) {
	t.Helper()
	var reply struct {
		Result           struct{ Value any }
		ExceptionDetails *struct {
			Exception struct{ Description string }
		}
	}
	refused = b.ask(t, "Runtime.evaluate", map[string]any{"expression": expression, "awaitPromise": true, "returnByValue": true}, &reply)
	if refused != "" {
		return "", refused
	}
	if reply.ExceptionDetails != nil {
		t.Fatalf("%s: %s", expression, reply.ExceptionDetails.Exception.Description)
	}
	return fmt.Sprint(reply.Result.Value), ""
}

// left is what the browser says where a page goes while it is asked, as one does that loads itself anew.
const left = "Inspected target navigated or closed"

// wait waits until a condition holds, on this page or on the one that takes its place.
func (b *browser) wait(t testing.TB, condition string) {
	t.Helper()
	for range 1000 {
		switch value, refused := b.evaluate(t, condition); {
		case value == "true":
			return
		case refused != "" && refused != left:
			t.Fatalf("%s: %s", condition, refused)
		}
		time.Sleep(10 * time.Millisecond)
	}
	t.Fatalf("never true: %s", condition)
}
