package review

import (
	"strings"
	"testing"

	"centrepop/layout/plan"
	"centrepop/layout/threads"
	"centrepop/parts"
)

// TestRunAndUpkeep: what the words of the first run and the upkeep say of two bearings in one housing and one beside, of what
// travels 200 mm, and of a nut: a run goes a twentieth further at the most, and play takes three quarters of a pitch of 4 mm.
// Common practice, no source. Speeds and times are in TestCardBounds.
func TestRunAndUpkeep(t *testing.T) {
	t.Parallel()
	text := func(s string) parts.Text { return parts.Text{Value: s} }
	number := func(n float64) parts.Number { return parts.Number{Value: n} }
	bearing := func(name, cup, grease string) *parts.Joint {
		return &parts.Joint{Name: text(name), Kind: parts.BearingKind, Bearing: &parts.BearingJoint{Cup: parts.JointRef{Part: cup}, Grease: text(grease)}}
	}
	type of = func(job *parts.Job)
	travels := func(part string, front, back float64) parts.Loose {
		return parts.Loose{Part: text(part), Travels: &parts.Travels{Front: parts.Length{Mm: front}, Back: parts.Length{Mm: back}}}
	}
	run := func(runs ...parts.Run) of {
		return func(job *parts.Job) { job.FirstRun.Runs = runs }
	}
	ram := func(runs ...parts.Run) of { // which travels 200
		return func(job *parts.Job) { job.FirstRun.Runs, job.Loose = runs, []parts.Loose{travels("ram", 150, 50)} }
	}
	two := func(runs ...parts.Run) of {
		return func(job *parts.Job) {
			job.FirstRun.Runs, job.Loose = runs, []parts.Loose{travels("ram", 150, 50), travels("sled", 500, 0)}
		}
	}
	at := func(minutes, speed float64, load string) parts.Run {
		return parts.Run{Minutes: number(minutes), Speed: number(speed), Load: text(load)}
	}
	watch := func(most float64, names ...string) of {
		return func(job *parts.Job) {
			for _, n := range names {
				job.FirstRun.Watch = append(job.FirstRun.Watch, parts.Watch{Bearing: text(n), MostC: number(most)})
			}
		}
	}
	ports := func(name, grease, every, otherEvery string) of {
		return func(job *parts.Job) {
			job.Upkeep.Ports = []parts.Port{{Bearing: text(name), Grease: text(grease), Every: text(every)}, {Bearing: text("back"), Every: text(otherEvery)}}
		}
	}
	wear := func(part, item, look string) of {
		return func(job *parts.Job) {
			job.Upkeep.Wear = []parts.Wear{{Part: text(part), Item: text(item), Look: text(look)}}
		}
	}
	warm := func(how string) of { return func(job *parts.Job) { job.FirstRun.WarmUpHow = text(how) } }
	earth := func(item, how string) of {
		return func(job *parts.Job) {
			job.Loose = append(job.Loose, parts.Loose{Item: text(item), How: text(how)})
		}
	}
	for _, c := range []struct {
		name string
		of   of
		want string
	}{
		{"all the travel", ram(at(10, 40, "its travel of 210 mm")), ""},
		{"more than it travels", ram(at(10, 40, "its travel of 211 mm")), "a run goes over a longer travel than ram travels: travel of 211 mm; at most 200 mm"},
		{"the other of two", two(at(10, 40, "sled over its travel of 500 mm")), ""},
		{"one of two", two(at(10, 40, "ram over its travel of 500 mm, the sled held")), "a run goes over a longer travel than ram travels: travel of 500 mm; at most 200 mm"},
		{"either of two", two(at(10, 40, "all over its travel of 211 mm")), "a run goes over a longer travel than ram travels: travel of 211 mm; at most 200 mm"},
		{"a stroke of no length", run(at(10, 40, "over the whole stroke")), "a run goes over a travel, and the job says nowhere how long that is: over the whole stroke"},
		{"a stroke with its length", run(at(10, 40, "190 mm of stroke")), ""},
		{"without a travel", run(at(10, 40, "full hopper")), ""},
		{"coupled", warm("20 min by its heater"), ""},
		{"uncoupled", warm("20 min, coupling off"), "the motor is to run uncoupled after it has run coupled for its direction: 20 min, coupling off"},
		{"both watched", watch(80, "front", "back", "other"), ""},
		{"one of two watched", watch(80, "front"), "the first run watches front and not back: both in housing"},
		{"one alone", watch(80, "other"), ""},
		{"as filled", ports("front", "NLGI 2 lithium", "20 h", "2 h"), ""},
		{"by a number apart", ports("front", "Lithium, NLGI2", "20 h", "2 h"), ""},
		{"as the joint says", ports("front", "", "20 h", "2 h"), ""},
		{"another thickener", ports("front", "calcium NLGI 2", "20 h", "2 h"), "the upkeep greases front with another grease than it was filled with: lithium NLGI 2, calcium NLGI 2"},
		{"another number", ports("front", "lithium NLGI 3", "20 h", "2 h"), "the upkeep greases front with another grease than it was filled with: lithium NLGI 2, lithium NLGI 3"},
		{"nobody says with what", ports("other", "", "20 h", "2 h"), "the upkeep greases other, and nothing says with what:  & the upkeep greases back and not front: both in housing"},
		{"other units", ports("front", "", "40 weeks", "2 h"), ""},
		{"other housings", ports("other", "lithium", "40 h", "2 h"), "the upkeep greases back and not front: both in housing"},
		{"worn to three quarters", wear("nut", "", "change it at play over 3 mm"), ""},
		{"worn through", wear("nut", "", "change it at play over 3.1 mm"), "by the words Feed nut runs until its thread is worn through: 3.1 mm of play on a pitch of 4 mm"},
		{"by its name", wear("", "nut", ""), ""},
		{"called as it is", wear("", "feed nuts", ""), ""},
		{"called as what is bought", wear("", "feed belt", ""), ""},
		{"called as nothing is", wear("", "feed chain", ""), "the upkeep looks at what no part and nothing bought is called: feed chain; there is Feed nut"},
		{"of no part", wear("", "drive chain", ""), ""},
		{"an earth on bright metal", earth("earth strap", "on bright metal"), ""},
		{"an earth on paint", earth("earth strap", "on the paint of the frame"), "the earth is put on paint: on the paint of the frame"},
		{"an earth not on paint", earth("earth strap", "not on paint"), ""},
		{"a label on paint", earth("label", "on the paint of the frame"), ""},
	} {
		job := &parts.Job{
			Joints:   []*parts.Joint{bearing("front", "housing", "lithium NLGI 2"), bearing("back", "housing", "lithium NLGI 2"), bearing("other", "bracket", "")},
			Motor:    &parts.Motor{OutRPM: number(40)},
			FirstRun: &parts.FirstRun{}, Upkeep: &parts.Upkeep{},
			Parts: []*parts.Part{{Name: text("nut"), Title: text("Feed nut")}, {Name: text("ram"), Title: text("Ram")}, {Name: text("sled"), Title: text("Sled")}},
		}
		c.of(job)
		r := &reviewer{job: job, pl: &plan.Plan{Bought: []plan.BoughtRow{{Item: "belt 20 x 4"}}}, views: map[string]*view{}}
		nut := &view{reviewer: r, p: job.Parts[0], q: &plan.PartPlan{}}
		nut.inside = sideBy(true, cyl("thread", 0, 30, 20, parts.Step{Size: parts.Size{Thread: text("Tr20x4")}}))
		nut.inside[0].Size.Thread = &threads.Thread{PitchMm: 4}
		r.views["nut"] = nut
		firstRun(r)
		upkeep(r)
		var said []string
		for _, f := range r.found {
			said = append(said, f.What+": "+f.Numbers)
		}
		if got := strings.Join(said, " & "); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// The screw of the earth is ordered by any of the words for it.
func TestEarthIsOrdered(t *testing.T) {
	t.Parallel()
	for text, is := range map[string]bool{"earthing screw M6 with lock washer, brass": true, "earth screw M6": true, "grounding lug": true, "ground lug": true, "screw M6 brass": false, "grounds": false} {
		for _, p := range promises {
			if p.what == "the screw of the earth" && p.is().MatchString(text) != is {
				t.Errorf("%q is ordered as one: %v", text, !is)
			}
		}
	}
}
