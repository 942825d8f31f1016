package templates_test

import (
	"fmt"

	"centrepop/layout"
	"centrepop/parts/read"
	"centrepop/templates"
)

// The templates of one part of the demo job.
func ExampleTemplates() {
	job, err := read.Load("../testdata/pugmill/job.yaml")
	if err != nil {
		fmt.Println(err)
		return
	}
	worked, err := layout.Resolve(job)
	if err != nil {
		fmt.Println(err)
		return
	}
	plan := worked.Plan
	doc, err := templates.Templates(plan, []string{"gland-ring"}, templates.Options{Paper: plan.Paper})
	if err != nil {
		fmt.Println(err)
		return
	}
	page := doc.Pages[0]
	fmt.Printf("%s, %g × %g mm\n", doc.Title, page.WidthMm, page.HeightMm)
	// Output: Pug mill, revision B, 210 × 297 mm
}
