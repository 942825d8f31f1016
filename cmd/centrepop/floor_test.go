//go:build unix

package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"runtime/metrics"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/go-pdf/fpdf"
	"github.com/tdewolff/canvas"

	"centrepop/render"
	"centrepop/render/pdf"
	"centrepop/templates"
	"centrepop/templates/draw"
)

// The floor is what a packet costs when nothing is computed: every call to a
// well-known PDF library that draws the same pages, recorded once with all its
// numbers ready, and played back into a file.

// recording is a packet as calls to that library.
type recording struct {
	title string
	pages []recordedPage
}

type recordedPage struct {
	widthMm, heightMm float64
	calls             []recordedCall
}

// recordedCall puts out operators, or sets a text if there is one.
type recordedCall struct {
	raw, text string
	bold      bool
}

func record(t testing.TB, doc *draw.Document) recording {
	t.Helper()
	out := recording{title: doc.Title}
	for i := range doc.Pages {
		r := recordedPage{widthMm: doc.Pages[i].WidthMm, heightMm: doc.Pages[i].HeightMm}
		if err := r.drawing(&doc.Pages[i].Drawing); err != nil {
			t.Fatal(err)
		}
		out.pages = append(out.pages, r)
	}
	return out
}

func (r *recordedPage) put(format string, args ...any) {
	r.calls = append(r.calls, recordedCall{raw: fmt.Sprintf(format, args...)})
}

func (r *recordedPage) drawing(d *draw.Drawing) error {
	return render.Each(d, r.shape, r.line, func(g draw.Group) error {
		r.put("q")
		if g.Clip != nil {
			r.put("%sW n", operators(g.Clip))
		}
		r.put("%s cm", matrix(g.Transform))
		err := r.drawing(g.Drawing)
		r.put("Q")
		return err
	}, nil)
}

func (r *recordedPage) shape(s draw.Shape) error {
	if s.Path == nil || s.Path.Empty() || s.Fill == draw.None && s.Stroke == draw.None {
		return nil
	}
	paint := "B"
	if s.Stroke == draw.None {
		paint = "f"
	} else if s.Fill == draw.None {
		paint = "S"
	}
	var dashes []string
	for _, d := range s.DashMm {
		dashes = append(dashes, points(d))
	}
	r.put("q %s g %s G %s w [%s] 0 d %s%s Q", render.Decimal(render.Lightness(s.Fill), 4), render.Decimal(render.Lightness(s.Stroke), 4),
		points(s.WidthMm), strings.Join(dashes, " "), operators(s.Path), paint)
	return nil
}

func (r *recordedPage) line(t draw.Text) error {
	const sizePt = 10
	k := t.SizeMm * 72 / 25.4 / sizePt
	r.put("q %s g %s cm", render.Decimal(render.Lightness(t.Tone), 4), matrix(render.TextMatrix(t).Scale(k, k)))
	r.calls = append(r.calls, recordedCall{text: t.Content, bold: t.Bold})
	r.put("Q")
	return nil
}

func points(mm float64) string { return render.Decimal(mm*72/25.4, 4) }

func matrix(m canvas.Matrix) string {
	return fmt.Sprintf("%s %s %s %s %s %s", render.Decimal(m[0][0], 9), render.Decimal(m[1][0], 9),
		render.Decimal(m[0][1], 9), render.Decimal(m[1][1], 9), points(m[0][2]), points(m[1][2]))
}

// operators are those of a path, with arcs as cubic curves.
func operators(p *canvas.Path) string {
	var b strings.Builder
	at := func(p canvas.Point) string { return points(p.X) + " " + points(p.Y) + " " }
	for s := p.ReplaceArcs().Scanner(); s.Scan(); {
		switch s.Cmd() {
		case canvas.MoveToCmd:
			b.WriteString(at(s.End()) + "m ")
		case canvas.LineToCmd:
			b.WriteString(at(s.End()) + "l ")
		case canvas.QuadToCmd:
			b.WriteString(at(s.Start()) + at(s.CP1()) + at(s.End()) + "c ")
		case canvas.CubeToCmd:
			b.WriteString(at(s.CP1()) + at(s.CP2()) + at(s.End()) + "c ")
		case canvas.CloseCmd:
			b.WriteString("h ")
		}
	}
	return b.String()
}

