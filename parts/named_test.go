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
