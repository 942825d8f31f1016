package main

import (
	"bytes"
	"context"
	"embed"
	"encoding/json"
	"errors"
	"fmt"
	"mime"
	"net/http"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"

	"centrepop/layout"
	"centrepop/layout/plan"
	"centrepop/layout/review"
	"centrepop/parts"
	"centrepop/render/svg"
	"centrepop/templates"
	"centrepop/templates/draw"
	"centrepop/templates/typeface"
)

// page holds what the browser gets: one page, its style and its script.
//
//go:embed watch/page.html watch/page.css watch/page.js
var page embed.FS

// watched is what the browser is told of a job.
type watched struct {
	Version  int              `json:"version"` // of the sheets; rises when they are made again
	Edit     int              `json:"edit"`    // rises with every change of the files
	Pending  bool             `json:"pending"` // review and arrangement are still those of before the edit
	Title    string           `json:"title"`
	Pages    []watchedPage    `json:"pages"`
	Findings []watchedFinding `json:"findings"`
	Faults   string           `json:"faults"` // as on the terminal; the sheets are then the last good ones
	Marks    map[string]int   `json:"marks"`  // pages of what the sheets lead to, from 0
	Show     int              `json:"show"`   // page of the part edited last, from 0; -1 for none
}

// watchedPage is a page with a sum of what is drawn on it: a page with the sum
// that it had before need not be fetched again.
type watchedPage struct {
	pageName
	Sum string `json:"sum"`
}

// watchedFinding is an open finding with the page to look at.
type watchedFinding struct {
	Severity review.Severity `json:"severity"`
	Code     string          `json:"code"`
	What     string          `json:"what"`
	Place    string          `json:"place"`
	Page     int             `json:"page"`
}

// follower keeps the sheets of a job up to date.
type follower struct {
	job  string
	lock sync.Mutex
	now  watched
	doc  *draw.Document
	wake chan struct{} // closed when there is something new
	// What takes longest is of the last state that it was worked out for; one at
	// a time works at it.
	rel      *release
	arranged *plan.Plan
	slow     sync.Mutex
	kept     draw.Kept // sheets of the state drawn last
}

func newFollower(job string) *follower {
	return &follower{job: job, now: watched{Show: -1, Pages: []watchedPage{}, Findings: []watchedFinding{}}, wake: make(chan struct{})}
}

// follow makes the sheets, and again whenever a file changes, until the context
// ends.
func (f *follower) follow(ctx context.Context, every time.Duration) {
	folder := filepath.Dir(f.job)
	tick := time.NewTicker(every)
	defer tick.Stop()
	var last map[string]string
	for {
		if now := stamps(folder); last == nil || !sameStamps(last, now) {
			now = settled(folder, now)
			f.make(changed(last, now))
			last = now
		}
		select {
		case <-ctx.Done():
			return
		case <-tick.C:
		}
	}
}

// make draws the sheets at once, with the review and the arrangement of the
// state before, and begins to work those out. Where the job has faults the last
// good sheets stay.
func (f *follower) make(files []string) {
	w, err := work(f.job)
	f.lock.Lock()
	rel, before := f.rel, f.arranged
	f.lock.Unlock()
	pending := rel != nil
	switch {
	case err != nil:
	case pending:
		w.ArrangeAs(before)
	default: // there is nothing to show before
		rel = reviewed(w)
	}
	var next watched
	var doc *draw.Document
	if err == nil {
		next, doc, err = f.drawn(w, rel, files)
	}
	f.lock.Lock()
	defer f.lock.Unlock()
	defer f.tell()
	edit := f.now.Edit + 1
	if f.now.Edit = edit; err != nil {
		f.now.Faults = strings.TrimRight(err.Error(), "\n")
		return
	}
	next.Version, next.Edit, next.Pending = f.now.Version+1, edit, pending
	if pending {
		go f.finish(edit, w, files)
	} else { // the first look has seen no edit
		next.Show, f.rel, f.arranged = -1, rel, w.Plan
	}
	f.now, f.doc = next, doc
}

// finish reviews and arranges what make has drawn, and draws it again with both.
// It leaves off where the files have changed since.
func (f *follower) finish(edit int, w *layout.Worked, files []string) {
	f.slow.Lock()
	defer f.slow.Unlock()
	if now, _, _ := f.state(); now.Edit != edit {
		return
	}
	rel := reviewed(w)
	next, doc, err := f.drawn(w, rel, files)
	f.lock.Lock()
	defer f.lock.Unlock()
	if f.now.Edit != edit || err != nil { // what make could draw is not refused now
		return
	}
	next.Version, next.Edit = f.now.Version+1, edit
	f.now, f.doc, f.rel, f.arranged = next, doc, rel, w.Plan
	f.tell()
}

// tell wakes all that wait for something new. The follower is locked.
func (f *follower) tell() {
	close(f.wake)
	f.wake = make(chan struct{})
}

