package read

import "testing"

func TestDemos(t *testing.T) {
	for _, job := range []string{"../../testdata/pugmill/job.yaml", "../../testdata/gatejack/job.yaml"} {
		j, err := Load(job)
		if err != nil {
			t.Errorf("%s:\n%v", job, err)
			continue
		}
		t.Logf("%s: %d parts", job, len(j.Parts))
	}
}

func BenchmarkLoad(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Load("../../testdata/pugmill/job.yaml"); err != nil {
			b.Fatal(err)
		}
	}
}
