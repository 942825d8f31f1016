package main

import (
	"context"
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/chromedp/cdproto/accessibility"
	"github.com/chromedp/cdproto/cdp"
	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// browser finds a Chromium and starts it. Without one the test is skipped, unless
// CENTREPOP_BROWSER says that one must be there.
func browser(t *testing.T) context.Context {
	t.Helper()
	path := ""
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if found, err := exec.LookPath(name); err == nil && path == "" {
			path = found
		}
	}
	if path == "" {
		if os.Getenv("CENTREPOP_BROWSER") != "" {
			t.Fatal("CENTREPOP_BROWSER is set and there is no chromium")
		}
		t.Skip("no chromium")
	}
	options := []chromedp.ExecAllocatorOption{chromedp.ExecPath(path), chromedp.UserDataDir(t.TempDir()), chromedp.WSURLReadTimeout(time.Minute)}
	for _, flag := range []string{"headless", "no-sandbox", "disable-gpu", "disable-quic", "no-first-run", "disable-background-networking", "disable-component-update", "disable-sync"} {
		options = append(options, chromedp.Flag(flag, true))
	}
	ctx, stop := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(stop)
	ctx, stop = context.WithTimeout(ctx, 4*time.Minute)
	t.Cleanup(stop)
	ctx, stop = chromedp.NewContext(ctx)
	t.Cleanup(stop)
	return ctx
}

// tab is a page in a browser.
type tab struct {
	testing.TB
	ctx context.Context
}

func (b tab) do(what string, action chromedp.Action[chromedp.Void]) {
	b.Helper()
	if _, err := chromedp.Run(b.ctx, action); err != nil {
		b.Fatalf("%s: %v", what, err)
	}
}

func (b tab) get(expression string) string {
	b.Helper()
	text, err := chromedp.Run(b.ctx, chromedp.Evaluate[string](expression))
	if err != nil {
		b.Fatalf("%s: %v", expression, err)
	}
	return text
}

func (b tab) waitFor(what, condition string) {
	b.Helper()
	if _, err := chromedp.Run(b.ctx, chromedp.Poll[bool](condition, chromedp.WithPollingInterval(50*time.Millisecond))); err != nil {
		b.Fatalf("%s: %v\nfaults: %s\nstatus: %s", what, err, b.get(`document.querySelector("#faults pre").textContent`), b.get(`document.querySelector("#status").textContent`))
	}
}

// open opens the page and waits for a sheet.
func (b tab) open(url string) tab {
	b.Helper()
	b.do("open", chromedp.Navigate(url))
	b.waitFor("sheet", `document.querySelector("#sheet svg")?.checkVisibility() === true`)
	return b
}

// settled waits until the sheet of a number is drawn and no later one is on its way:
// what is found on it then stays there to be clicked.
func (b tab) settled(n int) {
	b.Helper()
	b.waitFor("the sheet is settled", fmt.Sprintf(`document.querySelector('#sheet[aria-label^="sheet %d of "][aria-busy=false] svg') !== null && document.querySelector("#status").textContent.endsWith("up to date")`, n))
}

// has is the condition that a text stands on the sheet in view.
func has(s string) string {
	return fmt.Sprintf(`document.querySelector("#sheet").textContent.includes(%q)`, s)
}

// served serves a follower's page once it has sheets; while asleep is set it
// answers nobody and drops who is connected.
func served(t *testing.T, f *follower) (url string, asleep func(bool)) {
	t.Helper()
	var out atomic.Bool
	server := httptest.NewUnstartedServer(nil)
	h := f.handler(server.Listener.Addr().String())
	server.Config.Handler = http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if out.Load() {
			panic(http.ErrAbortHandler)
		}
		h.ServeHTTP(w, r)
	})
	server.Start()
	t.Cleanup(func() {
		server.CloseClientConnections()
		server.Close()
	})
	until(t, f, "sheets", func(w watched) bool { return len(w.Pages) > 3 })
	return server.URL, func(now bool) {
		if out.Store(now); now {
			server.CloseClientConnections()
		}
	}
}

