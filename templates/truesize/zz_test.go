package truesize

import (
	"fmt"
	"os"
	"testing"

	"centrepop/layout"
	"centrepop/parts"
	"centrepop/templates/draw"
)

func TestZZ(t *testing.T) {
	for _, j := range []string{"pugmill", "gatejack"} {
		for _, f := range []draw.Frame{{WidthMm: 210, HeightMm: 297, Name: "A4"}, {WidthMm: 215.9, HeightMm: 279.4, Name: "Letter"}} {
			job, err := parts.Load("../../testdata/" + j + "/job.yaml")
			if err != nil {
				t.Fatal(err)
			}
			w, err := layout.Work(job)
			if err != nil {
				t.Fatal(err)
			}
			pl := w.Plan
			var pages []*page
			ways := waysOf(f)
			for i, part := range pl.Parts {
				kept, err := printable(pl, part, f, Useful)
				if err != nil {
					t.Fatal(err)
				}
				if os.Getenv("ZZ") != "" && f.Name == "A4" {
					for _, k := range kept {
						fmt.Printf("%s %s: %.0f x %.0f  tiles", part.Name, k.name, k.full.Width(), k.full.Height())
						for _, fr := range k.fewest(ways) {
							fmt.Printf(" %.0fx%.0f", fr.window.Width(), fr.window.Height())
						}
						fmt.Println()
					}
				}
				pages = pack(pages, kept, ways, i)
			}
			n0 := len(pages)
			pages = merge(pages, ways)
			n1 := len(pages)
			pages = spread(pages, ways)
			sum := 0.0
			for i, p := range pages {
				if os.Getenv("ZZ") != "" {
					fmt.Printf("%d fill %.0f%% w %.0f:", i+1, p.fill()*100, p.frame.WidthMm)
					for _, one := range p.tiles {
						fmt.Printf(" [%s %s %d %.0fx%.0f]", one.of.part.Name, one.of.name, one.n, one.window.Width(), one.window.Height())
					}
					fmt.Println()
				}
				sum += p.fill()
			}
			fmt.Printf("%s %s: pages %d %d %d mean %.3f area %.2f\n", j, f.Name, n0, n1, len(pages), sum/float64(len(pages)), sum)
		}
	}
}
