package main

import (
	"cmp"
	"fmt"
	"math"
	"strconv"
	"strings"

	"centrepop/layout/fits"
	"centrepop/layout/plan"
	"centrepop/layout/press"
	"centrepop/layout/words"
	"centrepop/parts"
	"centrepop/parts/seq"
)

type pressJSON struct {
	InterferenceUm plan.Range `json:"interference_um"`
	PressureMPa    plan.Range `json:"pressure_mpa"`
	HubHoopMPa     plan.Range `json:"hub_bore_hoop_mpa"`
	HubMisesMPa    plan.Range `json:"hub_bore_von_mises_mpa"`
	ShaftHoopMPa   plan.Range `json:"shaft_outside_hoop_mpa"`
	ShaftMisesMPa  plan.Range `json:"shaft_worst_von_mises_mpa"`
	HubSafety      float64    `json:"hub_safety"`
	ShaftSafety    float64    `json:"shaft_safety"`
	ForceN         plan.Range `json:"force_n"`
	TorqueNm       plan.Range `json:"torque_nm"`
	Friction       plan.Range `json:"friction"`
	FrictionSource string     `json:"friction_source"`
	HeatHubC       float64    `json:"heat_hub_c"`
	CoolShaftC     float64    `json:"cool_shaft_c"`
	ClearanceMm    float64    `json:"joining_clearance_mm"`
	LeadInMm       float64    `json:"lead_in_mm"`
	LeadInDeg      float64    `json:"lead_in_deg"`
	HubMaterial    string     `json:"hub_material"`
	ShaftMaterial  string     `json:"shaft_material"`
	Cautions       []string   `json:"cautions,omitempty"`
}

func pressFit(c *call) error {
	shaftOD := c.length("shaft-od", "shaft diameter at the joint, such as 50 or 2in", false)
	bore := c.length("bore", "hub bore, if it differs from the shaft; without --fit or --interference-um the difference is the interference", false)
	shaftID := c.flags.String("shaft-id", "0", "bore of a hollow shaft")
	hubOD := c.length("hub-od", "outside of the hub", false)
	length := c.length("length", "engaged length", false)
	fitName := c.flags.String("fit", "", "ISO 286 fit, such as H7/p6")
	um := c.flags.String("interference-um", "", "least and greatest interference on diameter, micrometres, such as 10:40")
	hubMaterial := c.flags.String("hub-material", "S235", "material of the hub")
	shaftMaterial := c.flags.String("shaft-material", "S235", "material of the shaft")
	friction := c.flags.Float64("friction", 0, "coefficient of friction; 0 takes the span for the two materials, oiled")
	clearance := c.flags.String("clearance", "0", "clearance on diameter when joining hot or cold; 0 takes the usual")
	if err := c.parse(0, 0); err != nil {
		return err
	}
	if !shaftOD.given() || !hubOD.given() || !length.given() {
		return badUse("--shaft-od, --hub-od and --length are all needed")
	}
	if *fitName != "" && *um != "" {
		return badUse("--fit and --interference-um say the same thing: keep one")
	}
	hollow, gap := &lengthArg{name: "--shaft-id", text: *shaftID}, &lengthArg{name: "--clearance", text: *clearance}
	for _, l := range []*lengthArg{hollow, gap} {
		if l.text == "0" { // the default
			l.text = ""
		}
	}
	err := c.read(hollow, gap)
	if err != nil {
		return err
	}
	if !bore.given() {
		bore.mm = shaftOD.mm
	}
	in := pressCase{shaftMm: shaftOD.mm, shaftInMm: hollow.mm, hubMm: hubOD.mm, boreMm: bore.mm, lengthMm: length.mm, clearanceMm: gap.mm, friction: *friction, w: c.w}
	if in.loMm, in.hiMm, err = interference(*fitName, *um, in.shaftMm, in.boreMm); err != nil {
		return err
	}
	if err := in.of(*hubMaterial, *shaftMaterial); err != nil {
		return err
	}
	out, err := in.work()
	if err != nil {
		return err
	}
	return c.looked(out, func() { printPress(c, c.w, out) })
}

