package stand_test

import "centrepop/layout/layouttest"

var argued, body, boxed, found, load, write = layouttest.Argued, layouttest.Body, layouttest.Boxed, layouttest.Found, layouttest.Load, layouttest.Write

const basePart, ribPart, ribJob, ribWeld = layouttest.BasePart, layouttest.RibPart, layouttest.RibJob, layouttest.RibWeld