// drawn draws the packet of a job of which some files have changed: what is drawn of
// other values than before.
func (f *follower) drawn(w *layout.Worked, rel *release, files []string) (watched, *draw.Document, error) {
	doc, err := templates.Packet(w.Plan, templates.Options{Findings: rel.findings, Held: rel.held(), Kept: &f.kept})
	if err != nil {
		return watched{}, nil, located(err, w.Job)
	}
	out := watched{Title: w.Job.Name.Value, Findings: []watchedFinding{}, Marks: doc.Marks()}
	for i, name := range pageNames(w.Job, doc) {
		out.Pages = append(out.Pages, watchedPage{name, strconv.FormatUint(draw.Sum(&doc.Pages[i].Drawing), 36)})
	}
	out.Show = slices.IndexFunc(out.Pages, func(p watchedPage) bool { return p.from(files) })
	for _, one := range rel.findings {
		if !one.Open() {
			continue
		}
		out.Findings = append(out.Findings, watchedFinding{
			Severity: one.Severity, Code: one.Code, What: one.What, Place: placeOf(one.Pos),
			Page: max(0, slices.IndexFunc(out.Pages, func(p watchedPage) bool { return p.has(one.Part) })),
		})
	}
	return out, doc, nil
}

func placeOf(p parts.Pos) string { return fmt.Sprintf("%s:%d", p.File, p.Line) }

// state returns what there is now and what tells of the next.
func (f *follower) state() (watched, *draw.Document, <-chan struct{}) {
	f.lock.Lock()
	defer f.lock.Unlock()
	return f.now, f.doc, f.wake
}

// handler answers browsers on this machine that ask for the page by this
// address, and nobody else: no other host name may lead here, and no page of
// another site may ask.
func (f *follower) handler(address string) http.Handler {
	mux := http.NewServeMux()
	for _, name := range []string{"page.html", "page.css", "page.js"} {
		where := "/" + name
		if name == "page.html" {
			where = "/{$}"
		}
		body, err := page.ReadFile("watch/" + name)
		if err != nil {
			panic("watch: " + err.Error()) // it is embedded
		}
		mux.HandleFunc("GET "+where, func(w http.ResponseWriter, _ *http.Request) {
			send(w, mime.TypeByExtension(filepath.Ext(name)), body)
		})
	}
	for name, bold := range map[string]bool{"regular": false, "bold": true} {
		mux.HandleFunc("GET /"+name+".ttf", func(w http.ResponseWriter, _ *http.Request) {
			send(w, "font/ttf", typeface.TTF(bold))
		})
	}
	mux.HandleFunc("GET /state", f.sendState)
	mux.HandleFunc("GET /events", f.sendEvents)
	mux.HandleFunc("GET /sheet/{name}", f.sendSheet)
	_, port, _ := strings.Cut(address, ":")
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; font-src 'self'; connect-src 'self'; img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'")
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Cache-Control", "no-store")
		site, origin := r.Header.Get("Sec-Fetch-Site"), r.Header.Get("Origin")
		switch {
		case r.Host != address && r.Host != "localhost:"+port:
			http.Error(w, "this address is not served", http.StatusMisdirectedRequest)
		case site != "" && site != "same-origin" && site != "none", origin != "" && origin != "http://"+r.Host:
			http.Error(w, "other sites get no answer", http.StatusForbidden)
		default:
			mux.ServeHTTP(w, r)
		}
	})
}

// send writes an answer. A browser that has gone is no concern.
func send(w http.ResponseWriter, kind string, body []byte) {
	w.Header().Set("Content-Type", kind)
	_, _ = w.Write(body)
}

func (f *follower) sendState(w http.ResponseWriter, _ *http.Request) {
	now, _, _ := f.state()
	body, err := json.Marshal(now)
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	send(w, "application/json", body)
}

// sendEvents tells a browser once now, and again whenever there is something
// new.
func (f *follower) sendEvents(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Content-Type", "text/event-stream")
	begin := "retry: 500\n" // how soon a browser tries again that has lost the connection, in ms
	for {
		now, doc, wake := f.state()
		if doc != nil || now.Faults != "" {
			if _, err := fmt.Fprintf(w, "%sdata: %d\n\n", begin, now.Version); err != nil {
				return
			}
			if err := http.NewResponseController(w).Flush(); err != nil {
				return
			}
			begin = ""
		}
		select {
		case <-r.Context().Done():
			return
		case <-wake:
		}
	}
}

// sendSheet draws the sheet asked for, such as 3.svg, of the state asked for.
func (f *follower) sendSheet(w http.ResponseWriter, r *http.Request) {
	now, doc, _ := f.state()
	n, err := strconv.Atoi(strings.TrimSuffix(r.PathValue("name"), ".svg"))
	if err != nil || doc == nil || n < 0 || n >= len(doc.Pages) || r.FormValue("v") != strconv.Itoa(now.Version) {
		http.Error(w, "there is no such sheet now", http.StatusNotFound)
		return
	}
	p := &doc.Pages[n]
	var b bytes.Buffer
	if err := svg.Write(&b, &p.Drawing, p.WidthMm, p.HeightMm); err != nil {
		http.Error(w, errors.Join(errors.New("the sheet cannot be drawn"), err).Error(), http.StatusInternalServerError)
		return
	}
	send(w, "image/svg+xml", b.Bytes())
}
