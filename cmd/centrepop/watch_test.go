package main

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"centrepop/layout"
)

// watchedJob is a small job that is followed until the test ends.
func watchedJob(t testing.TB) (folder string, f *follower) {
	t.Helper()
	folder = t.TempDir()
	write(t, filepath.Join(folder, "job.yaml"), "job: Watched\nunits: mm\nparts: [cover.yaml, ring.yaml]\n")
	write(t, filepath.Join(folder, "cover.yaml"), watchedPlate("cover", 150))
	write(t, filepath.Join(folder, "ring.yaml"), watchedPlate("ring", 140))
	f = newFollower(filepath.Join(folder, "job.yaml"))
	ctx, stop := context.WithCancel(context.Background())
	done := make(chan struct{})
	go func() { defer close(done); f.follow(ctx, 20*time.Millisecond) }()
	t.Cleanup(func() { stop(); <-done })
	return folder, f
}

func watchedPlate(name string, pcd int) string {
	return fmt.Sprintf("part: %s\nkind: flange\nmaterial: S235\ntop: punch\nstock: {plate: 12, cut: laser}\noutline: {circle: 200}\nholes:\n  - {name: bolts, circle: {pcd: %d, count: 6}, size: M10 clearance}\n", name, pcd)
}

// until waits for a state that is wanted.
func until(t testing.TB, f *follower, want string, ok func(watched) bool) watched {
	t.Helper()
	for deadline := time.After(30 * time.Second); ; {
		now, doc, wake := f.state()
		if (doc != nil || now.Faults != "") && !now.Pending && ok(now) {
			return now
		}
		select {
		case <-wake:
		case <-deadline:
			t.Fatalf("no state with %s: %+v", want, now)
		}
	}
}

// TestFollow: edits, a half-saved file, a file renamed over and a deleted one.
func TestFollow(t *testing.T) {
	t.Parallel()
	folder, f := watchedJob(t)
	first := until(t, f, "sheets", func(w watched) bool { return len(w.Pages) > 3 })
	if first.Show != -1 || first.Title != "Watched" || first.Faults != "" {
		t.Errorf("at first %+v", first)
	}
	ring := filepath.Join(folder, "ring.yaml")
	write(t, ring, watchedPlate("ring", 132))
	edited := until(t, f, "a second version", func(w watched) bool { return w.Version > first.Version })
	if p := edited.Pages[edited.Show]; p.Part != "ring" {
		t.Errorf("the part edited last is ring, in view is %v", p)
	}
	write(t, ring, "part: ring\nkind: flange\noutline: {circ")
	broken := until(t, f, "a fault", func(w watched) bool { return strings.HasPrefix(w.Faults, "ring.yaml:3:") })
	if broken.Version != edited.Version || len(broken.Pages) != len(edited.Pages) {
		t.Errorf("with a fault %+v", broken)
	}
	write(t, ring+".new", watchedPlate("ring", 135))
	if err := os.Rename(ring+".new", ring); err != nil {
		t.Fatal(err)
	}
	until(t, f, "no fault", func(w watched) bool { return w.Faults == "" && w.Version > edited.Version })
	if err := os.Remove(ring); err != nil {
		t.Fatal(err)
	}
	until(t, f, "the file missing", func(w watched) bool { return strings.Contains(w.Faults, "there is no file") })
	write(t, ring, watchedPlate("ring", 140))
	until(t, f, "no fault", func(w watched) bool { return w.Faults == "" })
}

// A joint that cannot be made is shown among the findings beside the sheets that
// can be drawn.
func TestFollowShowsWhatCanBeDrawn(t *testing.T) {
	t.Parallel()
	folder, f := watchedJob(t)
	until(t, f, "sheets", func(w watched) bool { return len(w.Pages) > 3 })
	write(t, filepath.Join(folder, "job.yaml"), "job: Watched\nunits: mm\nparts: [cover.yaml, ring.yaml]\njoints:\n"+
		"  - name: lid\n    bolt: {through: cover.bolts, into: ring.bolts, bolt: M10 8.8, nut: yes}\n    face: back-on-front\n")
	stopped := until(t, f, "a stop", func(w watched) bool {
		return slices.ContainsFunc(w.Findings, func(f watchedFinding) bool { return f.Severity == "stop" })
	})
	if stopped.Faults != "" || len(stopped.Pages) < 4 {
		t.Errorf("%d pages, faults %q", len(stopped.Pages), stopped.Faults)
	}
}

