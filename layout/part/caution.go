package part

import "centrepop/layout/plan"

// caution is what an operation warns of: a few words in its row, and the whole
// sentence once for all operations of its kind on the cover.
type caution struct{ short, full string }

// The cautions of the operations. Common practice, no source; local rules come
// first.
var (
	clampStock   = caution{"clamp, support the long end", "Clamp the stock, support the long end; edges are sharp and hot. Eye protection; hands clear of the blade."}
	hotBlank     = caution{"hot edges", "Hot edges and slag: gloves and eye protection; let the blank cool before measuring."}
	jetEdges     = caution{"sharp edges, wet", "A water jet leaves sharp edges: gloves, eye protection."}
	castFlash    = caution{"sharp flash, dust", "Castings are heavy and have sharp flash: gloves; mask for grinding dust."}
	outOfBalance = caution{"counterweight, lowest speed first", "An out-of-balance plate throws: bolt a counterweight, start at the lowest speed."}
	swings       = caution{"corners: guard, slowest speed first", "Corners of a plate in the chuck cannot be seen as they turn: guard, hands and sleeves clear, the slowest speed first."}
	whips        = caution{"a long bar whips", "A long bar whips: nothing may stand out unsupported behind the spindle."}
	clampRound   = caution{"clamp: it rolls", "Clamp the round: it rolls and grabs."}
	clampPart    = caution{"clamp", "Clamp the part: a drill that grabs spins it."}
	broaching    = caution{"square, stand beside", "A broach that is not square breaks: stand beside the press, eye protection."}
	punching     = caution{"eyes", "Eye protection when punching; a mushroomed punch head splinters."}
	deburring    = caution{"sharp edges", "Turned and drilled edges cut: gloves off near rotating stock, on for handling."}
	grinding     = caution{"face shield, sparks", "Grinding: face shield, guard on, sparks away from people and from what burns. Cut edges are sharp and hot."}
	blade        = caution{"the hand behind the blade", "A knife slips: steel rule with an edge, the holding hand never before the blade."}
	sheetEdges   = caution{"sharp edges", "Sheet edges cut: gloves."}
	pressBrake   = caution{"fingers", "Keep fingers out of the press brake; two people on a long blank, one at the pedal."}
	risingSheet  = caution{"hands clear of die and sheet", "Press brake: hands out of the die and clear of the rising sheet; one person at the pedal."}
	springsBack  = caution{"it springs back", "A ring under tension springs back: chain hoist or press with a guard, nobody in line; gloves."}
	rolls        = caution{"fingers", "Rolls pull fingers in."}
	welding      = caution{"by a qualified welder", "Welding: screen, ventilation, hot parts; by a qualified welder under local rules."}
)

// cutEdges is what the cutter leaves: water and shears leave no heat.
func (b *bench) cutEdges() caution {
	if b.Part.Stock.Cut == "waterjet" {
		return jetEdges
	}
	return hotBlank
}

// warn sets the cautions of an operation.
func warn(o plan.Operation, list ...caution) plan.Operation {
	for i, c := range list {
		if i > 0 {
			o.Caution += "; "
		}
		o.Caution += c.short
		o.Dangers = append(o.Dangers, c.full)
	}
	return o
}