// replay plays the calls back.
func (r recording) replay(w io.Writer, regular, bold []byte) error {
	f := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: fpdf.SizeType{Wd: 210, Ht: 297}})
	f.SetCompression(true)
	f.SetCatalogSort(true)
	f.SetTitle(r.title, true)
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	f.AddUTF8FontFromBytes("face", "", bytes.Clone(regular))
	f.AddUTF8FontFromBytes("face", "B", bytes.Clone(bold))
	for _, page := range r.pages {
		f.AddPageFormat("P", fpdf.SizeType{Wd: page.widthMm, Ht: page.heightMm})
		for _, c := range page.calls {
			if c.text == "" {
				f.RawWriteStr(c.raw)
				continue
			}
			style := ""
			if c.bold {
				style = "B"
			}
			f.SetFont("face", style, 10)
			f.Text(0, page.heightMm, c.text)
		}
	}
	return f.Output(w)
}

// cost runs f and returns the seconds that passed and those that the process
// computed.
func cost(t testing.TB, f func() error) (wall, cpu float64) {
	t.Helper()
	usage := func() (u syscall.Rusage) {
		if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
			t.Fatal(err)
		}
		return u
	}
	before, start := usage(), time.Now()
	if err := f(); err != nil {
		t.Fatal(err)
	}
	wall = time.Since(start).Seconds()
	after := usage()
	spent := func(a, b syscall.Timeval) float64 {
		return float64(b.Sec-a.Sec) + float64(b.Usec-a.Usec)/1e6
	}
	return wall, spent(before.Utime, after.Utime) + spent(before.Stime, after.Stime)
}

// BenchmarkFloor runs the floor, the packet alone (laying out the pages of a job
// that is worked out, reviewed and stood in space, and writing them) and the whole
// program in turn. It reports the medians of the ratios of the two to the floor,
// the pages, and the memory held by the whole program for each. The packet aims at
// 1.4 at most.
func BenchmarkFloor(b *testing.B) {
	for _, job := range []string{"pugmill", "gatejack"} {
		b.Run(job, func(b *testing.B) {
			path := filepath.Join(b.TempDir(), "job.yaml") // nobody edits this one meanwhile
			if err := os.CopyFS(filepath.Dir(path), os.DirFS(filepath.Join("../../testdata", job))); err != nil {
				b.Fatal(err)
			}
			w, err := work(path)
			if err != nil {
				b.Fatal(err)
			}
			rel := reviewed(w)
			options := templates.Options{Findings: rel.findings, Held: rel.held()}
			doc, err := templates.Packet(w.Plan, options)
			if err != nil {
				b.Fatal(err)
			}
			calls := record(b, doc)
			pages := float64(len(doc.Pages))
			doc = nil
			regular, bold := []byte(fileText(b, "../../templates/typeface/DejaVuSansCondensed.ttf")), []byte(fileText(b, "../../templates/typeface/DejaVuSansCondensed-Bold.ttf"))
			floor := func() error { return calls.replay(io.Discard, regular, bold) }
			packet := func() error {
				press := &pdf.Press{}
				pressed := options
				pressed.Press = press.Take
				doc, err := templates.Packet(w.Plan, pressed)
				if err != nil {
					return err
				}
				return press.Write(io.Discard, doc)
			}
			out := filepath.Join(b.TempDir(), "packet.pdf")
			program := func() error {
				if status := run([]string{"sheets", path, "-o", out}, io.Discard, io.Discard); status != statusDone {
					return fmt.Errorf("exit status %d", status)
				}
				return nil
			}
			ratios := map[string][]float64{}
			for b.Loop() {
				wall, cpu := cost(b, floor)
				ratios["floor-cpu-s"] = append(ratios["floor-cpu-s"], cpu)
				for name, f := range map[string]func() error{"packet": packet, "program": program} {
					itsWall, itsCPU := cost(b, f)
					ratios[name+"-wall/floor"] = append(ratios[name+"-wall/floor"], itsWall/wall)
					ratios[name+"-cpu/floor"] = append(ratios[name+"-cpu/floor"], itsCPU/cpu)
				}
			}
			for name, all := range ratios {
				slices.Sort(all)
				b.ReportMetric(all[len(all)/2], name)
			}
			b.ReportMetric(pages, "pages")
			b.ReportMetric(heldMiB(b, program)/pages, "MiB/page")
		})
	}
}

// heldMiB is the most that f holds in the heap at once, as the collections while
// it runs find it.
func heldMiB(b *testing.B, f func() error) float64 {
	b.Helper()
	live := func() uint64 {
		sample := []metrics.Sample{{Name: "/gc/heap/live:bytes"}}
		metrics.Read(sample)
		return sample[0].Value.Uint64()
	}
	runtime.GC()
	before, most := live(), uint64(0)
	done, seen := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(seen)
		for {
			most = max(most, live())
			select {
			case <-done:
				return
			case <-time.After(time.Millisecond):
			}
		}
	}()
	err := f()
	close(done)
	if <-seen; err != nil {
		b.Fatal(err)
	}
	return float64(most-before) / (1 << 20)
}
