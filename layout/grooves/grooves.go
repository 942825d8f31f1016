// Package grooves gives the small standard features of turned parts: grooves
// for retaining rings and O-rings, thread run-outs and undercuts, relief
// undercuts at shoulders, lands for shaft seals, and centre holes.
//
// All lengths are millimetres, all angles degrees, roughness micrometres. Depths
// are radial. Inside features lie in a bore, outside ones on a shaft.
//
// Standards:
//
//   - DIN 471 and DIN 472: retaining rings for shafts and bores, normal type.
//   - ISO 3601-1: O-ring sections and their tolerances. ISO 3601-2 sets grooves
//     by pairs of diameters; the depths and widths here are those of a trade
//     table by section, and squeeze, fill and stretch are computed from them.
//   - DIN 76-1: run-outs and undercuts of metric ISO threads.
//   - DIN 509: relief undercuts, forms E and F.
//   - ISO 6194-1 and DIN 3760: shaft and housing for rotary shaft seals.
//   - ISO 6411 with ISO 866, 2540 and 2541 (DIN 332-1): centre holes A, B, R.
//
// Every result carries a Source that says whether its row was read in a
// publication or is only remembered. The tolerance classes become limits with
// package fits.
package grooves
