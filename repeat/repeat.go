// Package repeat carries an order along the line of the workshop, from the unit
// to the cloth:
//
//	document ─► pattern ─► stencil ─► cloth ─► check
//	(the order)  unit on    joint,     bolt,    findings
//	             lattice    stars,     board,
//	                        hold       garment
//
// # Words
//
// The same words stand in code, window, command line, files and tests.
//
//	unit        kobon       the smallest repeating drawing: lattice and motifs
//	motif       mon         one drawn shape or dot of the unit
//	lattice                 two vectors: straight, half-drop, brick, diagonal, free
//	cut-out                 a hole through the paper; paste or colour passes here
//	web                     the paper left between two neighbouring cut-outs
//	island                  paper held by nothing: it falls out
//	band                    a strip of paper parted from the rest on both sides
//	sheet       katagami    the stencil: paper, cut field, margins, stars
//	step        okuri       how far the stencil moves for the next placement
//	joint       tsugime     where two placements meet
//	star        hoshi       a register hole; feed stars come leading and trailing
//	placement               one laying of the stencil
//	bolt, board tan, nagaita  the cloth, and the long board it is wrapped on
//	face, turn  kensaki     the board's two sides, and the fold between them
//	panel, seam migoro …    pieces of the garment and the lines they are sewn on
//	pile        toji        the sheets that are bound and cut together
//	rack                    the cutter's own punches and blades
//	method      kiribori …  one of the five ways to cut: by awl, shaped punch, thrust, pull, stripe
//	pass                    what is cut with one tool in one stage of the work
//	bench plan              the passes in their order, the pile, the days
//	finding                 something measured that needs a look
//
// # Sizes
//
// Sizes in an order are finished sizes. Build reports the sheet at finished
// size; Work.Scale takes it to the board and to the paper.
package repeat
