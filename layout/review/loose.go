package review

import (
	"math"
	"regexp"
	"strings"

	"centrepop/layout/threads"
	"centrepop/parts"
)

// loose compares parts that no joint holds with the part that their words name: what goes
// over it, and a key that reaches from the tube it stands in into a keyway.
func loose(r *reviewer) {
	for i := range r.job.Loose {
		e := &r.job.Loose[i]
		v := r.viewOf(e.Part.Value)
		if v == nil {
			continue
		}
		words := wordsOf(e.How.Value)
		for _, p := range r.job.Parts {
			if o := r.viewOf(p.Name.Value); o != nil && o != v && seatNames(words, p) {
				r.goesOver(v, o, e)
				r.keyReach(v, o)
				r.putOn(v, o, e)
			}
			if m := liesOn.FindStringSubmatch(words); m != nil && p != v.p && r.named(m[1], p) {
				r.falls(v, r.viewOf(p.Name.Value), e)
			}
		}
	}
}

// liesOn are words that say what something lies on.
var liesOn = regexp.MustCompile(`(?i)\b(?:lying|lies|resting|rests|sitting|sits) on (?:the |its )?(.+)`)

// named tells whether words begin with a part, or with the last word of its title where
// no other part of the job ends so.
func (r *reviewer) named(words string, p *parts.Part) bool {
	last := func(p *parts.Part) string {
		title := strings.Fields(strings.ToLower(p.Title.Value + " " + p.Name.Value))
		return title[len(title)-2]
	}
	words = strings.ToLower(words) + " "
	if strings.HasPrefix(words, strings.ToLower(p.Title.Value)+" ") || strings.HasPrefix(words, strings.ToLower(p.Name.Value)+" ") {
		return true
	}
	alike := 0
	for _, o := range r.job.Parts {
		if last(o) == last(p) {
			alike++
		}
	}
	return alike == 1 && strings.HasPrefix(words, last(p)+" ")
}

// falls looks at what is to lie on something round: its opening is smaller than that.
func (r *reviewer) falls(v, on *view, e *parts.Loose) {
	open := v.openMm()
	if len(on.outside) == 0 || math.IsInf(open, 1) {
		return
	}
	wide := 0.0
	for _, c := range on.outside {
		wide = max(wide, c.radiusMm)
	}
	if open < wide-slackMm {
		return
	}
	r.add(Finding{
		Severity: Check, Part: v.p.Name.Value, Pos: e.How.Pos, What: v.p.Title.Value + " does not lie on " + on.p.Title.Value + ": it falls over it", Numbers: r.mm(2*open) + " over " + r.mm(2*wide), OverMm: over(2 * open),
		Rule: "what lies on a part has a smaller opening than it", Source: "by geometry", Fix: "a smaller opening",
	})
}

// openMm is the radius of the narrowest opening along the axis, infinite where there is none.
func (v *view) openMm() float64 {
	open := math.Inf(1)
	for _, c := range v.inside {
		open = min(open, c.radiusMm)
	}
	if f := v.p.Frustum; f != nil {
		open = f.Small.Mm / 2
	}
	return open
}

// wordsOf are the words of a sentence without its points.
func wordsOf(t string) string {
	return strings.NewReplacer(",", " ", ";", " ", ".", " ").Replace(t)
}

// screwsPass looks at the screws of a loose part that come through holes of their name in
// the wall of what it stands in.
func (r *reviewer) screwsPass(v, wall *view, g *parts.HoleGroup) {
	t, err := threads.Parse(g.Size.Thread)
	if g.Size.Thread == "" || err != nil {
		return
	}
	for _, row := range wall.q.Radials {
		if strings.HasSuffix(row.Name, g.Name.Value) && row.DiameterMm > 0 && row.DiameterMm < t.MajorMm-slackMm {
			r.add(Finding{
				Severity: Check, Part: v.p.Name.Value, Feature: g.Name.Value, Pos: g.Pos, What: "the screws of " + v.p.Title.Value + " do not go through " + row.Name + " of " + wall.p.Title.Value, LeftMm: left(row.DiameterMm),
				Numbers: t.Designation + " through " + r.mm(row.DiameterMm), Rule: "the hole lets the screw through", Source: "ISO 273, ASME B18.2.8", Fix: "holes for that screw",
			})
		}
	}
}

