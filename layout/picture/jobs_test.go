package picture_test

import "centrepop/layout/layouttest"

var boxed, edited, load, pictured, write = layouttest.Boxed, layouttest.Edited, layouttest.Load, layouttest.Pictured, layouttest.Write

const basePart, ribPart, ribJob, ribWeld = layouttest.BasePart, layouttest.RibPart, layouttest.RibJob, layouttest.RibWeld