// TestWatchInBrowser: a real browser sees an edit, a fault and its cure, and
// can be used from the keyboard.
func TestWatchInBrowser(t *testing.T) {
	ctx := browser(t)
	folder, f := watchedJob(t)
	url, _ := served(t, f)
	b := tab{t, ctx}.open(url)
	if title := b.get(`document.title`); title != "Watched" {
		t.Errorf("the title is %q", title)
	}
	// The number on the sheet changes with the file.
	write(t, filepath.Join(folder, "ring.yaml"), watchedPlate("ring", 133))
	b.waitFor("the edited part in view", has("133"))
	if label := b.get(`document.querySelector("#sheet").getAttribute("aria-label")`); !strings.Contains(label, ": ring, ") {
		t.Errorf("in view is %q", label)
	}
	// A fault is shown as on the terminal, over the last good sheets.
	write(t, filepath.Join(folder, "ring.yaml"), strings.Replace(watchedPlate("ring", 133), "pcd: 133", "pcd: -133", 1))
	b.waitFor("the fault", `document.querySelector("#faults pre").textContent.includes('pcd is "-133"; it must be more than 0')`)
	b.do("fault seen", chromedp.WaitVisible("#faults"))
	b.waitFor("sheets stay", has("133")+` && document.body.classList.contains("stale")`)
	write(t, filepath.Join(folder, "ring.yaml"), watchedPlate("ring", 134))
	b.waitFor("the cure", has("134")+` && document.querySelector("#faults").hidden`)
	// By keyboard: to the first sheet, on to the next.
	b.do("keys", chromedp.KeyEvent(kb.Home))
	b.waitFor("first sheet", `document.querySelector("#sheet").getAttribute("aria-label").startsWith("sheet 1 of ")`)
	b.do("keys", chromedp.KeyEvent(kb.PageDown))
	b.waitFor("second sheet", `document.querySelector("nav a[aria-current]").dataset.page === "1"`)
	// A part's row on the cover leads to its sheet.
	b.do("keys", chromedp.KeyEvent(kb.Home))
	b.settled(1)
	b.do("row of the part", chromedp.Click(`#sheet a[*|href="#ring"] path`))
	b.waitFor("the part's sheet", `document.querySelector("#sheet").getAttribute("aria-label").endsWith(": ring, Operations and record")`)
	b.do("zoom", chromedp.KeyEvent("+"))
	b.waitFor("larger", `document.querySelector("#sheet").style.width === "125%"`)
	// Nothing but this page was asked for.
	if hosts := b.get(`performance.getEntriesByType("resource").map(e => new URL(e.name).host).filter(h => h !== location.host && h !== "").join()`); hosts != "" {
		t.Errorf("the page asked %s", hosts)
	}
}

// TestWatchSurvives: two browsers follow the same files, each with its own page in
// view, while these are cut short, renamed over and deleted, and after the
// connection was lost and came back.
func TestWatchSurvives(t *testing.T) {
	ctx := browser(t)
	folder, f := watchedJob(t)
	url, asleep := served(t, f)
	one := tab{t, ctx}.open(url)
	second, stop := chromedp.NewContext(ctx, chromedp.WithNewBrowserContext())
	defer stop()
	two := tab{t, second}.open(url + "#2")
	both := func(what, condition string) {
		t.Helper()
		one.waitFor(what, condition)
		two.waitFor(what, condition)
	}
	in := func(n int) string {
		return fmt.Sprintf(`document.querySelector("#sheet").getAttribute("aria-label").startsWith("sheet %d of ")`, n)
	}
	one.waitFor("the first sheet", in(1))
	two.waitFor("the second sheet", in(2))
	ring := filepath.Join(folder, "ring.yaml")
	write(t, ring, watchedPlate("ring", 133))
	both("the edited sheet", has("133"))
	one.do("keys", chromedp.KeyEvent(kb.Home))
	one.waitFor("the first sheet", in(1))
	two.waitFor("its own sheet", has("133"))

	write(t, ring, watchedPlate("ring", 131)[:90])
	both("half a file", `!document.querySelector("#faults").hidden`)
	two.waitFor("the sheet as it was", has("133"))
	write(t, ring, watchedPlate("ring", 131))
	both("all of it", `document.querySelector("#faults").hidden && `+has("131"))

	write(t, ring+".new", watchedPlate("ring", 129))
	if err := os.Rename(ring+".new", ring); err != nil {
		t.Fatal(err)
	}
	both("renamed over", has("129"))

	if err := os.Remove(ring); err != nil {
		t.Fatal(err)
	}
	both("deleted", `document.querySelector("#faults pre").textContent.includes("there is no file") && document.body.classList.contains("stale")`)
	write(t, ring, watchedPlate("ring", 127))
	both("written again", `document.querySelector("#faults").hidden && `+has("127"))

	asleep(true)
	both("the lid is closed", `document.querySelector("#status").textContent.startsWith("no connection")`)
	write(t, ring, watchedPlate("ring", 125))
	until(t, f, "the edit", func(w watched) bool { return w.Faults == "" })
	asleep(false)
	both("open again", has("125")+` && document.querySelector("#status").textContent.includes("up to date")`)
}