// interference returns the least and the greatest interference on diameter in
// mm, from a fit, a pair of micrometres, or the two diameters.
func interference(fit, um string, shaftMm, boreMm float64) (lo, hi float64, err error) {
	switch {
	case fit != "":
		f, err := fits.Between(shaftMm, fit)
		if err != nil {
			return 0, 0, err
		}
		lo, hi = -f.ClearanceMaxUm/1000, -f.ClearanceMinUm/1000
	case um != "":
		first, second, two := strings.Cut(um, ":")
		a, errA := strconv.ParseFloat(first, 64)
		b, errB := a, error(nil)
		if two {
			b, errB = strconv.ParseFloat(second, 64)
		}
		if errA != nil || errB != nil || math.IsNaN(a) || math.IsNaN(b) {
			return 0, 0, badUse("--interference-um %s: it must be such as 10:40", um)
		}
		lo, hi = a/1000, b/1000
	default:
		lo, hi = shaftMm-boreMm, shaftMm-boreMm
	}
	if hi <= 0 {
		return 0, 0, badUse("no interference: --fit H7/p6, --interference-um 10:40, or a bore below the shaft")
	}
	return lo, hi, nil
}

// pressCase is one press fit of two plain rounds; a friction of 0 is the span
// for the two materials.
type pressCase struct {
	shaftMm, shaftInMm, hubMm, boreMm, lengthMm float64
	loMm, hiMm, clearanceMm, friction           float64
	hub, shaft                                  press.Member
	w                                           words.Writer
}

// of makes the two members of materials by name.
func (p *pressCase) of(hubName, shaftName string) error {
	hub, err := press.Lookup(hubName, (p.hubMm-p.shaftMm)/2)
	if err != nil {
		return err
	}
	section := p.shaftMm
	if p.shaftInMm > 0 {
		section = (p.shaftMm - p.shaftInMm) / 2
	}
	shaft, err := press.Lookup(shaftName, section)
	p.hub = press.Member{OutsideMm: p.hubMm, InsideMm: p.boreMm, Material: hub}
	p.shaft = press.Member{OutsideMm: p.shaftMm, InsideMm: p.shaftInMm, Material: shaft}
	return err
}

// work is pressing, heating and cooling in one answer.
func (p *pressCase) work() (*pressJSON, error) {
	friction, errFriction := press.FrictionFor(p.hub.Material, p.shaft.Material, press.PressedOiled)
	if p.friction != 0 {
		friction = press.Friction{Min: p.friction, Max: p.friction, Source: "as given"}
	}
	joint := press.Joint{Hub: p.hub, Shaft: p.shaft, InterferenceMm: p.hiMm, ClearanceMm: p.clearanceMm, RoomC: 20, ShaftC: 20}
	r, errRange := press.Range(press.Input{Hub: p.hub, Shaft: p.shaft, LengthMm: p.lengthMm, Friction: friction}, p.loMm, p.hiMm)
	heat, errHeat := press.Heat(joint)
	cold, coldCautions, errCold := press.Cool(joint)
	lead, errLead := press.LeadInFor(p.shaftMm, p.hiMm, p.lengthMm)
	if err := cmp.Or(errFriction, errRange, errHeat, errCold, errLead); err != nil {
		return nil, err
	}
	worst := func(r press.Result) float64 { return math.Max(r.ShaftOutside.VonMisesMPa, r.ShaftBore.VonMisesMPa) }
	a, b := r.Loosest, r.Tightest
	span := func(min, max float64) plan.Range { return plan.Range{Min: min, Max: max} }
	out := &pressJSON{
		InterferenceUm: span(p.loMm*1000, p.hiMm*1000), PressureMPa: span(a.PressureMPa, b.PressureMPa),
		HubHoopMPa: span(a.HubBore.HoopMPa, b.HubBore.HoopMPa), HubMisesMPa: span(a.HubBore.VonMisesMPa, b.HubBore.VonMisesMPa),
		ShaftHoopMPa: span(a.ShaftOutside.HoopMPa, b.ShaftOutside.HoopMPa), ShaftMisesMPa: span(worst(a), worst(b)),
		HubSafety: b.HubSafety, ShaftSafety: b.ShaftSafety,
		ForceN: r.ForceN(), TorqueNm: r.TorqueNm(),
		Friction: span(friction.Min, friction.Max), FrictionSource: friction.Source,
		HeatHubC: heat.HubC, CoolShaftC: cold, ClearanceMm: heat.ClearanceMm, LeadInMm: lead, LeadInDeg: press.LeadInDeg,
		HubMaterial:   p.hub.Material.Name + ", " + p.hub.Material.Source,
		ShaftMaterial: p.shaft.Material.Name + ", " + p.shaft.Material.Source,
	}
	cautions := b.Cautions
	if p.loMm <= 0 {
		cautions = append(a.Cautions, cautions...) // at the loosest limits it holds nothing
	}
	out.Cautions = seq.Map(cautions, p.w.PressCaution)
	joining := seq.Map(append(heat.Cautions, coldCautions...), p.w.PressCaution)
	out.Cautions = append(out.Cautions, seq.Map(joining, func(text string) string { return "joining: " + text })...)
	return out, nil
}

