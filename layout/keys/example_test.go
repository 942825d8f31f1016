package keys_test

import (
	"fmt"

	"centrepop/layout/keys"
)

func ExampleFor() {
	k, err := keys.For(38)
	if err != nil {
		fmt.Println(err)
		return
	}
	w, _ := k.Widths(keys.Normal)
	fmt.Printf("key %gx%g, the shortest %g long\n", k.WidthMm, k.HeightMm, k.LengthsMm()[0])
	fmt.Printf("shaft keyway %.3f – %.3f wide, %g deep, %g across\n", w.Shaft.MinMm, w.Shaft.MaxMm, k.ShaftDepthMm, k.ShaftAcrossMm)
	fmt.Printf("hub keyway %.3f – %.3f wide, %g across\n", w.Hub.MinMm, w.Hub.MaxMm, k.HubAcrossMm)
	// Output:
	// key 10x8, the shortest 22 long
	// shaft keyway 9.964 – 10.000 wide, 5 deep, 33 across
	// hub keyway 9.982 – 10.018 wide, 41.3 across
}
