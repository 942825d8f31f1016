package machine_test

import (
	"testing"

	"centrepop/layout"
	"centrepop/parts/read"
)

func BenchmarkStand(b *testing.B) {
	for _, name := range []string{"pugmill", "gatejack"} {
		job, err := read.Load("../../testdata/" + name + "/job.yaml")
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
