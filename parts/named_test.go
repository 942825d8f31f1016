package parts

import "testing"

// TestBegins: words begin with a part by its whole title or name, if no longer title begins them too, or by the
// last word of its title, which no other has.
func TestBegins(t *testing.T) {
	t.Parallel()
	part := func(name, title string) *Part {
		return &Part{Name: Text{Value: name}, Title: Text{Value: title}}
	}
	drive, idler, cover, plate := part("drive-shaft", "Drive shaft"), part("idler", "Idler shaft"), part("cover", "Cover"), part("cover-plate", "Cover plate")
	for _, c := range []struct {
		words string
		of    []*Part
		want  string
	}{
		{"Drive shaft key", []*Part{drive, idler}, "drive-shaft "}, {"drive-shaft key", []*Part{drive, idler}, "drive-shaft "},
		{"shaft key", []*Part{drive, idler}, ""}, {"Shaft key", []*Part{drive, cover}, "drive-shaft "}, {"shaft", []*Part{cover, idler}, "idler "}, {"shafts", []*Part{drive}, ""},
		{"cover screws", []*Part{cover, plate}, "cover "}, {"cover plate screws", []*Part{cover, plate}, "cover-plate "}, {"cover plate screws", []*Part{cover, drive}, "cover "},
		{"plate screws", []*Part{cover, plate}, "cover-plate "}, {"a cover", []*Part{cover}, ""},
	} {
		job, got := &Job{Parts: c.of}, ""
		for _, p := range c.of {
			if job.Begins(c.words, p) {
				got += p.Name.Value + " "
			}
		}
		if got != c.want {
			t.Errorf("%q: %q, want %q", c.words, got, c.want)
		}
	}
}

// TestOver: words bring something on or over a loose part or a thing bought, by the title or name of the one, by what
// the other is called; what they only name they bring nothing onto.
func TestOver(t *testing.T) {
	t.Parallel()
	text := func(s string) Text { return Text{Value: s} }
	job := &Job{Parts: []*Part{{Name: text("hub-2"), Title: text("Handwheel hub")}}}
	hub, wheel := &Loose{Part: text("hub-2")}, &Loose{Item: text("hand wheel, 200")}
	for _, c := range []struct {
		words      string
		hub, wheel bool
	}{
		{"Over the stem, lying on the hub; its spokes", true, false}, {"over its handwheel hub.", true, false}, {"down on hub-2, by hand", true, false},
		{"screwed to the hub", false, false}, {"on the rim of the hub", false, false}, {"onto the hand wheel.", false, true}, {"on the hand", false, false},
	} {
		if a, b := job.Over(c.words, hub), job.Over(c.words, wheel); a != c.hub || b != c.wheel {
			t.Errorf("%q: %v, %v", c.words, a, b)
		}
	}
	if on := (&Loose{How: text("by hand"), Lies: []Lying{{Ref: JointRef{Part: "hub-2"}}}}); !job.LiesOver(on, hub) || job.LiesOver(on, wheel) || job.LiesOver(&Loose{How: text("by hand")}, hub) {
		t.Error("by its place")
	}
}

// TestNamedIn: a sentence names a part by its title or its name, as whole words; the guards of a motor by their titles.
func TestNamedIn(t *testing.T) {
	t.Parallel()
	p := &Part{Name: Text{Value: "hub-2"}, Title: Text{Value: "Handwheel hub"}}
	for words, want := range map[string]bool{"Screw the handwheel hub, by hand.": true, "press on hub-2; dry": true, "the handwheel": false, "hub-21": false} {
		if p.NamedIn(words) != want {
			t.Errorf("%q names it: %v", words, !want)
		}
	}
	m := &Motor{Guards: []Text{{Value: "Belt guard"}}}
	if !m.Guarded("belt guard") || m.Guarded("belt") || (*Motor)(nil).Guarded("belt guard") {
		t.Error("the guard of a motor by its title")
	}
	job := &Job{Loose: []Loose{{Part: Text{Value: "lid"}, Lies: []Lying{{Ref: JointRef{Part: "base", Copy: 3}}, {Ref: JointRef{Part: "base", Copy: 1}}}}}}
	if all := job.Laid(); len(all) != 2 || all[1].Instance != (Instance{"lid", 2}) || all[1].On != (Instance{"base", 1}) {
		t.Errorf("the second lid lies on the first base, not %v", all)
	}
}
