package read

import (
	"cmp"
	"errors"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"centrepop/parts"
	"centrepop/parts/meant"
	"centrepop/parts/seq"
)

// loader reads a job. The embedded fields are those of the job file.
type loader struct {
	*fields
	job     *parts.Job
	root    *os.Root
	sources []*source // job file first, then part files as listed
	broken  bool      // some part could not be read at all
	whole   bool      // all joints could be read
	doubt   map[*parts.Part]*source
}

// head reads what the job file says of itself and of the shop.
func (l *loader) head() {
	l.units = parts.Units(l.word("units"))
	l.job = &parts.Job{
		File: l.file, Units: cmp.Or(l.units, parts.Millimetres), Lines: map[string][]string{l.file: l.lines},
		Name: l.text("job"), Revision: l.text("revision"), Date: l.date(), DrawnBy: l.text("drawn"), CheckedBy: l.text("checked"),
		Paper: l.paper(), Tolerance: l.wordText("tolerance"), Tools: l.yes("tools"), FrontUp: l.word("up") == string(parts.Front),
		Notes: l.texts("notes"), Shop: l.sub("shop").shop(),
	}
}

// date reads YYYY-MM-DD.
func (f *fields) date() parts.Text {
	t := f.text("date")
	if t.Value == "" {
		return t
	}
	if d, err := time.Parse(time.DateOnly, t.Value); err != nil || d.Year() < 1900 {
		f.faultf(t.Pos, f.g.key("date").Example, "the date %s does not exist", parts.Quote(t.Value))
		return parts.Text{}
	}
	return t
}

// paper reads a sheet name or size. Without one it is A4 for a job in
// millimetres, Letter for one in inches.
func (f *fields) paper() parts.Paper {
	n := f.val("paper")
	if n == nil {
		p, _ := parts.PaperOf(map[bool]string{false: "A4", true: "Letter"}[f.units == parts.Inches], f.units)
		return p
	}
	text, ok := f.scalar(n, "a paper size", parts.PaperForms)
	if !ok {
		return parts.Paper{}
	}
	p, wrong := parts.PaperOf(text, f.units)
	if wrong != "" {
		f.fault(n.pos, wrong, parts.PaperForms)
		return parts.Paper{}
	}
	return p
}

func (f *fields) shop() parts.Shop {
	if f == nil {
		f = &fields{&reader{}, &node{}, shopGroup} // all defaults
	}
	s := parts.Shop{PressN: f.force("press"), PaperThick: f.length("paper")}
	if lathe := f.sub("lathe"); lathe != nil {
		s.SwingMm, s.BetweenMm, s.LatheRPM = lathe.length("swing"), lathe.length("between"), lathe.numbers("speeds")
		s.CarbideTool = lathe.word("tool") == "carbide"
	}
	if drill := f.sub("drill"); drill != nil {
		s.DrillRPM, s.Drills = drill.numbers("speeds"), drill.length("largest")
		for _, one := range drill.each("bushes") {
			b := parts.Bush{Bore: one.length("bore"), Outside: one.length("outside")}
			one.not(b.Outside, "<=", b.Bore, "an outside over the bore", "a bush of %s outside has no wall round %s")
			if b.Hole = one.fit(one.val("hole"), b.Outside, hole); b.Hole.LightPress.Set() {
				one.fault(b.Hole.Pos, "a bush is not pressed on a measured outside", one.g.example(one.g.key("hole")))
			}
			s.Bushes = append(s.Bushes, b)
		}
	}
	if s.PaperThick.Mm > 1 {
		f.faultf(s.PaperThick.Pos, "the thickness of one sheet, such as 0.1 mm", "paper of %s is no printing paper", s.PaperThick.Text)
	}
	return s
}

func (f *fields) force(name string) parts.Number {
	n, right := f.val(name), f.g.key(name).Example
	text, ok := f.scalar(n, "a force", right)
	if !ok {
		return parts.Number{}
	}
	newton, wrong := parts.NewtonOf(text)
	if wrong != "" {
		f.faultf(n.pos, right, "%s is %s: %s", name, parts.Quote(text), wrong)
		return parts.Number{}
	}
	return parts.Number{Value: newton, Pos: n.pos}
}

func (f *fields) numbers(name string) []parts.Number {
	k := f.g.key(name)
	return seq.Keep(seq.Map(f.entries(name), func(n *node) parts.Number { return f.reader.number(n, k.Low, k.High) }), func(v parts.Number) bool { return v.Pos.Line > 0 })
}

func (l *loader) parts() {
	job := l.job
	items, ok := l.items(l.val("parts"), 1, maxParts, "a list of part files")
	if !ok {
		l.broken = true
		return
	}
	type seenFile struct {
		info fs.FileInfo
		line int
	}
	var seen []seenFile
	for _, item := range items {
		name, src, info := l.partFile(item)
		if info == nil {
			l.broken = true
			continue
		}
		if i := slices.IndexFunc(seen, func(f seenFile) bool { return os.SameFile(f.info, info) }); i >= 0 {
			l.faultf(item.pos, "each part file once; quantity says how many are made", "the file %s is listed already, in line %d", parts.Quote(name), seen[i].line)
			continue
		}
		seen = append(seen, seenFile{info, item.pos.Line})
		s, p := parsePart(name, src, l.units)
		l.sources = append(l.sources, s)
		job.Lines[name] = s.lines
		if p == nil || p.Name.Value == "" {
			l.broken = true
		}
		if p == nil {
			continue
		}
		l.doubt[p] = s
		if i := slices.IndexFunc(job.Parts, func(q *parts.Part) bool { return q.Name.Value != "" && q.Name.Value == p.Name.Value }); i >= 0 {
			s.faultf(p.Name.Pos, "a name of its own for each part", "the part %s is already in %s, line %d", p.Name.Value, job.Parts[i].File, job.Parts[i].Name.Pos.Line)
			continue
		}
		job.Parts = append(job.Parts, p)
	}
}

