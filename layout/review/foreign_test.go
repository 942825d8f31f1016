package review

import (
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"centrepop/parts"
)

// A stud's threads take the nuts of its joint, a thread the nut that is bought with what sits on it,
// and a fitted hole off the middle of a plate the spigot of what is bolted there: at [60, 0], where
// the spigot's holes, 40 off its middle, meet those of the plate at 20 and 100.
func TestNothingIsIdle(t *testing.T) {
	t.Parallel()
	const joints = "joints:\n  - {name: studs, bolt: {through: lid.corners, into: plate.corners, bolt: M12, stud: tie, nut: yes, washer: yes}, face: back-on-front}\n" +
		"  - {name: boss, bolt: {through: boss.screws, into: plate.screws, bolt: M8 8.8}, face: back-on-front}\n"
	files := map[string]string{
		"plate.yaml": "part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 300}\nholes:\n  - {name: corners, at: [[130, 130], [-130, 130], [-130, -130], [130, -130]], size: M12 clearance}\n  - {name: screws, at: [[20, 0], [100, 0]], size: M8 tap}\n  - {name: seat, at: [[60, 0]], size: {diameter: 42, fit: H7}}\n",
		"lid.yaml":   "part: lid\nkind: plate\nmaterial: S235\nstock: {plate: 12, cut: laser}\noutline: {square: 300}\nholes:\n  - {name: corners, at: [[130, 130], [-130, 130], [-130, -130], [130, -130]], size: M12 clearance}\n",
		"tie.yaml":   "part: tie\nkind: turned\nquantity: 4\nmaterial: S355\nstock: {round: 25, length: 296}\nprofile:\n  outside: [{name: front-end, thread: M12, length: 40}, {name: body, diameter: 22, length: 210}, {name: back-end, thread: M12, length: 43}]\n",
		"boss.yaml":  "part: boss\nkind: turned\nmaterial: S235\nstock: {round: 105, length: 38}\nprofile:\n  outside: [{name: flange, diameter: 100, length: 15}, {name: spigot, diameter: 42, fit: g6, length: 10}]\nholes:\n  - {name: screws, at: [[-40, 0], [40, 0]], size: M8 clearance}\n",
		"pin.yaml":   "part: pin\nkind: shaft\nmaterial: S355\nstock: {round: 30, length: 106}\nprofile:\n  outside: [{name: body, diameter: 28, length: 60}, {name: seat, diameter: 22, length: 20}, {name: nut, thread: M20x1.5, length: 20}]\n",
	}
	job := "job: J\nunits: mm\ntolerance: m\nparts: [plate.yaml, lid.yaml, tie.yaml, boss.yaml, pin.yaml]\nloose:\n  - {item: wheel, how: on the pin, after: boss, buy: nut M20x1.5 and washer}\n" + joints
	found := func(job string) string {
		files["job.yaml"] = job
		a := &txtar.Archive{}
		for name, text := range files {
			a.Files = append(a.Files, txtar.File{Name: name, Data: []byte(text)})
		}
		list, _, err := reviewed(load(t, a))
		if err != nil {
			t.Fatal(err)
		}
		var out []string
		for _, f := range list {
			if f.Code == "unused" || f.Code == "spigot" {
				out = append(out, f.Code+" "+f.Part+" "+f.What)
			}
		}
		return strings.Join(out, "; ")
	}
	if got := found(job); got != "" {
		t.Error(got)
	}
	// The register of one boss is none of another's, whose screws stand where the plate has no hole.
	files["knob.yaml"] = strings.NewReplacer("part: boss", "part: knob", "holes:", "  inside: [{name: bore, diameter: 20, fit: H7, length: 25}]\nholes:").Replace(files["boss.yaml"])
	files["pip.yaml"] = "part: pip\nkind: turned\nmaterial: S235\nstock: {round: 24, length: 30}\nprofile:\n  outside: [{name: body, diameter: 20, fit: s6, length: 25}]\n"
	files["plate.yaml"] = strings.Replace(files["plate.yaml"], "  - {name: seat,", "  - {name: more, at: [[20, 80], [100, 80]], size: M8 tap}\n  - {name: seat,", 1)
	knob := strings.Replace(job, "boss.yaml, ", "boss.yaml, knob.yaml, pip.yaml, ", 1) + "  - {name: knob, bolt: {through: knob.screws, into: plate.more, bolt: M8 8.8}, face: back-on-front}\n  - {name: pip, press: {shaft: pip.body, bore: knob.bore}, level: front-with-front}\n"
	if got := found(knob); got != "spigot knob spigot reaches into no register of its size" {
		t.Errorf("another's register: %q", got)
	}
	if got := found(strings.Replace(job, ", buy: nut M20x1.5 and washer", "", 1)); !strings.Contains(got, "unused pin nut of pin") {
		t.Errorf("no nut: %s", got)
	}
}

