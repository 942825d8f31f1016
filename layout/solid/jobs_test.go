package solid_test

import "centrepop/layout/layouttest"

var body, load, write = layouttest.Body, layouttest.Load, layouttest.Write