// partFile reads one listed file. It returns no info, with the fault recorded,
// if the file cannot be read or lies outside the job's folder.
func (l *loader) partFile(n *node) (string, []byte, fs.FileInfo) {
	t := l.reader.text(n, maxText)
	if t.Value == "" {
		return "", nil, nil
	}
	const right = "a file in the job's folder or below, such as cover.yaml"
	if strings.ContainsAny(t.Value, `\:`) || path.IsAbs(t.Value) || !filepath.IsLocal(t.Value) {
		l.faultf(n.pos, right, "the path %s leads out of the job's folder, or is no plain path", parts.Quote(t.Value))
		return "", nil, nil
	}
	name := path.Clean(t.Value)
	if name == l.file {
		l.fault(n.pos, "the job file lists itself as a part", right)
		return "", nil, nil
	}
	src, info, err := readRegular(l.root.Stat, l.root.Open, name, maxFileBytes)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		l.faultf(n.pos, right, "there is no file %s", parts.Quote(name))
	case errors.Is(err, errNotRegular):
		l.faultf(n.pos, right, "%s is not a file", parts.Quote(name))
	case errors.Is(err, fs.ErrPermission):
		l.faultf(n.pos, "a file that may be read", "the file %s may not be read", parts.Quote(name))
	case err != nil && strings.Contains(err.Error(), "escapes"):
		l.faultf(n.pos, right, "the path %s leads out of the job's folder by a link", parts.Quote(name))
	case err != nil:
		l.faultf(n.pos, right, "the file %s cannot be read", parts.Quote(name))
	default:
		return name, src, info
	}
	return "", nil, nil
}

var errNotRegular = errors.New("not a regular file")

// readRegular reads at most one byte more than a file may have, so that the
// caller can refuse it. Folders, devices and pipes are not opened.
func readRegular(stat func(string) (fs.FileInfo, error), open func(string) (*os.File, error), name string, most int64) ([]byte, fs.FileInfo, error) {
	info, err := stat(name)
	if err != nil {
		return nil, nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, nil, errNotRegular
	}
	f, err := open(name)
	if err != nil {
		return nil, nil, err
	}
	defer f.Close()
	src, err := io.ReadAll(io.LimitReader(f, most+1))
	return src, info, err
}

// refs checks that references between parts lead to a feature. References to
// parts that could not be read, or that have faults, are left alone.
func (l *loader) refs() {
	for _, p := range l.job.Parts {
		for _, size := range bores(p) {
			if size.Fit.LightPress.Set() {
				l.ref(p, size)
			}
		}
	}
}

// bores lists the sizes of a part that can refer to another.
func bores(p *parts.Part) []parts.Size {
	var out []parts.Size
	if p.Bore != nil {
		out = append(out, p.Bore.Size)
	}
	if p.Profile != nil {
		out = append(out, seq.Map(p.Profile.Inside, func(s parts.Step) parts.Size { return s.Size })...)
	}
	out = append(out, seq.Map(p.Holes, func(g parts.HoleGroup) parts.Size { return g.Size.Size })...)
	return append(out, seq.Map(p.Radials, func(f parts.Radial) parts.Size { return f.Size.Size })...)
}

// maxMateMm is how far the nominal sizes of a bore and of the part it goes
// over may differ. Common practice, no source: more is a wrong reference.
const maxMateMm = 1.0

func (l *loader) ref(p *parts.Part, size parts.Size) {
	ref, s := size.Fit.LightPress, l.doubt[p]
	target := l.job.Part(ref.Part)
	if target == nil {
		if !l.broken {
			s.fault(ref.Pos, l.noPart(ref.Part), "the parts are "+all(l.partNames()))
		}
		return
	}
	if target == p {
		s.fault(ref.Pos, "the bore refers to its own part", "the part that the bore goes over")
		return
	}
	if len(l.doubt[target].errs) > 0 {
		return
	}
	outside, inside := target.FeatureNames(parts.OutlineFeature, parts.OutsideFeature), target.FeatureNames(parts.BoreFeature, parts.InsideFeature)
	if !slices.Contains(outside, ref.Feature) {
		what := "the part " + ref.Part + " has no feature " + ref.Feature
		if slices.Contains(inside, ref.Feature) {
			what = ref.Part + "." + ref.Feature + " is a bore, and a bore cannot go over it"
		} else {
			what += meant.Perhaps(ref.Feature, outside)
		}
		s.fault(ref.Pos, what, "features with an outside: "+all(outside))
		return
	}
	mate, round := outsideMm(target, ref.Feature)
	switch {
	case !round:
		s.faultf(ref.Pos, "a round outside", "%s.%s is not round, or is threaded", ref.Part, ref.Feature)
	case l.units != "" && size.Nominal.Set() && (size.Nominal.Mm > mate+maxMateMm || size.Nominal.Mm < mate-maxMateMm):
		s.faultf(ref.Pos, "nominal sizes within 1 mm of each other", "the bore is %s and %s.%s is %s", size.Nominal.Text, ref.Part, ref.Feature, l.said(mate))
	}
}

// outsideMm returns the diameter of a round outside feature.
func outsideMm(p *parts.Part, feature string) (mm float64, round bool) {
	if p.Outline != nil {
		return p.Outline.Width.Mm, p.Outline.Shape == parts.CircleOutline
	}
	s := seq.First(p.Profile.Outside, func(s parts.Step) bool { return s.Name.Value == feature })
	return s.Size.Nominal.Mm, s.Size.Nominal.Set()
}