// A loose pin with a thread of its own takes the nut that is bought for it, and no other; a knob whose thread is
// that of its end goes over it, and one of another pitch does not.
func TestOwnThread(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ nut, knob, want string }{
		{"nut M20x1.5", "M16", ""},
		{"bolt M20x1.5 x 60 with nut, count: 1, how: through wall.eye", "M16", ""},
		{"bolt M20x1.5 x 60 with nut", "M16", "bought the words name no hole that the bolts of this part go into"},
		{"nut M20", "M16", "bought the nut that is bought goes on no thread of pin"},
		{"nut M20x1.5", "M16x1.5", "loose knob does not go over pin"},
	} {
		how := "how: \"foot through the arm, nut behind.\", count: 1, "
		if strings.Contains(c.nut, "how:") {
			how = ""
		}
		list, _, err := reviewed(load(t, &txtar.Archive{Files: []txtar.File{
			{Name: "job.yaml", Data: []byte("job: J\nunits: mm\ntolerance: m\nparts: [plate.yaml, wall.yaml, pin.yaml, knob.yaml]\njoints:\n  - {name: wall, weld: {part: wall.outline, to: plate.outline, type: fillet, size: 5}, place: {on: front, with: bottom, from-left: 100, from-bottom: 50, front: left}}\n" +
				"loose:\n  - {part: pin, " + how + "buy: " + c.nut + ", after: wall, lies: [{on: wall.front, with: back, gap: -30}]}\n  - {part: knob, how: screwed on the pin., after: wall}\n")},
			{Name: "plate.yaml", Data: []byte("part: plate\nkind: plate\nmaterial: S235\nstock: {plate: 20, cut: laser}\noutline: {square: 300}\n")},
			{Name: "wall.yaml", Data: []byte("part: wall\nkind: plate\nmaterial: S235\nstock: {plate: 10, cut: laser}\noutline: {square: 200}\nholes: [{name: eye, at: [[0, 0]], size: 21}]\n")},
			{Name: "pin.yaml", Data: []byte("part: pin\nkind: turned\nmaterial: S355\nstock: {round: 30, length: 106}\nprofile:\n  outside: [{name: end, thread: M16, length: 40}, {name: body, diameter: 28, length: 30}, {name: foot, thread: M20x1.5, length: 30}]\n")},
			{Name: "knob.yaml", Data: []byte("part: knob\nkind: turned\nmaterial: S355\nstock: {round: 50, length: 36}\nprofile:\n  outside: [{name: body, diameter: 45, length: 30}]\n  inside: [{name: tap, thread: " + c.knob + ", length: 30}]\n")},
		}}))
		if err != nil {
			t.Fatal(err)
		}
		var out []string
		for _, f := range list {
			if f.Code == "bought" || f.Code == "loose" {
				out = append(out, f.Code+" "+f.What)
			}
		}
		if got := strings.Join(out, "; "); got != c.want {
			t.Errorf("%s, %s: %q, want %q", c.nut, c.knob, got, c.want)
		}
	}
}

// A group of holes is named in words as in the input or with its words apart, one of four letters or more among them;
// what any hole is called names none.
func TestSaysHoles(t *testing.T) {
	t.Parallel()
	r := &reviewer{job: &parts.Job{}}
	for said, want := range map[string]bool{"into motor-row of it": true, "into its motor row": true, "into its row": false} {
		if saysHoles(r.untitled(said), "motor-row") != want {
			t.Errorf("%q", said)
		}
	}
	if said := r.untitled("into its row and bolts"); saysHoles(said, "row") || saysHoles(said, "bolts") {
		t.Errorf("%q names", said)
	}
}

// Words of a thing that stands on holes name no others: the shaft of a motor is not the hole that a guard has for one.
func TestWordsOfWhatStands(t *testing.T) {
	t.Parallel()
	named := func(name string) parts.HoleGroup {
		return parts.HoleGroup{FaceGroup: parts.FaceGroup{Name: parts.Text{Value: name}}}
	}
	part := func(name string, holes ...parts.HoleGroup) *parts.Part {
		return &parts.Part{Name: parts.Text{Value: name}, Holes: holes}
	}
	plate, guard := part("plate", named("motor")), part("guard", named("shaft"))
	r := &reviewer{job: &parts.Job{Parts: []*parts.Part{plate, guard}}}
	for _, c := range []struct {
		on   string
		p    *parts.Part
		want bool
	}{{"", guard, true}, {"motor", guard, false}, {"motor", plate, true}, {"seat", guard, true}} {
		e := &parts.Loose{}
		if c.on != "" {
			e.Stands = &parts.Stands{On: parts.JointRef{Part: "plate", Feature: c.on}}
		}
		if got := (&view{reviewer: r, p: c.p}).saidFor(e, " its shaft through the bore ", &c.p.Holes[0]); got != c.want {
			t.Errorf("%+v: %v", c.on, got)
		}
	}
}

