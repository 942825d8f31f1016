package main

import (
	"fmt"
	"io"
	"os"
	"sync"
	"time"
)

// patience is how long a run may take before it shows what it does.
const patience = 700 * time.Millisecond

// progress tells on a terminal what a long run is doing, in one line that goes
// when it is done. Elsewhere, and for a nil progress, it tells nothing.
type progress struct {
	w     io.Writer
	lock  sync.Mutex
	doing string
	start time.Time
	shown bool
	end   chan struct{}
	once  sync.Once
}

// onTerminal returns the progress of a run that writes its messages to w.
func onTerminal(w io.Writer) *progress {
	file, ok := w.(*os.File)
	if !ok || os.Getenv("TERM") == "" || os.Getenv("TERM") == "dumb" {
		return nil
	}
	if info, err := file.Stat(); err != nil || info.Mode()&os.ModeCharDevice == 0 {
		return nil
	}
	return newProgress(w, patience)
}

// newProgress begins to tell after one span of time, and again after each.
func newProgress(w io.Writer, every time.Duration) *progress {
	p := &progress{w: w, start: time.Now(), end: make(chan struct{})}
	go func() {
		tick := time.NewTicker(every)
		defer tick.Stop()
		for {
			select {
			case <-p.end:
				return
			case <-tick.C:
				p.show()
			}
		}
	}()
	return p
}

func (p *progress) stage(doing string) {
	if p == nil {
		return
	}
	p.lock.Lock()
	defer p.lock.Unlock()
	p.doing = doing
}

func (p *progress) show() {
	p.lock.Lock()
	defer p.lock.Unlock()
	if p.doing != "" {
		p.shown = true
		fmt.Fprintf(p.w, "\r\x1b[K%s … %.0f s", p.doing, time.Since(p.start).Seconds())
	}
}

// done wipes the line, before anything else is written.
func (p *progress) done() {
	if p == nil {
		return
	}
	p.once.Do(func() {
		close(p.end)
		p.lock.Lock()
		defer p.lock.Unlock()
		p.doing = ""
		if p.shown {
			fmt.Fprint(p.w, "\r\x1b[K")
		}
	})
}

// wiped is a writer that may share its terminal with the progress.
type wiped struct {
	w    io.Writer
	tell *progress
}

func (w wiped) Write(b []byte) (int, error) {
	w.tell.done()
	return w.w.Write(b)
}
