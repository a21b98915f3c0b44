package job

import (
	"fmt"
	"strings"

	"slabwright/model"
)

// Template is a job file to start from: commented, valid, with example
// readings of a room that has the walls the preset asks for, and with every
// parameter of the preset at its own value.
func Template(p model.Preset) []byte {
	var b strings.Builder
	fmt.Fprintf(&b, templateHead, p.Name)
	m := MeasuresFor(p)
	m.write(&b)
	b.WriteString(templateMiddle)
	fmt.Fprintf(&b, "  floor: {%s: 0}   # height of the floor at corners\n", strings.Join(m.Floor, ": 0, "))
	b.WriteString(templateRest)
	fmt.Fprintf(&b, "\ndesign:\n  preset: %-24s# %s\n", p.Name, p.Help)
	if len(p.Params) > 0 {
		b.WriteString("  parameters:                     # what you leave out keeps the preset's own value\n")
	}
	for _, q := range p.Params {
		fmt.Fprintf(&b, "    %-30s# %s\n", q.Name+": "+q.Default, paramHelp(q))
	}
	b.WriteString(templateTail)
	return []byte(b.String())
}

// paramHelp is what a comment says of a parameter.
func paramHelp(p model.Param) string {
	switch p.Kind {
	case model.LengthParam:
		return fmt.Sprintf("%s; %s to %s mm", p.Help, number(p.Min), number(p.Max))
	case model.CountParam:
		return fmt.Sprintf("%s; %s to %s", p.Help, number(p.Min), number(p.Max))
	case model.FlagParam:
		return p.Help + "; yes or no"
	}
	return p.Help + "; " + strings.Join(p.Choices, ", ")
}

const templateHead = `# A job for slabwright, preset %s. Lengths are in millimetres unless a unit
# stands behind them: 745, 74.5 cm, 2.39 m, 29 1/2 in, 7' 6 1/2". Decimals have a
# point. Replace the example values by your own.
title: My desk
revision: A
# revisions:                      # what was given out, the latest last
#   - {mark: A, on: 2026-09-13, what: first issue}
# surveyed: 2026-09-12            # day of the survey
# author: Your name
# show: {paper: A3, stand: lying, ink: colour, cover: both, unit: mm, decimal: point, language: en, projection: first}

room:
  readings_at: 745                # height above the floor at which you measured
  # ceiling: 2450
  # tool: tape II                 # tape I, tape II, tape III, laser
  # Corners from left to right, as you see the walls from inside the room.
`

const templateMiddle = `    # More kinds of reading, and what else a line may say:
    # - {angle: A-B-C, is: 89.6 deg}                  # the angle inside the room, at B
    # - {square: A-B-C, marks: [600, 800], is: 1003}  # marks on B-A and B-C, and how far apart they are
    # - {offset: D, from: B-C, side: behind, is: 242} # square from the line through B and C, before or behind it
    # - {width: A-B to C-D, along: B-C, depth: 400, is: 2370} # between the two walls, 400 before the wall B-C
    # - {between: A-B, is: 1401, tool: laser, sd: 1.5}
    # - {between: A-B, is: 1401, again: [1400.5, {is: 1402, tool: tape II}]}   # each value taken afresh
  # floor_at: [{wall: back, along: 400, before: 600, is: -4}]   # height of the floor before a wall
`

const templateRest = `
people:
  - {name: first user, stature: 1750, sex: female, mass: 75 kg, shoe: 25}

# offers:
#   currency: EUR
#   kerf: {wood: 4, steel: 2.5}
#   slabs:
#     - {name: ash with one natural edge, species: European ash, length: 2400, width: 900, thickness: 45, natural: 1, price: 690}
#     - {name: oak with a knot, species: European oak, length: 2000, width: 600, thickness: 45, price: 310, flaws: [{from: 900, up: 200, length: 60, width: 40}]}
#   bars:
#     - {section: L50x50x6, length: 6 m, price: 58, place: steel yard}
#   packs:
#     - {kind: wall anchor, wall: solid brick, diameter: 8, pieces: 10, price: 19, place: hardware shop}
#     - {kind: wood screw, diameter: 5, length: 35, pieces: 25, price: 4.50}

# house:
#   way:
#     - {name: front door, kind: door, width: 830, height: 2010}
#     - {kind: corridor turn, width: 1000, turn: 920}
#     - {kind: stair, width: 860, pitch: 41 deg, height: 1980}
#     - {kind: car, length: 2450, diagonal: 2700, width: 1000, height: 700}
#   climate:                      # how moist the wood is, and how it moves over the year
#     moisture: 9                 # by a meter, in the core; or stored: {humidity: 55, temperature: 18}
#     humidity: [35, 60]          # lowest and highest of the room; temperature: 20
#     # winter: {humidity: 35, temperature: 21}      # instead of humidity: the air of each season
#     # summer: {humidity: 60, temperature: 25}
#     # sawn: flat                # rings seen at the end: flat, quarter (upright) or mixed
#     # finished: both faces      # or one face

# loads:                          # what is assumed when nothing is said
#   person: 100 kg                # the heaviest who may stand or sit anywhere on a worktop
#   step: 1.25                    # climbing up presses so many times the weight; a jump 2 and more
#   worktop: 50                   # kg per square metre that lie there for years
#   shelf: 100                    # kg per square metre
#   service_class: 1              # 1 heated room, 2 unheated, 3 outside
#   grade: D18                    # strength class of the timber, if somebody graded it
#   things:
#     - {name: monitor arm, on: worktop, along: 900, back: 80, mass: 11 kg, reach: 350}
# Cables run under the slab along the walls, through its holes and in its grooves.
# x and back count from the left end of the slab's reference edge.
# wiring:
#   devices:
#     - {name: wall socket, socket: double socket}      # an obstacle of a wall
#     - {name: task lamp, on: worktop, x: 900, back: 150}
#     - {name: light supply, under: worktop, x: 300, back: 150}
#   cables:
#     - {name: lead of the lamp, from: wall socket, to: task lamp, class: mains, diameter: 7, plug: 38, stock: 3000}
#   grooves:                      # in the undersides, besides those of the preset
#     - {name: lamp run, in: worktop, width: 16, depth: 14, path: [{x: 300, back: 150}, {x: 900, back: 150}], lid: {width: 28, thickness: 4}}
#   lids: [{groove: cable run, width: 32, thickness: 4}]    # on grooves of the preset
#   slots: [{name: back slot, in: worktop, x: 700, width: 80, depth: 100}]   # at the reference edge
#   lights:
#     - {name: shelf light, in: light run, supply: light supply, voltage: 24, power: 9.6, pitch: 50, resistance: 0.09}
`

const templateTail = `
# Parts that are already cut stay as they are, whatever is measured later. Sizes
# are read on the top face, from corner to corner; edges and corner numbers stand
# on the part's sheet. An edge that is cut as drawn has the size on the sheet.
# cut:
#   - part: worktop
#     on: 2026-10-02
#     sizes:
#       - {edge: left, is: 789.5}
#       - {edge: back, is: 2362}
#       - {edge: right, is: 781}
#       - {edge: front, is: 2374}
#       - {between: 1-3, is: 2490}
#       - {between: 2-4, is: 2481}    # one more checks the others
#   - {part: angle left, on: 2026-10-02, length: 740, wall_holes: [40, 370, 700], screw_holes: [65, 675]}
`