// The plate that the job's motor stands on takes its flange: of a 145TC 5 7/8 in of pitch circle, a spigot of
// 4 1/2 in and four screws 3/8-16 (NEMA MG 1, from memory); of FF165 130 mm of spigot and four holes for M10, into
// threads or nuts (IEC 60072-1, from memory).
func TestMotorFace(t *testing.T) {
	t.Parallel()
	job := "job: J\nunits: in\ntolerance: m\nparts: [plate.yaml, base.yaml]\njoints:\n  - {name: foot, weld: {part: plate.outline, to: base.outline, type: fillet, size: 1/4, length: 8, sides: 2}, place: {on: front, with: bottom, from-left: 2, from-bottom: 4, front: down}}\nloose:\n  - {item: gearmotor 2 hp, how: on the plate, after: foot, lb: 70, stands: {on: plate.motor, diameter: 7, length: 14}}\n" +
		"motor: {hp: 2, volts: \"230\", phases: 3, hz: 60, speed: 1740, flange: 145TC, rotation: either, seen-from: drive-end, earth: lug, emergency-stop: front}\n"
	plate := "part: plate\nkind: plate\nmaterial: A36\nstock: {plate: 3/4, cut: laser}\noutline: {square: 11}\nbore: {diameter: 4-1/2, fit: H7, leave: 1/8}\nholes: [{name: motor, circle: {pcd: 5-7/8, count: 4, first: 45}, size: 3/8-16 UNC clearance}]\n"
	metric := strings.NewReplacer("145TC", "FF165", "pcd: 5-7/8", "pcd: 165 mm", "diameter: 4-1/2", "diameter: 130 mm", "3/8-16 UNC clearance", "M10 tap")
	for _, c := range []struct {
		metric         bool
		from, to, want string
	}{
		{false, "", "", ""},
		{false, "pcd: 5-7/8", "pcd: 5-3/4", "stop the pitch circle of motor is not that of the motor's face 145TC 5.75 in, the face has 5.875 in"},
		{false, "diameter: 4-1/2", "diameter: 4.4", "stop the bore round the spigot is not that of the motor's face 145TC 4.4 in, the spigot 4.5 in"},
		{false, "UNC clearance", "UNC tap", "stop the screw of motor is not that of the motor's face 145TC"},
		{false, "3/8-16 UNC clearance", "7/16", ""},
		{false, "3/8-16 UNC clearance", "3/8", "stop the screw of motor is not that of the motor's face 145TC 0.375 in; the face is tapped 3/8-16 UNC, and the plate has clearance holes"},
		{false, "count: 4", "count: 6", "stop the number of holes of motor is not that of the motor's face 145TC 6, the face has 4"},
		{false, "first: 45", "first: 0", "check motor stands turned against the holes of a motor one at 0°, wanted 45°"},
		{true, "", "", ""},
		{true, "flange: FF165, ", "", ""},
		{true, "M10 tap", "M10 clearance", ""},
		{true, "M10 tap", "M8 tap", "stop the screw of motor is not that of the motor's flange FF165 M8; the flange has holes for M10"},
		{true, "165 mm", "164 mm", "stop the pitch circle of motor is not that of the motor's flange FF165"},
		{true, "130 mm", "110 mm", "stop the bore round the spigot is not that of the motor's flange FF165"},
		{true, "130 mm", "135 mm", "check the bore round the spigot is not that of the motor's flange FF165"},
		{true, "fit: H7", "fit: H13", "check the bore does not centre the spigot of a motor flange FF165"},
		{true, "flange: FF165", "flange: FF130", "stop the pitch circle of motor is not that of the motor's flange FF130"},
		{true, "gearmotor 2 hp", "\"gearmotor 2 hp, FF130\"", "check the motor as ordered has another flange than its plate gearmotor 2 hp, FF130; FF165"},
		{false, "gearmotor 2 hp", "gearmotor 2 hp 213TC face", "check the motor as ordered has another flange than its plate gearmotor 2 hp 213TC face; 145TC"},
		{false, "flange: 145TC", "frame: 143TC", ""},
		{false, "flange: 145TC", "frame: 213TC", "stop the pitch circle of motor is not that of the motor's face 213TC"},
	} {
		job, plate := job, plate
		if c.metric {
			job, plate = metric.Replace(job), metric.Replace(plate)
		}
		list, _, err := reviewed(load(t, &txtar.Archive{Files: []txtar.File{{Name: "job.yaml", Data: []byte(strings.Replace(job, c.from, c.to, 1))}, {Name: "plate.yaml", Data: []byte(strings.Replace(plate, c.from, c.to, 1))}, {Name: "base.yaml", Data: []byte("part: base\nkind: plate\nmaterial: A36\nstock: {plate: 3/4, cut: laser}\noutline: {square: 20}\n")}}}))
		if err != nil {
			t.Fatal(err)
		}
		var out []string
		for _, f := range list {
			if f.Code == "motor" || strings.Contains(f.What, "another flange") {
				out = append(out, string(f.Severity)+" "+f.What+" "+f.Numbers)
			}
		}
		if got := strings.Join(out, "; "); c.want == "" && got != "" || !strings.Contains(got, c.want) {
			t.Errorf("%s: %q", c.to, got)
		}
	}
}

