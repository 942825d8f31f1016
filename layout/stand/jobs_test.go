package stand_test

import "centrepop/layout/layouttest"

var argued, body, boxed, found, load, stood, write = layouttest.Argued, layouttest.Body, layouttest.Boxed, layouttest.Found, layouttest.Load, layouttest.Stood, layouttest.Write

const basePart, ribPart, ribJob, ribWeld = layouttest.BasePart, layouttest.RibPart, layouttest.RibJob, layouttest.RibWeld
