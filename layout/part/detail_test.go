package part

import (
	"strings"
	"testing"
)

// The pitch diameter of a thread with a class is in the record: 1/2-13 UNC-2A from 0.4435 to 0.4485,
// 1/4-20 UNC-2B from 0.2175 to 0.2224 (ASME B1.1). A class of the other side is refused.
func TestThreadClass(t *testing.T) {
	t.Parallel()
	const bar = "part: p\nkind: turned\nmaterial: 1018\nprofile:\n  outside: [{name: body, diameter: 2, length: 2}, {name: nose, thread: 1/2-13 UNC-2A, length: 1}]\nholes: [{name: eye, face: front, at: [[0.6, 0]], size: 1/4-20 UNC-2B tap, depth: 1/2}]\n"
	text := ""
	for _, c := range work(t, "in", bar).Out.Checks {
		text += c.What + ": " + c.Limits + "\n"
	}
	for _, want := range []string{"nose: class 2A, pitch diameter 0.4435 – 0.4485 in; counterpart runs freely", "eye: class 2B, pitch diameter 0.2175 – 0.2224 in; runs freely 0.5 in deep"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	job := load(t, "in", strings.Replace(bar, "UNC-2A", "UNC-2B", 1))
	if m := Work(job, job.Parts[0]); len(m.Errs) == 0 || !strings.Contains(m.Errs[0].Error(), "class 2B of 1/2-13 UNC is that of the other side") {
		t.Error(m.Errs)
	}
}