// TestWatchAnswersOnlyItsPage: other hosts and other sites get nothing, nothing
// can be changed, and no answer allows another site.
func TestWatchAnswersOnlyItsPage(t *testing.T) {
	t.Parallel()
	_, f := watchedJob(t)
	now := until(t, f, "sheets", func(w watched) bool { return len(w.Pages) > 3 })
	h := f.handler("127.0.0.1:4321")
	for _, c := range []struct {
		method, target, host, site, origin string
		want                               int
	}{
		{"GET", "/", "127.0.0.1:4321", "none", "", 200}, {"GET", "/state", "localhost:4321", "same-origin", "http://localhost:4321", 200},
		{"GET", "/page.js", "127.0.0.1:4321", "", "", 200}, {"GET", "/page.css", "127.0.0.1:4321", "", "", 200}, {"GET", "/bold.ttf", "127.0.0.1:4321", "", "", 200},
		{"GET", fmt.Sprintf("/sheet/0.svg?v=%d", now.Version), "127.0.0.1:4321", "same-origin", "", 200},
		{"GET", fmt.Sprintf("/sheet/0.svg?v=%d", now.Version+1), "127.0.0.1:4321", "same-origin", "", 404},
		{"GET", fmt.Sprintf("/sheet/%d.svg?v=%d", len(now.Pages), now.Version), "127.0.0.1:4321", "same-origin", "", 404},
		{"GET", "/sheet/-1.svg?v=1", "127.0.0.1:4321", "", "", 404}, {"GET", "/job.yaml", "127.0.0.1:4321", "", "", 404}, {"GET", "/../job.yaml", "127.0.0.1:4321", "", "", 404},
		{"GET", "/state", "127.0.0.1:4322", "", "", 421}, {"GET", "/state", "example.org:4321", "", "", 421}, {"GET", "/state", "127.0.0.1", "", "", 421},
		{"GET", "/state", "127.0.0.1:4321", "cross-site", "", 403}, {"GET", "/state", "127.0.0.1:4321", "same-site", "", 403},
		{"GET", "/state", "127.0.0.1:4321", "", "http://example.org", 403}, {"GET", "/state", "127.0.0.1:4321", "", "http://127.0.0.1:9", 403},
		{"POST", "/state", "127.0.0.1:4321", "same-origin", "", 405}, {"DELETE", "/", "127.0.0.1:4321", "", "", 405},
	} {
		r := httptest.NewRequest(c.method, "http://x/", nil)
		path, query, _ := strings.Cut(c.target, "?")
		r.URL.Path, r.URL.RawQuery, r.Host = path, query, c.host
		for name, value := range map[string]string{"Sec-Fetch-Site": c.site, "Origin": c.origin} {
			if value != "" {
				r.Header.Set(name, value)
			}
		}
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		got := w.Result()
		if c.target == "/../job.yaml" && got.StatusCode != 200 {
			continue // cleaned away in one way or another
		}
		if got.StatusCode != c.want {
			t.Errorf("%s %s from %s (%s %s): %d, want %d", c.method, c.target, c.host, c.site, c.origin, got.StatusCode, c.want)
		}
		if got.Header.Get("Access-Control-Allow-Origin") != "" || !strings.HasPrefix(got.Header.Get("Content-Security-Policy"), "default-src 'none'") {
			t.Errorf("%s: headers %v", c.target, got.Header)
		}
	}
}