// TestWatchIsSpoken: what a screen reader is told. Everything that can be worked has
// a name, the regions are named, the sheet in view and what it leads to say so.
func TestWatchIsSpoken(t *testing.T) {
	ctx := browser(t)
	folder, f := watchedJob(t)
	url, _ := served(t, f)
	b := tab{t, ctx}.open(url)
	b.waitFor("the list", `document.querySelectorAll("#sheets a").length > 3`)
	all := b.spoken()
	for _, want := range []string{
		"heading Watched", "toolbar Sheet", "navigation Parts and sheets", "complementary Review", "heading Review: ", "status ", "main ",
		"button Back", "button Next", "button Smaller", "button Larger", "button Fit", "button Print this sheet",
		"group sheet 1 of ", "link to the sheet: ring, Operations and record", "link Operations and record (",
	} {
		if !slices.ContainsFunc(all, func(s string) bool { return strings.HasPrefix(s, want) }) {
			t.Errorf("nothing is spoken as %q", want)
		}
	}
	for _, s := range all {
		if role, name, _ := strings.Cut(s, " "); name == "" && (role == "button" || role == "link") {
			t.Errorf("a %s has no name", role)
		}
	}
	// By Tab alone: the first stop is the first button, and each can be worked.
	for _, want := range []string{"back", "next", "smaller", "larger", "fit", "print"} {
		b.do("tab", chromedp.KeyEvent(kb.Tab))
		if id := b.get(`document.activeElement.id`); id != want {
			t.Errorf("Tab leads to %q, not to %q", id, want)
		}
	}
	b.do("tab", chromedp.KeyEvent(kb.Tab))
	b.do("tab", chromedp.KeyEvent(kb.Tab))
	b.do("enter", chromedp.KeyEvent(kb.Enter))
	b.waitFor("the second of the list", `document.querySelector("#sheets a[aria-current=page]").dataset.page === "1"`)
	// An edit changes the list, and leaves the focus where it was.
	write(t, filepath.Join(folder, "cover.yaml"), watchedPlate("cover", 141))
	b.waitFor("the edit", has("141"))
	if at := b.get(`document.activeElement.dataset.page ?? ""`); at != "1" {
		t.Errorf("after the edit the focus is at %q", at)
	}
	// A fault is announced.
	write(t, filepath.Join(folder, "cover.yaml"), watchedPlate("cover", -141))
	b.waitFor("the fault", `!document.querySelector("#faults").hidden`)
	if !slices.ContainsFunc(b.spoken(), func(s string) bool { return strings.HasPrefix(s, "alert") }) {
		t.Error("the fault is no alert")
	}
	// One sheet is printed, at its size: A4 in points.
	pdf, err := chromedp.Run(ctx, chromedp.PrintToPDF(func(p *cdppage.PrintToPDFParams) { yes := true; p.PreferCSSPageSize = &yes }))
	if err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(string(pdf), "/Type /Page\n"); n != 1 || !strings.Contains(string(pdf), "/MediaBox [0 0 594.95") {
		t.Errorf("printed are %d pages: %.400s", n, pdf)
	}
}

// spoken are the roles and names of the page as the browser gives them to a screen
// reader.
func (b tab) spoken() (out []string) {
	b.Helper()
	tree, err := chromedp.Run(b.ctx, func(ctx context.Context, t *chromedp.Target) (accessibility.GetFullAXTreeResult, error) {
		return cdp.Call(ctx, t, accessibility.GetFullAXTree, accessibility.GetFullAXTreeParams{})
	})
	if err != nil {
		b.Fatal(err)
	}
	for _, n := range tree.Nodes {
		var role, name string
		if n.Ignored || n.Role == nil || json.Unmarshal(n.Role.Value, &role) != nil {
			continue
		}
		if n.Name != nil && json.Unmarshal(n.Name.Value, &name) != nil {
			b.Errorf("name %s", n.Name.Value)
		}
		out = append(out, role+" "+name)
	}
	return out
}
