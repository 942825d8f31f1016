package joint

import (
	"centrepop/layout/bolts"
	"centrepop/layout/plan"
	"centrepop/layout/words"
)

// companions names the nut and washer that go with the bolt's class, and the
// torque for threads in the other state, dry or oiled.
func (t *joint) companions(p *plan.BoltPlan, of bolts.Tightening) {
	in := t.in.Bolt
	if c, err := t.bolt.Companions(in.Class); err == nil {
		p.NutClass, p.WasherClass = c.Nut, c.Washer
		if c.Beyond && in.Washer {
			t.caution("A plain washer is too soft under class " + p.Class + ": " + c.Washer + ", or none.")
		}
	}
	both, err := t.bolt.TightenBoth(of)
	if err != nil {
		return
	}
	p.Threads, p.OtherThreads, p.OtherTorqueNm = "dry", "oiled", words.Round(both.Oiled.TorqueNm, 3)
	if of.Condition != "" {
		p.Threads = of.Condition
	}
	if bolts.Lubricated(of.Condition) {
		p.OtherThreads, p.OtherTorqueNm = "dry", words.Round(both.Dry.TorqueNm, 3)
	}
}
