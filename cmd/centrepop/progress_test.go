package main

import (
	"bytes"
	"os"
	"strings"
	"sync"
	"testing"
	"time"
)

// terminal is a writer that tests may read while it is written to.
type terminal struct {
	lock sync.Mutex
	b    bytes.Buffer
}

func (s *terminal) Write(p []byte) (int, error) {
	s.lock.Lock()
	defer s.lock.Unlock()
	return s.b.Write(p)
}

func (s *terminal) String() string {
	s.lock.Lock()
	defer s.lock.Unlock()
	return s.b.String()
}

// A long run shows its stages in one line and wipes it at the end.
func TestProgress(t *testing.T) {
	t.Parallel()
	var s terminal
	p := newProgress(&s, time.Millisecond)
	p.stage("drawing")
	for start := time.Now(); !strings.Contains(s.String(), "drawing … 0 s") && time.Since(start) < 10*time.Second; {
		time.Sleep(time.Millisecond)
	}
	p.done()
	got := s.String()
	if !strings.HasPrefix(got, "\r\x1b[Kdrawing … 0 s") || !strings.HasSuffix(got, "\r\x1b[K") || strings.Contains(got, "\n") {
		t.Errorf("the terminal got %q", got)
	}
}

// A short run shows nothing, and neither does one without a terminal.
func TestNoProgress(t *testing.T) {
	t.Parallel()
	var s terminal
	p := newProgress(&s, time.Hour)
	p.stage("drawing")
	p.done()
	if got := s.String(); got != "" {
		t.Errorf("the terminal got %q", got)
	}
	file, err := os.Create(t.TempDir() + "/log")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	if onTerminal(file) != nil || onTerminal(&s) != nil {
		t.Error("a file counts as a terminal")
	}
	var none *progress
	none.stage("nothing")
	none.done()
}