// TestWatchCommand: the address it prints is of this machine alone, and is
// served until the program is ended.
func TestWatchCommand(t *testing.T) {
	t.Parallel()
	folder, _ := watchedJob(t)
	cmd := program(t, "watch", filepath.Join(folder, "job.yaml"), "--json")
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	var answer struct {
		Address string `json:"address"`
	}
	if err := json.NewDecoder(out).Decode(&answer); err != nil || !strings.HasPrefix(answer.Address, "http://127.0.0.1:") {
		t.Fatalf("%q: %v", answer.Address, err)
	}
	got, err := http.Get(answer.Address)
	if err != nil {
		t.Fatal(err)
	}
	body, err := io.ReadAll(got.Body)
	if err != nil || !bytes.Contains(body, []byte("page.js")) {
		t.Errorf("%.100s: %v", body, err)
	}
	if err := cmd.Process.Signal(os.Interrupt); err != nil {
		t.Fatal(err)
	}
	// It closes its server, or ends by the signal itself: whichever is first.
	_ = cmd.Wait()
	status := cmd.ProcessState.Sys().(syscall.WaitStatus)
	if status.ExitStatus() != 0 && !(status.Signaled() && status.Signal() == syscall.SIGINT) {
		t.Errorf("ended with %v", cmd.ProcessState)
	}
}

// TestFollowDrawsWhatChanged: after an edit of a part of the pug mill the sheets are
// those of a packet drawn afresh, and of the sheets of parts and templates only
// those are drawn that show the part; with nothing changed, none are.
func TestFollowDrawsWhatChanged(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	if err := os.CopyFS(folder, os.DirFS(filepath.Dir(pugMill))); err != nil {
		t.Fatal(err)
	}
	f := newFollower(filepath.Join(folder, "job.yaml"))
	fresh := func(w *layout.Worked, rel *release) (pages []watchedPage) {
		now, _, err := (&follower{}).drawn(w, rel, nil)
		if err != nil {
			t.Fatal(err)
		}
		return now.Pages
	}
	none := &release{}
	for _, c := range []struct {
		file, old, new string
		least, most    int
	}{
		{"", "", "", 20, 100},
		{"", "", "", 0, 0},
		// Its own sheets, and those of the housing, whose offset hole names it.
		{"gland-ring.yaml", "title: ", "title: New ", 1, 12},
		{"gland-ring.yaml", "title: New ", "title: ", 1, 12},
		{"job.yaml", "revision: ", "revision: 1", 0, 0},
		{"job.yaml", "tolerance: m", "tolerance: f", 20, 100},
	} {
		if c.file != "" {
			path := filepath.Join(folder, c.file)
			src, err := os.ReadFile(path)
			if err != nil || !strings.Contains(string(src), c.old) {
				t.Fatalf("%s: no %q: %v", c.file, c.old, err)
			}
			write(t, path, strings.Replace(string(src), c.old, c.new, 1))
		}
		w, err := work(f.job)
		if err != nil {
			t.Fatal(err)
		}
		got, _, err := f.drawn(w, none, nil)
		if err != nil {
			t.Fatal(err)
		}
		if n := f.kept.Drawn; n < c.least || n > c.most {
			t.Errorf("%s %q: %d sheets drawn, want %d to %d", c.file, c.new, n, c.least, c.most)
		}
		sums := func(list []watchedPage) (out []string) {
			for _, p := range list {
				out = append(out, p.Sum)
			}
			return out
		}
		if want := fresh(w, none); !slices.Equal(sums(got.Pages), sums(want)) {
			t.Errorf("%s %q: the sheets are not those of a packet drawn afresh", c.file, c.new)
		}
	}
}

// TestFollowKeepsPages: while the review of an edit is being worked out, as after it,
// the pages that do not show the edited part are those of before, and of the same
// number.
func TestFollowKeepsPages(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	if err := os.CopyFS(folder, os.DirFS(filepath.Dir(pugMill))); err != nil {
		t.Fatal(err)
	}
	f := newFollower(filepath.Join(folder, "job.yaml"))
	f.make(nil)
	first, _, _ := f.state()
	ring := filepath.Join(folder, "gland-ring.yaml")
	write(t, ring, strings.Replace(fileText(t, ring), "title: Gland", "title: New gland", 1))
	f.slow.Lock()
	f.make([]string{"gland-ring.yaml"})
	pending, _, _ := f.state()
	f.slow.Unlock()
	done := until(t, f, "the review", func(w watched) bool { return w.Version > pending.Version })
	if !pending.Pending || done.Pending {
		t.Errorf("pending %t, then %t", pending.Pending, done.Pending)
	}
	for what, now := range map[string]watched{"at once": pending, "after the review": done} {
		var other []string
		for i, p := range now.Pages {
			if i >= len(first.Pages) || first.Pages[i].Sum != p.Sum {
				other = append(other, p.Part+" "+p.Sheet)
			}
		}
		if len(now.Pages) != len(first.Pages) || len(other) < 3 || len(other) > 30 {
			t.Errorf("%s: %d pages, before %d; %d are others: %q", what, len(now.Pages), len(first.Pages), len(other), other)
		}
	}
}

