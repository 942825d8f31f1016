package machine_test

import (
	"testing"

	"centrepop/layout"
	"centrepop/parts"
)

func BenchmarkStand(b *testing.B) {
	for _, name := range []string{"pugmill", "gatejack"} {
		job, err := parts.Load("../../testdata/" + name + "/job.yaml")
		if err != nil {
			b.Fatal(err)
		}
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				w, err := layout.Work(job)
				if err != nil {
					b.Fatal(err)
				}
				w.Machine()
			}
		})
	}
}