// goesOver looks at what is put over a shaft: one of its ends at least goes through.
func (r *reviewer) goesOver(v, shaft *view, e *parts.Loose) {
	open := v.openMm()
	for i := range v.p.Holes {
		r.screwsPass(v, shaft, &v.p.Holes[i])
	}
	n := len(shaft.outside)
	if n == 0 || math.IsInf(open, 1) || !shaft.turned() || len(shaft.inside) > 0 && shaft.p.Kind == parts.Tube {
		return
	}
	past := func(end, next cylinder) float64 {
		if end.toMm-end.fromMm < 2*end.radiusMm {
			return max(end.radiusMm, next.radiusMm) // a short step at the very end is its point
		}
		return end.radiusMm
	}
	if least := min(past(shaft.outside[0], shaft.outside[min(1, n-1)]), past(shaft.outside[n-1], shaft.outside[max(n-2, 0)])); open < least-slackMm {
		r.add(Finding{
			Severity: Check, Part: v.p.Name.Value, Pos: e.Part.Pos, What: v.p.Title.Value + " does not go over " + shaft.p.Title.Value, Numbers: r.mm(2*open) + " over " + r.mm(2*least), LeftMm: left(2 * open),
			Rule: "what goes over a shaft goes over its end", Source: "by geometry", Fix: "a larger opening",
		})
	}
}

// reachShare is the least of a keyway's depth that a key goes in by. Common practice, no
// source.
const reachShare = 0.5

// keyReach looks at a key that stands in a tube: from its inside it goes into the
// keyway of the shaft there, and not to the bottom.
func (r *reviewer) keyReach(v, tube *view) {
	if !isKey(v.p) || tube.p.Kind != parts.Tube || len(tube.inside) == 0 {
		return
	}
	thick, high := v.lengthMm, 0.0
	if b := v.p.Bar; b != nil {
		thick, high = b.Depth.Mm, b.Width.Mm
	} else {
		high = min(v.box())
	}
	for _, p := range r.job.Parts {
		for i := range p.Radials {
			f, shaft := &p.Radials[i], r.viewOf(p.Name.Value)
			if f.Shape != parts.RadialSlot || f.Through || shaft == nil || math.Abs(f.Around.Mm-thick) > slackMm {
				continue
			}
			c := at(shaft.outside, shaft.axialMm(f))
			if c == nil || c.radiusMm > tube.inside[0].radiusMm {
				continue
			}
			in := high - (tube.inside[0].radiusMm - c.radiusMm)
			r.keyPath(v, shaft, f, tube.inside[0].radiusMm-high)
			if in >= reachShare*f.Depth.Mm-slackMm && in <= f.Depth.Mm+slackMm {
				continue
			}
			r.add(Finding{
				Severity: Check, Part: v.p.Name.Value, Pos: v.p.Name.Pos, What: v.p.Title.Value + " does not go into " + f.Name.Value + " of " + p.Title.Value + " as it is to", LeftMm: left(in),
				Numbers: r.mm(in) + " beyond the gap, in a keyway " + r.mm(f.Depth.Mm) + " deep", Rule: "a key goes half into its keyway at the least, and not to the bottom", Source: practice,
				Fix: "a bar as high as the gap and most of the keyway",
			})
		}
	}
}

// keyPath finds a keyway that no end of its shaft lets come over a key which stands in a tube
// and reaches to a radius: past both of its ends the shaft is thicker than that.
func (r *reviewer) keyPath(v, shaft *view, f *parts.Radial, tipMm float64) {
	z, closed := shaft.axialMm(f), math.Inf(1)
	for _, way := range []float64{-1, 1} {
		end, most := z+way*f.Along.Mm/2, 0.0
		for _, c := range shaft.outside {
			if way*((c.fromMm+c.toMm)/2-end) > -(c.toMm-c.fromMm)/2+slackMm {
				most = max(most, c.radiusMm)
			}
		}
		closed = min(closed, most-tipMm)
	}
	if closed <= slackMm {
		return
	}
	r.add(Finding{
		Severity: Stop, Part: shaft.p.Name.Value, Feature: f.Name.Value, Pos: f.Pos, What: f.Name.Value + " of " + shaft.p.Title.Value + " does not come over " + v.p.Title.Value + ": it is closed at both ends",
		Numbers: r.mm(closed) + " in the way of the key, which stands fast in its tube", Rule: "a keyway that slides over a fixed key runs out at the end that comes first", Source: "by geometry",
		Fix: "run it out over a thinner step, or make that end of the shaft as thin as its floor",
	})
}