// TestWatchOpens: --open hands the address to what the system opens pages with; where
// there is none it says so, and serves all the same.
func TestWatchOpens(t *testing.T) {
	t.Parallel()
	if runtime.GOOS != "linux" {
		t.Skip("another program opens pages here")
	}
	folder, _ := watchedJob(t)
	for _, there := range []bool{true, false} {
		bin := t.TempDir()
		if there {
			script := "#!/bin/sh\nprintf '%s' \"$*\" > " + filepath.Join(bin, "part") + "\n/bin/mv " + filepath.Join(bin, "part") + " " + filepath.Join(bin, "opened") + "\n"
			if err := os.WriteFile(filepath.Join(bin, "xdg-open"), []byte(script), 0o700); err != nil {
				t.Fatal(err)
			}
		}
		cmd := program(t, "watch", folder, "--open")
		cmd.Env = append(os.Environ(), "PATH="+bin)
		var stderr bytes.Buffer
		cmd.Stderr = &stderr
		out, err := cmd.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		address, err := bufio.NewReader(out).ReadString('\n')
		if err != nil {
			t.Fatal(err)
		}
		address = strings.TrimSpace(address)
		var opened []byte
		for deadline := time.Now().Add(30 * time.Second); there && opened == nil && time.Now().Before(deadline); time.Sleep(10 * time.Millisecond) {
			opened, _ = os.ReadFile(filepath.Join(bin, "opened"))
		}
		if there && string(opened) != address {
			t.Errorf("opened %q, want %q", opened, address)
		}
		got, err := http.Get(address)
		if err != nil {
			t.Fatal(err)
		}
		if got.Body.Close(); got.StatusCode != http.StatusOK {
			t.Errorf("%s answers %s", address, got.Status)
		}
		if err := cmd.Process.Signal(os.Interrupt); err != nil {
			t.Fatal(err)
		}
		_ = cmd.Wait() // ended by the signal, or well
		if said := strings.Contains(stderr.String(), "the browser does not open: "); said == there {
			t.Errorf("with a program for it %t: %q", there, stderr.String())
		}
	}
}

// BenchmarkFollowEdit is the same where a line of one part was edited.
func BenchmarkFollowEdit(b *testing.B) {
	folder := b.TempDir()
	if err := os.CopyFS(folder, os.DirFS(filepath.Dir(pugMill))); err != nil {
		b.Fatal(err)
	}
	die := filepath.Join(folder, "gland-ring.yaml")
	src, err := os.ReadFile(die)
	if err != nil {
		b.Fatal(err)
	}
	f := newFollower(filepath.Join(folder, "job.yaml"))
	f.make(nil)
	n := 0
	for b.Loop() {
		b.StopTimer()
		n++
		write(b, die, strings.Replace(string(src), "title: ", fmt.Sprintf("title: %d ", n), 1))
		b.StartTimer()
		f.make([]string{"gland-ring.yaml"})
		b.StopTimer()
		until(b, f, "the review", func(watched) bool { return true })
		b.StartTimer()
	}
}

// BenchmarkFollow is the time from a saved file to new sheets of the pug mill.
func BenchmarkFollow(b *testing.B) {
	f := newFollower("../../testdata/pugmill/job.yaml")
	f.make(nil)
	b.ResetTimer()
	for b.Loop() {
		f.make(nil)
		b.StopTimer()
		until(b, f, "the review", func(watched) bool { return true })
		b.StartTimer()
	}
}
