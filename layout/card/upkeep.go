package card

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"centrepop/layout/plan"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

// greaseRule is where the amounts of bearings come from; in inches and ounces
// 0.005 × 25.4² / 28.35 = 0.114.
func greaseRule(u parts.Units) string {
	rule := parts.By(u, "0.005 × outside × width in mm, in g", "0.114 × outside × width in inches, in oz")
	return "Grease of a bearing: " + rule + "; bearing makers' rule, from memory."
}

// torqueRule is how far a torque can be trusted.
const torqueRule = "Torques hold for threads in the state named; the friction is assumed, and so is the torque."

// greasing is one port with the bearings that it feeds.
type greasing struct {
	where, grease, every string
	grams                []float64
	amount               string // as the job says, in place of grams
	bearings             []string
}

// upkeep is the card at the machine; nil if the job asks for none.
func (c cards) upkeep() *plan.Upkeep {
	in := c.job.Upkeep
	if in == nil {
		return nil
	}
	out := &plan.Upkeep{}
	for _, g := range c.greasings(in.Ports) {
		if rule := greaseRule(c.w.Units); len(g.grams) > 0 && !slices.Contains(out.Sources, rule) {
			out.Sources = append(out.Sources, rule)
		}
		out.Ports = append(out.Ports, plan.UpkeepRow{Where: words.Join(": ", strings.Join(g.bearings, ", "), g.where), What: words.Join(", ", g.grease, c.grams(g)), Every: g.every})
	}
	for _, b := range in.Bolts {
		j := c.pl.Joint(b.Joint.Value)
		if j == nil || j.Bolt == nil {
			continue // the plan's faults say why
		}
		if j.Bolt.TorqueNm > 0 && !slices.Contains(out.Sources, torqueRule) {
			out.Sources = append(out.Sources, torqueRule)
		}
		out.Bolts = append(out.Bolts, plan.UpkeepRow{Where: c.boltText(j), What: c.torque(j.Bolt) + c.takenOff(j, b.Every.Value), Every: b.Every.Value})
	}
	for _, one := range in.Wear {
		row := plan.UpkeepRow{Where: words.Capital(one.Item.Value), What: one.Look.Value, Every: one.Every.Value}
		if p := c.pl.Part(one.Part.Value); p != nil {
			row.Where = words.CountOf(p.Quantity) + p.Title
		}
		out.Wear = append(out.Wear, row)
	}
	if m := c.job.Motor; m != nil {
		what := append([]string{"emergency stop"}, seq.Map(m.Guards, func(g parts.Text) string { return g.Value })...)
		out.Wear = append(out.Wear, plan.UpkeepRow{Where: words.Capital(strings.Join(what, ", ")), What: "opened or pressed while it runs, then shut or let out: " + stops, Every: "month"})
		out.Sources = append(out.Sources, "Trying what stops the motor every month: common practice, no source.")
		out.Cautions = append(out.Cautions, lockOff)
	} else if len(c.turning()) > 0 {
		out.Cautions = append(out.Cautions, "Only at a standstill, and so that nobody can turn it.")
	}
	return out
}

// takenOff says what it takes to part for cleaning a joint that a hand alone did not put together.
func (c cards) takenOff(j *plan.JointPlan, every string) string {
	if l := j.Lift; strings.Contains(every, "clean") && l != nil && !l.Loose && l.Tried == "" {
		first := strings.Join(c.cameOn(j), " and ")
		return "; to part it: " + words.When(first != "", first+", with all on it, off first; then ") + c.w.RoundMass(l.MassKg, 1) + " empty, what is in it on top, slung as in step " + strconv.Itoa(j.N)
	}
	return ""
}

// cameOn are the titles of what later joints put on what a joint lifted.
func (c cards) cameOn(j *plan.JointPlan) (out []string) {
	lifted := []parts.Instance{j.A.Instance()}
	if j.Lift.What == j.B.Title {
		lifted[0] = j.B.Instance()
	}
	for i := 0; i < len(lifted); i++ {
		for _, o := range c.pl.Joints {
			for _, e := range [2][2]plan.JointEnd{{o.A, o.B}, {o.B, o.A}} {
				switch {
				case e[0].Instance() != lifted[i]:
				case o.N < j.N:
					lifted = seq.Add(lifted, e[1].Instance())
				case o.N > j.N:
					out = seq.Add(out, e[1].Title)
				}
			}
		}
	}
	return out
}

// greasings puts bearings that share a port, a grease and an interval together.
func (c cards) greasings(ports []parts.Port) (out []greasing) {
	for _, p := range ports {
		if p.Place.Value != "" {
			out = append(out, greasing{where: words.Capital(p.Place.Value), grease: p.Grease.Value, amount: p.Amount.Value, every: p.Every.Value})
			continue
		}
		j := c.pl.Joint(p.Bearing.Value)
		if j == nil || j.Bearing == nil {
			continue // the plan's faults say why
		}
		g := greasing{where: cmp.Or(strings.Join(j.Bearing.Ports, "; "), "no port in the job: packed by hand"), grease: j.Bearing.Grease, every: p.Every.Value, amount: p.Amount.Value}
		if p.Grease.Value != "" {
			g.grease = p.Grease.Value
		}
		if g.amount == "" {
			g.grams = []float64{j.Bearing.GreaseG}
		}
		g.bearings = []string{c.bearingText(j)}
		at := slices.IndexFunc(out, func(o greasing) bool {
			return len(j.Bearing.Ports) > 0 && o.where == g.where && o.grease == g.grease && o.every == g.every && g.amount == "" && o.amount == ""
		})
		if at < 0 {
			out = append(out, g)
			continue
		}
		out[at].grams = append(out[at].grams, g.grams...)
		out[at].bearings = append(out[at].bearings, g.bearings...)
	}
	return out
}

// grams writes the amount of a port in the job's units: of several bearings the
// sum, and its shares.
func (c cards) grams(g greasing) string {
	if g.amount != "" {
		return g.amount
	}
	sum, shares := 0.0, []string{}
	for _, one := range g.grams {
		sum += one
		shares = append(shares, c.w.Grams(one))
	}
	text := c.w.Grams(sum)
	text += words.When(len(shares) > 1, " ("+strings.Join(shares, " and ")+")")
	return text
}
