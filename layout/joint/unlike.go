package joint

import (
	"slices"

	"centrepop/layout/material"
	"centrepop/layout/words"
	"centrepop/parts"
)

// metal is one side of what touches in a joint.
type metal struct {
	title   string
	kind    material.Kind
	screws  bool
	several bool
}

// metals are the parts that touch in a joint, and the screws in them; those
// whose metal is not known are left out.
func (j *making) metals(t *joint) (touching []metal, screws *metal) {
	for _, f := range []feature{t.a, t.b} {
		if m := f.r.Material; m != nil {
			touching = append(touching, metal{title: f.title() + " (" + f.r.Out.Material + ")", kind: m.Kind})
		}
	}
	in := t.in.Bolt
	switch {
	case in == nil:
	case in.Stud.Value == "":
		screws = &metal{title: "the screws (" + in.Class + ")", kind: t.screwKind(), screws: true}
	default:
		if r := j.model(in.Stud.Value); r.Material != nil {
			screws = &metal{title: "the studs (" + r.Out.Material + ")", kind: r.Material.Kind, screws: true}
		}
	}
	return touching, screws
}

// unlike warns of metals that eat one another where it gets wet, and of stainless
// threads and seats that seize.
func (j *making) unlike(t *joint) {
	if t.is(parts.WeldKind) || t.is(parts.BearingKind) || t.runs() { // what turns is oiled
		return
	}
	touching, screws := j.metals(t)
	if len(touching) == 2 {
		t.eats(touching[0], touching[1])
		if screws == nil && material.Galls(touching[0].kind, touching[1].kind) {
			t.caution("Stainless on stainless seizes as it slides: grease or paste on both, slowly, and back at the first drag.")
		}
	}
	if screws == nil {
		return
	}
	if len(touching) == 2 && touching[0].kind == touching[1].kind { // one sentence of both
		touching = []metal{{title: touching[0].title + " and " + touching[1].title, kind: touching[0].kind, several: true}}
	}
	for _, m := range touching {
		t.eats(*screws, m)
	}
	if t.mayGall(screws.kind) {
		t.caution("Stainless threads seize: anti-seize paste, by hand and slowly" + t.greased() + ".")
	}
}

// eats warns of a pair that lies far apart in the galvanic series. Grease with
// copper in it lies further from aluminium than steel does.
func (t *joint) eats(a, b metal) {
	eaten, volts := material.Galvanic(a.kind, b.kind)
	if volts <= material.UnlikeV {
		return
	}
	if eaten == b.kind {
		a, b = b, a
	}
	verb := words.Either(a.screws || a.several, " are eaten by ", " is eaten by ")
	with := "copper grease, thin, between the two, and paint over the edge once it is tight"
	switch {
	case t.is(parts.PressKind): // oiled or dry, as its steps say
		with = "paint over the open edge of the seat once it is in, none on what runs"
	case eaten == material.AluminiumAlloy:
		with = "paint, a sleeve or zinc paste between the two, no copper grease"
	case a.screws:
		with = "copper grease on thread and head" + t.greased()
	}
	said := words.Capital(a.title) + verb + b.title + " where it gets wet, " + words.Trim(volts, 2) + " V apart in sea water"
	if t.is(parts.BoltKind) { // what runs or is pressed has grease or no gap
		t.out.Unlike = append(t.out.Unlike, said)
	}
	t.caution(said + ": " + with + ".")
}

// screwKind is the metal of a joint's screws, steel but for the stainless ones.
func (t *joint) screwKind() (kind material.Kind) {
	if g, err := t.bolt.Grade(t.in.Bolt.Class); err == nil && g.Stainless() {
		kind = material.AusteniticStainless
	}
	return kind
}

// mayGall tells whether the threads seize: stainless in stainless, a nut's or a part's.
func (t *joint) mayGall(screws material.Kind) bool {
	tapped := t.b.group != nil && t.b.group.Size.Thread != nil && t.b.r.Material != nil && material.Galls(screws, t.b.r.Material.Kind)
	return tapped || t.nuts() > 0 && material.Galls(screws, screws)
}

// friction is the state of the threads: as the job says, else with anti-seize paste
// where they would seize dry, or are to have copper grease because what they touch eats
// them; empty for dry.
func (t *joint) friction(screws material.Kind) string {
	if said := t.in.Bolt.Friction.Value; said != "" || !t.mayGall(screws) && !t.eaten(screws) {
		return said
	}
	return "anti-seize"
}

// eaten tells whether a part that screws hold eats them where it gets wet.
func (t *joint) eaten(screws material.Kind) bool {
	return slices.ContainsFunc([]feature{t.a, t.b}, func(f feature) bool {
		if f.r.Material == nil {
			return false
		}
		kind, volts := material.Galvanic(screws, f.r.Material.Kind)
		return volts > material.UnlikeV && kind == screws
	})
}

// greased says which torque holds for threads with paste where the job says dry ones.
func (t *joint) greased() string {
	if p := t.out.Bolt; p != nil && p.Threads == "dry" && p.OtherTorqueNm != 0 {
		return ", to the torque for oiled threads"
	}
	return ""
}

// nuts are how many nuts each bolt or stud of a joint has.
func (t *joint) nuts() int {
	switch tapped := t.tappedHole() != nil; {
	case t.in.Stud() != "" && !tapped:
		return 2
	case t.in.Stud() != "" || t.in.Bolt.Nut:
		return 1
	}
	return 0
}