// printPress prints the answer, of an inch question with the metric values behind.
func printPress(c *call, w words.Writer, p *pressJSON) {
	inches := func(text string) string {
		if w.Units != parts.Inches {
			return ""
		}
		return text + ", "
	}
	line := func(label, format string, args ...any) {
		fmt.Fprintf(c.stdout, "%-26s "+format+"\n", append([]any{label}, args...)...)
	}
	line("interference", "%s%.4g to %.4g µm on diameter", inches(w.Fine(p.InterferenceUm.Min, p.InterferenceUm.Max)), p.InterferenceUm.Min, p.InterferenceUm.Max)
	line("pressure", "%s%.2f to %.2f MPa", inches(w.Stresses(p.PressureMPa.Min, p.PressureMPa.Max, 1)), p.PressureMPa.Min, p.PressureMPa.Max)
	line("hub bore, von Mises", "%s%.1f to %.1f MPa, safety %.2f (%s)", inches(w.Stresses(p.HubMisesMPa.Min, p.HubMisesMPa.Max, 1)), p.HubMisesMPa.Min, p.HubMisesMPa.Max, p.HubSafety, p.HubMaterial)
	line("shaft, von Mises", "%s%.1f to %.1f MPa, safety %.2f (%s)", inches(w.Stresses(p.ShaftMisesMPa.Min, p.ShaftMisesMPa.Max, 1)), p.ShaftMisesMPa.Min,
		p.ShaftMisesMPa.Max, p.ShaftSafety, p.ShaftMaterial)
	line("press force", "%s%.1f to %.1f kN", inches(w.ForcesRead(p.ForceN.Min, p.ForceN.Max, 1)), p.ForceN.Min/1000, p.ForceN.Max/1000)
	unit, per := w.TorqueUnit(p.TorqueNm.Max)
	line("torque held", "%s%.0f to %.0f N m", inches(words.Between(p.TorqueNm.Min/per, p.TorqueNm.Max/per, 0, unit)), p.TorqueNm.Min, p.TorqueNm.Max)
	line("friction", "%.2f to %.2f (%s)", p.Friction.Min, p.Friction.Max, p.FrictionSource)
	line("heat the hub to", "%s, or cool the shaft to %s, for %s clearance", w.Heat(p.HeatHubC), w.Heat(p.CoolShaftC), w.Setting(p.ClearanceMm))
	line("lead-in", "%s long at %.0f°", c.withUnit(words.Round(p.LeadInMm, 1)), p.LeadInDeg)
	for _, text := range p.Cautions {
		line("caution", "%s", text)
	}
}