// A motor, its coupling and its screws are of one order: a shaft of 28 by frame 100 (IEC 60072-1, from memory), and
// behind 20 of plate a flange: a motor's flange of 1.6 diameters of its screws M12 and the plate take 39 of them.
func TestMotorOrder(t *testing.T) {
	t.Parallel()
	job := "job: J\nunits: mm\nparts: [spindle.yaml, adapter.yaml]\njoints:\n  - {name: plate, bolt: {through: adapter.screws, into: spindle.taps, bolt: M10 8.8}, face: back-on-front}\n" +
		"loose:\n  - {item: \"coupling, bores 38 and 28\", how: on both, after: plate, kg: 5, stands: {on: spindle.drive, diameter: 60, length: 40}}\n" +
		"  - {item: \"gearmotor 2.2 kW\", how: on its flange, after: plate, kg: 48, buy: screw M12x35 8.8, count: 4, stands: {on: adapter.motor, shaft: 28, diameter: 220, length: 300}}\n" +
		"motor: {kw: 2.2, volts: 400, phases: 3, speed: 1430, frame: 100L, rotation: clockwise, seen-from: drive-end, earth: foot, emergency-stop: front, drives: spindle.drive}\n"
	const spindle = "part: spindle\ntitle: Spindle\nkind: turned\nmaterial: C45\nstock: {round: 510 mm, length: 90 mm}\nprofile:\n  outside:\n    - {name: drive, diameter: 38, length: 14}\n    - {name: flange, diameter: 500, length: 20}\nholes:\n  - {name: taps, face: front, circle: {pcd: 460, count: 4, first: 45}, size: M10 tap}\n"
	adapter := txtar.File{Name: "adapter.yaml", Data: []byte("part: adapter\ntitle: Adapter\nkind: plate\nmaterial: S235\nstock: {plate: 20 mm}\noutline: {rectangle: [500, 500]}\nbore: {diameter: 230 mm, fit: H7}\nholes:\n  - {name: motor, face: front, circle: {pcd: 265, count: 4, first: 45}, size: M12 tap}\n  - {name: screws, face: front, circle: {pcd: 460, count: 4, first: 45}, size: M10 clearance}\n")}
	for _, c := range [][3]string{
		{"", "", ""},
		{"shaft: 28", "shaft: 38", "the shaft that the motor stands with is not that of its frame 38 mm; frame 100L has 28 mm"},
		{"speed: 1430,", "speed: 1430, output-speed: 30,", ""},
		{"38 and 28", "38 and 24", "the coupling is bored for other shafts than the shaft of the motor 38 mm and 24 mm; the shaft of the motor is 28 mm"},
		{"38 and 28", "40 and 28", "the coupling is bored for other shafts than drive of Spindle 40 mm and 28 mm; drive of Spindle is 38 mm"},
		{"M12x35", "M12x50", "the screws bought for motor of Adapter end on Spindle 50 mm long through a flange and 20 mm: 10.8 mm stand out"},
		{"diameter: 38,", "diameter: 38, fit: d9,", "the coupling sits loose on drive 38 mm d9: 0.08 mm of play at the least in a bore of its size"}, // ISO 286-2: −80
		{"diameter: 38,", "diameter: 38, fit: k6,", ""},
	} {
		spindle := txtar.File{Name: "spindle.yaml", Data: []byte(strings.Replace(spindle, c[0], c[1], 1))}
		list, _, err := reviewed(load(t, &txtar.Archive{Files: []txtar.File{spindle, adapter, {Name: "job.yaml", Data: []byte(strings.Replace(job, c[0], c[1], 1))}}}))
		if err != nil {
			t.Fatal(err)
		}
		var out []string
		for _, f := range list {
			if strings.Contains(f.What, "frame") || strings.Contains(f.What, "bored for") || strings.Contains(f.What, "end on") || strings.Contains(f.What, "loose") {
				out = append(out, f.What+" "+f.Numbers)
			}
		}
		if got := strings.Join(out, "; "); c[2] == "" && got != "" || !strings.Contains(got, c[2]) {
			t.Errorf("%s: %q", c[1], got)
		}
	}
}
